// What changed between two looks at the lines of a work: a stretch of them, with the same lines above and below.
import type { Slot } from '#kit/place';
import type { Line } from '#takeoff/lines';

/** Lines that came and went between two looks: the rest is the same from the top and from the bottom. */
export interface Change {
  readonly from: number;
  /** Where the lines that went end among those before, and where those that came end now. */
  readonly before: number;
  readonly now: number;
}

export function changeOf(before: readonly Line[], now: readonly Line[]): Change {
  const least = Math.min(before.length, now.length);
  let from = 0;
  while (from < least && before[from] === now[from]) from++;
  let same = 0;
  while (same < least - from && before[before.length - 1 - same] === now[now.length - 1 - same]) same++;
  return { from, before: before.length - same, now: now.length - same };
}

/** The room of each line: the same list while the rooms are. */
export function roomsOf(
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

/** Whether lines came one for one in place of others that stand at the same places of the house: a room grew, and nothing else. */
export function isInPlace(old: readonly Line[], lines: readonly Line[], { from, before, now }: Change): boolean {
  if (before !== now) return false;
  for (let at = from; at < now; at++) if (!samePlace(old[at]!, lines[at]!)) return false;
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
