// Slippage for programs. Days are local dates; what is later is counted in working days of the plan. The shape is published
// in server/schemas/slippage.schema.json.
import { isoDate } from '#kit/dates';
import { chainTo, lastSlip, type Slippage } from '#schedule/slippage';
import { causesOf, moneyEffects, whyEnd, whySlip } from './slippage.ts';
import type { View } from './view.ts';

export interface SlippageAnswer {
  readonly screed: 1;
  readonly against: { readonly name: string; readonly label: string; readonly on?: string };
  readonly finish: { readonly planned: string; readonly now: string; readonly days: number };
  readonly why: string;
  /** What the chain to the end gained and lost, the first first. */
  readonly causes: readonly { readonly name: string; readonly days: number; readonly text: string }[];
  /** The steps that lead to the end, the first first. */
  readonly chain: readonly string[];
  readonly money: readonly { readonly cents: number; readonly text: string }[];
  readonly tasks: readonly SlippedStep[];
}

export interface SlippedStep {
  readonly name: string;
  readonly since: 'kept' | 'added' | 'gone';
  readonly plannedStart?: string;
  readonly plannedFinish?: string;
  readonly start?: string;
  readonly finish?: string;
  readonly days?: number;
  readonly own?: number;
  readonly after?: string;
  readonly why?: string;
}

export function slippageAnswer(slipped: Slippage, view: View, trade?: string): SlippageAnswer {
  const { steps, trades } = view.plan.timeline;
  const { against, end, slips, gone } = slipped;
  const last = lastSlip(slipped).step;
  const name = (step: number): string => steps.list[step]!.name;
  const own = slips.filter(({ step }) => trade === undefined || trades[step]?.name === trade);
  return {
    screed: 1,
    against: {
      name: against.element.name,
      label: against.element.label,
      ...(against.on === undefined ? {} : { on: isoDate(against.on) }),
    },
    finish: { planned: isoDate(end.planned), now: isoDate(end.now), days: end.days },
    why: whyEnd(slipped, view),
    causes: causesOf(last, slipped, view).map(({ step, days, text }) => ({ name: name(step), days, text })),
    chain: chainTo(last, slips).map(({ step }) => name(step)),
    money: moneyEffects(slipped, view),
    tasks: [
      ...own.map((slip): SlippedStep => {
        const { step, planned, days, after } = slip;
        const why = whySlip(step, slipped, view);
        return {
          name: name(step),
          since: planned === undefined ? 'added' : 'kept',
          ...(planned === undefined ? {} : { plannedStart: isoDate(planned.begins), plannedFinish: isoDate(planned.done) }),
          start: isoDate(slip.begins),
          finish: isoDate(slip.done),
          ...(days === undefined ? {} : { days, own: slip.own! }),
          ...(after === undefined ? {} : { after: name(after) }),
          ...(why === undefined ? {} : { why }),
        };
      }),
      ...gone.map((each): SlippedStep => {
        const planned = against.steps.get(each)!;
        return { name: each, since: 'gone', plannedStart: isoDate(planned.begins), plannedFinish: isoDate(planned.done) };
      }),
    ],
  };
}
