// Whether two values say the same: lists and plain objects by what is in them, things of their own only where they are one.

/** What is compared as the object it is, and not looked into. */
export type IsThing = (value: object) => boolean;

export function equal(a: unknown, b: unknown, isThing: IsThing): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((each, at) => equal(each, b[at], isThing));
  return !isThing(a) && equalInside(a, b, isThing);
}

/** The same of two objects that are looked into, whatever they are. */
export function equalInside(a: object, b: object, isThing: IsThing): boolean {
  const [one, other] = [a, b] as readonly { readonly [key: string]: unknown }[];
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => key in b && equal(one![key], other![key], isThing));
}
