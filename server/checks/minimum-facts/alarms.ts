// Smoke and carbon monoxide alarms, counted where rooms list their devices: in a bedroom, outside it, on each storey; and
// what in a house makes carbon monoxide.
import { form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Level, Plan, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { roomsOn } from '../level-rooms.ts';
import { neighboursOf } from './neighbours.ts';
import { countOf, devicesIn, type FactTable, number, serving } from './tables.ts';

type Alarm = 'smoke alarm' | 'co alarm';

/** In the rooms that a bedroom's doors lead to, and those open to them. Baths and closets lead nowhere. */
function outside(room: Room, alarm: Alarm, model: Model): Quantity | undefined {
  const { doors, open, roomAt } = neighboursOf(model);
  const beyond = new Set<Room>();
  for (const { other } of doors(room)) {
    const next = other === undefined ? undefined : roomAt(other);
    const use = next?.given.use?.value;
    if (next === undefined || use === 'bathing' || use === 'closet' || use === 'storage' || use === 'sleeping') continue;
    for (const each of open(next)) beyond.add(each);
  }
  return devicesIn([...beyond], alarm);
}

const higher = form('ceiling above that of the hall', 'height − height of the hall', (height = 0, hall = 0) => height - hall);

interface HighRoom {
  readonly room: Room;
  readonly above: Quantity<'length'>;
}

/** Of the rooms that a hall of bedrooms is open to, without a door, the one whose ceiling is highest over the hall's. */
function highRoom(hall: Room, model: Model): HighRoom | undefined {
  const { doors, cased, open, roomAt } = neighboursOf(model);
  const low = topOf(hall);
  if (low === undefined) return undefined;
  const serves = doors(hall).some(({ other }) => other !== undefined && roomAt(other)?.given.use?.value === 'sleeping');
  if (!serves) return undefined;
  let best: HighRoom | undefined;
  for (const room of [...open(hall), ...cased(hall).flatMap(({ other }) => roomAt(other) ?? [])]) {
    const top = topOf(room);
    if (room === hall || top === undefined) continue;
    const above = measure('length', higher, top, low);
    if (best === undefined || above.value > best.above.value) best = { room, above };
  }
  return best;
}

function topOf(room: Room): Quantity | undefined {
  return room.given.sloped?.value.high.height ?? factsOf(room).height;
}

export const alarmsOfRoom: FactTable<Room> = {
  own: {
    'smoke-alarms': (room) => devicesIn([room], 'smoke alarm'),
    'co-alarms': (room) => devicesIn([room], 'co alarm'),
    flames: ({ given }) => number('fires', countOf(serving(given.fixtures, 'flame'))),
  },
  beside: {
    'ceiling-above-hall': (hall, model) => highRoom(hall, model)?.above,
    'alarms-in-high-room': (hall, model) => {
      const high = highRoom(hall, model);
      return high === undefined ? undefined : devicesIn([high.room], 'smoke alarm');
    },
    'alarms-outside': (room, model) => outside(room, 'smoke alarm', model),
    'co-alarms-outside': (room, model) => outside(room, 'co alarm', model),
  },
};

export const alarmsOfLevel: FactTable<Level> = {
  beside: {
    'smoke-alarms': (level, model) => devicesIn(roomsOn(level, model), 'smoke alarm'),
  },
};

export const alarmsOfPlan: FactTable<Plan> = {
  around: {
    'co-alarms': (_, model) => devicesIn(model.list('room'), 'co alarm'),
    'co-sources': (_, model) =>
      number(
        'fires and garages',
        model
          .list('room')
          .reduce(
            (sum, { given }) => sum + countOf(serving(given.fixtures, 'flame')) + (given.use?.value === 'garage' ? 1 : 0),
            0,
          ),
      ),
  },
};
