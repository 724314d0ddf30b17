// What a plan costs, for programs: one line a cost, in whole cents. The shape is published in server/schemas/cost.schema.json.
import type { CostKind, CostLine, Rung } from '#money/cost-lines';
import { costElements } from './cost-elements.ts';
import { type ListedReason, listedReason, pruned } from './listed-reason.ts';
import type { View } from './view.ts';

export interface CostAnswer {
  readonly screed: 1;
  readonly currency: string;
  /** Whether the plan speaks of money at all. */
  readonly priced: boolean;
  readonly lines: readonly ListedCost[];
  /** Cents, before tax and contingency. */
  readonly net: number;
  readonly tax: number;
  readonly contingency: number;
  readonly total: number;
  readonly leavesOut: readonly { readonly kind: 'price' | 'rate'; readonly what: string }[];
}

export interface ListedCost {
  readonly kind: CostKind;
  /** What the money stands on: an accepted bid, a sum given, a unit price, hours and priced material. */
  readonly basis: Rung;
  readonly label: string;
  readonly cents: number;
  readonly task?: string;
  readonly trade?: string;
  readonly room?: string;
  readonly level?: string;
  readonly element?: string;
  /** The line of the take-off it pays for. */
  readonly line?: string;
  /** Codes of the elements of UNIFORMAT II that it belongs to, with the cents of each; absent where it belongs to none. */
  readonly uniformat?: readonly { readonly code: string; readonly cents: number }[];
  /** To the second level; the working of what is bought stands in the take-off. */
  readonly reason?: ListedReason;
}

export function costAnswer(view: View): CostAnswer {
  const { budget } = view.plan;
  return {
    screed: 1,
    currency: view.style.currency,
    priced: budget.priced,
    lines: budget.lines.map((line) => listedCost(line, view)),
    net: budget.net,
    tax: budget.tax,
    contingency: budget.contingency,
    total: budget.total,
    leavesOut: budget.missing.map(({ kind, what }) => ({ kind, what })),
  };
}

function listedCost(line: CostLine, view: View): ListedCost {
  const step = line.step === undefined ? undefined : view.plan.timeline.steps.list[line.step];
  return {
    kind: line.kind,
    basis: line.rung,
    label: line.label,
    cents: line.cents,
    ...(step === undefined ? {} : { task: step.name }),
    ...(line.trade === undefined ? {} : { trade: line.trade.name }),
    ...(line.room === undefined ? {} : { room: line.room.name }),
    ...(line.level === undefined ? {} : { level: line.level.name }),
    ...(line.element === undefined ? {} : { element: `${line.element.kind} ${line.element.name}` }),
    ...(line.line === undefined ? {} : { line: line.line.id }),
    ...uniformatOf(line, view),
    ...(line.working === undefined ? {} : { reason: pruned(listedReason(line.working(), view), 2) }),
  };
}

function uniformatOf(line: CostLine, view: View): Pick<ListedCost, 'uniformat'> {
  const parts = costElements(line, view).flatMap(({ element, cents }) =>
    element === undefined ? [] : [{ code: element.name.toUpperCase(), cents }],
  );
  return parts.length === 0 ? {} : { uniformat: parts };
}
