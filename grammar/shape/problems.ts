// What can be wrong with a line against the vocabulary, in plain words. Data until somebody reads it.
import { type Finding, type FindingSort, finding, findingSort } from '#kit/finding';
import type { Slot, Spot } from '#kit/place';

/** A finding that does not know yet which declaration it is in. */
export interface Remark {
  readonly sort: FindingSort<never>;
  readonly spot: Spot;
  readonly details: readonly unknown[];
  /** Text proposed in place of the spot. */
  readonly instead?: string;
}

export function remark<A extends readonly unknown[]>(sort: FindingSort<A>, spot: Spot, details: A, instead?: string): Remark {
  const made = { sort: sort as unknown as FindingSort<never>, spot, details };
  return instead === undefined ? made : { ...made, instead };
}

export function findingOf(slot: Slot, { sort, spot, details, instead }: Remark): Finding {
  const place = { slot, spot };
  const found = finding(sort as unknown as FindingSort<readonly unknown[]>, place, ...details);
  if (instead === undefined) return found;
  return { ...found, fixes: [{ kind: 'replace', title: `Write "${instead}"`, place, text: instead }] };
}

const meant = (near: string | undefined): string => (near === undefined ? '' : ` Did you mean "${near}"?`);

export const unknownKind = findingSort<[word: string, near: string | undefined]>({
  code: 'words/unknown-kind',
  severity: 'error',
  say: (word, near) =>
    `"${word}" is not a kind of thing a plan declares, so the line and what is below it are not read.${meant(near)}`,
});

export const unknownProperty = findingSort<[word: string, kind: string, near: string | undefined]>({
  code: 'words/unknown-property',
  severity: 'error',
  say: (word, kind, near) => `${a(kind)} has no "${word}", so this line is not read.${meant(near)}`,
});

export const misplacedKind = findingSort<[word: string, kind: string]>({
  code: 'words/misplaced-kind',
  severity: 'error',
  say: (word, kind) => `${a(word)} cannot stand under ${a(kind).toLowerCase()}; it begins in the first column.`,
});

export const nameMissing = findingSort<[kind: string, example: string]>({
  code: 'words/name-missing',
  severity: 'error',
  say: (kind, example) => `This ${kind} needs a name, so that others can refer to it. For example: ${example}`,
});

export const nameInWords = findingSort<[words: string, joined: string]>({
  code: 'words/name-in-words',
  severity: 'error',
  say: (words, joined) => `A name is one word: write "${joined}" for "${words}", and the words as a label in quotes.`,
});

export const nameIsJoining = findingSort<[word: string]>({
  code: 'words/name-is-joining-word',
  severity: 'error',
  say: (word) => `"${word}" opens a clause and cannot be a name. Choose another name.`,
});

export const nameIsTaken = findingSort<[word: string, kind: string]>({
  code: 'words/name-is-joining-word',
  severity: 'error',
  say: (word, kind) =>
    `"${word}" is a word of the language (a unit, a day, a sign) and cannot be the name of a ${kind}. Choose another name: "${kind}-${word}", say.`,
});

export const valueMissing = findingSort<[word: string, form: string, example: string]>({
  code: 'words/value-missing',
  severity: 'error',
  say: (word, form, example) => `"${word}" lacks what comes with it: ${form}. For example: ${example}`,
});

export const valueUnfit = findingSort<[word: string, wanted: readonly string[], got: string, example: string]>({
  code: 'words/value-unfit',
  severity: 'error',
  say: (word, wanted, got, example) =>
    `"${got}" does not fit with "${word}", which takes: ${wanted.join(' or ')}. For example: ${example}`,
});

export const leftOver = findingSort<[got: string, word: string, near: string | undefined]>({
  code: 'words/not-expected',
  severity: 'error',
  say: (got, word, near) => `"${got}" is not expected here, after "${word}".${meant(near)}`,
});

export const commaMissing = findingSort<[words: string]>({
  code: 'words/not-expected',
  severity: 'error',
  say: (words) => `A comma is missing before "${words}", so it is not read.`,
});

export const givenTwice = findingSort<[word: string]>({
  code: 'words/given-twice',
  severity: 'error',
  say: (word) => `"${word}" is given twice; only the first counts. Remove one.`,
});

export const wordBehind = findingSort<[word: string, example: string]>({
  code: 'words/word-behind',
  severity: 'error',
  say: (word, example) => `"${word}" stands behind its value, so this is not read. For example: ${example}`,
});

export const belowOnly = findingSort<[word: string, kind: string, example: string]>({
  code: 'words/below-only',
  severity: 'error',
  say: (word, kind, example) =>
    `"${word}" cannot stand on the line that begins ${a(kind).toLowerCase()}. Give it a line of its own below: ${example}`,
});

function a(word: string): string {
  return /^[aeiou]/i.test(word) ? `An ${word}` : `A ${word}`;
}
