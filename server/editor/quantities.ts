// The quantity that was given, or computed, at a place of the text: found in the element that the line became.
import { sameList } from '#kit/differing';
import type { Quantity } from '#kit/quantity';
import type { Element } from '#model/model';

/** The one that covers the least around the column. */
export function quantityAt(element: Element, path: readonly number[], column: number): Quantity | undefined {
  let best: Quantity | undefined;
  const size = ({ place }: Quantity): number =>
    place === undefined ? Number.POSITIVE_INFINITY : place.spot.to - place.spot.from;
  const consider = (found: Quantity): void => {
    const { place } = found;
    if (place === undefined || place.slot !== element.slot) return;
    const { spot } = place;
    const covers = column >= spot.from && column <= spot.to && sameList(spot.path, path);
    if (covers && (best === undefined || size(found) < size(best))) best = found;
  };
  const visit = (value: unknown, depth: number): void => {
    if (typeof value !== 'object' || value === null || depth > 12) return;
    if (Array.isArray(value)) {
      for (const item of value) visit(item, depth + 1);
      return;
    }
    if ('form' in value && 'inputs' in value) {
      const quantity = value as Quantity;
      consider(quantity);
      for (const input of quantity.inputs) visit(input, depth + 1);
      return;
    }
    // Another thing, or only the way to one.
    if ('slot' in value || 'again' in value) return;
    for (const part of Object.values(value)) visit(part, depth + 1);
  };
  visit(element.takes, 0);
  visit(element.given, 0);
  for (const entry of element.entries) visit(entry, 0);
  return best;
}

/** A quantity without the depths of its working: what a hover shows of it and no more. */
export function shallow(quantity: Quantity, depth: number): Quantity {
  const { inputs } = quantity;
  if (inputs.length === 0) return quantity;
  return { ...quantity, inputs: depth === 0 ? [] : inputs.slice(0, MOST_INPUTS).map((input) => shallow(input, depth - 1)) };
}

const MOST_INPUTS = 12;
