// Money that has left, or been asked for, for steps that the diary says are done: it counts in place of what was planned.
// A part paid on the way says nothing of the whole, and a step under an accepted bid is that bid's.
import { shareCents } from '#kit/money';
import { constant } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import type { Timeline } from '#schedule/timeline';
import type { StepCost } from './step-costs.ts';

/** Whole cents by number of the step: what was invoiced for it or paid, whichever is more. */
export function actualCosts(model: Model, timeline: Timeline): ReadonlyMap<number, number> {
  const paid = sums(model.list('paid'), timeline);
  const invoiced = sums(model.list('invoice'), timeline);
  for (const [step, cents] of invoiced) if (cents > (paid.get(step) ?? 0)) paid.set(step, cents);
  return paid;
}

/** The planned cost with its work paid; fees and hire are bills of their own. */
export function asPaid(planned: StepCost, cents: number, label: string): StepCost {
  if (planned.bid !== undefined) return planned;
  const others = planned.lines.filter((line) => line.kind === 'fee' || line.kind === 'hire');
  const trade = planned.lines.find((line) => line.trade !== undefined)?.trade;
  const working = () => constant('paid or invoiced', cents, 'money');
  const line = { kind: 'work', rung: 'paid', label, cents, working, ...(trade === undefined ? {} : { trade }) } as const;
  return { ...planned, lines: [...others, line], missing: [] };
}

function sums(bills: readonly ElementOf<'paid' | 'invoice'>[], timeline: Timeline): Map<number, number> {
  const cents = new Map<number, number>();
  for (const { takes, given } of bills) {
    const steps = given.for?.value.map(({ value }) => timeline.steps.byName.get(value.name)) ?? [];
    if (takes === undefined || steps.length === 0 || !steps.every((step) => isDone(step, timeline))) continue;
    const shares = shareCents(
      Math.round(takes.money.value),
      steps.map((step) => Math.max(1, timeline.durations[step!]!.minutes)),
    );
    steps.forEach((step, at) => {
      cents.set(step!, (cents.get(step!) ?? 0) + shares[at]!);
    });
  }
  return cents;
}

function isDone(step: number | undefined, timeline: Timeline): boolean {
  return step !== undefined && timeline.progress.records.get(step)?.finished !== undefined;
}
