// Costs by the elements of UNIFORMAT II: what pays for a line of the take-off stands where that line does; what pays for a
// whole step is shared out by the hours of its lines, which is how its crew spends its days.
import { shareCents } from '#kit/money';
import type { ElementOf } from '#model/model';
import type { CostLine } from '#money/cost-lines';
import { elementOf, elementOfWork, NOT_CLASSIFIED } from './takeoff-lines.ts';
import type { View } from './view.ts';

type Uniformat = ElementOf<'element'>;

export interface ElementPart {
  /** Undefined for what belongs to none. */
  readonly element: Uniformat | undefined;
  readonly cents: number;
}

export interface ElementCosts {
  readonly label: string;
  /** Costs, or the parts of them that belong here. */
  readonly lines: readonly CostLine[];
}

/** By code; what belongs to no element last. */
export function costsByElement(view: View): readonly ElementCosts[] {
  const groups = new Map<string, { label: string; lines: CostLine[] }>();
  for (const line of view.plan.budget.lines)
    for (const { element, cents } of costElements(line, view)) {
      const code = element?.name.toUpperCase() ?? '';
      const label = element === undefined ? NOT_CLASSIFIED : `${code} ${element.label}`;
      const group = groups.get(code) ?? { label, lines: [] };
      groups.set(code, group);
      group.lines.push(cents === line.cents ? line : { ...line, cents });
    }
  return [...groups].sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a < b ? -1 : 1)).map(([, group]) => group);
}

/** A cost in parts that add up to it, to the cent. */
export function costElements(line: CostLine, view: View): readonly ElementPart[] {
  if (line.line !== undefined) return [{ element: elementOf(line.line), cents: line.cents }];
  const weights = line.step === undefined ? undefined : hoursByElement(line.step, view);
  if (weights === undefined) return [{ element: undefined, cents: line.cents }];
  const parts = shareCents(
    line.cents,
    weights.map(({ minutes }) => minutes),
  );
  return weights.map(({ element }, at) => ({ element, cents: parts[at]! })).filter(({ cents }) => cents !== 0);
}

interface Hours {
  readonly element: Uniformat | undefined;
  minutes: number;
}

/** Of a step's lines; where none tells hours, by its works alone. Undefined where it does no known work. */
function hoursByElement(step: number, { plan: { timeline } }: View): readonly Hours[] | undefined {
  const hours: Hours[] = [];
  const add = (element: Uniformat | undefined, minutes: number): void => {
    const known = hours.find((each) => each.element === element);
    if (known === undefined) hours.push({ element, minutes });
    else known.minutes += minutes;
  };
  for (const { line, share } of timeline.claims.byStep[step] ?? [])
    if (line.hours !== undefined && line.hours.value > 0) add(elementOf(line), line.hours.value * share);
  if (hours.length > 0) return hours;
  const task = timeline.steps.list[step];
  if (task?.kind !== 'task') return undefined;
  for (const { value } of task.given.does?.value ?? []) add(elementOfWork(value.work), 1);
  return hours.length === 0 ? undefined : hours;
}
