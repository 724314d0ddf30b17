// How the placed rooms of a level lie against each other: which stretches have an inside wall between them and of what,
// which are open, and where inside walls run into others.
import { alike } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import { allFacings } from '#kit/shapes/facing';
import { type SlantedFacing, slantedFacings } from '#kit/shapes/headings';
import { contains, isSlanted, lengthOfSide, type Outline, type Point } from '#kit/shapes/outline';
import { levelShape } from '#model/facts/level';
import { roomShape } from '#model/facts/room';
import type { Assembly, ElementOf, Goods, Level, Room } from '#model/model';
import { materialOf } from '../goods.ts';
import { sameQuantity } from '../same.ts';
import { facesOf } from './layers.ts';

export type Wall = ElementOf<'wall'>;

/** A straight inside wall, or several stretches of it in one line. */
export interface Run {
  readonly assembly: Assembly;
  readonly length: Quantity<'length'>;
  /** The pairs of rooms it parts. */
  readonly pairs: readonly (readonly [Slot, Slot])[];
  /** How many of its ends run into an outside wall, and how many into another inside wall. */
  readonly outside: number;
  readonly inside: number;
}

/** What a stretch of a room's wall is on its side: an inside wall, seen from its first side or its second. */
export interface Face {
  readonly assembly: Assembly;
  readonly side: 'first' | 'second';
  readonly length: Quantity<'length'>;
  /** Where it lies. */
  readonly beside: Beside;
}

/** A stretch of a room's side that another room lies along, from the room's own south-west corner. */
export interface Beside {
  readonly room: Slot;
  readonly ends: readonly [Point, Point];
  readonly open: boolean;
}

export interface Layout {
  readonly placed: boolean;
  readonly runs: readonly Run[];
  readonly faces: ReadonlyMap<Slot, readonly Face[]>;
  /** Stretches without a wall. */
  readonly open: ReadonlyMap<Slot, readonly Quantity<'length'>[]>;
  readonly beside: ReadonlyMap<Slot, readonly Beside[]>;
}

interface Stretch {
  readonly assembly: Assembly;
  readonly axis: 'x' | 'y';
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
  readonly length: Quantity<'length'>;
  readonly pair: readonly [Slot, Slot];
}

const shared = form(
  'stretch between the rooms',
  'from the later start to the earlier end: start, length; start, length',
  (start = 0, length = 0, otherStart = 0, otherLength = 0) =>
    Math.min(start + length, otherStart + otherLength) - Math.max(start, otherStart),
);

/**
 * `rooms` are those of the level, in plan order; `walls` the inside walls that the plan names; rooms further apart than
 * `widest` (base units) have no single wall between them.
 */
export function layoutOf(level: Level, rooms: readonly Room[], walls: readonly Wall[], widest: number): Layout {
  const placed = rooms.filter((room) => room.given.at !== undefined && roomShape(room) !== undefined);
  const open = new Map<Slot, Quantity<'length'>[]>();
  const faces = new Map<Slot, Face[]>();
  const beside = new Map<Slot, Beside[]>();
  const stretches: Stretch[] = [];
  const slanted: Run[] = [];
  /** What stands along a stretch, told to both rooms; undefined where nothing does. */
  const between = (
    one: Room,
    other: Room,
    length: Quantity<'length'>,
    touches: boolean,
    [ends, otherEnds]: readonly [Beside['ends'], Beside['ends']],
  ): Assembly | undefined => {
    const isOpen = touches || areOpen(one, other);
    const own: Beside = { room: other.slot, ends: withinRoom(one, ends), open: isOpen };
    const others: Beside = { room: one.slot, ends: withinRoom(other, otherEnds), open: isOpen };
    addTo(beside, one.slot, own);
    addTo(beside, other.slot, others);
    if (isOpen) {
      addTo(open, one.slot, length);
      addTo(open, other.slot, length);
      return undefined;
    }
    const named = walls.find((wall) => parts(wall, one.slot, other.slot));
    const assembly = named?.given.of?.value ?? level.given.partitions?.value;
    if (assembly === undefined) return undefined;
    const firstSide = named?.given.between?.value[0]?.value ?? one.slot;
    addTo(faces, one.slot, { assembly, side: sideTo(one, other, assembly, firstSide), length, beside: own });
    addTo(faces, other.slot, { assembly, side: sideTo(other, one, assembly, firstSide), length, beside: others });
    return assembly;
  };
  const regions = placed.map(regionOf);
  for (const { first, second, looks, at, from, to, gap } of allFacings(regions, widest)) {
    const one = placed[first]!;
    const other = placed[second]!;
    const axis = looks === 'east' || looks === 'west' ? 'y' : 'x';
    const length = stretchLength(one, other, axis, to - from);
    const across = looks === 'east' || looks === 'north' ? at + gap : at - gap;
    const line = (far: number): Beside['ends'] =>
      axis === 'y'
        ? [
            { x: far, y: from },
            { x: far, y: to },
          ]
        : [
            { x: from, y: far },
            { x: to, y: far },
          ];
    const assembly = between(one, other, length, gap === 0, [line(at), line(across)]);
    if (assembly === undefined) continue;
    const low = looks === 'east' || looks === 'north' ? at : at - gap;
    stretches.push({ assembly, axis, low, high: low + gap, from, to, length, pair: [one.slot, other.slot] });
  }
  const outline = levelShape(level)?.outline;
  for (const { first, second, length, gap, ends } of slantedStretches(regions, widest)) {
    const [one, other] = [placed[first]!, placed[second]!];
    const long = constant('slanted stretch between the rooms', length, 'length');
    const assembly = between(one, other, long, gap === 0, [ends, ends]);
    if (assembly === undefined) continue;
    const outside = outline === undefined ? 0 : endsOutside(ends, outline, widest);
    slanted.push({ assembly, length: long, pairs: [[one.slot, other.slot]], outside, inside: 2 - outside });
  }
  const runs = [...runsOf(stretches, outline, widest), ...slanted];
  return { placed: placed.length > 0, runs, faces, open, beside };
}

/**
 * A side made for rooms of one use (board for baths) looks to the room of that use; where both rooms tell theirs and neither
 * is such a room, neither gets it. Else the side is the one that the wall names.
 */
function sideTo(room: Room, other: Room, assembly: Assembly, firstSide: Slot): Face['side'] {
  const faces = facesOf(assembly);
  const [first, last] = [roomsFor(faces[0]), roomsFor(faces[faces.length - 1])];
  const named = firstSide === room.slot ? 'first' : 'second';
  const uses = first ?? last;
  if (uses === undefined || (first !== undefined && last !== undefined)) return named;
  const suits = ({ given }: Room): boolean => uses.some(({ value }) => value === given.use?.value);
  const made = first !== undefined ? 'first' : 'second';
  if (suits(room)) return made;
  const told = room.given.use !== undefined && other.given.use !== undefined;
  return suits(other) || told ? (made === 'first' ? 'second' : 'first') : named;
}

function roomsFor(goods: Goods | undefined) {
  return goods === undefined ? undefined : materialOf(goods)?.given['for-rooms']?.value;
}

/** Each wall between slanted sides by itself, with the numbers of its rooms. */
function slantedStretches(
  regions: readonly Outline[],
  widest: number,
): readonly (SlantedFacing & { readonly first: number; readonly second: number })[] {
  const slanting = regions.flatMap((region, index) => (isSlanted(region) ? [index] : []));
  return slanting.flatMap((first, nth) =>
    slanting
      .slice(nth + 1)
      .flatMap((second) =>
        slantedFacings(regions[first]!, regions[second]!, widest).map((facing) => ({ ...facing, first, second })),
      ),
  );
}

/** How many ends of a wall, a wall's width further on, lie outside. */
function endsOutside([from, to]: SlantedFacing['ends'], outline: Outline, widest: number): number {
  const length = lengthOfSide(from, to);
  const [x, y] = [((to.x - from.x) * widest) / length, ((to.y - from.y) * widest) / length];
  return [
    { x: from.x - x, y: from.y - y },
    { x: to.x + x, y: to.y + y },
  ].filter((point) => !contains(outline, point)).length;
}

/** The older runs where the new ones say the same. */
export function sameRuns(runs: readonly Run[], before: readonly Run[]): readonly Run[] {
  const same = (a: Run, b: Run): boolean =>
    a.assembly === b.assembly &&
    a.outside === b.outside &&
    a.inside === b.inside &&
    sameQuantity(a.length, b.length) &&
    a.pairs.length === b.pairs.length &&
    a.pairs.every(([one, other], index) => one === b.pairs[index]![0] && other === b.pairs[index]![1]);
  return alike(runs, before, same) ? before : runs;
}

function withinRoom(room: Room, [from, to]: Beside['ends']): Beside['ends'] {
  const { east, north } = room.given.at!.value;
  return [
    { x: from.x - east.value, y: from.y - north.value },
    { x: to.x - east.value, y: to.y - north.value },
  ];
}

function regionOf(room: Room): Outline {
  const { east, north } = room.given.at!.value;
  return roomShape(room)!.outline.map(({ x, y }) => ({ x: x + east.value, y: y + north.value }));
}

/** The same object for as long as it says the same, so that a room whose neighbour changes otherwise is not touched. */
function stretchLength(one: Room, other: Room, axis: 'x' | 'y', value: number): Quantity<'length'> {
  let known = lengths.get(one.slot);
  if (known === undefined) lengths.set(one.slot, (known = new WeakMap()));
  const kept = known.get(other.slot) ?? [];
  const length = computedLength(one, other, axis, value);
  const same = kept.find((each) => sameQuantity(each, length));
  if (same !== undefined) return same as Quantity<'length'>;
  // Two rooms face each other along a few stretches at most; older ones are let go.
  known.set(other.slot, [length, ...kept].slice(0, 8));
  return length;
}
const lengths = new WeakMap<Slot, WeakMap<Slot, readonly Quantity[]>>();

function computedLength(one: Room, other: Room, axis: 'x' | 'y', value: number): Quantity<'length'> {
  const sizes = [one, other].map((room) => room.given.size?.value);
  const [a, b] = sizes;
  if (a === undefined || b === undefined) return constant('stretch between the rooms', value, 'length');
  const at = one.given.at!.value;
  const otherAt = other.given.at!.value;
  return axis === 'x'
    ? measure('length', shared, at.east, a.left, otherAt.east, b.left)
    : measure('length', shared, at.north, a.right, otherAt.north, b.right);
}

function areOpen(one: Room, other: Room): boolean {
  return (
    one.given['open to']?.value.some(({ value }) => value === other.slot) === true ||
    other.given['open to']?.value.some(({ value }) => value === one.slot) === true
  );
}

function parts(wall: Wall, one: Slot, other: Slot): boolean {
  const rooms = wall.given.between?.value.map(({ value }) => value) ?? [];
  return rooms.includes(one) && rooms.includes(other);
}

/** Stretches in one line that only a crossing wall parts are one wall; the crossing belongs to it. */
function runsOf(stretches: readonly Stretch[], outline: Outline | undefined, widest: number): readonly Run[] {
  const lines = new Map<Assembly, Map<string, Stretch[]>>();
  for (const stretch of stretches) {
    let ofMake = lines.get(stretch.assembly);
    if (ofMake === undefined) lines.set(stretch.assembly, (ofMake = new Map()));
    const key = `${stretch.axis} ${stretch.low} ${stretch.high}`;
    addTo(ofMake, key, stretch);
  }
  return [...lines.values()].flatMap((ofMake) => [...ofMake.values()]).flatMap((line) => runsIn(line, outline, widest));
}

function runsIn(line: readonly Stretch[], outline: Outline | undefined, widest: number): readonly Run[] {
  const runs: Run[] = [];
  let run: Stretch[] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const stretch of [...line].sort((a, b) => a.from - b.from)) {
    if (run.length > 0 && stretch.from - end > widest) {
      runs.push(joined(run, outline, widest));
      run = [];
      end = Number.NEGATIVE_INFINITY;
    }
    run.push(stretch);
    end = Math.max(end, stretch.to);
  }
  return run.length === 0 ? runs : [...runs, joined(run, outline, widest)];
}

function joined(line: readonly Stretch[], outline: Outline | undefined, widest: number): Run {
  const first = line[0]!;
  const lengths: Quantity<'length'>[] = [];
  let end = first.from;
  for (const stretch of line) {
    if (stretch.from > end) lengths.push(constant('wall that crosses', stretch.from - end, 'length'));
    lengths.push(stretch.length);
    end = Math.max(end, stretch.to);
  }
  const middle = (first.low + first.high) / 2;
  const meets = (along: number): boolean => {
    const point = first.axis === 'x' ? { x: along, y: middle } : { x: middle, y: along };
    return outline !== undefined && !contains(outline, point);
  };
  const outside = [first.from - widest, end + widest].filter(meets).length;
  return {
    assembly: first.assembly,
    length: lengths.length === 1 ? lengths[0]! : total('wall in one line', 'length', lengths),
    pairs: line.map(({ pair }) => pair),
    outside,
    inside: 2 - outside,
  };
}
