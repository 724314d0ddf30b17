// Earned value of a plan, as reasons with their working, each with what it means on site.
import { shortDate } from '#kit/dates';
import type { Quantity } from '#kit/quantity';
import type { Element } from '#model/model';
import { EARNED_FACTS, type Earned, type EarnedFact, earnedOf } from '#money/earned';
import { type ListedReason, listedReason, saying } from './listed-reason.ts';
import { type View, write } from './view.ts';

const MEANS: { readonly [F in EarnedFact]: string } = {
  'planned-value': 'what should be done by now, at its planned cost',
  'earned-value': 'what is done, at its planned cost',
  'actual-cost': 'what was paid or invoiced by now',
  'schedule-variance': 'below zero: less is done than should be',
  'cost-variance': 'below zero: what is done cost more than planned',
  'schedule-performance': 'under 1: slower than planned',
  'cost-performance': 'under 1: dearer than planned',
  'budget-at-completion': 'all steps, at their planned cost',
  'estimate-at-completion': 'what all of it will cost if the rest is as dear as what is done',
  'estimate-to-complete': 'what is then still to pay',
  'variance-at-completion': 'below zero: by how much it will be too dear',
};

/** By their names, without their working. */
export function earnedReasons(element: Element, view: View): readonly ListedReason[] {
  const earned = earnedFor(element, view);
  if (earned === undefined) return [];
  const rows = EARNED_FACTS.flatMap((fact) => {
    const value = earned[fact];
    if (value === undefined) return [];
    const { formula: _, source: __, ...row } = told(fact, value, view);
    return [{ ...row, inputs: [] }];
  });
  return [saying('earned value', headOf(earned), rows)];
}

/** One of them. */
export function earnedReason(element: Element, fact: string, view: View): ListedReason | undefined {
  const known = EARNED_FACTS.find((each) => each === fact);
  const earned = known === undefined ? undefined : earnedFor(element, view);
  const value = known === undefined ? undefined : earned?.[known];
  if (known === undefined || earned === undefined || value === undefined) return undefined;
  const reason = told(known, value, view);
  return { ...reason, inputs: [...reason.inputs, saying('it stands', headOf(earned))] };
}

function earnedFor(element: Element, { plan: { model, timeline } }: View): Earned | undefined {
  return element.kind === 'plan' ? earnedOf(model, timeline) : undefined;
}

function told(fact: EarnedFact, value: Quantity, view: View): ListedReason {
  // An index is read to the hundredth; what it was made of stands below it.
  const text = value.dimension === 'number' ? String(Math.round(value.value * 100) / 100) : write(value, view.style);
  return { ...listedReason(value, view, fact), text: `${text} (${MEANS[fact]})` };
}

function headOf({ asOf, against: { element, on } }: Earned): string {
  return `as of ${shortDate(asOf)}, against "${element.label}"${on === undefined ? '' : ` of ${shortDate(on)}`}`;
}
