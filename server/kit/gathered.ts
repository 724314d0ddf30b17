// Lists gathered under keys, in the order in which their members come.

/** Puts one more at the end of a key's list; the first begins the list. */
export function addTo<K, T>(lists: Map<K, T[]>, key: K, value: T): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}
