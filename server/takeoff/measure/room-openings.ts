// Windows and doors that a room tells of: counts by type, flashing round those in outside walls, trim on the inside.
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Room } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { type Held, openingsOf } from './openings.ts';
import { inPart, isNothing, portion } from './portion.ts';
import type { RoomContext } from './room-context.ts';

const around = form(
  'round the opening',
  'count × 2 × (width + height)',
  (count = 0, width = 0, height = 0) => count * 2 * (width + height),
);
const threeSides = form(
  'trim',
  'count × (width + 2 × height)',
  (count = 0, width = 0, height = 0) => count * (width + 2 * height),
);
const bothFaces = form(
  'trim on both faces',
  'count × 2 × (width + 2 × height)',
  (count = 0, width = 0, height = 0) => count * 2 * (width + 2 * height),
);

export function openingPortions(room: Room, context: RoomContext, where: Where): readonly Portion[] {
  const own = openingsOf(room);
  const held = own.filter((opening) => !context.told.includes(opening));
  const at: Where = inPart(where, 'openings');
  const portions: Portion[] = held.flatMap((opening) => {
    const { type, count, outside } = opening;
    if (type === undefined) return [];
    const measured = type.kind === 'window' ? 'window-count' : outside ? 'outside-door-count' : 'inside-door-count';
    return [
      portion(measured, at, count, {
        goods: { name: type.name, of: type, sizes: [] },
        closes: measured === 'inside-door-count' ? closedOff(room, opening, context.behind[own.indexOf(opening)]) : undefined,
      }),
    ];
  });
  const flashing = held.filter(({ outside }) => outside).flatMap((each) => length(each, around));
  if (flashing.length > 0) portions.push(portion('flashing-length', at, total('flashing', 'length', flashing)));
  const bare = isBare(context);
  const trim = held.flatMap((opening) => (opening.outside && bare ? [] : trimOf(opening)));
  if (trim.length > 0)
    portions.push(portion('opening-trim-length', at, total('trim', 'length', trim), { goods: context.casing }));
  return portions;
}

/** What the rooms on both sides of a door are for; the door of a closet is the closet's alone. */
function closedOff(room: Room, { inCloset }: Held, behind: string | undefined): readonly string[] {
  const uses = [room.given.use?.value, inCloset ? 'closet' : behind].filter((use) => use !== undefined);
  return uses.includes('closet') ? ['closet'] : uses;
}

/** Walls left bare have no board for casing to cover the edge of. */
function isBare({ finishes }: RoomContext): boolean {
  const walls = finishes.find(({ given }) => given.walls !== undefined)?.given.walls?.value ?? [];
  return walls.some(({ value }) => value.layers.some((layer) => isNothing(layer.value)));
}

/** A window is trimmed all round on its inside, an outside door on three sides of it, a door or hole between rooms on both faces. */
function trimOf(opening: Held): readonly Quantity<'length'>[] {
  if (opening.type?.kind === 'window') return length(opening, around);
  return length(opening, opening.outside ? threeSides : bothFaces);
}

function length({ count, width, height }: Held, how: typeof around): readonly Quantity<'length'>[] {
  return width === undefined || height === undefined ? [] : [measure('length', how, count, width, height)];
}
