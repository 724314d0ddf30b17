// The built-in library holds together: what a row names exists, every measure has a work that installs it or counts by it,
// and no two works install the same goods by the same measure.
import { expect, test } from 'vitest';
import { measures } from '../../../grammar/vocabulary/measures.ts';
import { libraryRows, listOf, type Row, valuesOf } from './rows.ts';

const rows = libraryRows();
const ofKind = (kind: string): readonly Row[] => rows.filter((row) => row.kind === kind);
const works = ofKind('work');
const workNames = new Set(works.map((row) => row.name));
const goodsKinds = ['material', 'item', 'fixture', 'assembly'];
// Openings are declared in plans; their kind stands for every type of them.
const goodsNames = new Set(['window', 'door', ...goodsKinds.flatMap((kind) => ofKind(kind).flatMap(namesOf))]);
const installed = works.flatMap((row) => valuesOf(row, 'installs').flatMap((value) => installsOf(row, value)));
/** `15 ft of waste-pipe 3" by rough-drains` */
const ofFixtures = ofKind('fixture').flatMap((row) =>
  valuesOf(row, 'uses').map((value) => {
    const [, goods = '', work = ''] = / of ([\w-]+).* by ([\w-]+)$/.exec(value) ?? [];
    return { row: row.name, goods, work };
  }),
);
const counted = works.flatMap((row) =>
  [...valuesOf(row, 'labour'), ...valuesOf(row, 'uses')].flatMap((value) => byMeasure(value)),
);

test('enough rows to build a small house', () => {
  expect(ofKind('material').length).toBeGreaterThanOrEqual(200);
  expect(ofKind('assembly').length).toBeGreaterThanOrEqual(40);
  expect(works.length).toBeGreaterThanOrEqual(90);
  expect(ofKind('holiday').length).toBeGreaterThanOrEqual(80);
});

test('no two goods share a name, nor two rows of another kind', () => {
  const names = rows.flatMap((row) =>
    namesOf(row).map((name) => `${goodsKinds.includes(row.kind) ? 'goods' : row.kind} ${name}`),
  );
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});

test('what works install and use are goods of the library, by measures of the take-off', () => {
  const strangers = installed.filter(({ goods, measure }) => !goodsNames.has(goods) || !isMeasure(measure));
  expect(strangers).toEqual([]);
  const used = works.flatMap((row) => valuesOf(row, 'uses').map((value) => value.split(' ')[0] ?? ''));
  expect(used.filter((goods) => !goodsNames.has(goods))).toEqual([]);
  expect(counted.filter((measure) => !isMeasure(measure))).toEqual([]);
});

test('exactly one work installs given goods by a measure', () => {
  const pairs = installed.map(({ goods, measure }) => `${goods} by ${measure}`);
  expect(pairs.filter((pair, index) => pairs.indexOf(pair) !== index)).toEqual([]);
});

test('every measure is installed or counted by some work', () => {
  // A rake's length is for the eye: drip edge and fascia count it already. The high edge of a shed roof, and what was counted
  // by hand, are for rows of a plan's own.
  const idle = ['rake-length', 'high-edge-length', 'extra-count', 'extra-length', 'extra-area', 'extra-volume', 'extra-weight'];
  const owned = new Set([...installed.map(({ measure }) => measure), ...counted, ...idle]);
  expect(measures.filter((measure) => !owned.has(measure))).toEqual([]);
});

test('the hours of a work say what they are by, unless it installs something', () => {
  const idle = works.filter(
    (row) => valuesOf(row, 'installs').length === 0 && valuesOf(row, 'labour').some((value) => byMeasure(value).length === 0),
  );
  expect(idle.map((row) => `${row.place} ${row.name}`)).toEqual([]);
});

test('every material is installed or used by some work', () => {
  const used = works.flatMap((row) => valuesOf(row, 'uses').map((value) => value.split(' ')[0]));
  // Bagged concrete is named by a plan in place of the usual, and goes in as that does.
  const instead = ['bag-concrete', 'bag-concrete-60', 'bag-concrete-40'];
  const owned = new Set([...installed.map(({ goods }) => goods), ...used, ...ofFixtures.map(({ goods }) => goods), ...instead]);
  expect(
    ofKind('material')
      .filter((row) => !owned.has(row.name))
      .map((row) => row.name),
  ).toEqual([]);
});

test('what fixtures take is goods of the library, by works of it', () =>
  expect(ofFixtures.filter(({ goods, work }) => !goodsNames.has(goods) || !workNames.has(work))).toEqual([]));

test('what fixtures, works and materials point at exists', () => {
  const works = rows.flatMap((row) => ['set by', 'roughed by', 'hides'].flatMap((word) => valuesOf(row, word).flatMap(listOf)));
  expect(works.filter((name) => !workNames.has(name))).toEqual([]);
  const layers = ofKind('assembly').flatMap((row) => valuesOf(row, 'layer').flatMap(goodsOfLayer));
  const under = ofKind('material').flatMap((row) => valuesOf(row, 'under it'));
  expect([...layers, ...under].filter((name) => !goodsNames.has(name))).toEqual([]);
});

test('states and sequence rules name works, states and inspections of the library', () => {
  const steps = new Set([
    ...workNames,
    ...ofKind('state').map((row) => row.name),
    ...ofKind('inspection').map((row) => row.name),
  ]);
  const named = [...ofKind('state'), ...ofKind('rule')].flatMap((row) =>
    ['made by', 'first', 'then'].flatMap((word) =>
      valuesOf(row, word)
        .flatMap(listOf)
        .map((name) => ({ row: row.place, name })),
    ),
  );
  expect(named.filter(({ name }) => !steps.has(name))).toEqual([]);
});

test('a hazard opens with the hazard itself and ends as a sentence', () => {
  const hazards = works.flatMap((row) => valuesOf(row, 'hazard').map((text) => ({ work: row.name, text })));
  expect(hazards.filter(({ text }) => !/^"[A-Z][^"]*: [^"]*\."$/.test(text))).toEqual([]);
});

function namesOf(row: Row): readonly string[] {
  return [row.name, ...valuesOf(row, 'also').flatMap(listOf)];
}

function installsOf(row: Row, value: string): readonly { work: string; goods: string; measure: string }[] {
  const [goods = '', by = ''] = value.split(' by ');
  return listOf(goods).flatMap((one) => listOf(by).map((measure) => ({ work: row.name, goods: one, measure })));
}

function byMeasure(value: string): readonly string[] {
  const measure = / by (\S+)$/.exec(value)?.[1];
  return measure === undefined ? [] : [measure];
}

function goodsOfLayer(layer: string): readonly string[] {
  const fill = /filled with ([\w-]+)/.exec(layer)?.[1];
  const goods = /^[\w-]+/.exec(layer)?.[0] ?? '';
  return fill === undefined ? [goods] : [goods, fill];
}

function isMeasure(word: string): boolean {
  return (measures as readonly string[]).includes(word);
}
