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
