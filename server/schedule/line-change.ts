// What changed between two looks at the lines of a work: a stretch of them, with the same lines above and below.
import type { Differing } from '#kit/differing';
import type { Slot } from '#kit/place';
import type { Line } from '#takeoff/lines';

/** The room of each line: the same list while the rooms are. */
export function roomsOf(
  lines: readonly Line[],
  { from, before, now }: Differing,
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
export function isInPlace(old: readonly Line[], lines: readonly Line[], { from, before, now }: Differing): boolean {
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
