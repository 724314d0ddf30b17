// Doors, cased openings and open sides to a room that does not touch the one they are in.
import { FOOT } from '#kit/dimension';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import { facings } from '#kit/shapes/facing';
import type { Room } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { type LevelRooms, levelRooms, readsRooms } from '../../level-rooms.ts';

export const apart = findingSort<[what: string, room: string, other: string]>({
  code: 'doors/not-beside',
  severity: 'error',
  say: (what, room, other) =>
    `${what} leads from "${room}" to "${other}", but the two share no wall, so it would be cut from the wrong one. Name the room on the other side, or check where they are placed.`,
});

export const itself = findingSort<[what: string, room: string]>({
  code: 'doors/not-beside',
  severity: 'error',
  say: (what, room) => `${what} leads from "${room}" to itself. Name the room on the other side.`,
});

export const otherLevel = findingSort<[what: string, room: string, other: string, level: string]>({
  code: 'doors/not-beside',
  severity: 'error',
  say: (what, room, other, level) =>
    `${what} leads from "${room}" to "${other}", which is on "${level}". Name a room of the same level, or check which level each is on.`,
});

export const notBeside: Check = {
  code: 'doors/not-beside',
  about: 'A door, a cased opening or an open side leads to a room that shares a wall with its own.',
  wrong: `level main
door d-2868 2'-8" x 6'-8"
room bed on main at 0', 0'
  size 10' x 10'
  doors 1 d-2868 to bath
room bath on main at 15', 12'
  size 5' x 8'
`,
  right: `level main
door d-2868 2'-8" x 6'-8"
room bed on main at 0', 0'
  size 10' x 10'
  doors 1 d-2868 to bath
room bath on main at 10'-3 1/2", 0'
  size 5' x 8'
`,
  reads: readsRooms,
  run: ({ model }) =>
    levelRooms(model).flatMap((level) =>
      doubtful(level).flatMap(({ room, what, to, place, other }): readonly Finding[] => {
        if (to === room.slot) return [finding(itself, place, what, room.name)];
        if (other !== undefined) return [finding(apart, place, what, room.name, other.name)];
        const elsewhere = model.element(to);
        const on = elsewhere?.kind === 'room' ? elsewhere.given.on?.value : undefined;
        return on === undefined || on === level.level ? [] : [finding(otherLevel, place, what, room.name, to.name, on.name)];
      }),
    ),
};

interface Way {
  readonly what: string;
  readonly to: Slot;
  readonly place: Place;
}

/** Ways that lead to no room beside on this level. */
const doubtful = keptFor((level: LevelRooms): readonly (Way & { readonly room: Room; readonly other: Room | undefined })[] => {
  const bySlot = new Map(level.rooms.map((room) => [room.slot, room]));
  return level.rooms.flatMap((room) =>
    ways(room).flatMap((way) => {
      const other = bySlot.get(way.to);
      return other !== undefined && other !== room && touch(room, other, level) ? [] : [{ ...way, room, other }];
    }),
  );
});

function ways({ given }: Room): readonly Way[] {
  return [
    ...given.doors.flatMap((line) =>
      line.value.flatMap(({ value, place }) =>
        value.to === undefined ? [] : [{ what: `"${value.type.name}"`, to: value.to, place }],
      ),
    ),
    ...given.cased.flatMap((line) => line.value.map(({ value, place }) => ({ what: 'The cased opening', to: value.to, place }))),
    ...(given['open to']?.value ?? []).map(({ value, place }) => ({ what: 'The open side', to: value, place })),
  ];
}

/** Rooms that are not placed may touch; placed ones must face each other over the thickness of a wall. */
function touch(room: Room, other: Room, level: LevelRooms): boolean {
  const [one, two] = [level.byRoom.get(room), level.byRoom.get(other)];
  return one === undefined || two === undefined || facings(one.ground, two.ground, FOOT).length > 0;
}
