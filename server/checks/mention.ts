// Where a plan names some goods: the layer, the finish or the list below a thing that was measured. So a finding about what
// is in a wall stands at the wall's layer, not at the level.
import type { Place, Slot } from '#kit/place';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import type { Line } from '#takeoff/lines';

/** The words that name a line's goods, else the thing that was measured; undefined where neither stands in the plan. */
export function placeOfLine({ goods, where }: Line, model: Model): Place | undefined {
  const things = [where.element, where.room, where.level].flatMap((slot) =>
    slot === undefined ? [] : (model.element(slot) ?? []),
  );
  if (goods !== undefined)
    for (const thing of things) {
      const found = mentioned(thing, goods.name, model);
      if (found !== undefined) return found;
    }
  return things.find(({ slot }) => isOfPlan(slot, model))?.place;
}

/** Where a thing names goods: each name where it stands first. */
const kept = new WeakMap<Element, ReadonlyMap<string, Place>>();

function mentioned(thing: Element, name: string, model: Model): Place | undefined {
  let places = kept.get(thing);
  if (places === undefined) {
    const found = new Map<string, Place>();
    gather(thing.given, found, model, new Set(), 0);
    kept.set(thing, (places = found));
  }
  return places.get(name);
}

const DEEPEST = 12;

function gather(value: unknown, places: Map<string, Place>, model: Model, seen: Set<unknown>, depth: number): void {
  if (typeof value !== 'object' || value === null || depth > DEEPEST || seen.has(value)) return;
  seen.add(value);
  if (Array.isArray(value)) {
    for (const each of value) gather(each, places, model, seen, depth + 1);
    return;
  }
  const { given, kind, name, place, sizes } = value as Partial<Element> & { readonly sizes?: unknown };
  if (sizes !== undefined && place !== undefined && name !== undefined && !places.has(name) && isOfPlan(place.slot, model))
    places.set(name, place);
  // Of other things only what it is made of: a level's walls, not a room's level.
  if (given === undefined) for (const each of Object.values(value)) gather(each, places, model, seen, depth + 1);
  else if (kind === 'assembly') gather(given, places, model, seen, depth + 1);
}

function isOfPlan(slot: Slot, model: Model): boolean {
  return model.names.bySlot.has(slot);
}
