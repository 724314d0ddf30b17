// A room under a sloped ceiling: from a low side up to the side across from it, or up to its middle and down again. Its
// walls, its ceiling along the slope, its volume.
import { type Form, form, measure, type Quantity } from '#kit/quantity';
import { convexArea, cut, middleOfArea } from '#kit/shapes/convex';
import { type Direction, isSlanted, lengthOfSide, type Outline } from '#kit/shapes/outline';
import { rectanglesOf } from '#kit/shapes/region';
import type { FloorShape, Made } from '../floor-shape.ts';
import type { Room } from '../model.ts';

export interface Sloped {
  readonly walls: Quantity<'area'>;
  /** The walls' height on average: of a wall as long as the whole perimeter. */
  readonly height: Quantity<'length'>;
  readonly ceiling: Quantity<'area'>;
  readonly volume: Quantity<'volume'>;
  /** At the high side. */
  readonly highest: Quantity<'length'>;
}

const OPPOSITE: Readonly<Record<Direction, Direction>> = { north: 'south', south: 'north', east: 'west', west: 'east' };

/** Whether the sides that a sloped ceiling names lie across from each other, or the high one is the middle. */
export function slopeFits({ given: { sloped } }: Room): boolean {
  if (sloped === undefined) return true;
  const { lowSide, high } = sloped.value;
  return high.side === 'middle' || OPPOSITE[lowSide] === high.side;
}

/** The ceiling over a room's own outline: how high it is, how far the highest line lies from the low side, and the slope. */
export interface CeilingOver {
  readonly low: Direction;
  /** Level distance from the low side. */
  readonly along: (point: Outline[number]) => number;
  readonly height: (at: number) => number;
  /** Where it goes down again. */
  readonly crest: number | undefined;
  readonly pitch: number;
  readonly halves: readonly Outline[];
}

export function ceilingOver(room: Room, { outline }: FloorShape): CeilingOver | undefined {
  const sloped = room.given.sloped?.value;
  if (sloped === undefined || !slopeFits(room)) return undefined;
  const { low, lowSide, high } = sloped;
  const middle = high.side === 'middle';
  const rise = riseOver(outline, lowSide, middle, low.value, high.height.value);
  const most = Math.max(...outline.map(rise.along));
  const run = middle ? most / 2 : most;
  const { along, height } = rise;
  const pitch = run > 0 ? (high.height.value - low.value) / run : 0;
  return { low: lowSide, along, height, crest: middle ? run : undefined, pitch, halves: rise.halves(outline) };
}

const meanHeight = form('height on average', 'walls ÷ perimeter', (walls = 0, perimeter = 1) =>
  perimeter > 0 ? walls / perimeter : 0,
);
const alongSlope = form(
  'ceiling along the slope',
  'floor area × √(1 + ((high − low) ÷ run)²)',
  (area = 0, low = 0, high = 0, run = 1) => area * Math.sqrt(1 + ((high - low) / run) * ((high - low) / run)),
);
const halfway = form('run', 'half the room across', (across = 0) => across / 2);

/** Undefined where the room says nothing of a slope, or its sides do not fit. */
export function slopedRoom(room: Room, shape: FloorShape): Sloped | undefined {
  const sloped = room.given.sloped?.value;
  if (sloped === undefined || !slopeFits(room)) return undefined;
  const { low, lowSide, high } = sloped;
  const across = lowSide === 'east' || lowSide === 'west' ? shape.width : shape.depth;
  const middle = high.side === 'middle';
  const forms = formsOf(shape.made, lowSide, middle);
  const walls = measure('area', forms.walls, ...shape.made.lengths, low, high.height);
  const run = middle ? measure('length', halfway, across) : across;
  return {
    walls,
    height: measure('length', meanHeight, walls, shape.perimeter),
    ceiling: measure('area', alongSlope, shape.area, low, high.height, run),
    volume: measure('volume', forms.volume, ...shape.made.lengths, low, high.height),
    highest: high.height,
  };
}

interface Forms {
  readonly walls: Form;
  readonly volume: Form;
}
const kept = new Map<string, Forms>();

function formsOf(made: Made, low: Direction, middle: boolean): Forms {
  const key = `${low} ${middle} ${made.key}`;
  let forms = kept.get(key);
  if (forms === undefined) {
    const of =
      (total: (outline: Outline, rise: Rise) => number) =>
      (...values: readonly number[]): number => {
        const outline = made.outline(values.slice(0, -2));
        return outline === undefined ? 0 : total(outline, riseOver(outline, low, middle, values.at(-2) ?? 0, values.at(-1) ?? 0));
      };
    kept.set(
      key,
      (forms = {
        walls: form('wall area', 'each wall: length × its height on average, from the low side to the high', of(wallsUnder)),
        volume: form('volume', 'floor × height, from the low side to the high', of(volumeUnder)),
      }),
    );
  }
  return forms;
}

/** Under one slope: as high everywhere, on average, as over the middle of the area. */
function volumeOver(part: Outline, { along, height }: Rise): number {
  return part.length < 3 ? 0 : convexArea(part) * height(along(middleOfArea(part)));
}

/** Distance from the low side, and what lies under the ceiling between two of them, a unit wide. */
interface Rise {
  readonly along: (point: Outline[number]) => number;
  readonly height: (at: number) => number;
  readonly under: (from: number, to: number) => number;
  /** The outline on each side of the line where the ceiling is highest. */
  readonly halves: (outline: Outline) => readonly Outline[];
}

function riseOver(outline: Outline, side: Direction, middle: boolean, low: number, high: number): Rise {
  const far = ({ x, y }: Outline[number]): number => (side === 'south' ? y : side === 'north' ? -y : side === 'west' ? x : -x);
  const all = outline.map(far);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const run = middle ? (most - least) / 2 : most - least;
  const height = (at: number): number => low + ((high - low) * Math.min(at, middle ? 2 * run - at : at)) / run;
  const straight = (from: number, to: number): number => (to - from) * ((height(from) + height(to)) / 2);
  return {
    along: (point) => far(point) - least,
    height,
    halves: (whole) => {
      if (!middle) return [whole];
      const [a, b] = [far({ x: 1, y: 0 }), far({ x: 0, y: 1 })];
      const c = -(least + run);
      return [cut(whole, { a, b, c }), cut(whole, { a: -a, b: -b, c: -c })];
    },
    under: (from, to) =>
      middle && from < run && to > run
        ? straight(from, run) + straight(run, to)
        : straight(Math.min(from, to), Math.max(from, to)),
  };
}

function wallsUnder(outline: Outline, { along, height, under }: Rise): number {
  return outline.reduce((sum, point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const [one, other] = [along(point), along(next)];
    const length = lengthOfSide(point, next);
    if (one === other) return sum + length * height(one);
    const [low, high] = [Math.min(one, other), Math.max(one, other)];
    return sum + (under(low, high) * length) / (high - low);
  }, 0);
}

function volumeUnder(outline: Outline, rise: Rise): number {
  if (isSlanted(outline)) return rise.halves(outline).reduce((sum, part) => sum + volumeOver(part, rise), 0);
  const { along, under } = rise;
  return rectanglesOf(outline).reduce((sum, { west, south, east, north }) => {
    const [one, other] = [along({ x: west, y: south }), along({ x: east, y: north })];
    const reach = Math.abs(other - one);
    const wide = reach === 0 ? 0 : ((east - west) * (north - south)) / reach;
    return sum + wide * under(Math.min(one, other), Math.max(one, other));
  }, 0);
}
