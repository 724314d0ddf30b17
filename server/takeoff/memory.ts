// What the take-off keeps between snapshots: the portions and lines of a part of an element, for as long as everything they
// were made from is the same object. With an empty memory the result is the same.
import type { Finding } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Work } from '#kit/work';
import type { Task } from '#model/model';
import { explode } from './explode.ts';
import type { Line } from './lines.ts';
import type { Run } from './measure/layout.ts';
import type { Measured } from './measure/portion.ts';
import type { PurchaseMemory } from './purchase.ts';
import { type Rows, type RowsMemory, rowsMemory, sameList } from './rows.ts';
import { type Storey, type StoreysMemory, storeysMemory } from './storeys.ts';

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
  readonly storeyParts: WeakMap<Storey, readonly Measuring[]>;
  /** Inside walls by level. */
  readonly runs: WeakMap<Slot, readonly Run[]>;
  readonly purchases: PurchaseMemory;
  /** The works that the tasks of a list do. */
  done: { readonly tasks: readonly Task[]; readonly works: ReadonlySet<string> } | undefined;
  /** The lines of every part, in plan order. */
  lists: readonly (readonly Line[])[];
  lines: readonly Line[];
  byWork: ReadonlyMap<string, readonly Line[]>;
}
export function takeOffMemory(): TakeOffMemory {
  return {
    rows: rowsMemory(),
    parts: new WeakMap(),
    wholes: new WeakMap(),
    storeys: storeysMemory(),
    storeyParts: new WeakMap(),
    runs: new WeakMap(),
    lists: [],
    purchases: { last: undefined },
    done: undefined,
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
    const before = kept.lines;
    kept.lines = lines.map((line, index) =>
      before[index] !== undefined && isAsBefore(line, before[index]) ? before[index] : line,
    );
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
