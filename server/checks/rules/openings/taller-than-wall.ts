// Windows and doors whose head would stand above the ceiling.
import { type Finding, finding, findingSort } from '#kit/finding';
import { roomHeight, roomSlope } from '#model/facts/room';
import type { Room } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { readsRooms } from '../../level-rooms.ts';
import { type RoomOpening, roomOpenings } from '../../room-openings.ts';
import { lengthText } from '../../show.ts';

export const tooTall = findingSort<[name: string, head: string, room: string, height: string, sill: string | undefined]>({
  code: 'openings/taller-than-wall',
  severity: 'error',
  say: (name, head, room, height, sill) =>
    `The head of "${name}" is ${head} above the floor${sill === undefined ? '' : ` (its sill is at ${sill})`}, and "${room}" is ${height} high. It cannot be framed, and a header must fit above it too. Choose a lower one${sill === undefined ? '' : ', or lower its sill'}.`,
});

export const tallerThanWall: Check = {
  code: 'openings/taller-than-wall',
  about: 'The head of a window or door must stay below the top of its wall: sill and height together, rough height where given.',
  wrong: `level main
  height 8'
window w-3050 3' x 5', sill 44"
room bed on main
  windows 1 w-3050
`,
  right: `level main
  height 8'
window w-3050 3' x 5', sill 24"
room bed on main
  windows 1 w-3050
`,
  reads: readsRooms,
  run: ({ model }) => {
    const findings: Finding[] = [];
    for (const room of model.list('room')) {
      const { height, openings } = tooHigh(room);
      for (const { sill, height: high, place, name } of openings) {
        const above = sill > 0 ? lengthText(sill, model) : undefined;
        findings.push(finding(tooTall, place, name, lengthText(sill + high, model), room.name, lengthText(height, model), above));
      }
    }
    return findings;
  },
};

/** The height of a room, and its openings that reach higher. */
const tooHigh = keptFor((room: Room): { readonly height: number; readonly openings: readonly RoomOpening[] } => {
  const height = (roomSlope(room)?.highest ?? roomHeight(room))?.value ?? Number.POSITIVE_INFINITY;
  const openings = roomOpenings(room).filter((opening) => opening.sill + opening.height > height);
  return openings.length === 0 ? ALL_FIT : { height, openings };
});
const ALL_FIT = { height: 0, openings: [] };
