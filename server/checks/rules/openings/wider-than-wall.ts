// Windows and doors that do not fit along the wall they are in: one too wide, one that runs past the end, or too many.

import { FOOT } from '#kit/dimension';
import { type Finding, finding, findingSort } from '#kit/finding';
import { facings, sidesOf } from '#kit/shapes/facing';
import { roomShape } from '#model/facts/room';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import type { Check } from '../../check.ts';
import { type LevelRooms, levelRooms } from '../../level-rooms.ts';
import { type RoomOpening, roomOpenings, type SideWord } from '../../room-openings.ts';
import { counted, lengthText } from '../../show.ts';

export const tooWide = findingSort<[name: string, wide: string, room: string, wall: string, over: string]>({
  code: 'openings/wider-than-wall',
  severity: 'error',
  say: (name, wide, room, wall, over) =>
    `"${name}" is ${wide} wide, ${over} more than ${wall} of "${room}" has. It cannot be framed. Choose a narrower one, or another wall.`,
});

export const pastEnd = findingSort<[name: string, at: string, end: string, room: string, wall: string, long: string]>({
  code: 'openings/wider-than-wall',
  severity: 'error',
  say: (name, at, end, room, wall, long) =>
    `"${name}" stands at ${at} from the left corner and would end at ${end}, but ${wall} of "${room}" is ${long} long. Move it, or choose a narrower one.`,
});

export const tooMany = findingSort<[count: number, wide: string, room: string, wall: string, long: string]>({
  code: 'openings/wider-than-wall',
  severity: 'error',
  say: (count, wide, room, wall, long) =>
    `${counted(count, 'opening')} of together ${wide} stand in ${wall} of "${room}", which is ${long} long. They cannot be framed side by side. Move some to another wall.`,
});

export const widerThanWall: Check = {
  code: 'openings/wider-than-wall',
  about:
    'An opening must fit along its wall: its rough width where that is given, else its nominal one, at its distance from the left corner seen from inside, beside the others in that wall.',
  wrong: `window w-6040 6'-0" x 4'-0"
room nook
  size 5' x 8'
  windows 1 w-6040 in south
`,
  right: `window w-3040 3'-0" x 4'-0"
room nook
  size 5' x 8'
  windows 1 w-3040 in south
`,
  run: ({ model }) => {
    const levels = new Map(levelRooms(model).map((level) => [level.level, level]));
    return model.list('room').flatMap((room) => {
      const openings = roomOpenings(room);
      if (openings.length === 0) return [];
      const level = room.given.on === undefined ? undefined : levels.get(room.given.on.value);
      return [...inSides(room, openings, model), ...shared(room, openings, level, model)];
    });
  },
};

/** Against the room's own walls. */
function inSides(room: Room, openings: readonly RoomOpening[], model: Model): readonly Finding[] {
  const shape = roomShape(room);
  if (shape === undefined) return [];
  const runs = sidesOf(shape.outline).map(({ looks, from, to }) => ({ looks, length: to - from }));
  const longest = (side: SideWord | undefined): number =>
    runs.reduce((most, run) => (side === undefined || run.looks === side ? Math.max(most, run.length) : most), 0);
  const findings: Finding[] = [];
  const told = new Set<SideWord>();
  for (const { name, width, side, at, place } of openings) {
    const wall = longest(side);
    if (width > wall) {
      findings.push(
        finding(tooWide, place, name, lengthText(width, model), room.name, wallText(side), lengthText(width - wall, model)),
      );
      if (side !== undefined) told.add(side);
      continue;
    }
    // Only where the side is one straight wall can a distance along it be checked.
    if (side === undefined || runs.filter(({ looks }) => looks === side).length !== 1) continue;
    const past = at.find((distance) => distance + width > wall);
    if (past === undefined) continue;
    told.add(side);
    findings.push(
      finding(
        pastEnd,
        place,
        name,
        lengthText(past, model),
        lengthText(past + width, model),
        room.name,
        wallText(side),
        lengthText(wall, model),
      ),
    );
  }
  for (const side of SIDES) {
    const there = openings.filter((opening) => opening.side === side);
    const wide = there.reduce((sum, { count, width }) => sum + count * width, 0);
    const wall = runs.reduce((sum, run) => (run.looks === side ? sum + run.length : sum), 0);
    if (there.length === 0 || wide <= wall || told.has(side)) continue;
    const count = there.reduce((sum, opening) => sum + opening.count, 0);
    const { place } = there[there.length - 1]!;
    findings.push(finding(tooMany, place, count, lengthText(wide, model), room.name, wallText(side), lengthText(wall, model)));
  }
  return findings;
}

/** Doors to another placed room, against the stretch of wall that the two share. */
function shared(room: Room, openings: readonly RoomOpening[], level: LevelRooms | undefined, model: Model): readonly Finding[] {
  const own = level?.byRoom.get(room);
  if (level === undefined || own === undefined) return [];
  return openings.flatMap(({ name, width, to, place }) => {
    const other = to === undefined ? undefined : level.placed.find((each) => each.room.slot === to);
    if (other === undefined) return [];
    const wall = facings(own.ground, other.ground, FOOT).reduce((most, { from, to: end }) => Math.max(most, end - from), 0);
    // Rooms that do not touch at all are another check's business.
    if (wall === 0 || width <= wall) return [];
    const shares = `the wall it shares with "${other.room.name}"`;
    return [finding(tooWide, place, name, lengthText(width, model), room.name, shares, lengthText(width - wall, model))];
  });
}

const SIDES: readonly SideWord[] = ['south', 'east', 'north', 'west'];

function wallText(side: SideWord | undefined): string {
  return side === undefined ? 'the longest wall' : `the ${side} wall`;
}
