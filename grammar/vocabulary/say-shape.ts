// What a property takes, said for the language reference: fixed words in code marks, what may be left out in brackets.
import { measures } from './measures.ts';
import type { Shape, ValueCheck } from './types.ts';

/** A phrase in Markdown, without a full stop; a dash where the word alone says it. */
export function sayShape({ check, form }: Shape<unknown>): string {
  switch (check.kind) {
    case 'quantity':
      return check.dimension === 'number' ? 'number or percent' : form;
    case 'any-quantity':
    case 'step':
    case 'date':
    case 'code':
    case 'rest':
    case 'plan-line':
      return form.replaceAll('|', 'or');
    case 'condition':
      return 'a condition';
    case 'word':
      return check.words === measures ? 'a measure' : alternatives(check.words.map(code));
    case 'name':
    case 'pointer':
      return check.of === 'work' ? 'name of a kind of work' : `name of ${article(check.of)}`;
    case 'any-name':
      return 'name';
    case 'goods':
      return check.space === 'priced' ? 'goods or kind of work' : 'goods';
    case 'text':
      return 'text in quotes';
    case 'dates':
      return 'date, or first..last';
    case 'weekdays':
      return 'days of the week';
    case 'clock':
      return 'hours (7:00-15:30)';
    case 'literal':
      return 'size';
    case 'count':
      return 'whole number';
    case 'flag':
      return '–';
    default:
      return sayParts(check);
  }
}

function sayParts(check: Composed): string {
  switch (check.kind) {
    case 'phrase':
      return `${sayWords(check.words)} ${sayShape(check.then)}`;
    case 'followed-by':
      return `${sayShape(check.value)} ${sayWords(check.words)}`;
    case 'list':
      if (check.separator === 'none') return `[${inRow(check.item)} …]`;
      return check.separator === ',' ? `${inRow(check.item)}, …` : `${inRow(check.item)} [${code(check.separator)} …]`;
    case 'fields':
      return Object.values(check.fields).map(inRow).join(' ').replaceAll(' ,', ',');
    case 'optional':
      return `[${sayShape(check.value)}]`;
    case 'either':
      return alternatives(sameStart(check.options.map(sayShape)));
  }
}

/** A part among others: alternatives stand in parentheses. */
function inRow(shape: Shape<unknown>): string {
  const { check } = shape;
  const several = check.kind === 'either' || (check.kind === 'word' && check.words !== measures && check.words.length > 1);
  return several ? `(${sayShape(shape)})` : sayShape(shape);
}

type Composed = Extract<ValueCheck, { kind: 'phrase' | 'followed-by' | 'list' | 'fields' | 'optional' | 'either' }>;

/** money per area, money per length → money per area, length. */
function sameStart(said: readonly string[]): readonly string[] {
  const made: string[] = [];
  let start = '';
  for (const each of said) {
    const per = / per (?=\w+$)/.exec(each);
    const own = per === null ? '' : each.slice(0, per.index + per[0].length);
    made.push(own !== '' && own === start ? each.slice(own.length) : each);
    start = own;
  }
  return made;
}

/** A comma stands for itself; other words are fixed words. */
function sayWords(words: readonly string[]): string {
  const [first = '', ...rest] = words;
  if (first === ',') return [',', ...(rest.length === 0 ? [] : [code(rest.join(' '))])].join(' ');
  if (first.startsWith(',')) return `, ${code([first.slice(1), ...rest].join(' '))}`;
  return code(words.join(' '));
}

function alternatives(said: readonly string[]): string {
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} or ${said[said.length - 1]}`;
}

function article(word: string): string {
  return /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;
}

function code(text: string): string {
  return `\`${text}\``;
}
