// Rooms that no door, cased opening or open side leads into.
import { finding, findingSort } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Room } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { byLevel, type LevelRooms, readsRooms } from '../../level-rooms.ts';
import { namesText } from '../../show.ts';

export const noDoor = findingSort<[room: string]>({
  code: 'rooms/no-way-in',
  severity: 'warning',
  say: (room) =>
    `No door leads into "${room}", so a door and its trim are missing from what is bought. Add it here or in the room it opens from: "doors 1 d-2868 to hall".`,
});

export const shutOff = findingSort<[rooms: readonly string[]]>({
  code: 'rooms/no-way-in',
  severity: 'warning',
  say: (rooms) =>
    `${namesText(rooms)} open to each other, but nothing leads there from the rest of the house, so a door is missing. Add it: "doors 1 d-2868 to hall".`,
});

export const noWayIn: Check = {
  code: 'rooms/no-way-in',
  about:
    'Every room needs a door, a cased opening or an open side, its own or one of the room it opens from; and where a level has an outside door, a way from there. Silent while a level has no doors at all.',
  wrong: `level main
door d-3068 3' x 6'-8", exterior
room living on main
  doors 1 d-3068 in south
room bed on main
`,
  right: `level main
door d-3068 3' x 6'-8", exterior
door d-2868 2'-8" x 6'-8"
room living on main
  doors 1 d-3068 in south, 1 d-2868 to bed
room bed on main
`,
  reads: readsRooms,
  run: byLevel((level) =>
    shut(level).map((rooms) => {
      const [first, ...others] = rooms;
      if (others.length === 0) return finding(noDoor, first!.place, first!.name);
      return {
        ...finding(
          shutOff,
          first!.place,
          rooms.map(({ name }) => name),
        ),
        related: others.map((room) => ({ place: room.place, note: `"${room.name}" is shut off with it` })),
      };
    }),
  ),
};

/** Groups of rooms that nothing leads into. */
const shut = keptFor(({ rooms }: LevelRooms): readonly (readonly Room[])[] => {
  const number = new Map(rooms.map((room, at) => [room.slot, at]));
  const parent = rooms.map((_, at) => at);
  const root = (at: number): number => {
    let up = at;
    while (parent[up] !== up) up = parent[up]!;
    return up;
  };
  // Rooms with a way out of the level or to somewhere that is not said, and rooms with any way at all.
  const leads = rooms.map(() => false);
  const opens = rooms.map(() => false);
  let outside = false;
  rooms.forEach((room, at) => {
    const join = (to: Slot | undefined): void => {
      opens[at] = true;
      const other = to === undefined ? undefined : number.get(to);
      if (other === undefined) {
        leads[at] = true;
        return;
      }
      opens[other] = true;
      const [one, two] = [root(at), root(other)];
      parent[Math.max(one, two)] = Math.min(one, two);
    };
    for (const line of room.given.doors)
      for (const { value } of line.value) {
        if (value.to === undefined && value.type.kind === 'door' && value.type.given.exterior !== undefined) outside = true;
        join(value.to);
      }
    for (const line of room.given.cased) for (const { value } of line.value) join(value.to);
    for (const { value } of room.given['open to']?.value ?? []) join(value);
  });
  if (!opens.includes(true)) return [];
  const groups = new Map<number, Room[]>();
  rooms.forEach((room, at) => {
    addTo(groups, root(at), room);
  });
  const reached = new Set(rooms.flatMap((_, at) => (leads[at] ? [root(at)] : [])));
  // Stairs are not drawn: on a level without an outside door any group may hold them.
  return [...groups].flatMap(([at, group]) =>
    reached.has(at) || (group.length > 1 && !outside) || (group.length === 1 && opens[number.get(group[0]!.slot)!])
      ? []
      : [group],
  );
});
