// What one task takes of the lines of one work, and what all of them leave.
import type { Differing } from '#kit/differing';
import type { Line } from '#takeoff/lines';
import type { Claim } from './claims.ts';
import type { Doer } from './doers.ts';

/** What one task takes of one work. */
export interface Part {
  readonly doer: Doer;
  /** Places among the work's lines, and the share of each. */
  readonly at: readonly number[];
  readonly shares: readonly number[];
  /** The least and the greatest of the places: tells parts that a change does not touch without reading their lists. */
  readonly first: number;
  readonly last: number;
  readonly claims: readonly Claim[];
}

const EXACT = 1e-9;

export function partOf(doer: Doer, lines: readonly Line[], at: readonly number[], old: Part | undefined): Part {
  const share = doer.scope.share(at.map((place) => lines[place]!));
  const shares = at.map((place) => share(lines[place]!));
  return placed(doer, at, shares, claimsOf(lines, at, shares, old?.claims));
}

/** The same part among lines that came or went above. */
export function moved(part: Part, { before, now }: Differing): Part {
  const { at } = part;
  if (before === now || part.last < before) return part;
  const places = new Array<number>(at.length);
  for (let nth = 0; nth < at.length; nth++) places[nth] = at[nth]! < before ? at[nth]! : at[nth]! + now - before;
  return placed(part.doer, places, part.shares, part.claims);
}

function placed(doer: Doer, at: readonly number[], shares: readonly number[], claims: readonly Claim[]): Part {
  let first = Number.MAX_SAFE_INTEGER;
  let last = -1;
  for (const place of at) {
    if (place < first) first = place;
    if (place > last) last = place;
  }
  return { doer, at, shares, first, last, claims };
}

/** The unscoped doer takes whatever is left of each line. */
export function rest(doer: Doer, lines: readonly Line[], left: Float64Array, old: Part | undefined): Part {
  const at: number[] = [];
  const shares: number[] = [];
  for (let place = 0; place < lines.length; place++) {
    const share = left[place]!;
    if (!(share > EXACT && doer.scope.holds(lines[place]!))) continue;
    at.push(place);
    shares.push(share);
    left[place] = 0;
  }
  return placed(doer, at, shares, claimsOf(lines, at, shares, old?.claims));
}

export function emptyPart(doer: Doer): Part {
  return placed(doer, [], [], []);
}

/** What the parts leave of each line. */
export function leftBy(parts: readonly (Part | undefined)[], lines: number): Float64Array {
  const left = new Float64Array(lines).fill(1);
  for (let number = 0; number < parts.length; number++) {
    const part = parts[number];
    if (part === undefined) continue;
    const { at, shares } = part;
    for (let nth = 0; nth < at.length; nth++) left[at[nth]!]! -= shares[nth]!;
  }
  return left;
}

/** Lines with what is left of them (1) or claimed beyond the whole (-1). */
export function remaining(
  lines: readonly Line[],
  left: Float64Array,
  sign: 1 | -1,
  old: readonly Claim[] | undefined,
): readonly Claim[] {
  const at: number[] = [];
  const shares: number[] = [];
  for (let place = 0; place < lines.length; place++) {
    const share = sign * left[place]!;
    if (share <= EXACT) continue;
    at.push(place);
    shares.push(share);
  }
  return claimsOf(lines, at, shares, old);
}

/** Claims that are as they were, from the top and from the bottom, stay the same objects; the list does where all are. */
export function claimsOf(
  lines: readonly Line[],
  at: readonly number[],
  shares: readonly number[],
  old: readonly Claim[] = [],
): readonly Claim[] {
  const count = at.length;
  const least = Math.min(old.length, count);
  const isSame = (claim: Claim, nth: number): boolean => claim.line === lines[at[nth]!] && claim.share === shares[nth];
  let top = 0;
  while (top < least && isSame(old[top]!, top)) top++;
  if (top === count && top === old.length) return old;
  let bottom = 0;
  while (bottom < least - top && isSame(old[old.length - 1 - bottom]!, count - 1 - bottom)) bottom++;
  const claims = new Array<Claim>(count);
  for (let nth = 0; nth < top; nth++) claims[nth] = old[nth]!;
  for (let nth = top; nth < count - bottom; nth++) claims[nth] = { line: lines[at[nth]!]!, share: shares[nth]! };
  for (let nth = count - bottom; nth < count; nth++) claims[nth] = old[old.length - count + nth]!;
  return claims;
}
