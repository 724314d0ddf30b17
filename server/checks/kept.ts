// Answers kept for as long as the thing they were made from is the same object: nothing is worked out twice for what an edit
// left alone, and nothing depends on what was asked before.
import { sameList } from '#kit/differing';

export function keptFor<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let known = kept.get(key);
    if (known === undefined) kept.set(key, (known = { value: make(key) }));
    return known.value;
  };
}

/** The same for what is made from several: kept by the first of them, for as long as all are the same. */
export function keptWhile<A extends readonly unknown[], V>(
  reads: (...from: A) => readonly [object, ...unknown[]],
  make: (...from: A) => V,
): (...from: A) => V {
  const kept = new WeakMap<object, { readonly reads: readonly unknown[]; readonly value: V }>();
  return (...from) => {
    const now = reads(...from);
    let known = kept.get(now[0]);
    if (known === undefined || !sameList(known.reads, now)) kept.set(now[0], (known = { reads: now, value: make(...from) }));
    return known.value;
  };
}
