// Windows and doors that do not fit along the wall they are in: one too wide, one that runs past the end, or too many.
import { FOOT } from '#kit/dimension';
import { type Finding, finding, findingSort } from '#kit/finding';
import { facings } from '#kit/shapes/facing';
import { sidesLooking, slantedFacings } from '#kit/shapes/headings';
import { roomShape } from '#model/facts/room';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { type LevelRooms, levelRooms, readsRooms } from '../../level-rooms.ts';
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
  reads: readsRooms,
  run: ({ model }) => {
    const findings: Finding[] = [];
    for (const room of model.list('room')) for (const trouble of inSides(room)) findings.push(told(trouble, room, model));
    for (const level of levelRooms(model))
      for (const { room, ...trouble } of shared(level)) findings.push(told(trouble, room, model));
    return findings;
  },
};

interface Trouble {
  readonly kind: 'wide' | 'past' | 'many';
  readonly opening: RoomOpening;
  /** The wall, in words, and its length. */
  readonly wall: string;
  readonly length: number;
  /** Where the opening ends along the wall, or how wide all in it are together. */
  readonly reach: number;
  readonly count: number;
}

function told({ kind, opening: { name, place, width }, wall, length, reach, count }: Trouble, room: Room, model: Model): Finding {
  const text = (value: number): string => lengthText(value, model);
  switch (kind) {
    case 'wide':
      return finding(tooWide, place, name, text(width), room.name, wall, text(width - length));
    case 'past':
      return finding(pastEnd, place, name, text(reach - width), text(reach), room.name, wall, text(length));
    case 'many':
      return finding(tooMany, place, count, text(reach), room.name, wall, text(length));
  }
}

/** Against the room's own walls. */
const inSides = keptFor((room: Room): readonly Trouble[] => {
  const openings = roomOpenings(room);
  const shape = openings.length === 0 ? undefined : roomShape(room);
  if (shape === undefined) return [];
  const runs = sidesLooking(shape.outline);
  const longest = (side: SideWord | undefined): number =>
    runs.reduce((most, run) => (side === undefined || run.looks === side ? Math.max(most, run.length) : most), 0);
  const troubles: Trouble[] = [];
  const settled = new Set<SideWord>();
  for (const opening of openings) {
    const { width, side, at } = opening;
    const length = longest(side);
    const wall = wallText(side);
    // Only where the side is one straight wall can a distance along it be checked.
    const straight = side !== undefined && runs.filter(({ looks }) => looks === side).length === 1;
    const past = straight ? at.find((distance) => distance + width > length) : undefined;
    if (width > length) troubles.push({ kind: 'wide', opening, wall, length, reach: width, count: 1 });
    else if (past !== undefined) troubles.push({ kind: 'past', opening, wall, length, reach: past + width, count: 1 });
    else continue;
    if (side !== undefined) settled.add(side);
  }
  for (const side of SIDES) {
    const there = openings.filter((opening) => opening.side === side);
    const reach = there.reduce((sum, { count, width }) => sum + count * width, 0);
    const length = runs.reduce((sum, run) => (run.looks === side ? sum + run.length : sum), 0);
    if (there.length === 0 || reach <= length || settled.has(side)) continue;
    const count = there.reduce((sum, opening) => sum + opening.count, 0);
    troubles.push({ kind: 'many', opening: there[there.length - 1]!, wall: wallText(side), length, reach, count });
  }
  return troubles;
});

/** Doors to another placed room, against the stretch of wall that the two share. */
const shared = keptFor((level: LevelRooms): readonly (Trouble & { readonly room: Room })[] => {
  const bySlot = new Map(level.placed.map((each) => [each.room.slot, each]));
  return level.placed.flatMap(({ room, ground }) =>
    roomOpenings(room).flatMap((opening) => {
      const other = opening.to === undefined ? undefined : bySlot.get(opening.to);
      if (other === undefined) return [];
      const stretches = [
        ...facings(ground, other.ground, FOOT).map(({ from, to }) => to - from),
        ...slantedFacings(ground, other.ground, FOOT).map((each) => each.length),
      ];
      const length = Math.max(0, ...stretches);
      // Rooms that do not touch at all are another check's business.
      if (length === 0 || opening.width <= length) return [];
      const wall = `the wall it shares with "${other.room.name}"`;
      return [{ room, kind: 'wide' as const, opening, wall, length, reach: opening.width, count: 1 }];
    }),
  );
});

const SIDES: readonly SideWord[] = ['south', 'southeast', 'east', 'northeast', 'north', 'northwest', 'west', 'southwest'];

function wallText(side: SideWord | undefined): string {
  return side === undefined ? 'the longest wall' : `the ${side} wall`;
}
