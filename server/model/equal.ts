// Whether two elements say the same. Slots, forms and other elements are compared as objects; everything else by content.
export function equal(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, index) => equal(item, b[index]));
  }
  // Two slots, two forms or two other elements that are not the same object are different things.
  if ('again' in a || 'compute' in a) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => key in b && same(key, (a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}

function same(key: string, a: unknown, b: unknown): boolean {
  const inner = typeof a === 'object' && a !== null && 'slot' in a && 'given' in a;
  return inner && key !== '' ? a === b : equal(a, b);
}
