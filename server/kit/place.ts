// Where a thing stands: a declaration, a line below it, a stretch of that line. Never an offset or a line number of the
// whole text, so a place stays right while the text around it changes; it is looked up in the present text when shown.
import { sameList } from './differing.ts';

/** A declaration's lasting identity: the same object for as long as a file declares that kind and name. */
export interface Slot {
  readonly file: string;
  /** The kind's word ('room'), or '' for a line whose kind is unknown. */
  readonly kind: string;
  /** Lower case. For nameless declarations the number within its kind in the file, from 1. */
  readonly name: string;
  /** 0 for the first declaration of that kind and name in the file, 1 for a second one (an error), … */
  readonly again: number;
}

/** A stretch of one line of a declaration, with columns counted from that line's first letter. */
export interface Spot {
  /** Which line: the child to take at each level below the declaration's own line; empty for that line itself. */
  readonly path: readonly number[];
  readonly from: number;
  readonly to: number;
}

export interface Place {
  readonly slot: Slot;
  readonly spot: Spot;
}

const oneStep: (readonly number[])[] = [];
/** Declarations with more lines than this are rare. */
const MOST_SHARED = 1000;

/** The path to a line below another; all that lead to the same line straight below a declaration are one object. */
export function pathBelow(path: readonly number[], step: number): readonly number[] {
  if (path.length > 0 || step >= MOST_SHARED) return [...path, step];
  let shared = oneStep[step];
  if (shared === undefined) oneStep[step] = shared = Object.freeze([step]);
  return shared;
}

/** One string a slot, for maps. */
export function slotKey(slot: Slot): string {
  return `${slot.file}\n${slot.kind}\n${slot.name}\n${slot.again}`;
}

export function samePlace(a: Place, b: Place): boolean {
  return a.slot === b.slot && sameSpot(a.spot, b.spot);
}

export function sameSpot(a: Spot, b: Spot): boolean {
  return a.from === b.from && a.to === b.to && sameList(a.path, b.path);
}
