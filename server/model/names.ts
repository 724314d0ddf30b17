// One table of names over the files of a plan, or of the library: who has a name, and what a name means.
import { kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { type Differing, differing, keptWhereSame, NONE, spliced } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Declared } from './declared.ts';
import type { FileNames } from './file-names.ts';

/** Which names there are: the same object while no declaration comes, goes or is renamed. */
export interface Names {
  readonly slots: readonly Slot[];
  /** 'kind/name' of each slot; '' of those without a name. */
  readonly keys: readonly string[];
  /** Rows with second names. */
  readonly seconds: readonly Declared[];
  /** 'kind/name' → the first that declares it. */
  readonly first: ReadonlyMap<string, Slot>;
  /** Second names of goods ('plasterboard'). */
  readonly also: ReadonlyMap<string, Slot>;
  /** Place in the plan, for anything that must go in plan order. */
  readonly order: ReadonlyMap<Slot, number>;
  /** By kind, repeated names left out. */
  readonly byKind: ReadonlyMap<string, readonly Slot[]>;
  /** Later declarations of a name that is taken, with the first. */
  readonly repeated: ReadonlyMap<Slot, Slot>;
}

/** One table over several files: the plan's, or the library's. */
export interface NameTable extends Names {
  readonly names: Names;
  readonly files: readonly FileNames[];
  readonly declared: readonly Declared[];
  readonly bySlot: { readonly get: (slot: Slot) => Declared | undefined; readonly has: (slot: Slot) => boolean };
  /** The line in its file on which a declaration stands, from 0. */
  readonly lineOf: (slot: Slot) => number | undefined;
}

export function nameTable(files: readonly FileNames[], before?: NameTable): NameTable {
  if (before !== undefined && keptWhereSame(before.files, files) === before.files) return before;
  const declared = joined(files, before, (from) => from.declared);
  const names = namesOf(files, before);
  const { order } = names;
  return {
    ...names,
    names,
    files,
    declared,
    bySlot: {
      get: (slot) => {
        const at = order.get(slot);
        return at === undefined ? undefined : declared[at];
      },
      has: (slot) => order.has(slot),
    },
    lineOf: (slot) => {
      let at = order.get(slot);
      if (at === undefined) return undefined;
      for (const { lines } of files) {
        if (at < lines.length) return lines[at];
        at -= lines.length;
      }
      return undefined;
    },
  };
}

function namesOf(files: readonly FileNames[], before: NameTable | undefined): Names {
  const slots = joined(files, before, (from) => from.slots);
  const keys = joined(files, before, (from) => from.keys);
  const seconds = joined(files, before, (from) => from.seconds);
  const said = { slots, keys, seconds };
  if (before === undefined) return allNames(said);
  const changed = differing(before.slots, slots);
  const sameSlots = changed.before === changed.from && changed.now === changed.from;
  if (sameSlots && keptWhereSame(before.seconds, seconds) === before.seconds) return before.names;
  return changedNames(said, before.names, changed) ?? allNames(said);
}

/** A list of every file in one: that of before for as long as each file has the list it had. */
function joined<T>(
  files: readonly FileNames[],
  before: NameTable | undefined,
  listOf: (from: Pick<FileNames, 'declared' | 'slots' | 'keys' | 'seconds'>) => readonly T[],
): readonly T[] {
  if (files.length === 1) return listOf(files[0]!);
  const isSame = before?.files.length === files.length && files.every((file, at) => listOf(file) === listOf(before.files[at]!));
  return isSame ? listOf(before) : files.flatMap(listOf);
}

type Said = Pick<Names, 'slots' | 'keys' | 'seconds'>;

function allNames(said: Said): Names {
  const { slots, keys, seconds } = said;
  const first = new Map<string, Slot>();
  const order = new Map<Slot, number>();
  const byKind = new Map<string, Slot[]>();
  const repeated = new Map<Slot, Slot>();
  for (let at = 0; at < slots.length; at += 1) {
    const slot = slots[at]!;
    const key = keys[at]!;
    order.set(slot, at);
    const taken = key === '' ? undefined : spaceHolder(first, key, slot);
    if (taken !== undefined) {
      repeated.set(slot, taken);
      continue;
    }
    if (key !== '') first.set(key, slot);
    addTo(byKind, slot.kind, slot);
  }
  return { ...said, first, also: secondNames(seconds, repeated), order, byKind, repeated };
}

/** All names after some came or went; undefined where one is said twice, so that every one must be looked at. */
function changedNames(said: Said, before: Names, changed: Differing): Names | undefined {
  const { slots, keys, seconds } = said;
  const { repeated } = before;
  if (repeated.size > 0) return undefined;
  const first = new Map<string, Slot>();
  const order = new Map<Slot, number>();
  let named = 0;
  for (let at = 0; at < slots.length; at += 1) {
    order.set(slots[at]!, at);
    if (keys[at] === '') continue;
    named += 1;
    first.set(keys[at]!, slots[at]!);
  }
  if (first.size < named) return undefined;
  for (let at = changed.from; at < changed.now; at += 1) if (keys[at] !== '' && hasRival(first, slots[at]!)) return undefined;
  return { ...said, first, also: secondNames(seconds, repeated), order, byKind: kindsChanged(slots, before, changed), repeated };
}

/** Lists by kind, those of kinds that did not change being the same arrays. */
function kindsChanged(
  slots: readonly Slot[],
  before: Names,
  { from, before: to, now }: Differing,
): ReadonlyMap<string, readonly Slot[]> {
  const byKind = new Map(before.byKind);
  const kinds = new Set<string>();
  for (let at = from; at < to; at += 1) kinds.add(before.slots[at]!.kind);
  for (let at = from; at < now; at += 1) kinds.add(slots[at]!.kind);
  for (const kind of kinds) {
    const known = before.byKind.get(kind) ?? NONE;
    const others = slots.slice(from, now).filter((slot) => slot.kind === kind);
    const list = spliced(known, firstFrom(known, from, before.order), firstFrom(known, to, before.order), others);
    if (list.length === 0) byKind.delete(kind);
    else byKind.set(kind, keptWhereSame(known, list));
  }
  return byKind;
}

/** The first of some slots in plan order that stands at a place or behind it. */
export function firstFrom(slots: readonly Slot[], place: number, order: ReadonlyMap<Slot, number>): number {
  let low = 0;
  let high = slots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (order.get(slots[middle]!)! < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

function secondNames(seconds: readonly Declared[], repeated: ReadonlyMap<Slot, Slot>): ReadonlyMap<string, Slot> {
  const also = new Map<string, Slot>();
  for (const { slot, declaration } of seconds)
    if (!repeated.has(slot)) for (const name of secondNamesOf(declaration)) also.set(name, slot);
  return also;
}

export function secondNamesOf({ given: { also } }: Declared['declaration']): readonly string[] {
  const lines: readonly { readonly value: unknown }[] = Array.isArray(also) ? also : NONE;
  return lines.flatMap(({ value }) =>
    (value as readonly { readonly value: { readonly name: string } }[]).map((each) => each.value.name),
  );
}

/** Steps and goods share a space of names: who in it has this name already. A state is no step of the plan. */
function spaceHolder(first: ReadonlyMap<string, Slot>, key: string, slot: Slot): Slot | undefined {
  const own = first.get(key);
  const kinds = rivals(slot.kind);
  if (kinds.length === 1) return own;
  for (const kind of kinds) {
    const taken = kind === slot.kind ? own : first.get(`${kind}/${slot.name}`);
    if (taken !== undefined) return taken;
  }
  return undefined;
}

/** Whether another kind of the same space has this name. */
function hasRival(first: ReadonlyMap<string, Slot>, slot: Slot): boolean {
  return rivals(slot.kind).some((kind) => kind !== slot.kind && first.has(`${kind}/${slot.name}`));
}

const rivalKinds = new Map<string, readonly string[]>();
function rivals(kind: string): readonly string[] {
  let kinds = rivalKinds.get(kind);
  if (kinds === undefined) {
    const { space } = vocabulary[kind as keyof typeof vocabulary] as { space?: string };
    const all = space === undefined ? [kind] : kindsOf(space);
    kinds = all.filter((each) => each === kind || (each !== 'state' && each !== 'item' && kind !== 'state' && kind !== 'item'));
    rivalKinds.set(kind, kinds);
  }
  return kinds;
}

/** The declaration that a name of this kind or space means: the plan's, else the library's. */
export function lookUp(space: string, name: string, plan: Names, library: Names): Slot | undefined {
  // The library has inspections too, but only what the plan declares is a step of it.
  for (const table of space === 'step' ? [plan] : [plan, library]) {
    for (const kind of kindsOf(space)) {
      const slot = table.first.get(`${kind}/${name}`);
      if (slot !== undefined) return slot;
    }
    const second = table.also.get(name);
    if (second !== undefined && kindsOf(space).includes(second.kind)) return second;
  }
  return undefined;
}

/** Every name of this kind or space, the plan's first: for near misses and completion. */
export function namesIn(space: string, plan: Names, library: Names): readonly string[] {
  const kinds = kindsOf(space);
  const names: string[] = [];
  for (const { first } of [plan, library])
    for (const slot of first.values()) if (kinds.includes(slot.kind)) names.push(slot.name);
  return names;
}
