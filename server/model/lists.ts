// The elements of a plan by kind, and the rows of a kind with what the plan overrides. A list is the same array while its
// members are; from look to look only the members that may be others are asked for.
import { differing, keptWhereSame, NONE, spliced } from '#kit/differing';
import type { Slot } from '#kit/place';
import { element, type Snapshot } from './elements.ts';
import type { Element } from './model.ts';
import { firstFrom, type NameTable } from './names.ts';

/** What is kept of them between looks. */
export interface ElementLists {
  lists: ReadonlyMap<string, List>;
  readonly rows: Map<string, Rows>;
}
interface List {
  /** What it was made from; as long as the list, unless one of them came to nothing. */
  readonly slots: readonly Slot[];
  readonly elements: readonly Element[];
}
interface Rows {
  readonly plan: readonly Slot[];
  readonly library: NameTable;
  readonly elements: readonly Element[];
  /** One of them may have changed since they were gathered. */
  stale: boolean;
}

export function elementLists(): ElementLists {
  return { lists: new Map(), rows: new Map() };
}

export interface ListsNow {
  /** All declarations of a kind, in plan order. */
  readonly lists: ReadonlyMap<string, List>;
  /** Rows of a library kind: the library's in its order, each as the plan overrides it, then the plan's own. */
  readonly rows: (kind: string) => readonly Element[];
}

/** The lists of one look; every element of the plan is made. */
export function listsNow(now: Snapshot, kept: ElementLists): ListsNow {
  const lists = new Map<string, List>();
  for (const [kind, slots] of now.plan.byKind)
    lists.set(kind, listOf(slots, now.suspected.get(kind) ?? NONE, kept.lists.get(kind), now));
  // What a repeated name declares is still read, for its findings.
  for (const slot of now.plan.repeated.keys()) element(slot, now);
  kept.lists = lists;
  for (const kind of now.suspected.keys()) {
    const rows = kept.rows.get(kind);
    if (rows !== undefined) rows.stale = true;
  }
  const asked = new Map<string, readonly Element[]>();
  const rows = (kind: string): readonly Element[] => {
    let list = asked.get(kind);
    if (list === undefined) asked.set(kind, (list = rowsOf(kind, now, kept)));
    return list;
  };
  return { lists, rows };
}

function listOf(slots: readonly Slot[], suspected: readonly Slot[], known: List | undefined, now: Snapshot): List {
  if (known !== undefined && known.slots === slots && suspected.length === 0) return known;
  const elements = (known === undefined ? undefined : patched(slots, suspected, known, now)) ?? all(slots, now);
  const kept = keptWhereSame(known?.elements, elements);
  return kept === known?.elements && slots === known.slots ? known : { slots, elements: kept };
}

function all(slots: readonly Slot[], now: Snapshot): readonly Element[] {
  const elements: Element[] = [];
  for (const slot of slots) {
    const made = element(slot, now);
    if (made !== undefined) elements.push(made);
  }
  return elements;
}

/** The known list with those in it that are new, or may be others; undefined where one comes, or came, to nothing. */
function patched(slots: readonly Slot[], suspected: readonly Slot[], known: List, now: Snapshot): readonly Element[] | undefined {
  if (known.slots.length !== known.elements.length) return undefined;
  const changed = differing(known.slots, slots);
  const others = all(slots.slice(changed.from, changed.now), now);
  if (others.length < changed.now - changed.from) return undefined;
  const elements = spliced(known.elements, changed.from, changed.before, others);
  for (const slot of suspected) {
    const at = placeOf(slot, slots, now.plan.order);
    if (at === undefined) continue;
    const made = element(slot, now);
    if (made === undefined) return undefined;
    elements[at] = made;
  }
  return elements;
}

/** Where a slot stands among some in plan order; undefined where it is not among them. */
function placeOf(slot: Slot, slots: readonly Slot[], order: ReadonlyMap<Slot, number>): number | undefined {
  const place = order.get(slot);
  if (place === undefined) return undefined;
  const at = firstFrom(slots, place, order);
  return slots[at] === slot ? at : undefined;
}

function rowsOf(kind: string, now: Snapshot, kept: ElementLists): readonly Element[] {
  const plan = now.plan.byKind.get(kind) ?? NONE;
  const known = kept.rows.get(kind);
  if (known !== undefined && !known.stale && known.plan === plan && known.library === now.library) return known.elements;
  const rows: Element[] = [];
  const add = (slot: Slot): void => {
    const row = element(slot, now);
    if (row !== undefined) rows.push(row);
  };
  for (const slot of now.library.byKind.get(kind) ?? NONE) add(now.plan.first.get(`${kind}/${slot.name}`) ?? slot);
  for (const slot of plan) if (!now.library.first.has(`${kind}/${slot.name}`)) add(slot);
  const elements = keptWhereSame(known?.elements, rows);
  kept.rows.set(kind, { plan, library: now.library, elements, stale: false });
  return elements;
}
