// What is kept between two looks saves work and changes nothing: after any edits the findings are those of a fresh look.
import { describe, expect, test } from 'vitest';
import { messageOf } from '#kit/finding';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';

const library = builtIn();
const ROOT = 'samples/cottage/plan.screed';

/** Edits of one word each; every one is made, and then taken back. */
const EDITS: readonly (readonly [file: string, from: string, to: string])[] = [
  ['work.screed', 'after gutters', 'after primer'],
  ['work.screed', 'does hang-board', 'does hang-board, tape-board'],
  ['work.screed', 'takes 20d by permit-desk', 'takes 60d by permit-desk'],
  ['work.screed', 'does sheathe-roof, cover-open-work', 'does sheathe-roof'],
  ['work.screed', 'after membrane + 24h', 'after shower'],
  ['house.screed', 'room bath ', 'room bath-2 '],
  ['house.screed', '16\'-0" x 14\'-7"', '16\'-0" x 14\'-8"'],
  ['house.screed', 'partitions', 'partitions int-2x6 #'],
  ['ground.screed', '42" deep', '72" deep'],
  ['ground.screed', 'bottom', 'bottom 60" below grade #'],
  ['prices.screed', 'price osb', 'price osb-x'],
  ['plan.screed', '2027-12-17', '2027-08-17'],
  ['plan.screed', 'units', 'units metric #'],
  ['diary.screed', 'steel-here    finished 2027-04-27', 'steel-here    now 2027-05-10'],
];

function said(texts: Record<string, string>, memory = emptyMemory()): readonly string[] {
  return analyse({ root: ROOT, texts, library }, memory).findings.map(
    (found) => `${found.severity} ${found.code} ${found.place.slot.name} ${JSON.stringify(found.place.spot)} ${messageOf(found)}`,
  );
}

describe('the cottage, edited', () => {
  const texts = sampleTexts('cottage');
  const memory = emptyMemory();
  const before = said(texts, memory);

  test.each(EDITS)('%s: %s → %s', (file, from, to) => {
    const path = `samples/cottage/${file}`;
    const edited = { ...texts, [path]: (texts[path] ?? '').replace(from, to) };
    expect(edited[path]).not.toBe(texts[path]);
    expect(said(edited, memory)).toEqual(said(edited));
    expect(said(texts, memory)).toEqual(before);
  });
});

describe('what a thing is asked for by the use of rooms beside it', () => {
  const STUDS = '  layer stud 2x6 at 16" oc\n';
  const plan = (use: string): Record<string, string> => ({
    [ROOT]:
      'plan p\n  code irc-2021\n  zone 5A\nlevel cellar "Basement" basement\n' +
      'level main\n  walls bare\n  floor bare\nassembly bare for wall\n' +
      `${STUDS}foundation f under cellar\n  wall 8" x 8'\ncrawl under main\n` +
      `room den on cellar\n  use ${use}\nroom bed on main\n  use ${use}\n`,
  });
  const insulation = /minimum\/(basement|wall|crawl)-2021/;

  test('bare walls of a basement, a storey and a crawl space, once it is lived in and no longer', () => {
    const memory = emptyMemory();
    expect(said(plan('storage'), memory).filter((line) => insulation.test(line))).toEqual([]);
    const lived = said(plan('living'), memory);
    expect(lived.filter((line) => insulation.test(line))).toHaveLength(3);
    expect(lived).toEqual(said(plan('living')));
    expect(said(plan('storage'), memory)).toEqual(said(plan('storage')));
  });
});
