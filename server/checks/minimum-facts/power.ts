// Outlets against the walls and counters of a room, on a storey and outside, and the electric service of the house.
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Level, Plan, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { roomsOn } from '../level-rooms.ts';
import { neighboursOf } from './neighbours.ts';
import { areas, countOf, devicesIn, type FactTable, greatest, number, ratingOf, serving, smallest } from './tables.ts';

const between = form('wall between doors', 'perimeter − doors and cased openings', (perimeter = 0, openings = 0) =>
  Math.max(0, perimeter - openings),
);
const widths = form('doors', 'count × width', (count = 0, width = 0) => count * width);

/** The line of wall along the floor; unknown where a side is open to another room. */
function outletWall(room: Room, model: Model): Quantity | undefined {
  const { doors, open } = neighboursOf(model);
  const { perimeter } = factsOf(room);
  if (perimeter === undefined || open(room).length > 1) return undefined;
  const doorWidths = doors(room).flatMap(({ type, count }) =>
    type.takes === undefined ? [] : [measure('length', widths, number('doors', count), type.takes.left)],
  );
  const cased = room.given.cased.flatMap((line) => line.value.map(({ value }) => value.size.left));
  const closets = room.given.closet.flatMap(({ value }) => (value.door === undefined ? [] : [value.size.left]));
  return measure('length', between, perimeter, total('openings', 'length', [...doorWidths, ...cased, ...closets]));
}

/** Lengths of base cabinet under counter. */
function counterRun({ given }: Room): Quantity | undefined {
  const runs = serving(given.cabinets, 'counter').flatMap(({ count }) =>
    typeof count === 'object' && count.dimension === 'length' ? [count] : [],
  );
  return runs.length === 0 ? undefined : total('counter', 'length', runs);
}

/** Those that a counter may count on; where a room says no such one, all, for a breaker may protect them. */
function counterOutlets({ given }: Room): Quantity | undefined {
  if (given.devices.length === 0) return undefined;
  const over = serving(given.devices, 'counter outlet');
  return number('outlets over the counter', countOf(over.length > 0 ? over : serving(given.devices, 'outlet')));
}

const islandOf = form('top of an island', 'length × width', (length = 0, width = 0) => length * width);

export const powerOfRoom: FactTable<Room> = {
  lines: {
    outlets: 'devices',
    'counter-outlets': 'devices',
    'plain-outlets': 'devices',
    'island-outlets': 'island',
    'circuits-of-20a': 'circuits',
  },
  own: {
    'counter-outlets': counterOutlets,
    outlets: (room) => devicesIn([room], 'outlet'),
    'plain-outlets': ({ given }) => {
      if (given.devices.length === 0) return undefined;
      const guarded = countOf(serving(given.devices, 'counter outlet'));
      return number('outlets without their own protection', countOf(serving(given.devices, 'outlet')) - guarded);
    },
    'counter-run': counterRun,
    islands: ({ given }) => number('islands', given.island.length),
    'island-area': ({ given }) =>
      areas(
        'islands',
        given.island.map(({ value: { size } }) => measure('area', islandOf, size.left, size.right)),
      ),
    'island-long': ({ given }) =>
      smallest(given.island.flatMap(({ value: { size } }) => greatest([size.left, size.right]) ?? [])),
    'island-wide': ({ given }) =>
      smallest(given.island.flatMap(({ value: { size } }) => smallest([size.left, size.right]) ?? [])),
    // An island that says none of the room's outlets has none, once the room lists its devices.
    'island-outlets': ({ given }) =>
      given.devices.length === 0 || given.island.length === 0
        ? undefined
        : number(
            'outlets of the islands',
            given.island.reduce((sum, { value }) => sum + (value.outlets ?? 0), 0),
          ),
    'circuits-of-20a': ({ given }) => {
      const circuits = given.circuits.flatMap((line) => line.value.map(({ value }) => value));
      if (circuits.length === 0) return undefined;
      return number(
        'circuits of 20 amperes',
        circuits.reduce((sum, { count, current }) => sum + (current.value === 20 ? count : 0), 0),
      );
    },
  },
  beside: { 'outlet-wall': outletWall },
};

/** The greatest rating among what serves as something, in the house. */
function greatestOf(service: string, dimension: 'current' | 'power', model: Model): Quantity | undefined {
  let most: number | undefined;
  for (const { given } of model.list('room'))
    for (const listed of serving(given.fixtures, service)) {
      const rating = ratingOf(listed, dimension);
      if (rating !== undefined && (most === undefined || rating > most)) most = rating;
    }
  return most === undefined ? undefined : constant(service, most, dimension);
}

export const powerOfLevel: FactTable<Level> = {
  beside: { outlets: (level, model) => devicesIn(roomsOn(level, model), 'outlet') },
};

/** Both legs of a service of 120 and 240 V. */
const MAINS = 240;

const nameplates = form('nameplates', 'count × nameplate', (count = 0, each = 0) => count * each);
const byCurrent = form('nameplate', 'current × 240 V', (current = 0) => current * MAINS);

/** Nameplates of what serves as something in the house, power or current at 240 V; and how many of it there are. */
function loadsOf(service: string, model: Model): { readonly power: readonly Quantity<'power'>[]; readonly count: number } {
  const power: Quantity<'power'>[] = [];
  let count = 0;
  for (const { given } of model.list('room'))
    for (const listed of [...serving(given.fixtures, service), ...serving(given.devices, service)]) {
      const many = countOf([listed]);
      const each = nameplateOf(listed);
      if (each !== undefined) power.push(measure('power', nameplates, number(listed.type.name, many), each));
      count += many;
    }
  return { power, count };
}

function nameplateOf(listed: Parameters<typeof ratingOf>[0]): Quantity<'power'> | undefined {
  const power = ratingOf(listed, 'power');
  if (power !== undefined) return constant('nameplate', power, 'power');
  const current = ratingOf(listed, 'current');
  return current === undefined ? undefined : measure('power', byCurrent, constant('nameplate', current, 'current'));
}

function loadFact(service: string) {
  return (_: Plan, model: Model): Quantity => total(`nameplates of ${service}`, 'power', loadsOf(service, model).power);
}

/** Where some are listed and none tells its nameplate nobody knows. */
function toldLoad(service: string, model: Model): Quantity<'power'> | undefined {
  const { power, count } = loadsOf(service, model);
  return count > 0 && power.length === 0 ? undefined : total(`nameplates of ${service}`, 'power', power);
}

function countFact(label: string, service: string) {
  return (_: Plan, model: Model): Quantity => number(label, loadsOf(service, model).count);
}

/** Ranges and dryers have demands of their own; the rest stands fixed in its place. */
const OF_APPLIANCES = ['appliance', 'range', 'dryer'];
const less = form('fixed appliances', 'appliances − ranges − dryers', (all = 0, ranges = 0, dryers = 0) => all - ranges - dryers);

const currentOf = form('current of the heater', 'power ÷ 240 V', (power = 0) => power / MAINS);

export const powerOfPlan: FactTable<Plan> = {
  around: {
    'outside-outlets': (_, model) => devicesIn(model.list('room'), 'outside outlet'),
    // Where no appliance tells its nameplate nobody knows.
    'appliance-power': (_, model) => {
      const { power } = loadsOf('appliance', model);
      return power.length === 0 ? undefined : total('nameplates of appliances', 'power', power);
    },
    'heat-power': loadFact('heat'),
    'cooling-power': loadFact('cooling'),
    // None where pump and strip heat never run together: what cools counts whole by itself.
    'heat-pump-power': (plan, model) =>
      total('nameplates of heat pumps', 'power', plan.given['strip-heat'] === undefined ? loadsOf('heat pump', model).power : []),
    heaters: countFact('heaters', 'heat'),
    'range-power': (_, model) => toldLoad('range', model),
    'dryer-power': (_, model) => toldLoad('dryer', model),
    dryers: countFact('dryers', 'dryer'),
    'fixed-appliance-power': (_, model) => {
      const parts = OF_APPLIANCES.flatMap((service) => toldLoad(service, model) ?? []);
      return parts.length < OF_APPLIANCES.length ? undefined : measure('power', less, ...parts);
    },
    'fixed-appliances': (plan, model) =>
      measure('number', less, ...OF_APPLIANCES.map((service) => countFact(service, service)(plan, model))),
    service: (_, model) => greatestOf('service', 'current', model),
    'heater-current': (_, model) => {
      const power = greatestOf('tankless heater', 'power', model);
      return power === undefined ? undefined : measure('current', currentOf, power);
    },
  },
};
