// Fees of visits that failed, as the diary tells them: each is paid besides the visit's own.
import type { Place, Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { ElementOf } from '#model/model';

export interface FailedVisit {
  readonly fee: Quantity<'money'>;
  readonly place: Place;
}

const kept = new WeakMap<readonly ElementOf<'progress'>[], ReadonlyMap<Slot, readonly FailedVisit[]>>();

/** By step; the same while the diary is. */
export function failedVisits(diary: readonly ElementOf<'progress'>[]): ReadonlyMap<Slot, readonly FailedVisit[]> {
  let known = kept.get(diary);
  if (known === undefined) kept.set(diary, (known = read(diary)));
  return known;
}

function read(diary: readonly ElementOf<'progress'>[]): ReadonlyMap<Slot, readonly FailedVisit[]> {
  const found = new Map<Slot, FailedVisit[]>();
  for (const { entries } of diary) {
    for (const { value, deeper } of entries) {
      if (deeper.failed === undefined || deeper.fee === undefined) continue;
      const list = found.get(value);
      const visit = { fee: deeper.fee.value, place: deeper.fee.place };
      if (list === undefined) found.set(value, [visit]);
      else list.push(visit);
    }
  }
  return found;
}
