// Panels along the walls of a level: on each wall whole ones from its left end, seen from inside, and what is left; numbered
// wall by wall. Where rooms are placed and openings too, it is known which panels an opening is cut from, and which joints.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { sidesOf } from '#kit/shapes/facing';
import { roomShape } from '#model/facts/room';
import type { FloorShape } from '#model/floor-shape';
import type { Room } from '#model/model';
import type { Held } from './openings.ts';
import { openingsOf } from './openings.ts';
import { wallPieces } from './runs.ts';

type Length = Quantity<'length'>;

/** A panel by its place along the wall, from the left end seen from inside. */
export interface LaidPanel {
  readonly name: string;
  readonly from: Length;
  readonly width: Length;
  /** The openings that are cut from it. */
  readonly openings: readonly string[];
}

export interface PanelWall {
  /** 'south', 'south 2' where the outline has several sides that look that way. */
  readonly label: string;
  readonly length: Length;
  readonly panels: readonly LaidPanel[];
  /** What openings take of the joints that they lie across. */
  readonly cut: readonly Length[];
  /** Openings of this wall of which nobody says where they stand. */
  readonly loose: readonly string[];
}

/** An opening in an outside wall, by its edges along the side of the outline; undefined where nobody says. */
export interface WallOpening {
  readonly label: string;
  readonly side: NonNullable<Held['side']>;
  /** Across the side: y of one in a wall that looks north or south. */
  readonly across: number;
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly height: Length;
}

const rest = form('last panel', 'wall − whole panels', (wall = 0, width = 0, whole = 0) => wall - width * whole);
const start = form('from the left end', 'width × panels before it', (width = 0, before = 0) => width * before);

export function panelWalls(
  shape: FloorShape,
  width: Length,
  thickness: Length | undefined,
  openings: readonly WallOpening[],
): readonly PanelWall[] {
  const seen = new Map<string, number>();
  const lengths = wallPieces(shape, thickness);
  return sidesOf(shape.outline).map((side, index) => {
    const { looks, at, from, to } = side;
    const nth = (seen.get(looks) ?? 0) + 1;
    seen.set(looks, nth);
    const label = nth === 1 ? looks : `${looks} ${nth}`;
    const { length } = lengths[index]!;
    // A wall that stands between two others begins a thickness in.
    const inset = (to - from - length.value) / 2;
    const own = openings.filter(
      (each) => each.side === looks && (each.from === undefined || isNearest(each, at, shape)) && lies(each, from, to),
    );
    const placed = own.flatMap((each) => {
      if (each.from === undefined || each.to === undefined) return [];
      const leftEnd = looks === 'north' || looks === 'west' ? each.from - from : to - each.to;
      return [{ ...each, left: leftEnd - inset, wide: each.to - each.from }];
    });
    const count = piecesIn(length.value, width.value);
    const panels = Array.from({ length: count }, (_, number): LaidPanel => {
      const before = constant('panels before it', number, 'number');
      const last = number === count - 1 ? measure('length', rest, length, width, before) : width;
      const own = Math.abs(last.value - width.value) < SMALL ? width : last;
      const begins = number * width.value;
      const ends = begins + own.value;
      return {
        name: `${label} ${number + 1}`,
        from: measure('length', start, width, before),
        width: own,
        openings: placed
          .filter(({ left, wide }) => left < ends - SMALL && left + wide > begins + SMALL)
          .map((each) => each.label),
      };
    });
    const joints = panels.slice(1).map(({ from: joint }) => joint.value);
    const cut = joints.flatMap((joint) =>
      placed.filter(({ left, wide }) => left < joint - SMALL && left + wide > joint + SMALL).map(({ height }) => height),
    );
    return { label, length, panels, cut, loose: own.filter((each) => each.from === undefined).map((each) => each.label) };
  });
}

/** Less than a saw cuts away. */
const SMALL = 1;

export function piecesIn(length: number, width: number): number {
  return width > 0 ? Math.max(0, Math.ceil(length / width - 1e-9)) : 0;
}

/** Of several sides that look the same way, the one that a placed opening lies nearest to. */
function isNearest({ side, across }: WallOpening, at: number, { outline }: FloorShape): boolean {
  const distances = sidesOf(outline)
    .filter(({ looks }) => looks === side)
    .map((each) => Math.abs(each.at - across));
  return Math.abs(at - across) <= Math.min(...distances) + SMALL;
}

function lies({ from, to }: WallOpening, start: number, end: number): boolean {
  return from === undefined || to === undefined || (from >= start - SMALL && to <= end + SMALL);
}

/** The openings in outside walls of rooms, one by one: placed where both the room and the opening are. */
export function wallOpenings(rooms: readonly Room[]): readonly WallOpening[] {
  return rooms.flatMap((room) => {
    const corner = room.given.at?.value;
    const shape = roomShape(room);
    return openingsOf(room).flatMap((held): readonly WallOpening[] => {
      const { side, outside, width, height, count, type, at } = held;
      if (!outside || side === undefined || width === undefined || height === undefined || type === undefined) return [];
      return Array.from({ length: Math.min(MOST, count.value) }, (_, nth) => {
        const bare = { label: type.label, side, height, across: 0, from: undefined, to: undefined };
        const along = at[nth];
        if (corner === undefined || shape === undefined || along === undefined) return bare;
        const [west, south] = [corner.east.value, corner.north.value];
        const [east, north] = [west + shape.width.value, south + shape.depth.value];
        // From the left corner of the room, seen from inside.
        const found = {
          north: { across: north, from: west + along.value },
          west: { across: west, from: south + along.value },
          south: { across: south, from: east - along.value - width.value },
          east: { across: east, from: north - along.value - width.value },
          northeast: undefined,
          southeast: undefined,
          southwest: undefined,
          northwest: undefined,
        }[side];
        // No panel is laid along a slanted side.
        return found === undefined ? bare : { ...bare, ...found, to: found.from + width.value };
      });
    });
  });
}

const MOST = 1000;
