// Sums that hints and hovers show beside the text, made once a plan and only when somebody looks: money by step and by
// trade, hours by trade, how often an opening is used, what was measured of an element.
import type { Dimension } from '#kit/dimension';
import type { Slot } from '#kit/place';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Room } from '#model/model';
import type { Model } from '#model/resolve';
import { people } from '#schedule/durations';
import type { Timeline } from '#schedule/timeline';
import type { Plan } from '#server/pipeline';

/** Whole cents by number of the step. */
export function centsOfStep({ budget }: Plan, step: number): number {
  return budget.centsOfStep(step);
}

/** What a step's money is for, in whole cents: lines of one label together, in plan order. */
export function costsOfStep({ budget }: Plan, step: number): readonly { readonly label: string; readonly cents: number }[] {
  const sums = new Map<string, number>();
  for (const line of budget.linesOfStep(step)) sums.set(line.label, (sums.get(line.label) ?? 0) + line.cents);
  return [...sums].map(([label, cents]) => ({ label, cents }));
}

/** Whole cents of a trade's steps. */
export function centsOfTrade(plan: Plan, trade: Slot): number {
  return stepsOfTrade(plan, trade).reduce((sum, step) => sum + centsOfStep(plan, step), 0);
}

/** Whole cents that belong to a room, a level or an element, by its slot. */
export function centsOfRoom({ budget }: Plan, slot: Slot): number {
  return budget.centsAt(slot);
}

export function stepsOfTrade({ timeline }: Plan, trade: Slot): readonly number[] {
  const numbers: number[] = [];
  timeline.trades.forEach((each, at) => {
    if (each?.slot === trade) numbers.push(at);
  });
  return numbers;
}

export interface TradeHours {
  /** Person-minutes. */
  readonly minutes: number;
  readonly steps: number;
}

export function hoursOfTrade({ timeline }: Plan, trade: Slot): TradeHours {
  let sums = hours.get(timeline);
  if (sums === undefined) {
    const made = new Map<Slot, TradeHours>();
    timeline.steps.list.forEach((step, at) => {
      const doing = timeline.trades[at];
      if (doing === undefined || step.kind !== 'task') return;
      const before = made.get(doing.slot) ?? { minutes: 0, steps: 0 };
      const minutes = timeline.durations[at]!.minutes * people(step, doing);
      made.set(doing.slot, { minutes: before.minutes + minutes, steps: before.steps + 1 });
    });
    hours.set(timeline, (sums = made));
  }
  return sums.get(trade) ?? { minutes: 0, steps: 0 };
}
const hours = new WeakMap<Timeline, ReadonlyMap<Slot, TradeHours>>();

/** How many of a type of window or door the rooms of the plan hold. */
export function countOfOpening(model: Model, type: Slot): number {
  const rooms = model.list('room');
  let counts = openings.get(rooms);
  if (counts === undefined) {
    const made = new Map<Slot, number>();
    const add = (slot: Slot, count: number): void => void made.set(slot, (made.get(slot) ?? 0) + count);
    for (const { given } of rooms) {
      for (const { value } of [...given.windows, ...given.doors])
        for (const { value: each } of value) add(each.type.slot, each.count ?? 1);
      for (const { value } of given.closet) if (value.door !== undefined) add(value.door.type.slot, value.door.count ?? 1);
    }
    openings.set(rooms, (counts = made));
  }
  return counts.get(type) ?? 0;
}
const openings = new WeakMap<readonly Room[], ReadonlyMap<Slot, number>>();

/** What was measured of an element by some measures, net, each portion once however many goods go on it. */
export function measuredOf<D extends Dimension>(
  { takeOff }: Plan,
  slot: Slot,
  dimension: D,
  label: string,
  measures: readonly string[],
): Quantity<D> | undefined {
  const portions = new Set<Quantity>();
  for (const line of takeOff.linesOf(slot))
    if (measures.includes(line.measure) && line.net.dimension === dimension) portions.add(line.net);
  return portions.size === 0 ? undefined : measure(dimension, sumForm(label), ...portions);
}

const forms = new Map<string, ReturnType<typeof form>>();
function sumForm(label: string): ReturnType<typeof form> {
  let known = forms.get(label);
  if (known === undefined)
    forms.set(label, (known = form(label, 'the sum of', (...values) => values.reduce((sum, value) => sum + value, 0))));
  return known;
}
