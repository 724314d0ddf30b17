// Whether two elements, or two values given of them, say the same. Slots, forms and other elements are compared as objects;
// everything else by content.
import { equal, equalInside } from '#kit/equal';
import type { Element } from './model.ts';

export function sameElement(a: Element, b: Element): boolean {
  return a === b || equalInside(a, b, isThing);
}

export function sameGiven(a: unknown, b: unknown): boolean {
  return equal(a, b, isThing);
}

/** Two slots, two forms or two other elements that are not the same object are different things. */
function isThing(value: object): boolean {
  return 'again' in value || 'compute' in value || ('slot' in value && 'given' in value);
}
