// The law of the memory: whatever was typed before, the answer is that of a fresh look at the same text.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';
import { pictureOf } from '#tests/support/picture';

const library = builtIn();

function look(root: string, texts: Record<string, string>, memory = emptyMemory()) {
  return analyse({ root, texts, library }, memory);
}

/** One edit: in a file, at a share of its length, some letters replaced by others. */
const edit = fc.record({
  file: fc.nat(9),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  remove: fc.nat(12),
  insert: fc.oneof(
    fc.constantFrom(
      '\n',
      '  ',
      ' ',
      '#',
      '"',
      ',',
      '1',
      "9'",
      ' x ',
      '\ntask extra takes 2d\n',
      '\n  crews 1\n',
      '\n  rain 2027-06-14..2027-06-15\n',
      ', must start 2027-06-21',
      ', works sat 6h',
      ' needs crane',
      ' in bath',
      '\ntask stand stands from survey to clean\n',
      "\nroom den on main\n  size 9' x 9'\n",
      ' after ',
      '12',
      'a',
    ),
    fc.string({ maxLength: 4 }),
  ),
});

describe('incremental equals fresh', () => {
  for (const sample of ['shed', 'panel-cabin', 'cottage']) {
    test(`${sample}, edited at random`, () => {
      const texts = sampleTexts(sample);
      const paths = Object.keys(texts);
      const root = paths.find((path) => /\nplan /.test(`\n${texts[path]}`))!;
      fc.assert(
        fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), (edits) => {
          const memory = emptyMemory();
          let now = { ...texts };
          look(root, now, memory);
          for (const { file, at, remove, insert } of edits) {
            const path = paths[file % paths.length]!;
            const text = now[path]!;
            const from = Math.floor(at * text.length);
            now = { ...now, [path]: text.slice(0, from) + insert + text.slice(from + remove) };
            look(root, now, memory);
          }
          expect(pictureOf(look(root, now, memory))).toEqual(pictureOf(look(root, now)));
        }),
        { numRuns: sample === 'cottage' ? 25 : 60, seed: 20261125 },
      );
    }, 300_000);
  }
});

/** One edit by whole lines and words, as people make them; what it picks goes by shares, so that it fits any file. */
const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const lineEdit = fc.record({
  how: fc.constantFrom('remove', 'repeat', 'move', 'other word', 'one more word', 'other number', 'empty line', 'rename'),
  file: share,
  line: share,
  other: share,
  word: share,
});

describe('incremental equals fresh after each of many edits', () => {
  for (const sample of ['panel-cabin', 'cottage']) {
    test(`${sample}, by lines and words`, () => {
      const texts = sampleTexts(sample);
      const paths = Object.keys(texts);
      const root = paths.find((path) => /\nplan /.test(`\n${texts[path]}`))!;
      const words = [
        ...new Set(
          Object.values(texts)
            .join('\n')
            .match(/[a-z][\w-]+/g),
        ),
      ];
      fc.assert(
        fc.property(fc.array(lineEdit, { minLength: 10, maxLength: 10 }), (edits) => {
          const memory = emptyMemory();
          let now = { ...texts };
          look(root, now, memory);
          for (const { how, file, line, other, word } of edits) {
            const path = at(paths, file);
            const lines = now[path]!.split('\n');
            const where = Math.floor(line * lines.length);
            const old = lines[where]!;
            if (how === 'remove') lines.splice(where, 1);
            else if (how === 'repeat') lines.splice(where, 0, old);
            else if (how === 'move') lines.splice(Math.floor(other * lines.length), 0, ...lines.splice(where, 1));
            else if (how === 'other word') lines[where] = old.replace(/[a-z][\w-]+/, at(words, word));
            else if (how === 'one more word') lines[where] = `${old} ${at(words, word)}`;
            else if (how === 'other number') lines[where] = old.replace(/\d+/, (number) => String(Number(number) + 2));
            else if (how === 'empty line') lines.splice(where, 0, '');
            const text = lines.join('\n');
            now = { ...now, [path]: how === 'rename' ? text.replaceAll(at(words, word), `${at(words, word)}-x`) : text };
            expect(pictureOf(look(root, now, memory))).toEqual(pictureOf(look(root, now)));
          }
        }),
        { numRuns: 6, seed: 20261125 },
      );
    }, 300_000);
  }
});

function at<T>(list: readonly T[], share: number): T {
  return list[Math.floor(share * list.length)]!;
}

describe('work for what did not change is not done', () => {
  const texts = sampleTexts('cottage');
  const root = 'samples/cottage/plan.screed';
  const house = 'samples/cottage/house.screed';

  test('a room’s size: one line, one record, at most three elements, no network', () => {
    const memory = emptyMemory();
    look(root, texts, memory);
    const text = texts[house]!;
    const size = /room bath[^\n]*\n(?:[^\n]*\n)*?[^\n]*size\s+(\S+)/.exec(text)!;
    const at = size.index + size[0].length - size[1]!.length;
    const changed = `${text.slice(0, at)}4'-11"${text.slice(at + size[1]!.length)}`;
    const { work } = look(root, { ...texts, [house]: changed }, memory);
    expect(work.linesParsed).toBe(1);
    expect(work.recordsChecked).toBe(1);
    expect(work.elementsComputed).toBeLessThanOrEqual(3);
    expect(work.networkBuilt).toBe(0);
  });

  test('nothing changed: nothing is done', () => {
    const memory = emptyMemory();
    look(root, texts, memory);
    const { work } = look(root, { ...texts }, memory);
    expect(work).toMatchObject({ linesParsed: 0, recordsChecked: 0, elementsComputed: 0, linesMeasured: 0, networkBuilt: 0 });
  });
});
