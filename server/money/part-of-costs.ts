// What one step or one thing costs, for those who look at little: the same lines that the whole budget has for it, without
// making the others.
import type { Slot } from '#kit/place';
import type { Timeline } from '#schedule/timeline';
import type { Line } from '#takeoff/lines';
import type { TakeOff } from '#takeoff/take-off';
import type { Budget, CostLine } from './cost-lines.ts';
import type { MaterialCost } from './material.ts';
import { materialLine } from './material-costs.ts';
import type { StepCost } from './step-costs.ts';
import { type WhoseGoods, whoseGoods } from './whose-goods.ts';

interface Costs {
  readonly costs: readonly StepCost[];
  readonly bidden: readonly CostLine[];
  readonly kept: readonly CostLine[];
  readonly materials: readonly MaterialCost[];
  readonly covered: ReadonlySet<Line>;
  readonly timeline: Timeline;
  readonly takeOff: TakeOff;
}

export function partOfCosts({
  costs,
  bidden,
  kept,
  materials,
  covered,
  timeline,
  takeOff,
}: Costs): Pick<Budget, 'linesOfStep' | 'centsOfStep' | 'centsAt'> {
  let goods: WhoseGoods | undefined;
  const whose = (): WhoseGoods => (goods ??= whoseGoods(materials, covered, timeline));
  return {
    linesOfStep: (step) => {
      const parts: { cents: number; line: Line; nth: number; at: number }[] = [];
      whose().ofStep(step, (cents, line, nth, at) => parts.push({ cents, line, nth, at }));
      parts.sort((a, b) => a.nth - b.nth || a.at - b.at);
      return [
        ...costs[step]!.lines.map((line) => ({ ...line, step })),
        ...bidden.filter((line) => line.step === step),
        ...parts.map(({ cents, line, nth }) => materialLine(materials[nth]!, line, cents, step, timeline)),
      ];
    },
    centsOfStep: (step) => {
      let sum = whose().ofStep(step);
      for (const { cents } of costs[step]!.lines) sum += cents;
      for (const line of bidden) if (line.step === step) sum += line.cents;
      return sum;
    },
    centsAt: (slot) => {
      let sum = 0;
      for (const { lines } of costs) for (const line of lines) if (isAt(slot, line)) sum += line.cents;
      for (const line of bidden) if (isAt(slot, line)) sum += line.cents;
      for (const line of kept) if (isAt(slot, line)) sum += line.cents;
      for (const line of takeOff.linesOf(slot)) sum += whose().ofLine(line);
      return sum;
    },
  };
}

function isAt(slot: Slot, { room, level, element }: CostLine): boolean {
  return room === slot || level === slot || element === slot;
}
