// One room: floor, ceiling, walls, openings, base, and what is counted in it. Its size is clear between framing faces.
import { type Finding, finding } from '#kit/finding';
import { roomShape } from '#model/facts/room';
import { slopeFits } from '#model/facts/sloped';
import type { Room } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { slopeAcross, vaultHeight } from '../problems.ts';
import { roomOutlineFindings } from './outline-findings.ts';
import type { Measured } from './portion.ts';
import type { RoomContext } from './room-context.ts';
import { countedPortions } from './room-counts.ts';
import { openingPortions } from './room-openings.ts';
import { ceilingPortions, floorPortions } from './room-surfaces.ts';
import { baseAndWalls, wallsAround } from './room-walls.ts';
import { wellPortions } from './window-wells.ts';

/** The finishes of a room: its own lines, else those of the room it takes them from. */
export interface Finishes {
  readonly floor: Finish;
  readonly walls: Finish;
  readonly ceiling: Finish;
  readonly base: Room['given']['base'];
}
export type Finish = NonNullable<Room['given']['walls']>['value'] | undefined;

export function measureRoom(room: Room, context: RoomContext): Measured {
  const level = room.given.on?.value.slot;
  const where: Where =
    level === undefined ? { element: room.slot, room: room.slot } : { element: room.slot, room: room.slot, level };
  const findings: Finding[] = [...roomOutlineFindings(room), ...slopeFindings(room, context)];
  const finishes: Finishes = {
    floor: firstGiven(context, 'floor'),
    walls: firstGiven(context, 'walls'),
    ceiling: firstGiven(context, 'ceiling'),
    base: context.finishes.find(({ given }) => given.base !== undefined)?.given.base,
  };
  const shape = roomShape(room);
  const portions: Portion[] = [];
  const around = wallsAround(room, shape);
  if (around !== undefined) portions.push(...baseAndWalls(room, around, finishes, context, where, findings));
  if (shape !== undefined) {
    portions.push(...ceilingPortions(room, shape, finishes.ceiling, where, context.pitch));
    portions.push(...floorPortions(shape, finishes.floor, where));
  }
  portions.push(...openingPortions(room, context, where), ...countedPortions(room, where), ...wellPortions(room, where));
  return { portions, findings };
}

function firstGiven(context: RoomContext, word: 'floor' | 'walls' | 'ceiling'): Finish {
  return context.finishes.find(({ given }) => given[word] !== undefined)?.given[word]?.value;
}

/** A slope whose sides do not lie across from each other; and walls that go up to a roof nobody has told the height of. */
function slopeFindings(room: Room, { pitch }: RoomContext): readonly Finding[] {
  const { sloped } = room.given;
  if (sloped !== undefined)
    return slopeFits(room) ? [] : [finding(slopeAcross, sloped.place, room.label, sloped.value.lowSide, sloped.value.high.side)];
  return pitch === undefined || pitch.value === 0 ? [] : [finding(vaultHeight, room.place, room.label)];
}
