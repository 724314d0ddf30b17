// What may come next inside a value: its shape is walked over the items before the caret, and whatever could stand at the
// caret is gathered.
import { cursor, matchWords } from '#grammar/shape/cursor';
import { readValue } from '#grammar/shape/value';
import type { Item } from '#grammar/tree';
import type { Shape, ValueCheck } from '#grammar/vocabulary/types';

export interface Expected {
  /** What fits at the caret; several where the shape leaves a choice. */
  readonly checks: readonly ValueCheck[];
  /** Whether what stands before the caret is a whole value already. */
  readonly complete: boolean;
}

/** Items from `from` to before `caret` are there; what fits at `caret`? */
export function expectedAt(shape: Shape<unknown>, items: readonly Item[], text: string, from: number, caret: number): Expected {
  const walk: Walk = { items, text, caret, checks: [] };
  const end = follow(shape, from, walk);
  return { checks: walk.checks, complete: end !== undefined && end >= caret };
}

interface Walk {
  readonly items: readonly Item[];
  readonly text: string;
  readonly caret: number;
  readonly checks: ValueCheck[];
}

/** The item after the value; undefined where it does not fit, or where the caret comes first. */
function follow(shape: Shape<unknown>, index: number, walk: Walk): number | undefined {
  const { check } = shape;
  switch (check.kind) {
    case 'phrase': {
      const after = followWords(check.words.flatMap(commaApart), index, walk);
      return after === undefined ? undefined : follow(check.then, after, walk);
    }
    case 'followed-by': {
      const after = follow(check.value, index, walk);
      return after === undefined ? undefined : followWords(check.words, after, walk);
    }
    case 'list':
      return followList(check.item, check.separator, index, walk);
    case 'fields': {
      let at = index;
      for (const field of Object.values(check.fields)) {
        const after = follow(field, at, walk);
        // What may be left out is no hindrance to what follows it.
        if (after === undefined && field.check.kind !== 'optional') return undefined;
        at = after ?? at;
      }
      return at;
    }
    case 'optional':
      return follow(check.value, index, walk) ?? index;
    case 'either': {
      let furthest: number | undefined;
      for (const option of check.options) {
        const after = follow(option, index, walk);
        if (after !== undefined) furthest = Math.max(furthest ?? 0, after);
      }
      return furthest;
    }
    case 'flag':
      return index;
    default:
      return followOne(shape, index, walk);
  }
}

function followOne(shape: Shape<unknown>, index: number, walk: Walk): number | undefined {
  if (index >= walk.caret) {
    walk.checks.push(shape.check);
    return undefined;
  }
  const at = cursor(walk.items, walk.text, [], '', index, walk.caret);
  const value = readValue(shape, at);
  if (value === undefined) {
    // Goods may have their sizes first, a step its `start of`: the name is still to come.
    const { kind } = shape.check;
    if ((kind === 'goods' || kind === 'step') && index === walk.caret - 1) walk.checks.push(shape.check);
    return undefined;
  }
  return at.index;
}

function followWords(words: readonly string[], index: number, walk: Walk): number | undefined {
  const there = Math.min(words.length, walk.caret - index);
  if (there > 0 && matchWords(walk.items, index, walk.caret, words.slice(0, there)) === 0) return undefined;
  if (there >= words.length) return index + words.length;
  const missing = words.slice(Math.max(0, there)).filter((word) => word !== ',');
  if (missing.length > 0 && words[Math.max(0, there)] !== ',') walk.checks.push({ kind: 'word', words: [missing.join(' ')] });
  return undefined;
}

function followList(item: Shape<unknown>, separator: string, index: number, walk: Walk): number | undefined {
  let at = index;
  for (let count = 0; ; count++) {
    if (count > 0 && separator !== 'none') {
      if (at >= walk.caret) {
        if (separator !== ',') walk.checks.push({ kind: 'word', words: [separator] });
        return at;
      }
      if (matchWords(walk.items, at, walk.caret, [separator]) === 0) return at;
      at += 1;
    }
    const after = follow(item, at, walk);
    if (after === undefined) return count > 0 && separator === 'none' ? at : undefined;
    if (after === at) return at;
    at = after;
  }
}

function commaApart(word: string): readonly string[] {
  return word.length > 1 && word.startsWith(',') ? [',', word.slice(1)] : [word];
}
