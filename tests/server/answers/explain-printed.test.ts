// Every printed quantity answers: each label that a table of the take-off or the purchase list prints can be asked about.
import { describe, expect, test } from 'vitest';
import { buyTable } from '#answers/buy-table';
import { explain } from '#answers/explain';
import type { Table } from '#answers/table';
import type { TakeOffGrouping } from '#answers/takeoff-lines';
import { takeOffTable } from '#answers/takeoff-table';
import { viewSample } from './plans.ts';

/** The cells of a column, without those that only indent or repeat. */
const column = ({ columns, rows }: Table, heading: string): readonly string[] => {
  const at = columns.findIndex((each) => each.heading === heading);
  return [...new Set(rows.flatMap((row) => (typeof row === 'string' ? [] : [row[at]!.trim()])))].filter((cell) => cell !== '');
};

describe.each([
  ['cottage', 'plan.screed'],
  ['shed', 'shed.screed'],
  ['panel-cabin', 'cabin.screed'],
])('%s', (sample, root) => {
  const view = viewSample(sample, root);

  test.each<TakeOffGrouping>(['item', 'room', 'trade', 'element', 'part'])('what takeoff --by %s prints', (by) => {
    const labels = column(takeOffTable(by, view), 'Item');
    expect(labels.length).toBeGreaterThan(20);
    expect(labels.filter((label) => explain(label, view).found.every(({ reasons }) => reasons.length === 0))).toEqual([]);
  });

  test('what buy prints', () => {
    const labels = column(buyTable(view), 'Item');
    expect(labels.length).toBeGreaterThan(20);
    expect(labels.filter((label) => explain(label, view).found.every(({ reasons }) => reasons.length === 0))).toEqual([]);
  });
});

test('by its words: work that buys nothing, what is only measured, goods by their label', () => {
  const view = viewSample('cottage');
  const kinds = (name: string) => explain(name, view).found.map(({ kind, why }) => [kind, why]);
  expect(kinds('Brace the walls')[0]).toEqual(['quantity', expect.stringContaining('of work by the rates')]);
  expect(kinds('Brace the walls')[1]).toEqual(['work', 'Walls-up does it.']);
  expect(kinds('house').length).toBeGreaterThan(0);
  expect(kinds('Roof truss')[0]).toEqual(['item', expect.stringContaining('17')]);
  expect(kinds('deck area').length).toBeGreaterThan(0);
});

test('the cut list of sticks is told', () => {
  const [sill] = explain('Treated sill 2x6', viewSample('cottage')).found;
  expect(JSON.stringify(sill?.reasons)).toContain('16\'-0\\" cut to');
});
