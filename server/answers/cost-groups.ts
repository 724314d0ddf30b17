// The costs of a plan under other headings: by task, trade, room, element of UNIFORMAT II or part of the house. Every cent
// stands under one heading, so each grouping adds up to the same total.
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { CostKind, CostLine } from '#money/cost-lines';
import { costsByElement } from './cost-elements.ts';
import { labelOf } from './takeoff-lines.ts';
import type { View } from './view.ts';

export type CostGrouping = 'task' | 'trade' | 'room' | 'element' | 'part';

/** What a column of a cost table holds. */
export type CostColumn = 'material' | 'work' | 'fees' | 'hire' | 'allowance';
export const COST_COLUMNS: readonly CostColumn[] = ['material', 'work', 'fees', 'hire', 'allowance'];

export interface CostGroup {
  readonly label: string;
  /** Cents by column. */
  readonly cents: Readonly<Record<CostColumn, number>>;
  readonly total: number;
  /** By element, a step's cost may stand in parts under several. */
  readonly lines: readonly CostLine[];
}

/** In plan order, elements by their codes; what stands under no heading last. */
export function groupCosts(by: CostGrouping, view: View): readonly CostGroup[] {
  if (by === 'element') return costsByElement(view).map(({ label, lines }) => ({ label, ...sumsOf(lines), lines }));
  const groups = new Map<Slot | undefined, CostLine[]>();
  for (const line of view.plan.budget.lines) {
    const slot = headingOf(line, by, view);
    addTo(groups, slot, line);
  }
  const order = view.plan.model.names.order;
  const placeOf = (slot: Slot | undefined): number => (slot === undefined ? undefined : order.get(slot)) ?? order.size;
  return [...groups]
    .sort(([a], [b]) => placeOf(a) - placeOf(b))
    .map(([slot, lines]) => ({ label: slot === undefined ? NO_HEADING[by] : nameOf(slot, by, view), ...sumsOf(lines), lines }));
}

/** Headings that the plan itself names. */
type ByPlan = Exclude<CostGrouping, 'element'>;

const NO_HEADING: Readonly<Record<ByPlan, string>> = {
  task: 'No one task',
  trade: 'No trade',
  room: 'Not of one room',
  part: 'Not of one part',
};

/** Tasks by their names, as the plan refers to them; the rest by what a person calls it. */
function nameOf(slot: Slot, by: ByPlan, view: View): string {
  return by === 'task' ? slot.name : labelOf(slot, view);
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

function headingOf(line: CostLine, by: ByPlan, { plan: { timeline } }: View): Slot | undefined {
  switch (by) {
    case 'task':
      return line.step === undefined ? undefined : timeline.steps.list[line.step]?.slot;
    case 'trade':
      return line.trade;
    case 'room':
      return line.room;
    case 'part':
      return line.element;
  }
}
