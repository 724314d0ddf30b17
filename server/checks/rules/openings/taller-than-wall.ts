// Windows and doors whose head would stand above the ceiling.
import { finding, findingSort } from '#kit/finding';
import { roomHeight } from '#model/facts/room';
import type { Check } from '../../check.ts';
import { readsRooms } from '../../level-rooms.ts';
import { roomOpenings } from '../../room-openings.ts';
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
  run: ({ model }) =>
    model.list('room').flatMap((room) => {
      const height = roomHeight(room)?.value;
      if (height === undefined) return [];
      return roomOpenings(room).flatMap((opening) => {
        const head = opening.sill + opening.height;
        if (head <= height) return [];
        const sill = opening.sill > 0 ? lengthText(opening.sill, model) : undefined;
        return [
          finding(tooTall, opening.place, opening.name, lengthText(head, model), room.name, lengthText(height, model), sill),
        ];
      });
    }),
};
