// What it costs to be done sooner, for programs: money in whole cents, lengths in working minutes. The shape is published in
// server/schemas/faster.schema.json.
import { momentText } from './days.ts';
import { bestEnd, carryingSaved, changed, type Faster, pricePerDay, type Shortened, shortened } from './faster.ts';
import type { View } from './view.ts';

export interface FasterAnswer {
  readonly screed: 1;
  readonly minutesPerDay: number;
  readonly currency: string;
  readonly finish: string;
  /** Every combination was tried, so none is cheaper; else by links alone. */
  readonly every: boolean;
  /** Each step that can be faster, alone. */
  readonly steps: readonly {
    readonly name: string;
    readonly most: number;
    readonly cents: number;
    readonly each: boolean;
    readonly alone?: Gain & { readonly minutes: number };
  }[];
  /** The least price found for each earlier end, the latest first. */
  readonly ends: readonly (Gain & {
    readonly shorter: readonly Part[];
    /** Against the end before; below zero, given back. */
    readonly more: readonly Part[];
    readonly carryingSaved?: number;
    readonly best?: true;
  })[];
}

interface Gain {
  readonly finish: string;
  readonly cents: number;
  /** Working days that the end gains. */
  readonly days: number;
  readonly centsPerDay: number;
}

interface Part {
  readonly name: string;
  readonly minutes: number;
}

export function fasterAnswer(faster: Faster, view: View): FasterAnswer {
  const { options, alone, ends, timeline } = faster;
  const best = bestEnd(faster, view);
  const parts = (list: readonly Shortened[]): readonly Part[] =>
    list.map(({ step, minutes }) => ({ name: timeline.steps.list[step]!.name, minutes }));
  const gain = (tried: Faster['ends'][number]): Gain => ({
    finish: momentText(tried.end, timeline),
    cents: tried.price,
    days: Math.round(tried.gains * 1000) / 1000,
    centsPerDay: pricePerDay(tried),
  });
  return {
    screed: 1,
    minutesPerDay: timeline.minutesPerDay,
    currency: view.style.currency,
    finish: momentText(timeline.crews.end, timeline),
    every: faster.isLeast,
    steps: options.map(({ step, most, price, each }, at) => {
      const tried = alone[at];
      return {
        name: timeline.steps.list[step]!.name,
        most,
        cents: price,
        each,
        ...(tried === undefined ? {} : { alone: { minutes: tried.taken[at]!, ...gain(tried) } }),
      };
    }),
    ends: ends.map((tried, nth) => {
      const saved = carryingSaved(tried, faster, view);
      return {
        ...gain(tried),
        shorter: parts(shortened(tried.taken, faster)),
        more: parts(changed(tried.taken, ends[nth - 1]?.taken, faster)),
        ...(saved === undefined ? {} : { carryingSaved: saved }),
        ...(tried === best ? { best: true as const } : {}),
      };
    }),
  };
}
