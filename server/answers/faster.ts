// Which steps are worth paying to shorten: what the plan says can be done sooner and for how much, each alone, and then the
// least price for each earlier end.
import { dayOfFinish } from '#kit/dates';
import { type Option, type Shortening, shortening, type Taken, type Tried } from '#schedule/shortening';
import type { Timeline } from '#schedule/timeline';
import { hasFinished } from '#schedule/timing';
import { type View, writeDays } from './view.ts';

export interface Faster extends Shortening {
  readonly timeline: Timeline;
}

/** One of the amounts that a step is shortened by. */
export interface Shortened {
  readonly step: number;
  readonly minutes: number;
}

/** What is open and says by how much it can be faster, in plan order. */
export function fasterOf({ plan: { timeline } }: View, mostTried?: number): Faster {
  const options = timeline.steps.list.flatMap((step, at): readonly Option[] => {
    if (step.kind !== 'task' || hasFinished(timeline.timing, at)) return [];
    const said = step.given['faster by']?.value;
    const most = Math.min(Math.round(said?.time.value ?? 0), timeline.timing.durations[at]!);
    if (said === undefined || most <= 0) return [];
    return [{ step: at, most, price: Math.round(said.price.value), each: said.each !== undefined }];
  });
  return { ...shortening(timeline, options, mostTried), timeline };
}

/** What is taken, in plan order. */
export function shortened(taken: Taken, { options }: Faster): readonly Shortened[] {
  return taken.flatMap((minutes, at) => (minutes === 0 ? [] : [{ step: options[at]!.step, minutes }]));
}

/** The same against the end before: what is added, and what is given back (below zero). */
export function changed(taken: Taken, before: Taken | undefined, { options }: Faster): readonly Shortened[] {
  return taken.flatMap((minutes, at) => {
    const more = minutes - (before?.[at] ?? 0);
    return more === 0 ? [] : [{ step: options[at]!.step, minutes: more }];
  });
}

/** 'dig 2d, frame 1d'; what is given back '-1d'. */
export function shortenedText(list: readonly Shortened[], { timeline }: Faster, view: View): string {
  return list
    .map(
      ({ step, minutes }) =>
        `${timeline.steps.list[step]!.name} ${minutes < 0 ? '-' : ''}${writeDays(Math.abs(minutes), view.style)}`,
    )
    .join(', ');
}

/** Whole cents for each day that the end gains. */
export function pricePerDay({ price, gains }: Pick<Tried, 'price' | 'gains'>): number {
  return Math.round(price / gains);
}

/** What an earlier end saves of what each week costs by itself; undefined where the plan does not say. Whole cents. */
export function carryingSaved({ end }: Tried, { timeline }: Faster, { plan }: View): number | undefined {
  const rate = plan.model.plan?.given.carrying?.value;
  if (rate === undefined) return undefined;
  return Math.round(rate.value * (dayOfFinish(timeline.crews.end) - dayOfFinish(end)) * 24 * 60);
}

/** The end that costs the least when what it saves is taken off; undefined where none is worth it, or nothing is saved. */
export function bestEnd(faster: Faster, view: View): Tried | undefined {
  let best: { readonly tried: Tried; readonly left: number } | undefined;
  for (const tried of faster.ends) {
    const saved = carryingSaved(tried, faster, view);
    if (saved === undefined) return undefined;
    const left = saved - tried.price;
    if (left > (best?.left ?? 0)) best = { tried, left };
  }
  return best?.tried;
}
