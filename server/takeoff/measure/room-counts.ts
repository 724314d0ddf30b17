// What is counted in a room as it stands there: fixtures, devices, cabinets, counters.
import type { Goods, Room } from '#model/model';
import type { Measure, Portion, Where } from '../lines.ts';
import { counted, inPart, isNothing, portion } from './portion.ts';

type Listed = Room['given']['fixtures'][number]['value'][number];

export function countedPortions(room: Room, where: Where): readonly Portion[] {
  const { fixtures, devices, cabinets, counter } = room.given;
  const lists: readonly (readonly [Measure, string, Room['given']['fixtures']])[] = [
    ['fixture-count', 'fixtures', fixtures],
    ['device-count', 'devices', devices],
    ['cabinet-count', 'cabinets', cabinets],
  ];
  const portions = lists.flatMap(([measure, part, lines]) =>
    lines.flatMap((line) => line.value).flatMap((item) => listed(item, measure, inPart(where, part))),
  );
  if (counter === undefined) return portions;
  const { area, of } = counter.value;
  return [...portions, portion('counter-area', inPart(where, 'counter'), area, { goods: of })];
}

function listed({ value }: Listed, usual: Measure, where: Where): readonly Portion[] {
  const { type, count } = value;
  if (isNothing(type)) return [];
  if (typeof count === 'object') return [portion('cabinet-length', where, count, { goods: type })];
  return [portion(measureOf(type, usual), where, counted(type.name, count ?? 1), { goods: type })];
}

/** Goods say which count they belong to, wherever a plan lists them. */
function measureOf(goods: Goods, usual: Measure): Measure {
  switch (goods.of?.kind === 'fixture' ? goods.of.given.counted?.value : undefined) {
    case 'as fixture':
      return 'fixture-count';
    case 'as device':
      return 'device-count';
    case 'as cabinet':
      return 'cabinet-count';
    default:
      return usual;
  }
}
