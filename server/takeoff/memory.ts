// What the take-off keeps between snapshots: the portions and lines of a part of an element, for as long as everything they
// were made from is the same object. With an empty memory the result is the same.
import { sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { System } from '#kit/units';
import type { Work } from '#kit/work';
import type { Task } from '#model/model';
import type { FramingCounts } from './conventions.ts';
import type { OrderMemory } from './elements.ts';
import { explode } from './explode.ts';
import type { Grouping, PartLines } from './grouping.ts';
import type { Line } from './lines.ts';
import type { Run } from './measure/layout.ts';
import type { Measured } from './measure/portion.ts';
import { type PurchaseMemory, purchaseMemory } from './purchase.ts';
import { type Rows, type RowsMemory, rowsMemory } from './rows.ts';
import { type Storey, type StoreysMemory, storeysMemory } from './storeys.ts';
import type { TakeOff } from './take-off.ts';

interface Part {
  measuring: Measuring;
  measured: Measured;
  /** Of the rows that the lines were made with. */
  stamp: number;
  scope: string;
  lines: readonly Line[];
  findings: readonly Finding[];
}

export interface TakeOffMemory {
  readonly rows: RowsMemory;
  readonly parts: WeakMap<Slot, Map<string, Part>>;
  readonly wholes: WeakMap<Slot, Measuring>;
  readonly storeys: StoreysMemory;
  readonly storeyParts: WeakMap<
    Storey,
    { readonly counts: FramingCounts; readonly widest: number; readonly parts: readonly Measuring[] }
  >;
  /** Inside walls by level. */
  readonly runs: WeakMap<Slot, readonly Run[]>;
  readonly purchases: PurchaseMemory;
  /** The works that the tasks of a list do. */
  done: { readonly tasks: readonly Task[]; readonly works: ReadonlySet<string> } | undefined;
  order: OrderMemory | undefined;
  measured: MeasuredParts | undefined;
  works: Grouping | undefined;
  byWork: { readonly groups: unknown; readonly lines: ReadonlyMap<string, readonly Line[]> };
  last: { readonly value: TakeOff; readonly does: ReadonlySet<string>; readonly system: System } | undefined;
}
export function takeOffMemory(): TakeOffMemory {
  return {
    rows: rowsMemory(),
    parts: new WeakMap(),
    wholes: new WeakMap(),
    storeys: storeysMemory(),
    storeyParts: new WeakMap(),
    runs: new WeakMap(),
    purchases: purchaseMemory(),
    done: undefined,
    order: undefined,
    measured: undefined,
    works: undefined,
    byWork: { groups: undefined, lines: new Map() },
    last: undefined,
  };
}

/** A part of an element to be measured: which, what it is made from, and how. */
export interface Measuring {
  readonly slot: Slot;
  readonly part: string;
  /** How the lines' ids name it. */
  readonly scope: string;
  readonly place: Place;
  readonly inputs: readonly unknown[];
  readonly measure: () => Measured;
}

/** The lines and findings of all parts, in plan order. Both are the same lists for as long as their members are. */
export interface MeasuredParts {
  readonly measurings: readonly Measuring[];
  /** Of the rows that the lines were made with. */
  readonly stamp: number;
  readonly parts: readonly PartLines[];
  readonly found: readonly (readonly Finding[])[];
  readonly findings: readonly Finding[];
}

export function measuredParts(measurings: readonly Measuring[], rows: Rows, memory: TakeOffMemory, work: Work): MeasuredParts {
  const before = memory.measured?.stamp === rows.stamp ? memory.measured : undefined;
  if (before?.measurings === measurings) return before;
  const parts: PartLines[] = new Array(measurings.length);
  const found: (readonly Finding[])[] = new Array(measurings.length);
  for (let at = 0; at < measurings.length; at++) {
    const measuring = measurings[at]!;
    if (before !== undefined && before.measurings[at] === measuring) {
      parts[at] = before.parts[at]!;
      found[at] = before.found[at]!;
      continue;
    }
    const part = partLines(measuring, rows, memory, work);
    parts[at] = part.lines;
    found[at] = part.findings.length === 0 ? NONE_FOUND : part.findings;
  }
  const last = memory.measured;
  memory.measured = {
    measurings,
    stamp: rows.stamp,
    parts: last !== undefined && sameList(parts, last.parts) ? last.parts : parts,
    found,
    findings: last !== undefined && sameList(found, last.found) ? last.findings : found.flat(),
  };
  return memory.measured;
}

const NONE_FOUND: readonly Finding[] = [];

function partLines(
  measuring: Measuring,
  rows: Rows,
  memory: TakeOffMemory,
  work: Work,
): { readonly lines: readonly Line[]; readonly findings: readonly Finding[] } {
  let parts = memory.parts.get(measuring.slot);
  if (parts === undefined) memory.parts.set(measuring.slot, (parts = new Map()));
  let kept = parts.get(measuring.part);
  if (kept?.measuring === measuring && kept.stamp === rows.stamp) return kept;
  if (kept === undefined || !sameList(kept.measuring.inputs, measuring.inputs)) {
    const measured = measuring.measure();
    work.linesMeasured += measured.portions.length;
    kept = { measuring, measured, stamp: 0, scope: '', lines: [], findings: [] };
    parts.set(measuring.part, kept);
  }
  kept.measuring = measuring;
  if (kept.stamp !== rows.stamp && kept.scope === measuring.scope && isUntouched(kept, rows)) kept.stamp = rows.stamp;
  if (kept.stamp !== rows.stamp || kept.scope !== measuring.scope) {
    const { lines, findings } = explode(kept.measured.portions, rows, measuring.scope, measuring.place);
    kept.lines = asBefore(lines, kept.lines);
    kept.findings = [...kept.measured.findings, ...findings];
    kept.stamp = rows.stamp;
    kept.scope = measuring.scope;
  }
  return kept;
}

/** Whether a change of rows leaves a part's lines as they are: none of its measures and none of its goods is in it. */
function isUntouched({ stamp, measured, lines }: Part, { since }: Rows): boolean {
  if (since === undefined || since.stamp !== stamp) return false;
  for (const { measure, otherwise, goods } of measured.portions) {
    if (since.measures.has(measure) || otherwise?.some((other) => since.measures.has(other)) === true) return false;
    if (goods?.of !== undefined && since.goods.has(goods.of)) return false;
  }
  return !lines.some(({ goods }) => goods?.of !== undefined && since.goods.has(goods.of));
}

/** Each line as the object it was, if it says what it said; the list as well. */
function asBefore(lines: readonly Line[], before: readonly Line[]): readonly Line[] {
  if (before.length === 0) return lines;
  let byId: Map<string, Line> | undefined;
  let same = lines.length === before.length;
  const merged = lines.map((line, index) => {
    let old = before[index];
    if (old?.id !== line.id) {
      // A line more or less before it moves all others.
      byId ??= new Map(before.map((each) => [each.id, each]));
      old = byId.get(line.id);
    }
    const kept = old !== undefined && isAsBefore(line, old) ? old : line;
    if (kept !== before[index]) same = false;
    return kept;
  });
  return same ? before : merged;
}

/** A line of the same portion by the same rows; what it was made of beside them is its net. */
function isAsBefore(line: Line, before: Line): boolean {
  return (
    line.id === before.id &&
    line.work === before.work &&
    line.goods?.of === before.goods?.of &&
    line.measure === before.measure &&
    line.onlyIfDone === before.onlyIfDone &&
    line.hours?.value === before.hours?.value &&
    line.needed?.value === before.needed?.value &&
    (line.net === before.net || (line.net.form === before.net.form && sameList(line.net.inputs, before.net.inputs)))
  );
}
