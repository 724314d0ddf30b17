// Reads one value of a known shape from the items under a cursor. Undefined means: does not fit, and the cursor says
// where and what would have. Nothing is evaluated or looked up here.
import { NONE } from '#kit/differing';
import { isBlank } from '../parser/reading.ts';
import type { Expression, Item, Literal } from '../tree.ts';
import type { Amount, Given, Pointed, Shape, StepNamed } from '../vocabulary/types.ts';
import { joiningWords } from '../vocabulary/vocabulary.ts';
import { readCondition } from './condition.ts';
import { type Cursor, matchWords, peek, spotOf, spotOfValue, stuck, wordAt } from './cursor.ts';
import { fitsDimension, unitWord } from './dimension.ts';

/** The value, with what it took from the cursor; undefined where it does not fit. */
export function readValue(shape: Shape<unknown>, at: Cursor): unknown {
  const { check } = shape;
  const from = at.index;
  switch (check.kind) {
    case 'quantity': {
      const expression = quantityExpression(at);
      if (expression === undefined || (check.written === true && expression.kind === 'name')) return stuck(at, shape.form);
      if (expression.kind === 'literal' && !fitsDimension(expression.literal, check.dimension))
        return stuck(at, `${shape.form}, not ${unitWord(expression.literal)}`);
      at.index += 1;
      const amount: Amount = {
        kind: 'amount',
        dimension: check.dimension,
        clock: check.clock,
        label: at.label,
        expression,
        path: at.path,
      };
      return amount;
    }
    case 'any-quantity': {
      const expression = quantityExpression(at);
      if (expression === undefined) return stuck(at, shape.form);
      at.index += 1;
      const amount: Amount = {
        kind: 'amount',
        dimension: 'number',
        any: true,
        clock: 'as-spelled',
        label: at.label,
        expression,
        path: at.path,
      };
      return amount;
    }
    case 'word': {
      for (const word of check.words) {
        const taken = matchWords(at.items, at.index, at.end, word.split(' '));
        if (taken > 0) {
          at.index += taken;
          return word;
        }
      }
      return stuck(at, shape.form);
    }
    case 'name':
    case 'pointer': {
      const word = wordAt(at.items, at.index, at.end);
      if (word === undefined || joiningWords.has(word)) return stuck(at, shape.form);
      at.index += 1;
      return { kind: check.kind === 'name' ? 'named' : 'pointed', of: check.of, name: word, spot: spotOf(at, from, at.index) };
    }
    case 'any-name': {
      const word = nameLike(peek(at));
      if (word === undefined) return stuck(at, shape.form);
      at.index += 1;
      return { kind: 'any-name', name: word, spot: spotOf(at, from, at.index) };
    }
    case 'goods':
      return readGoods(check.space, at) ?? stuck(at, shape.form);
    case 'step':
      return readStep(at) ?? stuck(at, shape.form);
    case 'condition':
      return readCondition(at) ?? stuck(at, shape.form);
    case 'text': {
      const item = peek(at);
      if (item?.kind !== 'text') return stuck(at, shape.form);
      at.index += 1;
      return item.text;
    }
    case 'code':
      return readCode(at) ?? stuck(at, shape.form);
    case 'rest':
      return readRest(at) ?? stuck(at, shape.form);
    case 'plan-line':
      for (const item of at.items.slice(at.index, at.end)) if (item.kind === 'wrong') at.asIs?.add(item);
      return readRest(at) ?? stuck(at, shape.form);
    case 'flag':
      return true;
    case 'count': {
      const literal = literalOf(peek(at));
      if (literal?.kind !== 'quantity' || literal.dimension !== 'bare' || !Number.isInteger(literal.value))
        return stuck(at, 'whole number');
      at.index += 1;
      return literal.value;
    }
    case 'date': {
      const literal = literalOf(peek(at));
      if (literal?.kind !== 'date') return stuck(at, 'date such as 2027-04-05');
      at.index += 1;
      return literal.day;
    }
    case 'dates':
      return readDates(at) ?? stuck(at, shape.form);
    case 'weekdays': {
      const literal = literalOf(peek(at));
      if (literal?.kind !== 'weekdays') return stuck(at, shape.form);
      at.index += 1;
      return literal.days;
    }
    case 'clock': {
      const item = peek(at);
      const range = item?.kind === 'value' && item.expression.kind === 'range' ? item.expression : undefined;
      const low = range?.low.kind === 'literal' ? range.low.literal : undefined;
      const high = range?.high.kind === 'literal' ? range.high.literal : undefined;
      if (low?.kind !== 'clock' || high?.kind !== 'clock') return stuck(at, shape.form);
      at.index += 1;
      return [low.minutes, high.minutes];
    }
    case 'literal': {
      const literal = literalOf(peek(at));
      if (literal === undefined) return stuck(at, shape.form);
      at.index += 1;
      return literal;
    }
    case 'phrase': {
      const taken = matchWords(at.items, at.index, at.end, check.words.flatMap(commaApart));
      if (taken === 0) return stuck(at, shape.form);
      at.index += taken;
      const value = readValue(check.then, at);
      if (value === undefined) at.index = from;
      return value;
    }
    case 'followed-by': {
      const value = readValue(check.value, at);
      const taken = value === undefined ? 0 : matchWords(at.items, at.index, at.end, check.words);
      if (taken === 0) {
        if (value !== undefined) stuck(at, check.words.join(' '));
        at.index = from;
        return undefined;
      }
      at.index += taken;
      return value;
    }
    case 'list':
      return readList(check.item, check.separator, at);
    case 'fields':
      return readFields(Object.entries(check.fields), 0, {}, at);
    case 'optional':
      return readValue(check.value, at);
    case 'either': {
      for (const option of check.options) {
        const value = readValue(option, at);
        if (value !== undefined) return value;
        at.index = from;
      }
      return undefined;
    }
  }
}

/**
 * Parts one after another, from the one at `next` on. Where what follows an optional part does not fit, it is read again
 * without that part: in `1 toilet, vanity 30"` the second count is left out, though a name could stand for a number.
 */
function readFields(
  parts: readonly (readonly [string, Shape<unknown>])[],
  next: number,
  taken: { readonly [name: string]: unknown },
  at: Cursor,
): { readonly [name: string]: unknown } | undefined {
  const part = parts[next];
  if (part === undefined) return taken;
  const [name, shape] = part;
  const from = at.index;
  const value = readValue(shape, at);
  const whole = value === undefined ? undefined : readFields(parts, next + 1, { ...taken, [name]: value }, at);
  if (whole !== undefined) return whole;
  at.index = from;
  return shape.check.kind === 'optional' ? readFields(parts, next + 1, taken, at) : undefined;
}

/** One or more items apart by the separator; a separator that nothing fitting follows is left where it is. */
export function readList(
  item: Shape<unknown>,
  separator: ',' | 'none' | 'over' | 'or' | 'and',
  at: Cursor,
): readonly Given<unknown>[] | undefined {
  const list: Given<unknown>[] = [];
  for (;;) {
    const before = at.index;
    if (list.length > 0 && separator !== 'none') {
      if (matchWords(at.items, at.index, at.end, [separator]) === 0) break;
      at.index += 1;
    }
    const from = at.index;
    const value = from < at.end ? readValue(item, at) : undefined;
    // A quantity that counts the next thing belongs to that thing: `at 2'-6", 2 w-3050 in south`.
    const counts = list.length > 0 && item.check.kind === 'quantity' && isPlainWord(peek(at));
    if (value === undefined || counts || at.index === from) {
      at.index = before;
      break;
    }
    list.push({ value, spot: spotOfValue(value, spotOf(at, from, at.index)) });
  }
  // Arrays that grew have room to spare, and this one stays.
  return list.length > 0 || separator === 'none' ? list.slice() : undefined;
}

function isPlainWord(item: Item | undefined): boolean {
  return item?.kind === 'word' && !joiningWords.has(item.word);
}

function commaApart(word: string): readonly string[] {
  return word.length > 1 && word.startsWith(',') ? [',', word.slice(1)] : [word];
}

export function literalOf(item: Item | undefined): Literal | undefined {
  return item?.kind === 'value' && item.expression.kind === 'literal' ? item.expression.literal : undefined;
}

/** A name stands for a quantity too: `height plate-height`. */
function quantityExpression(at: Cursor): Expression | undefined {
  const item = peek(at);
  if (item?.kind === 'value') return item.expression;
  if (item?.kind === 'word' && !joiningWords.has(item.word))
    return { kind: 'name', name: item.word, from: item.from, to: item.to };
  return undefined;
}

function nameLike(item: Item | undefined): string | undefined {
  if (item?.kind === 'word' && !joiningWords.has(item.word)) return item.word;
  return item?.kind === 'value' && item.expression.kind === 'name' ? item.expression.name : undefined;
}

/** Sizes may stand before or after the name: `5/8" drywall`, `stud 2x6`, `shower 60" x 32"`. */
function readGoods(space: string, at: Cursor): unknown {
  const from = at.index;
  const sizes: Literal[] = [];
  takeSizes(at, sizes);
  const name = wordAt(at.items, at.index, at.end);
  if (name === undefined || joiningWords.has(name)) {
    at.index = from;
    return undefined;
  }
  at.index += 1;
  takeSizes(at, sizes);
  return { kind: 'goods', space, name, sizes: sizes.length === 0 ? NONE : sizes.slice(), spot: spotOf(at, from, at.index) };
}

function takeSizes(at: Cursor, sizes: Literal[]): void {
  for (;;) {
    const joint = sizes.length > 0 && peek(at)?.kind === 'joint' ? 1 : 0;
    const literal = literalOf(peek(at, joint));
    if (literal === undefined || !isSize(literal)) return;
    sizes.push(literal);
    at.index += 1 + joint;
  }
}

function isSize(literal: Literal): boolean {
  if (literal.kind === 'quantity')
    return literal.dimension === 'length' ? literal.unit !== 'lf' : literal.dimension === 'resistance';
  return literal.kind === 'nominal' || literal.kind === 'bar';
}

/** `footings`, `footings + 2 days`, `start of ducts + 1d`, `50% of framing`, `frame-check - 2d`. */
function readStep(at: Cursor): StepNamed | undefined {
  const from = at.index;
  let start: 'finish' | 'start' = 'finish';
  let share: number | undefined;
  const first = wordAt(at.items, at.index, at.end);
  if ((first === 'start' || first === 'end') && wordAt(at.items, at.index + 1, at.end) === 'of') {
    start = first === 'start' ? 'start' : 'finish';
    at.index += 2;
  } else {
    const literal = literalOf(peek(at));
    if (literal?.kind === 'quantity' && literal.unit === '%' && wordAt(at.items, at.index + 1, at.end) === 'of') {
      share = literal.value;
      at.index += 2;
    }
  }
  const item = peek(at);
  const spotFrom = at.index;
  let found: StepNamed | undefined;
  const more = share === undefined ? {} : { share };
  if (item?.kind === 'word' && !joiningWords.has(item.word)) {
    at.index += 1;
    found = { kind: 'step', step: pointed(item.word, spotOf(at, spotFrom, at.index)), from: start, ...more };
  } else if (item?.kind === 'value' && item.expression.kind === 'operation' && item.expression.left.kind === 'name') {
    const { operator, left, right } = item.expression;
    if (operator === '+' || operator === '-') {
      at.index += 1;
      const spot = { path: at.path, from: left.from, to: left.to };
      const lag: Amount<'time'> = {
        kind: 'amount',
        dimension: 'time',
        clock: 'as-spelled',
        label: 'wait',
        expression: right,
        path: at.path,
      };
      const step = pointed(left.name, spot);
      found =
        operator === '+'
          ? { kind: 'step', step, from: start, lag, ...more }
          : { kind: 'step', step, from: start, lag, lead: true, ...more };
    }
  }
  if (found === undefined) at.index = from;
  return found;
}

function pointed(name: string, spot: Pointed['spot']): Pointed<'step'> {
  return { kind: 'pointed', of: 'step', name, spot };
}

/** The unbroken run of letters under the finger, whatever items the lexer made of it. */
function readCode(at: Cursor): string | undefined {
  const item = peek(at);
  if (item === undefined || item.kind === 'comma' || item.kind === 'text') return undefined;
  let to = item.from;
  while (to < at.text.length && !isBlank(at.text.charCodeAt(to)) && at.text[to] !== ',') to += 1;
  while (at.index < at.end && at.items[at.index]!.from < to) {
    at.asIs?.add(at.items[at.index]!);
    at.index += 1;
  }
  return at.text.slice(item.from, to);
}

function readRest(at: Cursor): string | undefined {
  const first = peek(at);
  const last = at.items[at.end - 1];
  if (first === undefined || last === undefined) return undefined;
  at.index = at.end;
  return at.text.slice(first.from, last.to);
}

function readDates(at: Cursor): { first: number; last: number } | undefined {
  const item = peek(at);
  if (item?.kind !== 'value') return undefined;
  const { expression } = item;
  const [low, high] = expression.kind === 'range' ? [expression.low, expression.high] : [expression, expression];
  if (low.kind !== 'literal' || high.kind !== 'literal' || low.literal.kind !== 'date' || high.literal.kind !== 'date')
    return undefined;
  at.index += 1;
  return { first: low.literal.day, last: high.literal.day };
}
