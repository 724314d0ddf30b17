// What the take-off keeps between snapshots: the portions and lines of a part of an element, for as long as everything they
// were made from is the same object. With an empty memory the result is the same.
import type { Finding } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Work } from '#kit/work';
import { explode } from './explode.ts';
import type { Line, Portion } from './lines.ts';
import type { Layout } from './measure/layout.ts';
import type { Measured } from './measure/portion.ts';
import type { Rooms } from './measure/room-context.ts';
import type { PurchaseMemory } from './purchase.ts';
import { type Rows, type RowsMemory, rowsMemory, sameList } from './rows.ts';

interface Part {
  inputs: readonly unknown[];
  measured: Measured;
  rows: Rows | undefined;
  scope: string;
  lines: readonly Line[];
  findings: readonly Finding[];
}

export interface TakeOffMemory {
  readonly rows: RowsMemory;
  readonly parts: WeakMap<Slot, Map<string, Part>>;
  readonly layouts: WeakMap<Slot, { readonly inputs: readonly unknown[]; readonly layout: Layout }>;
  rooms: Rooms | undefined;
  readonly purchases: PurchaseMemory;
  lines: readonly Line[];
  byWork: ReadonlyMap<string, readonly Line[]>;
}
export function takeOffMemory(): TakeOffMemory {
  return {
    rows: rowsMemory(),
    parts: new WeakMap(),
    layouts: new WeakMap(),
    rooms: undefined,
    purchases: { groups: new Map() },
    lines: [],
    byWork: new Map(),
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

export function partLines(
  measuring: Measuring,
  rows: Rows,
  memory: TakeOffMemory,
  work: Work,
): { readonly lines: readonly Line[]; readonly findings: readonly Finding[]; readonly portions: readonly Portion[] } {
  let parts = memory.parts.get(measuring.slot);
  if (parts === undefined) memory.parts.set(measuring.slot, (parts = new Map()));
  let kept = parts.get(measuring.part);
  if (kept === undefined || !sameList(kept.inputs, measuring.inputs)) {
    const measured = measuring.measure();
    work.linesMeasured += measured.portions.length;
    kept = { inputs: measuring.inputs, measured, rows: undefined, scope: '', lines: [], findings: [] };
    parts.set(measuring.part, kept);
  }
  if (kept.rows !== rows || kept.scope !== measuring.scope) {
    const { lines, findings } = explode(kept.measured.portions, rows, measuring.scope, measuring.place);
    const before = kept.lines;
    kept.lines = lines.map((line, index) =>
      before[index] !== undefined && isAsBefore(line, before[index]) ? before[index] : line,
    );
    kept.findings = [...kept.measured.findings, ...findings];
    kept.rows = rows;
    kept.scope = measuring.scope;
  }
  return { lines: kept.lines, findings: kept.findings, portions: kept.measured.portions };
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
