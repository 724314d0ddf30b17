// Light and air that a room has from the next one, through an opening without a door: how large the opening is against the
// inner room's floor and against the wall between, and what the two rooms have together.
import { addTo } from '#kit/gathered';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import { levelRooms } from '../level-rooms.ts';
import { gapsOf } from '../room-gaps.ts';
import { neighboursOf } from './neighbours.ts';
import { areas, type FactTable, greatest, shareOf, smallest } from './tables.ts';

const openingOf = form('opening to the next room', 'width × height', (width = 0, height = 0) => width * height);
const wallBetween = form('wall between', 'length × height', (length = 0, height = 0) => length * height);

export interface Next {
  readonly other: Room;
  readonly opening: Quantity<'area'>;
}

/** The room that the widest of its cased openings leads to, with all of them to that room. */
export function nextRoom(room: Room, model: Model): Next | undefined {
  const { cased, roomAt } = neighboursOf(model);
  const byRoom = new Map<Room, Quantity<'area'>[]>();
  for (const { other, width, height } of cased(room)) {
    const next = roomAt(other);
    if (next !== undefined) addTo(byRoom, next, measure('area', openingOf, width, height));
  }
  let best: Next | undefined;
  for (const [other, list] of byRoom) {
    const opening = areas('openings to the next room', list);
    if (best === undefined || opening.value > best.opening.value) best = { other, opening };
  }
  return best;
}

/** By the gap between placed rooms; else the most that the two can share, which is the lesser of their longest sides. */
function wallTo(room: Room, other: Room, model: Model): Quantity<'area'> | undefined {
  const height = factsOf(room).height;
  const length = sharedLength(room, other, model) ?? smallest([longest(room), longest(other)].flatMap((each) => each ?? []));
  return height?.dimension !== 'length' || length === undefined ? undefined : measure('area', wallBetween, length, height);
}

function sharedLength(room: Room, other: Room, model: Model): Quantity<'length'> | undefined {
  const level = levelRooms(model).find(({ byRoom }) => byRoom.has(room) && byRoom.has(other));
  if (level === undefined) return undefined;
  const gaps = gapsOf(level).filter(
    (gap) => (gap.room.room === room && gap.other?.room === other) || (gap.room.room === other && gap.other?.room === room),
  );
  return constant(
    'length of the wall between',
    gaps.reduce((sum, { length }) => sum + length, 0),
    'length',
  );
}

function longest(room: Room): Quantity<'length'> | undefined {
  const { width, depth } = factsOf(room);
  return greatest([width, depth].flatMap((side) => (side?.dimension === 'length' ? [side as Quantity<'length'>] : [])));
}

export const borrowedByRoom: FactTable<Room> = {
  beside: {
    'opening-to-next': (room, model) => nextRoom(room, model)?.opening,
    'opening-to-sunroom': (room, model) => {
      const next = nextRoom(room, model);
      return next?.other.given.sunroom === undefined ? undefined : next.opening;
    },
    'opening-of-floor': (room, model) => {
      const next = nextRoom(room, model);
      const floor = factsOf(room)['floor-area'];
      return next === undefined || floor === undefined ? undefined : shareOf(next.opening, floor);
    },
    'opening-of-wall': (room, model) => {
      const next = nextRoom(room, model);
      const wall = next === undefined ? undefined : wallTo(room, next.other, model);
      return next === undefined || wall === undefined ? undefined : shareOf(next.opening, wall);
    },
  },
};
