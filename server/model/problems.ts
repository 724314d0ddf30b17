// What can be wrong when names are followed and values evaluated.
import { dimensionWord } from '#grammar/shape/dimension';
import type { Dimension } from '#kit/dimension';
import { findingSort } from '#kit/finding';
import type { NearMiss } from './near-miss.ts';

/** A question that nobody has answered yet has no answer. */
const meant = (near: string | NearMiss | undefined): string => (typeof near === 'string' ? ` Did you mean "${near}"?` : '');

export const unknownName = findingSort<[name: string, what: string, near: string | NearMiss | undefined]>({
  code: 'names/unknown',
  severity: 'error',
  say: (name, what, near) => `No ${what} is named "${name}", so whatever depends on it is not counted.${meant(near)}`,
});

export const unknownGoods = findingSort<[name: string, near: string | NearMiss | undefined]>({
  code: 'names/unknown-goods',
  severity: 'warning',
  say: (name, near) =>
    `No material, fixture or assembly is named "${name}": it is counted as it stands, but its package, waste and work are not known.${meant(near)}`,
});

export const declaredTwice = findingSort<[name: string, kind: string, line: string]>({
  code: 'names/declared-twice',
  severity: 'error',
  say: (name, kind, first) =>
    `"${name}" is already the name of ${first}. Give this ${kind} a name of its own; only the first is used.`,
});

export const nameLoop = findingSort<[names: readonly string[]]>({
  code: 'names/loop',
  severity: 'error',
  say: (names) =>
    `These depend on each other in a ring, so none has a value: ${[...names, names[0]].join(', then ')}. Give one of them a value of its own.`,
});

export const noSuchFact = findingSort<[name: string, near: string | NearMiss | undefined]>({
  code: 'names/no-such-value',
  severity: 'error',
  say: (name, near) => `"${name}" is not a value that can be used here.${meant(near)}`,
});

export const mixedUnits = findingSort<[operator: string, left: Dimension, right: Dimension]>({
  code: 'units/mixed',
  severity: 'error',
  say: (operator, left, right) =>
    operator === '+' || operator === '-'
      ? `${upper(dimensionWord(left))} and ${dimensionWord(right)} cannot be ${operator === '+' ? 'added' : 'subtracted'}. Bring both to one kind of unit.`
      : `${upper(dimensionWord(left))} ${operator === '*' ? 'times' : 'over'} ${dimensionWord(right)} means nothing here.`,
});

export const wrongUnit = findingSort<[word: string, wanted: Dimension, got: Dimension]>({
  code: 'units/wrong',
  severity: 'error',
  say: (word, wanted, got) => `"${word}" takes ${dimensionWord(wanted)}, and this is ${dimensionWord(got)}.`,
});

export const unitMissing = findingSort<[word: string, value: number]>({
  code: 'units/missing',
  severity: 'error',
  say: (word, value) => `"${word}" needs a unit: ${value}' for feet, ${value}" for inches, ${value} m for metres.`,
});

export const dividedByZero = findingSort<[]>({
  code: 'units/divided-by-zero',
  severity: 'error',
  say: () => 'This divides by zero, so it has no value.',
});

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
