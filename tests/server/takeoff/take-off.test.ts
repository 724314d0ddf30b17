// The take-off as a whole: every number replays, lines stay the same while nothing they came from changes, and what was
// kept never shows in the result.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '#kit/quantity';
import { replay } from '#kit/quantity';
import { formatQuantity } from '#kit/units';
import { boughtQuantity } from '#takeoff/bought';
import type { Line } from '#takeoff/lines';
import { emptyPlanMemory, planOf } from '#tests/support/plan';

const samples = join(import.meta.dirname, '../../../samples');
function sample(name: string): Record<string, string> {
  const files = readdirSync(join(samples, name)).filter((file) => file.endsWith('.screed'));
  const roots = files.filter((file) => /^plan /m.test(readFileSync(join(samples, name, file), 'utf8')));
  return Object.fromEntries(
    [...roots, ...files.filter((file) => !roots.includes(file))].map((file) => [
      file,
      readFileSync(join(samples, name, file), 'utf8'),
    ]),
  );
}
const names = readdirSync(samples, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

describe.each(names)('the sample %s', (name) => {
  const plan = planOf(sample(name), { library: 'built-in' });

  test('every number of every line and purchase replays to itself and is finite', () => {
    const quantities = [
      ...plan.takeOff.lines.flatMap(({ net, needed, hours }) => [net, needed, hours]),
      ...plan.takeOff.purchases().flatMap(({ net, needed, bought }) => [net, needed, bought]),
    ];
    for (const quantity of quantities) {
      if (quantity === undefined) continue;
      expect(Number.isFinite(quantity.value)).toBe(true);
      expect(quantity.value).toBeGreaterThanOrEqual(0);
      expect(replay(quantity)).toBe(quantity.value);
    }
  });

  test('ids are the plan’s own, each once', () => {
    const ids = plan.takeOff.lines.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  test('whatever is bought is not less than what is needed', () => {
    for (const purchase of plan.takeOff.purchases()) {
      const { item, needed } = purchase;
      const bought = boughtQuantity(purchase);
      const have = bought.dimension === needed.dimension ? bought.value : Number.POSITIVE_INFINITY;
      expect([item, have >= needed.value * (1 - 1e-9)]).toEqual([item, true]);
    }
  });
});

const house = `
plan cottage
level main
  footprint 28' x 32'
  height    8'
  walls     ext-2x6
  partitions int-2x4
  ceiling   flat-lid
window w-3050 3'-0" x 5'-0"
door d-2868 2'-8" x 6'-8"
room living on main at 5 1/2", 5 1/2"
  size    27'-1" x 15'
  walls   paint
  windows 2 w-3050 in south
room bed on main at 5 1/2", 15'-9"
  size    27'-1" x 15'-9 1/2"
  walls   paint
  doors   1 d-2868 to living
  devices 3 outlet
site lot
  clear 5' around
  topsoil 6"
`;

test('an untouched plan gives the very same lines, groups and nothing measured', () => {
  const memory = emptyPlanMemory();
  const first = planOf(house, { library: 'built-in', memory });
  const second = planOf(house, { library: 'built-in', memory });
  expect(second.takeOff.lines).toBe(first.takeOff.lines);
  expect(second.takeOff.byWork).toBe(first.takeOff.byWork);
  expect(first.work.linesMeasured).toBeGreaterThan(20);
  expect(second.work.linesMeasured).toBe(0);
});

const edits: readonly (readonly [string, string, string])[] = [
  ['devices of one room', '3 outlet', '4 outlet'],
  ['the size of one room', `27'-1" x 15'\n`, `27'-1" x 14'\n`],
  ['a window more', '2 w-3050', '3 w-3050'],
  ['the size of a window type', `3'-0" x 5'-0"`, `3'-0" x 4'-0"`],
  ['a finish', 'walls   paint\n  windows', 'walls   washable-paint\n  windows'],
  ['the height of the level', "height    8'", "height    9'"],
  ['the footprint', "28' x 32'", "28' x 34'"],
  ['a material of the library', 'plan cottage', 'plan cottage\nmaterial drywall\n  waste 10% added\n'],
  ['a new work for a material', 'plan cottage', 'plan cottage\nwork hang-board\n  labour 0.02 h/sf\n'],
  ['a sheet in every wall', 'plan cottage', 'plan cottage\nmaterial osb\n  waste 9% added\n'],
  ['the library’s board', 'plan cottage', 'plan cottage\nmaterial drywall "Board"\n'],
  [
    'a layer of the wall',
    'plan cottage',
    'plan cottage\nassembly ext-2x6\n  layer moisture-board 1/2"\n  layer stud 2x6 at 24" oc\n',
  ],
  [
    'a room upstairs',
    `2'-8" x 6'-8"\n`,
    `2'-8" x 6'-8"\nlevel loft\n  height 7'\nroom attic on loft\n  size 10' x 10'\n  finish as bed\n  doors 1 d-2868 to bed\n`,
  ],
  ['a line above a room', 'site lot', '# a remark\nsite lot'],
  ['a line inside a room', `  size    27'-1" x 15'\n`, `  note "sunny"\n  size    27'-1" x 15'\n`],
];

test.each(edits)('after a change of %s the result is that of a fresh look', (_, from, to) => {
  const memory = emptyPlanMemory();
  planOf(house, { library: 'built-in', memory });
  const edited = house.replace(from, to);
  expect(edited).not.toBe(house);
  const kept = planOf(edited, { library: 'built-in', memory });
  const fresh = planOf(edited, { library: 'built-in' });
  expect(kept.takeOff.lines.map(written)).toEqual(fresh.takeOff.lines.map(written));
  expect(kept.messages).toEqual(fresh.messages);
  expect(kept.takeOff.purchases().map(({ item, bought }) => [item, bought.value])).toEqual(
    fresh.takeOff.purchases().map(({ item, bought }) => [item, bought.value]),
  );
});

test('two changes after each other, and back, leave nothing behind', () => {
  const memory = emptyPlanMemory();
  const first = planOf(house, { library: 'built-in', memory });
  for (const [, from, to] of edits) {
    planOf(house.replace(from, to), { library: 'built-in', memory });
    const back = planOf(house, { library: 'built-in', memory });
    expect(back.takeOff.lines.map(written)).toEqual(first.takeOff.lines.map(written));
    expect(back.messages).toEqual(first.messages);
  }
});

test('another sheet on every wall leaves the rooms as they are', () => {
  const memory = emptyPlanMemory();
  const before = planOf(house, { library: 'built-in', memory });
  const after = planOf(house.replace('plan cottage', 'plan cottage\nmaterial osb\n  waste 9% added\n'), {
    library: 'built-in',
    memory,
  });
  const known = new Set(before.takeOff.lines);
  const changed = after.takeOff.lines.filter((line) => !known.has(line)).map((line) => line.where.element.kind);
  expect(new Set(changed)).toEqual(new Set(['level', 'site']));
});

test('a device more touches the lines of that device only', () => {
  const memory = emptyPlanMemory();
  const before = planOf(house, { library: 'built-in', memory });
  const after = planOf(house.replace('3 outlet', '4 outlet'), { library: 'built-in', memory });
  const known = new Set(before.takeOff.lines);
  const changed = after.takeOff.lines.filter((line) => !known.has(line));
  expect(new Set(changed.map((line) => line.where.element.name))).toEqual(new Set(['bed']));
  expect(after.work.linesMeasured).toBeLessThan(before.work.linesMeasured / 2);
  expect(after.takeOff.byWork.get('set-windows')).toBe(before.takeOff.byWork.get('set-windows'));
});

/** A line as a person could read it, working and places and all. */
function written(line: Line): unknown {
  const { id, item, label, work, where, net, needed, hours, coats, onlyIfDone, pieces } = line;
  return {
    id,
    item,
    label,
    work: work?.name,
    where,
    coats,
    onlyIfDone,
    pieces: pieces?.length,
    net: working(net),
    needed: needed && working(needed),
    hours: hours && working(hours),
  };
}

function working(quantity: Quantity): unknown {
  const text = `${quantity.form.label}: ${quantity.form.formula ?? ''} = ${formatQuantity(quantity, 'feet')} (${quantity.value})`;
  const spot =
    quantity.place === undefined
      ? ''
      : `${quantity.place.slot.name} ${quantity.place.spot.path.join('.')}:${quantity.place.spot.from}`;
  return [text, spot, ...quantity.inputs.map(working)];
}
