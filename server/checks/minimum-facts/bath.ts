// Room about the fixtures of a bath, and the size of its shower.
import { MILLIMETRE } from '#kit/dimension';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import { type FactTable, serving, smallest } from './tables.ts';

type Way = 'to side' | 'in front' | 'to centre' | 'overhead' | 'to bath door' | 'to stove';

const clearance = (fixture: 'toilet' | 'basin' | 'shower' | 'alarm', way: Way) => (room: Room) =>
  smallest(
    room.given.clearance
      .filter(({ value }) => value.fixture === fixture)
      .flatMap(({ value }) => value.distances.flatMap(({ value: each }) => (each.way === way ? [each.length] : []))),
  );

const floorOf = form('floor of the shower', 'width × depth', (width = 0, depth = 0) => width * depth);

/** The two sides of the smallest shower that tells them. */
function showerSides({ given }: Room, { settings }: Model): readonly [Quantity<'length'>, Quantity<'length'>] | undefined {
  const showers = serving(given.fixtures, 'shower').flatMap(({ type, ratings }) => {
    const pair = ratings.flatMap(({ value }) => ('left' in value ? [value.left, value.right] : []));
    const sides = [...type.sizes, ...pair].flatMap((size) => {
      if (size.kind !== 'quantity') return [];
      if (size.dimension === 'length') return [size.value];
      return size.dimension === 'bare' && settings.units === 'mm' ? [size.value * MILLIMETRE] : [];
    });
    return sides.length === 2 ? [sides] : [];
  });
  const least = showers.reduce<readonly number[] | undefined>(
    (small, sides) => (small === undefined || sides[0]! * sides[1]! < small[0]! * small[1]! ? sides : small),
    undefined,
  );
  return least === undefined ? undefined : [constant('width', least[0]!, 'length'), constant('depth', least[1]!, 'length')];
}

export const bathOfRoom: FactTable<Room> = {
  lines: {
    'toilet-side': 'clearance',
    'toilet-front': 'clearance',
    'toilet-centre': 'clearance',
    'basin-front': 'clearance',
    'shower-front': 'clearance',
    'shower-headroom': 'clearance',
    'alarm-from-bath': 'clearance',
    'alarm-from-stove': 'clearance',
    'shower-area': 'fixtures',
    'shower-least': 'fixtures',
    'wet-height': 'wet',
  },
  own: {
    'toilet-side': clearance('toilet', 'to side'),
    'toilet-front': clearance('toilet', 'in front'),
    'toilet-centre': clearance('toilet', 'to centre'),
    'basin-front': clearance('basin', 'in front'),
    'shower-front': clearance('shower', 'in front'),
    'shower-headroom': clearance('shower', 'overhead'),
    'wet-height': ({ given }) => smallest(given.wet.flatMap(({ value }) => value.high ?? [])),
    'alarm-from-bath': clearance('alarm', 'to bath door'),
    'alarm-from-stove': clearance('alarm', 'to stove'),
    'shower-area': (room, model) => {
      const sides = showerSides(room, model);
      return sides === undefined ? undefined : measure('area', floorOf, ...sides);
    },
    'shower-least': (room, model) => smallest(showerSides(room, model) ?? []),
  },
};
