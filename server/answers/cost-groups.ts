// The costs of a plan under other headings: by task, trade, room or part of the house. Every line stands under one heading,
// so each grouping adds up to the same total, to the cent.
import type { CostKind, CostLine } from '#money/cost-lines';
import { labelOf } from './takeoff-lines.ts';
import type { View } from './view.ts';

export type CostGrouping = 'task' | 'trade' | 'room' | 'element';

/** What a column of a cost table holds. */
export type CostColumn = 'material' | 'work' | 'fees' | 'hire' | 'allowance';
export const COST_COLUMNS: readonly CostColumn[] = ['material', 'work', 'fees', 'hire', 'allowance'];

export interface CostGroup {
  readonly label: string;
  /** Cents by column. */
  readonly cents: Readonly<Record<CostColumn, number>>;
  readonly total: number;
  readonly lines: readonly CostLine[];
}

/** In plan order; what stands under no heading last. */
export function groupCosts(by: CostGrouping, view: View): readonly CostGroup[] {
  const { lines } = view.plan.budget;
  const groups = new Map<string, CostLine[]>();
  const order = view.plan.model.names.order;
  const keyed = lines.map((line) => ({ line, ...headingOf(line, by, view) }));
  const placeOf = (at: number | undefined): number => at ?? order.size;
  for (const { label, line } of [...keyed].sort((a, b) => placeOf(a.at) - placeOf(b.at))) {
    const group = groups.get(label);
    if (group === undefined) groups.set(label, [line]);
    else group.push(line);
  }
  return [...groups].map(([label, list]) => ({ label, ...sumsOf(list), lines: list }));
}

export function sumsOf(lines: readonly CostLine[]): Pick<CostGroup, 'cents' | 'total'> {
  const cents: Record<CostColumn, number> = { material: 0, work: 0, fees: 0, hire: 0, allowance: 0 };
  let total = 0;
  for (const line of lines) {
    cents[columnOf(line.kind)] += line.cents;
    total += line.cents;
  }
  return { cents, total };
}

export function columnOf(kind: CostKind): CostColumn {
  switch (kind) {
    case 'material':
      return 'material';
    case 'labour':
    case 'work':
      return 'work';
    case 'fee':
    case 'tax':
    case 'contingency':
      return 'fees';
    case 'hire':
      return 'hire';
    case 'allowance':
      return 'allowance';
  }
}

/** A heading, and where its subject stands in the plan. */
function headingOf(line: CostLine, by: CostGrouping, view: View): { readonly label: string; readonly at?: number } {
  const { model, timeline } = view.plan;
  const place = (slot: CostLine['element']): { at?: number } => {
    const at = slot === undefined ? undefined : model.names.order.get(slot);
    return at === undefined ? {} : { at };
  };
  switch (by) {
    case 'task': {
      const step = line.step === undefined ? undefined : timeline.steps.list[line.step];
      return step === undefined ? { label: 'No task' } : { label: step.name, ...place(step.slot) };
    }
    case 'trade':
      return line.trade === undefined ? { label: 'No trade' } : { label: labelOf(line.trade, view), ...place(line.trade) };
    case 'room':
      return line.room === undefined ? { label: 'No one room' } : { label: labelOf(line.room, view), ...place(line.room) };
    case 'element': {
      const slot = line.element;
      if (slot === undefined) return { label: 'No one part' };
      return { label: `${labelOf(slot, view)} (${slot.kind})`, ...place(slot) };
    }
  }
}
