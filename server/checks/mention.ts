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

const kept = new WeakMap<Element, Map<string, Place | undefined>>();

function mentioned(thing: Element, name: string, model: Model): Place | undefined {
  let known = kept.get(thing);
  if (known === undefined) kept.set(thing, (known = new Map()));
  if (!known.has(name)) known.set(name, search(thing.given, name, model, new Set(), 0));
  return known.get(name);
}

const DEEPEST = 12;

function search(value: unknown, name: string, model: Model, seen: Set<unknown>, depth: number): Place | undefined {
  if (typeof value !== 'object' || value === null || depth > DEEPEST || seen.has(value)) return undefined;
  seen.add(value);
  if (Array.isArray(value)) return first(value, name, model, seen, depth);
  const each = value as Partial<Element> & { readonly sizes?: unknown; readonly of?: unknown };
  if (each.sizes !== undefined && each.place !== undefined && each.name === name && isOfPlan(each.place.slot, model))
    return each.place;
  // Of other things only what it is made of: a level's walls, not a room's level.
  if (each.given !== undefined) return each.kind === 'assembly' ? search(each.given, name, model, seen, depth + 1) : undefined;
  return first(Object.values(value), name, model, seen, depth);
}

function first(values: readonly unknown[], name: string, model: Model, seen: Set<unknown>, depth: number): Place | undefined {
  for (const value of values) {
    const found = search(value, name, model, seen, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function isOfPlan(slot: Slot, model: Model): boolean {
  return model.names.bySlot.has(slot);
}
