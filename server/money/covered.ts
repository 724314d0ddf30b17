// Lines whose goods cost nothing more: they are paid for with a step, or by money kept for goods not yet chosen.
import { sameList } from '#kit/differing';
import type { ElementOf } from '#model/model';
import type { Line, Purchase } from '#takeoff/lines';

export type Allowance = ElementOf<'allowance'>;

export interface Covered {
  readonly lines: ReadonlySet<Line>;
  /** The items that they are of, so that other purchases need not be looked through. */
  readonly items: ReadonlySet<string>;
}

export interface CoveredMemory {
  last: { readonly from: readonly (readonly Line[])[]; readonly value: Covered } | undefined;
}

/** The same object while the lists of lines are. */
export function coveredLines(
  bySteps: readonly (readonly Line[])[],
  allowances: readonly Allowance[],
  purchases: readonly Purchase[],
  memory: CoveredMemory,
): Covered {
  const from: (readonly Line[])[] = [];
  for (const lines of bySteps) if (lines.length > 0) from.push(lines);
  for (const allowance of allowances) from.push(...linesOfAllowance(allowance, purchases));
  if (memory.last !== undefined && sameList(from, memory.last.from)) return memory.last.value;
  const lines = new Set<Line>();
  const items = new Set<string>();
  for (const list of from)
    for (const line of list) {
      lines.add(line);
      items.add(line.item);
    }
  const value = { lines, items };
  memory.last = { from, value };
  return value;
}

/** The lines of each purchase that money is kept for: of goods that it names, else of its own name. */
export function linesOfAllowance({ name, given }: Allowance, purchases: readonly Purchase[]): readonly (readonly Line[])[] {
  const names = new Set(given.for === undefined ? [name] : given.for.value.map(({ value }) => value.name));
  return purchases.flatMap(({ goods, lines }) => (names.has(goods.name) ? [lines] : []));
}
