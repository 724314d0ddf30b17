// The counter of sentences: a keystroke makes those that nobody has read yet, and no other.
import { describe, expect, test } from 'vitest';
import { diagnosticsOf, sentences } from '#editor/diagnostics';
import { memoryFiles } from '#host/memory-files';
import { workspace } from '#server/workspace';
import { sampleTexts } from '#tests/support/built-in';
import { able, viewOf } from './editing.ts';

const texts = sampleTexts('cottage');
// The cottage itself leaves nothing to say.
for (const [file, from, to] of [
  ['plan.screed', '2027-12-17', '2027-08-17'],
  ['work.screed', 'after gutters', 'after primer'],
  ['prices.screed', 'price osb', 'price osb-x'],
  ['house.screed', 'room bath ', 'room bath-2 '],
] as const) {
  const path = `samples/cottage/${file}`;
  texts[path] = texts[path]!.replace(from, to);
}
const places = workspace(memoryFiles(texts), 'library');
const paths = Object.keys(texts);
const versions = new Map(paths.map((path) => [path, 1]));
for (const path of paths) places.open(path, 1, texts[path]!);

/** What all open files show, and how many sentences had to be made for it. */
function look() {
  sentences.made = 0;
  const shown = paths.flatMap((path) => {
    const { addresses } = viewOf(places, path);
    return diagnosticsOf(path, places.plansOf(path), able, addresses).map(({ code, message }) => `${path} ${code} ${message}`);
  });
  return { shown, made: sentences.made };
}

function replace(file: string, from: string, to: string) {
  const path = `samples/cottage/${file}`;
  const text = texts[path]!;
  const at = text.indexOf(from);
  expect(at).toBeGreaterThanOrEqual(0);
  const before = text.slice(0, at).split('\n');
  const start = { line: before.length - 1, character: before.at(-1)!.length };
  const end = { line: start.line, character: start.character + from.length };
  const version = versions.get(path)! + 1;
  versions.set(path, version);
  texts[path] = text.slice(0, at) + to + text.slice(at + from.length);
  places.change(path, version, [{ range: { start, end }, text: to }]);
}

/** How many of the sentences shown now were not shown before. */
function fresh(now: readonly string[], before: readonly string[]): number {
  const left = [...before];
  return now.filter((each) => {
    const at = left.indexOf(each);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  }).length;
}

describe('the cottage, edited', () => {
  test.each([
    ['a room’s size', 'house.screed', '16\'-0" x 14\'-7"', '15\'-0" x 14\'-7"'],
    ['a name', 'house.screed', 'room bath-2 ', 'room bath '],
    ['a length', 'work.screed', 'takes 1d..3d likely 1d by painting', 'takes 9d by painting'],
    ['a link', 'work.screed', 'after primer', 'after gutters'],
    ['a price', 'prices.screed', 'price osb-x', 'price osb'],
    ['the target', 'plan.screed', '2027-08-17', '2027-07-17'],
    ['a misspelled word', 'house.screed', 'partitions', 'partitoins'],
  ])('%s', (_, file, from, to) => {
    let before = look().shown;
    for (const [a, b] of [
      [from, to],
      [to, from],
    ] as const) {
      replace(file, a, b);
      const { shown, made } = look();
      expect(shown).not.toEqual(before);
      expect(made).toBe(fresh(shown, before));
      before = shown;
    }
  });

  test('a line more at the top says nothing new', () => {
    const before = look().shown;
    for (const path of paths)
      replace(path.slice('samples/cottage/'.length), texts[path]!.slice(0, 1), `# A line more.\n${texts[path]!.slice(0, 1)}`);
    const { shown, made } = look();
    expect(shown).toEqual(before);
    expect(made).toBe(0);
  });
});
