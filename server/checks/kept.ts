// Answers kept for as long as the thing they were made from is the same object: nothing is worked out twice for what an edit
// left alone, and nothing depends on what was asked before.

export function keptFor<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let known = kept.get(key);
    if (known === undefined) kept.set(key, (known = { value: make(key) }));
    return known.value;
  };
}
