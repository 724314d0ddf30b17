// The walls round a floor, side by side as its outline goes: what is taken out goes where it lies, and openings hang where
// they stand. A door to another room hangs in the wall that both share; one to the outside where no room lies beside.
import type { Slot } from '#kit/place';
import { constant, type Quantity } from '#kit/quantity';
import { type LookingSide, sidesLooking } from '#kit/shapes/headings';
import type { Point } from '#kit/shapes/outline';
import type { FloorShape } from '#model/floor-shape';
import type { Face, FaceOpening } from '../lines.ts';
import type { Beside } from './layout.ts';
import type { Held } from './openings.ts';

type Length = Quantity<'length'>;

export interface Side extends LookingSide {
  /** 'south', 'south 2' where several look that way. */
  readonly label: string;
  readonly told: Length;
}

/** From the side's first corner, in base units; the inside lies on the left hand. */
interface Stretch {
  readonly side: Side;
  readonly from: number;
  readonly to: number;
}

/** Where an opening stands: within this stretch for sure, or somewhere on the side. */
interface Spot extends Stretch {
  readonly sure: boolean;
}

export interface Part extends Stretch {
  readonly openings: readonly FaceOpening[];
}

/** An opening, and the room on its other side or its place, where those are known. */
export interface Hung {
  readonly held: Held;
  readonly leads?: Slot | undefined;
  readonly spot?: Point | undefined;
}

export function sidesOfFloor({ outline, width, depth }: FloorShape): readonly Side[] {
  const seen = new Map<string, number>();
  return sidesLooking(outline)
    .filter(({ length }) => length > 0)
    .map((side) => {
      const nth = (seen.get(side.looks) ?? 0) + 1;
      seen.set(side.looks, nth);
      const across = side.looks === 'north' || side.looks === 'south' ? width : depth;
      const told = across.value === side.length ? across : constant('side', side.length, 'length');
      return { ...side, told, label: nth === 1 ? side.looks : `${side.looks} ${nth}` };
    });
}

export function wholeParts(sides: readonly Side[]): readonly Part[] {
  return sides.map((side) => ({ side, from: 0, to: side.length, openings: [] }));
}

/** What is left of the parts without the stretches, or only what lies in them. */
export function partsLess(parts: readonly Part[], taken: readonly Beside[]): readonly Part[] {
  const sides = parts.map(({ side }) => side);
  return taken.reduce((rest, { ends }) => {
    const out = stretchAt(sides, ends);
    if (out === undefined) return rest;
    return rest.flatMap((part) => {
      if (part.side !== out.side || part.to <= out.from || part.from >= out.to) return [part];
      const pieces = [
        { ...part, to: out.from },
        { ...part, from: out.to },
      ];
      return pieces.filter(({ from, to }) => to - from > LEAST);
    });
  }, parts);
}

export function partsIn(sides: readonly Side[], stretches: readonly Beside[]): readonly Part[] {
  return stretches.flatMap(({ ends }) => {
    const part = stretchAt(sides, ends);
    return part === undefined ? [] : [{ ...part, openings: [] }];
  });
}

/** Each opening in the part that it stands in, else in the longest; `beside` are the rooms along the sides; `onlySure` leaves out what might stand elsewhere. */
export function withHung(
  parts: readonly Part[],
  sides: readonly Side[],
  hung: readonly Hung[],
  beside: readonly Beside[],
  onlySure = false,
): readonly Part[] {
  const own = parts.map(() => [] as FaceOpening[]);
  for (const each of hung) {
    const { type, count, width, height, at } = each.held;
    if (width === undefined || height === undefined) continue;
    const sill = type?.kind === 'window' ? type.given.sill?.value : undefined;
    for (let nth = 0; nth < count.value && nth < MOST; nth++) {
      const where = stretchFor(each, nth, width.value, sides, beside);
      const part = where === undefined ? (onlySure ? undefined : longestOf(parts)) : partAt(parts, where, onlySure);
      // It stands where something else is laid.
      if (part === undefined) continue;
      const left = where?.side === part.side ? at[nth] : undefined;
      own[parts.indexOf(part)]!.push({ label: type?.label ?? 'cased opening', width, height, sill, at: leftIn(part, left) });
    }
  }
  return parts.map((part, index) => (own[index]!.length === 0 ? part : { ...part, openings: own[index]! }));
}

export function facesOfParts(parts: readonly Part[], height: Length): readonly Face[] {
  return parts.map(({ side, from, to, openings }) => {
    const pieces = parts.filter((each) => each.side === side);
    const nth = pieces.findIndex((each) => each.from === from) + 1;
    const length = to - from === side.length ? side.told : constant('part of the side', to - from, 'length');
    return { label: pieces.length > 1 ? `${side.label}, part ${nth}` : side.label, length, height, openings };
  });
}

/** Undefined where nobody can tell. */
function stretchFor(
  { held, leads, spot }: Hung,
  nth: number,
  width: number,
  sides: readonly Side[],
  beside: readonly Beside[],
): Spot | undefined {
  const looking = held.side === undefined ? sides : sides.filter(({ looks }) => looks === held.side);
  const left = held.side === undefined ? undefined : held.at[nth]?.value;
  if (spot !== undefined) return forSure(stretchAt(looking.length > 0 ? looking : sides, [spot, spot]));
  if (leads !== undefined && left === undefined) {
    const shared = beside.filter(({ room }) => room === leads).flatMap(({ ends }) => stretchAt(sides, ends) ?? []);
    const told = shared.filter(({ side }) => looking.includes(side));
    return forSure(longestOf(told.length > 0 ? told : shared));
  }
  if (held.side !== undefined) {
    const fitting = left === undefined ? [] : looking.filter(({ length }) => length >= left + width);
    const side = fitting[0] ?? longestOf(looking.map((each) => ({ side: each, from: 0, to: each.length })))?.side;
    if (side === undefined) return undefined;
    if (left === undefined) return { side, from: 0, to: side.length, sure: false };
    // Seen from inside, the left end of a wall is its second corner.
    return { side, from: side.length - left - width, to: side.length - left, sure: true };
  }
  return held.outside && beside.length > 0 ? forSure(longestOf(partsLess(wholeParts(sides), beside))) : undefined;
}

function forSure(stretch: Stretch | undefined): Spot | undefined {
  return stretch === undefined ? undefined : { ...stretch, sure: true };
}

/** The middle of an outside opening on the plan of its room. */
export function spotOf(hung: Hung, sides: readonly Side[], beside: readonly Beside[]): Point | undefined {
  const width = hung.held.width?.value ?? 0;
  const found = stretchFor(hung, 0, width, sides, beside);
  if (found === undefined) return undefined;
  const { side } = found;
  const share = (found.from + found.to) / 2 / side.length;
  return { x: side.from.x + (side.to.x - side.from.x) * share, y: side.from.y + (side.to.y - side.from.y) * share };
}

/** On the side that is nearest to the middle of it. */
function stretchAt(sides: readonly Side[], [from, to]: Beside['ends']): Stretch | undefined {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  let best: Side | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const side of sides) {
    const along = Math.min(side.length, Math.max(0, alongOf(side, middle)));
    const share = along / side.length;
    const x = side.from.x + (side.to.x - side.from.x) * share;
    const y = side.from.y + (side.to.y - side.from.y) * share;
    const far = (middle.x - x) * (middle.x - x) + (middle.y - y) * (middle.y - y);
    if (far < least) [best, least] = [side, far];
  }
  if (best === undefined) return undefined;
  const [one, other] = [alongOf(best, from), alongOf(best, to)];
  return { side: best, from: Math.max(0, Math.min(one, other)), to: Math.min(best.length, Math.max(one, other)) };
}

function alongOf({ from, to, length }: Side, { x, y }: Point): number {
  return ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
}

function partAt(parts: readonly Part[], { side, from, to, sure }: Spot, onlySure: boolean): Part | undefined {
  const middle = (from + to) / 2;
  const on = parts.filter((part) => part.side === side);
  if (sure || onlySure) return sure ? on.find((part) => part.from <= middle && part.to >= middle) : undefined;
  return longestOf(on);
}

function leftIn({ side, to }: Part, left: Length | undefined): Length | undefined {
  if (left === undefined || to === side.length) return left;
  return constant('from the left end', left.value - (side.length - to), 'length');
}

function longestOf<S extends Stretch>(list: readonly S[]): S | undefined {
  return list.reduce<S | undefined>(
    (best, each) => (best === undefined || each.to - each.from > best.to - best.from ? each : best),
    undefined,
  );
}

/** In base units: nothing is laid on less. */
const LEAST = 1;
/** More of one sort stand in no wall. */
const MOST = 1000;
