// The lines of one kind of work shared out among those who do it. A scoped task takes what its words say; an unscoped one
// takes what no other task of that work has claimed. Of two looks at a work, most lines and tasks are the same: a task is
// asked again only where its own words changed or where a line that it held went or one that it holds came.
import { type Differing, differing, keptWhereSame, sameList } from '#kit/differing';
import type { Slot } from '#kit/place';
import type { Line } from '#takeoff/lines';
import type { Claim, WorkClaims } from './claims.ts';
import type { Doer } from './doers.ts';
import { isInPlace, roomsOf } from './line-change.ts';
import { claimsOf, emptyPart, leftBy, moved, type Part, partOf, remaining, rest } from './parts.ts';

export interface SharedOut {
  readonly lines: readonly Line[];
  /** The room of each line: the same list while the rooms are. */
  readonly rooms: readonly (Slot | undefined)[];
  readonly doers: readonly Doer[];
  /** One for each doer. */
  readonly parts: readonly Part[];
  readonly claims: WorkClaims;
}

export function shareOut(work: string, doers: readonly Doer[], lines: readonly Line[], before: SharedOut | undefined): SharedOut {
  const change = differing(before?.lines ?? [], lines);
  if (before !== undefined && before.doers === doers && isInPlace(before.lines, lines, change)) {
    const hangsOnQuantity = doers.some(({ scope }) => scope.byQuantity);
    if (!hangsOnQuantity) return replaced(before, lines, change);
  }
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

/** The same shares, of other lines. */
function replaced(old: SharedOut, lines: readonly Line[], { from, now }: Differing): SharedOut {
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

/** The parts of the scoped doers, at their numbers; of the others nothing yet. */
function scopedParts(
  doers: readonly Doer[],
  lines: readonly Line[],
  rooms: readonly (Slot | undefined)[],
  change: Differing,
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
function isKept({ at, first, last, doer }: Part, lines: readonly Line[], { from, before, now }: Differing): boolean {
  if (last >= from && first < before) for (const place of at) if (place >= from && place < before) return false;
  for (let place = from; place < now; place++) if (doer.scope.holds(lines[place]!)) return false;
  return true;
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

/** Names of goods in the order in which they first stand: those that came for those that went leave it as it is. */
function goodsNow(lines: readonly Line[], { from, before, now }: Differing, old: SharedOut | undefined): readonly string[] {
  if (old !== undefined && sameList(goodsIn(old.lines, from, before), goodsIn(lines, from, now))) return old.claims.goods;
  return keptWhereSame(old?.claims.goods, goodsIn(lines, 0, lines.length));
}

function goodsIn(lines: readonly Line[], from: number, to: number): readonly string[] {
  const names = new Set<string>();
  for (let at = from; at < to; at++) {
    const { goods } = lines[at]!;
    if (goods !== undefined) names.add(goods.name);
  }
  return [...names];
}
