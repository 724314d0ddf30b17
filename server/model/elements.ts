// An element for a slot, recomputed only when its lines, or something it read, changed; the old object stays where the new
// one would be equal. What was read is remembered, names that were not found included.
import type { Declaration, GivenProperties } from '#grammar/shape';
import { propertiesOf } from '#grammar/vocabulary/vocabulary';
import { differing, NONE } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Place, Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Work } from '#kit/work';
import type { Declared } from './declared.ts';
import { sameElement } from './equal.ts';
import { factsOf } from './facts.ts';
import { type Following, followLines, followProperties, followValue } from './follow.ts';
import type { Element } from './model.ts';
import { lookUp, type NameTable, secondNamesOf } from './names.ts';
import { answered, type NearMisses, nearMiss, nearMisses } from './near-miss.ts';
import { nameLoop, noSuchFact } from './problems.ts';
import { noteReader, type Readers, readersOf } from './readers.ts';
import type { Settings } from './settings.ts';

interface Memo {
  /** The last snapshot that looked at it. */
  stamp: number;
  stage: 'running' | 'done';
  declaration: Declaration | undefined;
  under: Declaration | undefined;
  settings: Settings;
  reads: readonly Read[];
  element: Element | undefined;
  /** Itself as others read it. */
  asRead: ElementRead | undefined;
  findings: readonly Finding[];
}
/** What was read, one object for all who read the same in one look. */
type Read = NameRead | ElementRead;
interface NameRead {
  readonly kind: 'name';
  readonly space: string;
  readonly name: string;
  readonly seen: Slot | undefined;
}
interface ElementRead {
  readonly kind: 'element';
  readonly slot: Slot;
  readonly seen: Element | undefined;
}

export interface ElementsMemory {
  readonly memos: Map<Slot, Memo>;
  /** Who read the element of a slot, and who looked a name up, ever: a reader too many costs one look, never a wrong value. */
  readonly readers: Readers<Slot>;
  readonly lookers: Readers<string>;
  /** Slots that may be another than remembered, and were not looked at since. All others are as remembered. */
  readonly suspects: Set<Slot>;
  /** Slots whose element has findings. */
  readonly troubled: Set<Slot>;
  misses: NearMisses | undefined;
  stamp: number;
  last:
    | { readonly plan: NameTable; readonly library: NameTable; readonly settings: Settings; readonly ringed: () => boolean }
    | undefined;
}
export function elementsMemory(): ElementsMemory {
  return {
    memos: new Map(),
    readers: new Map(),
    lookers: new Map(),
    suspects: new Set(),
    troubled: new Set(),
    misses: undefined,
    stamp: 0,
    last: undefined,
  };
}

/** One look at a plan: what is declared now, and what is remembered from before. */
export interface Snapshot {
  readonly plan: NameTable;
  readonly library: NameTable;
  readonly settings: Settings;
  readonly memory: ElementsMemory;
  readonly work: Work;
  /** Names looked up in this snapshot, by 'space/name'. */
  readonly found: Map<string, NameRead>;
  /** By kind, the slots whose element may be another than at the last look. */
  readonly suspected: ReadonlyMap<string, readonly Slot[]>;
  /** Slots that are being computed, outermost first; and those found to lie on a ring. */
  readonly running: Slot[];
  readonly rings: Map<Slot, readonly Slot[]>;
}

export function snapshot(plan: NameTable, library: NameTable, settings: Settings, memory: ElementsMemory, work: Work): Snapshot {
  memory.stamp += 1;
  suspect(plan, library, settings, memory);
  const suspected = new Map<string, Slot[]>();
  for (const slot of memory.suspects) {
    addTo(suspected, slot.kind, slot);
  }
  const rings = new Map<Slot, readonly Slot[]>();
  memory.last = { plan, library, settings, ringed: () => rings.size > 0 };
  return { plan, library, settings, memory, work, rings, suspected, found: new Map(), running: [] };
}

/** Adds to the suspects whatever the change since the last look may reach. */
function suspect(plan: NameTable, library: NameTable, settings: Settings, memory: ElementsMemory): void {
  const { last, suspects } = memory;
  // Settings are read by everyone. Rings are looked for afresh at each look, so that whoever mended one is heard.
  if (last === undefined || last.library !== library || last.settings !== settings || last.ringed()) {
    for (const slot of memory.memos.keys()) suspects.add(slot);
    return;
  }
  const queue: Slot[] = [];
  const add = (slot: Slot): void => {
    if (suspects.has(slot)) return;
    suspects.add(slot);
    queue.push(slot);
  };
  const { from, before, now } = differing(last.plan.declared, plan.declared);
  const [gone, come] = [last.plan.declared.slice(from, before), plan.declared.slice(from, now)];
  for (const { slot, declaration } of come) if (last.plan.bySlot.get(slot)?.declaration !== declaration) add(slot);
  for (const { slot } of gone) {
    if (plan.bySlot.has(slot)) continue;
    add(slot);
    forget(slot, memory);
  }
  if (last.plan.names !== plan.names)
    for (const name of movedNames(gone, come)) for (const looker of readersOf(name, memory.lookers)) add(looker);
  // Those who were suspect before had their readers added then.
  while (queue.length > 0) for (const reader of readersOf(queue.pop()!, memory.readers)) add(reader);
}

/** Nothing is remembered of a declaration that is gone; should it come back, it is read anew. */
function forget(slot: Slot, memory: ElementsMemory): void {
  memory.suspects.delete(slot);
  memory.troubled.delete(slot);
  memory.memos.delete(slot);
}

/** Names that may mean another declaration than before, or none, or some where there was none; first and second names alike. */
function movedNames(gone: readonly Declared[], come: readonly Declared[]): ReadonlySet<string> {
  const moved = new Set<string>();
  for (const { slot, declaration } of [...gone, ...come]) {
    moved.add(slot.name);
    for (const name of secondNamesOf(declaration)) moved.add(name);
  }
  return moved;
}

export function declaredAt(slot: Slot, now: Snapshot): Declared | undefined {
  return now.plan.bySlot.get(slot) ?? now.library.bySlot.get(slot);
}

/** The element for a slot, computed at most once a snapshot; unchanged inputs give back the very same object. */
export function element(slot: Slot, now: Snapshot): Element | undefined {
  const { memos, stamp } = now.memory;
  let memo = memos.get(slot);
  if (memo?.stage === 'done' && !now.memory.suspects.has(slot)) return memo.element;
  if (memo?.stamp === stamp) {
    if (memo.stage === 'running') ring(slot, now);
    return memo.stage === 'running' ? undefined : memo.element;
  }
  const declaration = declaredAt(slot, now)?.declaration;
  const under = overridden(slot, now)?.declaration;
  if (memo !== undefined && memo.declaration === declaration && memo.under === under && memo.settings === now.settings) {
    memo.stamp = stamp;
    memo.stage = 'running';
    now.running.push(slot);
    const current = memo.reads.every((read) => isCurrent(read, now));
    now.running.pop();
    if (current && !now.rings.has(slot)) {
      memo.stage = 'done';
      now.memory.suspects.delete(slot);
      return memo.element;
    }
  }
  if (memo === undefined) {
    memo = {
      stamp,
      stage: 'running',
      declaration,
      under,
      settings: now.settings,
      reads: NONE,
      element: undefined,
      asRead: undefined,
      findings: NONE,
    };
    memos.set(slot, memo);
  }
  memo.stamp = stamp;
  memo.stage = 'running';
  memo.declaration = declaration;
  memo.under = under;
  memo.settings = now.settings;
  now.running.push(slot);
  const made = declaration === undefined ? undefined : compute(slot, declaration, under, now);
  now.running.pop();
  now.work.elementsComputed += 1;
  memo.reads = made?.reads ?? NONE;
  memo.findings = made?.findings ?? NONE;
  if (memo.findings.length > 0) now.memory.troubled.add(slot);
  else now.memory.troubled.delete(slot);
  for (const read of memo.reads) {
    if (read.kind === 'element') noteReader(now.memory.readers, read.slot, slot);
    else noteReader(now.memory.lookers, read.name, slot);
  }
  // Whoever lies on a ring has no value, wherever the ring was entered.
  const value = now.rings.has(slot) ? undefined : made?.element;
  if (memo.element === undefined || value === undefined || !sameElement(memo.element, value)) memo.element = value;
  memo.stage = 'done';
  now.memory.suspects.delete(slot);
  return memo.element;
}

/** The declarations that the names and values of an element lead to, each once. */
export function readsOf(slot: Slot, now: Snapshot): readonly Slot[] {
  const slots = new Set<Slot>();
  for (const read of now.memory.memos.get(slot)?.reads ?? []) {
    if (read.kind === 'element') slots.add(read.slot);
    else if (read.seen !== undefined) slots.add(read.seen);
  }
  return [...slots];
}

/** Whether a declaration of the plan of one of these kinds reads the element of a slot. */
export function isReadBy(slot: Slot, kinds: (kind: string) => boolean, now: Snapshot): boolean {
  for (const reader of readersOf(slot, now.memory.readers)) {
    if (!kinds(reader.kind) || !now.plan.bySlot.has(reader)) continue;
    if (now.memory.memos.get(reader)?.reads.some((read) => read.kind === 'element' && read.slot === slot)) return true;
  }
  return false;
}

/** Findings of the elements of a table, in its order; with one for each ring of names. */
export function elementFindings(table: NameTable, now: Snapshot): readonly Finding[] {
  const misses = nearMisses(now.plan.names, now.library.names, now.memory.misses);
  now.memory.misses = misses;
  const findings: Finding[] = [];
  const reported = new Set<readonly Slot[]>();
  const place = (slot: Slot): number => table.order.get(slot) ?? -1;
  const slots = new Set([...now.memory.troubled, ...now.rings.keys()].filter((slot) => table.order.has(slot)));
  for (const slot of [...slots].sort((a, b) => place(a) - place(b))) {
    for (const each of now.memory.memos.get(slot)?.findings ?? []) findings.push(answered(each, misses));
    const members = now.rings.get(slot);
    if (members === undefined || reported.has(members)) continue;
    reported.add(members);
    const names = [...members].sort((a, b) => place(a) - place(b));
    findings.push(
      finding(
        nameLoop,
        headerPlace(slot, now),
        names.map((each) => each.name),
      ),
    );
  }
  return findings;
}

export function headerPlace(slot: Slot, now: Snapshot): Place {
  const declared = declaredAt(slot, now);
  return { slot, spot: declared?.declaration.nameSpot ?? { path: [], from: 0, to: 0 } };
}

/** A library row of the same kind and name, which a plan's declaration overrides property by property. */
function overridden(slot: Slot, now: Snapshot): Declared | undefined {
  if (!now.plan.bySlot.has(slot) || slot.name === '') return undefined;
  const under = now.library.first.get(`${slot.kind}/${slot.name}`);
  return under === undefined ? undefined : now.library.bySlot.get(under);
}

function isCurrent(read: Read, now: Snapshot): boolean {
  if (read.kind === 'element') return element(read.slot, now) === read.seen;
  return find(read.space, read.name, now).seen === read.seen;
}

function find(space: string, name: string, now: Snapshot): NameRead {
  const key = `${space}/${name}`;
  let read = now.found.get(key);
  if (read === undefined)
    now.found.set(key, (read = { kind: 'name', space, name, seen: lookUp(space, name, now.plan, now.library) }));
  return read;
}

function readOf(slot: Slot, now: Snapshot): ElementRead {
  const seen = element(slot, now);
  const memo = now.memory.memos.get(slot);
  // A slot on its way to a value has none to be read.
  if (memo?.stage !== 'done') return { kind: 'element', slot, seen };
  if (memo.asRead === undefined || memo.asRead.seen !== seen) memo.asRead = { kind: 'element', slot, seen };
  return memo.asRead;
}

function ring(slot: Slot, now: Snapshot): void {
  const members = now.running.slice(now.running.indexOf(slot));
  for (const member of members) if (!now.rings.has(member)) now.rings.set(member, members);
}

interface Computed {
  readonly element: Element;
  readonly reads: readonly Read[];
  readonly findings: readonly Finding[];
}

function compute(slot: Slot, declaration: Declaration, under: Declaration | undefined, now: Snapshot): Computed {
  const reads: Read[] = [];
  const findings: Finding[] = [];
  // Those seen are few, and one look hands out one object for each.
  const note = (read: Read): void => {
    if (!reads.includes(read)) reads.push(read);
  };
  const look = (space: string, name: string): Slot | undefined => {
    const read = find(space, name, now);
    note(read);
    return read.seen;
  };
  const read = (other: Slot): Element | undefined => {
    const read = readOf(other, now);
    note(read);
    return read.seen;
  };
  const following = (where: Slot): Following => ({
    slot: where,
    settings: now.settings,
    findings,
    lookUp: look,
    element: read,
    valueOf: (name, place) => namedValue(name, place, look, read, findings),
  });
  const at = following(slot);
  const { kind } = declaration;
  const rows = propertiesOf(kind);
  const below = under === undefined ? {} : libraryGiven(under.given, declaration.given);
  const given =
    under === undefined
      ? followProperties(declaration.given, rows, at)
      : merged(
          followProperties(below, rows, following(now.library.first.get(`${slot.kind}/${slot.name}`)!)),
          followProperties(declaration.given, rows, at),
        );
  const takesFrom = declaration.takes ?? under?.takes;
  const takes = takesFrom === undefined ? undefined : followValue(takesFrom.value, at);
  const entries = kind.entries === undefined ? NONE : followLines(declaration.entries, kind.entries.deeper, at);
  const made = {
    kind: kind.word,
    slot,
    name: declaration.name === '' ? slot.name : declaration.name,
    label: declaration.label?.value ?? under?.label?.value ?? (declaration.name === '' ? kind.word : declaration.name),
    place: { slot, spot: declaration.nameSpot },
    takes,
    given,
    entries,
  };
  // The record was checked against the vocabulary's row of this kind, which is what the type is computed from.
  // Lists that grew have room to spare; these stay.
  return {
    element: made as unknown as Element,
    reads: reads.length === 0 ? NONE : reads.slice(),
    findings: findings.length === 0 ? NONE : findings,
  };
}

/** What the library gives and the plan does not. */
function libraryGiven(library: GivenProperties, plan: GivenProperties): GivenProperties {
  return Object.fromEntries(Object.entries(library).filter(([word]) => plan[word] === undefined));
}

function merged(library: Record<string, unknown>, plan: Record<string, unknown>): Record<string, unknown> {
  const all: Record<string, unknown> = { ...library };
  for (const [word, value] of Object.entries(plan))
    if (!(Array.isArray(value) && value.length === 0 && word in library)) all[word] = value;
  return all;
}

/** A `let`, or a fact of a thing: `plate-height`, `kitchen.floor-area`, `roof.main.area`. */
function namedValue(
  name: string,
  place: Place,
  look: (space: string, name: string) => Slot | undefined,
  read: (slot: Slot) => Element | undefined,
  findings: Finding[],
): Quantity | undefined {
  const parts = name.split('.');
  if (parts.length === 1) {
    const slot = look('let', name);
    if (slot !== undefined) {
      const named = read(slot);
      return named?.kind === 'let' ? named.takes?.value : undefined;
    }
  } else {
    const fact = parts[parts.length - 1]!;
    const owner = parts[parts.length - 2]!;
    for (const kind of parts.length === 3 ? [parts[0]!] : kindsWithFacts) {
      const slot = look(kind, owner);
      const thing = slot === undefined ? undefined : read(slot);
      const value = thing === undefined ? undefined : factsOf(thing)[fact];
      if (value !== undefined) return value;
    }
  }
  findings.push(finding(noSuchFact, place, name, nearMiss('value', name)));
  return undefined;
}

const kindsWithFacts = [
  'room',
  'level',
  'roof',
  'foundation',
  'assembly',
  'window',
  'door',
  'trench',
  'deck',
  'plan',
  'trade',
] as const;
