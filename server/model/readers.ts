// Who reads a thing, ever noted, never taken back: a reader too many costs one look, never a wrong value. Most things are read by
// one or two, for whom a set would take more room than all else that is known of them.
import { NONE } from '#kit/differing';
import type { Slot } from '#kit/place';

export type Readers<K> = Map<K, readonly Slot[] | Set<Slot>>;

/** From so many on they stand in a set. */
const MANY = 32;

export function noteReader<K>(readers: Readers<K>, read: K, reader: Slot): void {
  const known = readers.get(read);
  if (known === undefined) readers.set(read, [reader]);
  else if (known instanceof Set) known.add(reader);
  else if (!known.includes(reader)) readers.set(read, known.length < MANY ? known.concat(reader) : new Set(known).add(reader));
}

export function readersOf<K>(read: K, readers: Readers<K>): Iterable<Slot> {
  return readers.get(read) ?? NONE;
}
