// One room: floor, ceiling, walls, openings, base, and what is counted in it. Its size is clear between framing faces.
import { type Finding, finding } from '#kit/finding';
import { stepsToClose } from '#kit/shapes/outline';
import { roomShape } from '#model/facts/room';
import type { Room } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { outlineEmpty, outlineOpen } from '../problems.ts';
import type { Measured } from './portion.ts';
import type { RoomContext } from './room-context.ts';
import { countedPortions } from './room-counts.ts';
import { openingPortions } from './room-openings.ts';
import { ceilingPortions, floorPortions } from './room-surfaces.ts';
import { baseAndWalls, wallsAround } from './room-walls.ts';

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
  const findings: Finding[] = [...outlineFindings(room)];
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
    portions.push(...ceilingPortions(room, shape, finishes.ceiling, where), ...floorPortions(shape, finishes.floor, where));
  }
  portions.push(...openingPortions(room, context, where), ...countedPortions(room, where));
  return { portions, findings };
}

function firstGiven(context: RoomContext, word: 'floor' | 'walls' | 'ceiling'): Finish {
  return context.finishes.find(({ given }) => given[word] !== undefined)?.given[word]?.value;
}

/** What is wrong with sides walked, of a room or of a level's footprint. */
export function outlineFindings({ given, label }: Room): readonly Finding[] {
  return given.outline === undefined ? [] : walkFindings(given.outline, label);
}

type Walked = NonNullable<Room['given']['outline']>;
export function walkFindings(outline: Walked, label: string): readonly Finding[] {
  const steps = outline.value.map(({ value }) => ({ direction: value.side, length: value.length.value }));
  const [short] = stepsToClose(steps);
  if (short !== undefined) return [finding(outlineOpen, outline.place, label, short.length, short.direction)];
  const encloses =
    steps.length >= 4 &&
    steps.some(({ direction }) => direction === 'east') &&
    steps.some(({ direction }) => direction === 'north');
  return encloses ? [] : [finding(outlineEmpty, outline.place, label)];
}
