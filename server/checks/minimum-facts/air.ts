// What moves air: the fans of a room, the outside air of the whole house, and the floor and bedrooms that ask for it.
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Plan, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { areas, type FactTable, number, ratingOf, serving } from './tables.ts';

/** The strongest fan that a room lists. A fan that tells no rate is not known to be weak. */
function exhaust({ given }: Room): Quantity | undefined {
  if (given.fixtures.length === 0) return undefined;
  const rates = given.fixtures.flatMap((line) => line.value.map(({ value }) => ratingOf(value, 'flow') ?? 0));
  const most = Math.max(0, ...rates);
  const silent = serving(given.fixtures, 'exhaust').some((fan) => ratingOf(fan, 'flow') === undefined);
  return most === 0 && silent ? undefined : constant('exhaust', most, 'flow');
}

/** The strongest of those that always run. */
function steadyExhaust({ given }: Room): Quantity | undefined {
  if (given.fixtures.length === 0) return undefined;
  const fans = serving(given.fixtures, 'steady exhaust');
  return constant('exhaust that always runs', Math.max(0, ...fans.map((fan) => ratingOf(fan, 'flow') ?? 0)), 'flow');
}

export const airOfRoom: FactTable<Room> = { lines: { exhaust: 'fixtures' }, own: { exhaust, 'steady-exhaust': steadyExhaust } };

const partOfTime = form('outside air over time', 'rate × share of time', (rate = 0, share = 1) => rate * share);

/** All storeys by their outlines; without any, all rooms but garages. */
function floorArea(_: Plan, model: Model): Quantity | undefined {
  const floors = (list: readonly (Quantity | undefined)[]) =>
    list.filter((area) => area?.dimension === 'area') as readonly Quantity<'area'>[];
  const levels = floors(model.list('level').map((level) => factsOf(level)['floor-area']));
  if (levels.length > 0) return areas('floor area of the house', levels);
  const rooms = floors(
    model.list('room').map((room) => (room.given.use?.value === 'garage' ? undefined : factsOf(room)['floor-area'])),
  );
  return rooms.length === 0 ? undefined : areas('floor area of the house', rooms);
}

const flowThrough = form(
  'air through the fan at 50 Pa',
  'air changes × volume ÷ 60',
  (changes = 0, volume = 0) => (changes * volume) / (METRE_CUBED * 3.6),
);
/** A litre a second is a thousandth of a cubic metre each 1/3600 of an hour. */
const METRE_CUBED = 320_000 * 320_000 * 320_000;

export const airOfPlan: FactTable<Plan> = {
  lines: { 'fresh-air-rate': 'fresh-air' },
  around: {
    'floor-area': floorArea,
    bedrooms: (_, model) => number('bedrooms', model.list('room').filter(({ given }) => given.use?.value === 'sleeping').length),
    'fresh-air-rate': ({ given }) => {
      const air = given['fresh-air']?.value;
      if (air === undefined) return undefined;
      return air.running === undefined ? air.rate : measure('flow', partOfTime, air.rate, air.running);
    },
    'leakage-flow': ({ given }, model) => {
      const changes = given['air-leakage']?.value;
      const volumes = model.list('room').flatMap((room) => factsOf(room).volume ?? []) as readonly Quantity<'volume'>[];
      return changes === undefined || volumes.length === 0
        ? undefined
        : measure('flow', flowThrough, changes, total('volume of the rooms', 'volume', volumes));
    },
  },
};
