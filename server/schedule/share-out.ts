// The lines of one kind of work shared out among those who do it. A scoped task takes what its words say; an unscoped one
// takes what no other task of that work has claimed. Of two looks at a work, most lines and tasks are the same: a task is
// asked again only where its own words changed or where a line that it held went or one that it holds came.
import type { Slot } from '#kit/place';
import type { Line } from '#takeoff/lines';
import type { Claim, WorkClaims } from './claims.ts';
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

export interface SharedOut {
  readonly lines: readonly Line[];
  /** The room of each line: the same list while the rooms are. */
  readonly rooms: readonly (Slot | undefined)[];
  readonly doers: readonly Doer[];
  /** One for each doer. */
  readonly parts: readonly Part[];
  readonly claims: WorkClaims;
}

/** Lines that came and went between two looks: the rest is the same from the top and from the bottom. */
interface Change {
  readonly from: number;
  /** Where the lines that went end among those before, and where those that came end now. */
  readonly before: number;
  readonly now: number;
}

const EXACT = 1e-9;

export function shareOut(work: string, doers: readonly Doer[], lines: readonly Line[], before: SharedOut | undefined): SharedOut {
  const change = changeOf(before?.lines ?? [], lines);
  if (before !== undefined && before.doers === doers && isInPlace(before, lines, change)) return replaced(before, lines, change);
  const rooms = roomsOf(lines, change, before?.rooms);
  const parts = scopedParts(doers, lines, rooms, change, before);
  const left = leftBy(parts, lines.length);
  const takers = doers.filter(({ scope }) => !scope.scoped);
  for (let number = 0; number < doers.length; number++) {
    const doer = doers[number]!;
    if (doer.scope.scoped) continue;
    parts[number] = doer === takers[0] ? rest(doer, lines, left, oldPart(before, doers, number)) : emptyPart(doer);
  }
  const same = before?.doers === doers;
  const claims: WorkClaims = {
    work,
    tasks: same ? before.claims.tasks : doers.map(({ task }) => task),
    rivals: same ? before.claims.rivals : takers.slice(1).map(({ task }) => task),
    open: remaining(lines, left, 1, before?.claims.open),
    twice: remaining(lines, left, -1, before?.claims.twice),
    goods: goodsNow(lines, change, before),
  };
  return { lines, rooms, doers, parts, claims };
}

/** Whether lines came one for one in place of others that stand at the same places of the house: a room grew, and nothing else. */
function isInPlace(old: SharedOut, lines: readonly Line[], { from, before, now }: Change): boolean {
  if (before !== now || old.doers.some(({ scope }) => scope.byQuantity)) return false;
  for (let at = from; at < now; at++) if (!samePlace(old.lines[at]!, lines[at]!)) return false;
  return true;
}

function samePlace(a: Line, b: Line): boolean {
  const [from, to] = [a.where, b.where];
  return (
    from.room === to.room &&
    from.element === to.element &&
    from.level === to.level &&
    a.coats === b.coats &&
    a.goods?.name === b.goods?.name
  );
}

/** The same shares, of other lines. */
function replaced(old: SharedOut, lines: readonly Line[], { from, now }: Change): SharedOut {
  const parts = old.parts.slice();
  for (let number = 0; number < parts.length; number++) {
    const part = parts[number]!;
    if (part.last < from || part.first >= now) continue;
    parts[number] = { ...part, claims: claimsOf(lines, part.at, part.shares, part.claims) };
  }
  const { open, twice } = old.claims;
  if (open.length === 0 && twice.length === 0) return { ...old, lines, parts };
  const inPlaceOf = new Map<Line, Line>();
  for (let at = from; at < now; at++) inPlaceOf.set(old.lines[at]!, lines[at]!);
  return { ...old, lines, parts, claims: { ...old.claims, open: renewed(open, inPlaceOf), twice: renewed(twice, inPlaceOf) } };
}

function renewed(claims: readonly Claim[], inPlaceOf: ReadonlyMap<Line, Line>): readonly Claim[] {
  const all = claims.slice();
  for (let nth = 0; nth < all.length; nth++) {
    const line = inPlaceOf.get(all[nth]!.line);
    if (line !== undefined) all[nth] = { line, share: all[nth]!.share };
  }
  return all;
}

function changeOf(before: readonly Line[], now: readonly Line[]): Change {
  const least = Math.min(before.length, now.length);
  let from = 0;
  while (from < least && before[from] === now[from]) from++;
  let same = 0;
  while (same < least - from && before[before.length - 1 - same] === now[now.length - 1 - same]) same++;
  return { from, before: before.length - same, now: now.length - same };
}

function roomsOf(
  lines: readonly Line[],
  { from, before, now }: Change,
  old: readonly (Slot | undefined)[] | undefined,
): readonly (Slot | undefined)[] {
  let same = old !== undefined && before === now;
  for (let at = from; same && at < now; at++) same = old![at] === lines[at]!.where.room;
  if (same) return old!;
  const rooms = new Array<Slot | undefined>(lines.length);
  for (let at = 0; at < from; at++) rooms[at] = old![at];
  for (let at = from; at < now; at++) rooms[at] = lines[at]!.where.room;
  for (let at = now; at < lines.length; at++) rooms[at] = old![at + before - now];
  return rooms;
}

/** The parts of the scoped doers, at their numbers; of the others nothing yet. */
function scopedParts(
  doers: readonly Doer[],
  lines: readonly Line[],
  rooms: readonly (Slot | undefined)[],
  change: Change,
  before: SharedOut | undefined,
): Part[] {
  const parts = new Array<Part>(doers.length);
  const asked: number[] = [];
  for (let number = 0; number < doers.length; number++) {
    if (!doers[number]!.scope.scoped) continue;
    const old = oldPart(before, doers, number);
    if (old === undefined || !isKept(old, lines, change)) asked.push(number);
    else parts[number] = moved(old, change);
  }
  const byRoom = linesByRoom(
    rooms,
    asked.map((number) => doers[number]!),
  );
  for (const number of asked) {
    const doer = doers[number]!;
    const old = before?.parts[number];
    parts[number] = partOf(doer, lines, heldBy(doer, lines, byRoom), old?.doer.task.slot === doer.task.slot ? old : undefined);
  }
  return parts;
}

/** The part of the same doer, where it stood or as much further down as there are more doers now. */
function oldPart(before: SharedOut | undefined, doers: readonly Doer[], number: number): Part | undefined {
  if (before === undefined) return undefined;
  const doer = doers[number];
  const old = before.parts[number];
  if (old?.doer === doer) return old;
  const other = before.parts[number + before.doers.length - doers.length];
  return other?.doer === doer ? other : undefined;
}

/** Whether nothing that a part holds went, and nothing came that it would hold. */
function isKept({ at, first, last, doer }: Part, lines: readonly Line[], { from, before, now }: Change): boolean {
  if (last >= from && first < before) for (const place of at) if (place >= from && place < before) return false;
  for (let place = from; place < now; place++) if (doer.scope.holds(lines[place]!)) return false;
  return true;
}

function moved(part: Part, { before, now }: Change): Part {
  const { at } = part;
  if (before === now || part.last < before) return part;
  const places = new Array<number>(at.length);
  for (let nth = 0; nth < at.length; nth++) places[nth] = at[nth]! < before ? at[nth]! : at[nth]! + now - before;
  return placed(part.doer, places, part.shares, part.claims);
}

/** Where the lines of those rooms are that the doers name; without looking into the lines. */
function linesByRoom(rooms: readonly (Slot | undefined)[], doers: readonly Doer[]): ReadonlyMap<Slot, readonly number[]> {
  const byRoom = new Map<Slot, number[]>();
  for (const { scope } of doers) for (const room of scope.rooms ?? []) byRoom.set(room, []);
  if (byRoom.size === 0) return byRoom;
  // Lines of one room mostly stand together.
  let last: Slot | undefined;
  let list: number[] | undefined;
  for (let at = 0; at < rooms.length; at++) {
    const room = rooms[at];
    if (room !== last) list = room === undefined ? undefined : byRoom.get(room);
    last = room;
    list?.push(at);
  }
  return byRoom;
}

function heldBy({ scope }: Doer, lines: readonly Line[], byRoom: ReadonlyMap<Slot, readonly number[]>): readonly number[] {
  const held: number[] = [];
  if (scope.rooms === undefined) {
    for (let at = 0; at < lines.length; at++) if (scope.holds(lines[at]!)) held.push(at);
  } else for (const room of scope.rooms) for (const at of byRoom.get(room)!) if (scope.holds(lines[at]!)) held.push(at);
  return held;
}

function partOf(doer: Doer, lines: readonly Line[], at: readonly number[], old: Part | undefined): Part {
  const share = doer.scope.share(at.map((place) => lines[place]!));
  const shares = at.map((place) => share(lines[place]!));
  return placed(doer, at, shares, claimsOf(lines, at, shares, old?.claims));
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
function rest(doer: Doer, lines: readonly Line[], left: Float64Array, old: Part | undefined): Part {
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

function emptyPart(doer: Doer): Part {
  return placed(doer, [], [], []);
}

/** What the parts leave of each line. */
function leftBy(parts: readonly (Part | undefined)[], lines: number): Float64Array {
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
function remaining(
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
function claimsOf(
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

/** Names of goods in the order in which they first stand: those that came for those that went leave it as it is. */
function goodsNow(lines: readonly Line[], { from, before, now }: Change, old: SharedOut | undefined): readonly string[] {
  if (old !== undefined && isSameList(goodsIn(old.lines, from, before), goodsIn(lines, from, now))) return old.claims.goods;
  const goods = goodsIn(lines, 0, lines.length);
  return old !== undefined && isSameList(old.claims.goods, goods) ? old.claims.goods : goods;
}

function goodsIn(lines: readonly Line[], from: number, to: number): readonly string[] {
  const names = new Set<string>();
  for (let at = from; at < to; at++) {
    const { goods } = lines[at]!;
    if (goods !== undefined) names.add(goods.name);
  }
  return [...names];
}

function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((name, at) => name === b[at]);
}
