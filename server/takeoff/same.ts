// Whether two quantities say the same, working and places and all: then the older object stands for both, and what was
// made from it stays.
import { alike, keptWhereSame } from '#kit/differing';
import { samePlace } from '#kit/place';
import type { Quantity } from '#kit/quantity';

export function sameQuantity(a: Quantity, b: Quantity): boolean {
  if (a === b) return true;
  return (
    a.value === b.value &&
    a.dimension === b.dimension &&
    a.unit === b.unit &&
    sameForm(a, b) &&
    (a.place === undefined ? b.place === undefined : b.place !== undefined && samePlace(a.place, b.place)) &&
    alike(a.inputs, b.inputs, sameQuantity)
  );
}

/** Constants have a form of their own each; their label and value say all. */
function sameForm(a: Quantity, b: Quantity): boolean {
  return (
    a.form === b.form ||
    (a.inputs.length === 0 &&
      a.form.label === b.form.label &&
      a.form.source === b.form.source &&
      a.form.formula === b.form.formula)
  );
}

/** The older list where it says the same, else the new one with every older quantity that still holds. */
export function sameAsBefore<D extends Quantity>(list: readonly D[], before: readonly D[] | undefined): readonly D[] {
  if (before === undefined) return list;
  const merged = list.map((each, index) => {
    const old = before[index];
    return old !== undefined && sameQuantity(each, old) ? old : each;
  });
  return keptWhereSame(before, merged);
}
