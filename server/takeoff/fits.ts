// How many pieces of a length come out of a stick, or out of what is left of one.

/** The share of a length within which two are alike. */
export const EXACT = 1e-9;

/** More pieces than this nobody cuts from one stick, nor joins so many sticks to one piece. */
export const MOST_CUT = 1000;

export function fits(length: number, room: number): number {
  return Math.min(MOST_CUT, Math.floor(room / length + EXACT));
}
