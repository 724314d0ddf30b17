// Reads the small closed form of conditions: `plan.zone is 5A`, `any room has floor plank`, `foundation.fill at least 48"`,
// `any basement`. No loops, no functions; several lines are "and".
import type { Amount, Condition } from '../vocabulary/types.ts';
import { type Cursor, matchWords, peek, spotOf, wordAt } from './cursor.ts';

const QUANTIFIERS = ['any', 'every', 'no'] as const;
const TESTS = [
  ['is not', 'is-not'],
  ['is', 'is'],
  ['at least', 'at-least'],
  ['at most', 'at-most'],
  ['over', 'over'],
  ['under', 'under'],
  ['has', 'has'],
] as const;

const WORDED: ReadonlySet<string> = new Set(['is', 'is-not', 'has']);

export function readCondition(at: Cursor): Condition | undefined {
  const from = at.index;
  const first = wordAt(at.items, at.index, at.end);
  const quantifier = QUANTIFIERS.find((word) => word === first) ?? 'one';
  if (quantifier !== 'one') at.index += 1;
  const path = wordAt(at.items, at.index, at.end);
  if (path === undefined) {
    at.index = from;
    return undefined;
  }
  at.index += 1;
  const dot = path.indexOf('.');
  const subject = dot < 0 ? path : path.slice(0, dot);
  const fact = dot < 0 ? undefined : path.slice(dot + 1);
  const named = { kind: 'condition', subject, quantifier, ...(fact === undefined ? {} : { fact }) } as const;
  for (const [words, test] of TESTS) {
    const taken = matchWords(at.items, at.index, at.end, words.split(' '));
    if (taken === 0) continue;
    at.index += taken;
    const item = peek(at);
    // A bare U is a word before a number: `at most U 0.060`.
    const conductance = item?.kind === 'word' && item.word === 'u' && !WORDED.has(test);
    const valued = conductance ? at.items[at.index + 1] : item;
    const value = at.index + (conductance ? 1 : 0) < at.end && valued?.kind === 'value' ? valued : undefined;
    const amount: Amount | undefined =
      value === undefined
        ? undefined
        : {
            kind: 'amount',
            ...(conductance ? { dimension: 'conductance' } : { dimension: 'number', any: true }),
            clock: 'as-spelled',
            label: fact ?? subject,
            expression: value.expression,
            path: at.path,
          };
    const words_ = at.text
      .slice(item?.from ?? 0, at.items[at.end - 1]?.to ?? 0)
      .toLowerCase()
      .split(/[\s,]+/)
      .filter((word) => word !== '');
    // Words such as a zone's or a permit's are taken as they are spelled.
    if (WORDED.has(test)) for (const word of at.items.slice(at.index, at.end)) at.asIs?.add(word);
    // What is compared is one value, and another condition may follow it; words go on to the end.
    at.index = amount !== undefined && !WORDED.has(test) ? at.index + (conductance ? 2 : 1) : at.end;
    return { ...named, test, words: words_, ...(amount === undefined ? {} : { amount }), spot: spotOf(at, from, at.index) };
  }
  return { ...named, test: 'exists', words: [], spot: spotOf(at, from, at.index) };
}
