// Findings that say what one of the last look said are that one: nothing is written, sent or drawn again for them.
import { sameList } from '#kit/differing';
import { type Finding, sameFinding } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';

/** The findings with those of before in the place of their equals; the list of before where all are. */
export function asBefore(findings: readonly Finding[], before: readonly Finding[]): readonly Finding[] {
  if (sameList(findings, before)) return before;
  let bySlot: Map<Slot, Finding[]> | undefined;
  const kept = findings.map((each, at) => {
    const old = before[at];
    if (old !== undefined && sameFinding(old, each)) return old;
    bySlot ??= grouped(before);
    return bySlot.get(each.place.slot)?.find((other) => sameFinding(other, each)) ?? each;
  });
  return sameList(kept, before) ? before : kept;
}

function grouped(findings: readonly Finding[]): Map<Slot, Finding[]> {
  const groups = new Map<Slot, Finding[]>();
  for (const each of findings) {
    addTo(groups, each.place.slot, each);
  }
  return groups;
}
