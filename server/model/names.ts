// One table of names over the files of a plan, or of the library: who has a name, and what a name means.
import { kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import type { Slot } from '#kit/place';
import type { Declared, FileNames } from './file-names.ts';

/** Which names there are: the same object while no declaration comes, goes or is renamed. */
export interface Names {
  readonly slots: readonly Slot[];
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
  /** The line in its file that a declaration stands on now, from 0. */
  readonly lineOf: (slot: Slot) => number | undefined;
}

export function nameTable(files: readonly FileNames[], before?: NameTable): NameTable {
  if (before !== undefined && before.files.length === files.length && before.files.every((file, index) => file === files[index]))
    return before;
  const declared = joined(files, before);
  const same = before !== undefined && sameNames(before, declared);
  const names = same ? before.names : namesOf(declared);
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

/** The declarations of all files; the same array while they are. */
function joined(files: readonly FileNames[], before: NameTable | undefined): readonly Declared[] {
  if (files.length === 1) return files[0]!.declared;
  const same = before?.files.length === files.length && files.every((file, at) => file.declared === before.files[at]!.declared);
  return same ? before.declared : files.flatMap((file) => file.declared);
}

/** Second names stand in the rows themselves, so a row that has any must be the same row. */
function sameNames(before: NameTable, declared: readonly Declared[]): boolean {
  if (before.declared === declared) return true;
  if (before.declared.length !== declared.length) return false;
  for (let at = 0; at < declared.length; at++) {
    const [now, old] = [declared[at]!, before.declared[at]!];
    if (now === old) continue;
    if (now.slot !== old.slot) return false;
    const changed = now.declaration !== old.declaration;
    if (changed && (now.declaration.given.also !== undefined || old.declaration.given.also !== undefined)) return false;
  }
  return true;
}

function namesOf(declared: readonly Declared[]): Names {
  const first = new Map<string, Slot>();
  const also = new Map<string, Slot>();
  const order = new Map<Slot, number>();
  const byKind = new Map<string, Slot[]>();
  const repeated = new Map<Slot, Slot>();
  const holders = new Map<string, Slot[]>();
  for (const { slot, declaration } of declared) {
    order.set(slot, order.size);
    if (declaration.name !== '') {
      const named = holders.get(slot.name);
      const taken = named?.find((other) => rivals(slot.kind).includes(other.kind));
      if (taken !== undefined) {
        repeated.set(slot, taken);
        continue;
      }
      if (named === undefined) holders.set(slot.name, [slot]);
      else named.push(slot);
      first.set(declaration.key, slot);
    }
    const list = byKind.get(slot.kind);
    if (list === undefined) byKind.set(slot.kind, [slot]);
    else list.push(slot);
    for (const line of listOfGiven(declaration.given.also)) {
      for (const each of line.value as readonly { value: { name: string } }[]) also.set(each.value.name, slot);
    }
  }
  return { slots: declared.map(({ slot }) => slot), first, also, order, byKind, repeated };
}

export function listOfGiven(given: unknown): readonly { readonly value: unknown }[] {
  return Array.isArray(given) ? given : [];
}

const rivalKinds = new Map<string, readonly string[]>();
/** Steps and goods share a space of names: the kinds of which only one may have a name. A state is no step of the plan. */
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
  for (const table of [plan, library])
    for (const slot of table.first.values()) if (kinds.includes(slot.kind)) names.push(slot.name);
  return names;
}
