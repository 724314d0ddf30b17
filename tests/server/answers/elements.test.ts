// The take-off by the elements of UNIFORMAT II (NISTIR 6389, Charette & Marshall, 1999): everything stands under one element,
// and what belongs to none is work that buys nothing.
import { describe, expect, test } from 'vitest';
import { countedLines, elementOf, groupLines, NOT_CLASSIFIED } from '#answers/takeoff-lines';
import { viewSample, viewText } from './plans.ts';

describe.each([
  ['cottage', 'plan.screed'],
  ['shed', 'shed.screed'],
  ['panel-cabin', 'cabin.screed'],
])('%s', (sample, root) => {
  const view = viewSample(sample, root);
  const lines = countedLines(view);
  const groups = groupLines(lines, 'element', view);

  test('every line stands under one element', () => {
    expect(groups.reduce((count, { parts }) => count + parts.length, 0)).toBe(lines.length);
  });

  test('the elements stand in their order, what has none last', () => {
    const labels = groups.map(({ label }) => label);
    expect(labels.filter((label) => label !== NOT_CLASSIFIED)).toEqual(labels.filter((label) => label !== NOT_CLASSIFIED).sort());
    if (labels.includes(NOT_CLASSIFIED)) expect(labels[labels.length - 1]).toBe(NOT_CLASSIFIED);
  });

  test('no goods are without an element, and little work is', () => {
    const none = lines.filter((line) => elementOf(line) === undefined);
    expect(none.filter((line) => line.goods !== undefined).map(({ id }) => id)).toEqual([]);
    expect(new Set(none.map(({ label }) => label)).size).toBeLessThanOrEqual(18);
  });
});

test('a plan says otherwise, property by property', () => {
  const text = (more: string) => `
    level main
      footprint 24' x 32'
      height 8'
      walls timber
    assembly timber for wall
      layer stud 2x6 at 16" oc
      layer housewrap
    ${more}
  `;
  const code = (more: string) =>
    countedLines(viewText(text(more)))
      .filter(({ item }) => item === 'housewrap')
      .map((line) => elementOf(line)?.name);
  expect(code('')).toEqual(['b2010']);
  expect(code('material housewrap\n      element B3010')).toEqual(['b3010']);
});

test('the same work counts under several elements by what it is measured by', () => {
  const batts = countedLines(viewSample('cottage')).filter(({ work }) => work?.name === 'place-batts');
  expect(new Set(batts.map((line) => `${line.measure} ${elementOf(line)?.name}`))).toEqual(
    new Set(['wall-insulation-area b2010', 'floor-insulation-area b1010']),
  );
});
