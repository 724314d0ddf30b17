// Today's dates beside those of a schedule that was kept: how many days each step slipped, and how many of them are its own.
import type { Slip, Slippage } from '#schedule/slippage';
import { tableDay } from './days.ts';
import { causesOf, moneyEffects, whyEnd } from './slippage.ts';
import { planLabel } from './summary.ts';
import { counted, left, right, type Table, withoutEmpty } from './table.ts';
import type { View } from './view.ts';

export function slippageTable(slipped: Slippage, view: View, trade?: string): Table {
  const { timeline } = view.plan;
  const day = tableDay(timeline);
  const own = (step: number): boolean => trade === undefined || timeline.trades[step]?.name === trade;
  const slips = [...slipped.slips]
    .filter(({ step }) => own(step))
    .sort((a, b) => a.begins - b.begins || a.done - b.done || a.step - b.step);
  const added = slips.filter(({ planned }) => planned === undefined).length;
  const { gone } = slipped;
  return withoutEmpty({
    heading: [
      `${planLabel(view)}. ${whyEnd(slipped, view)}`,
      ...moneyEffects(slipped, view).map(({ text }) => text),
      'Later is in working days of the plan; of its own are those that the step before it did not hand on. Along the way to the end they add up.',
    ],
    columns: [
      left('Step'),
      left('Was to begin'),
      left('Was to be done'),
      left('Begins'),
      left('Done'),
      right('Later'),
      right('Of its own'),
      left('After'),
      left('Why'),
    ],
    rows: [
      ...slips.map((slip) => row(slip, slipped, view, day)),
      ...gone.map((name): readonly string[] => {
        const planned = slipped.against.steps.get(name)!;
        return [name, day(planned.begins), day(planned.done), '', '', '', '', '', 'gone since'];
      }),
    ],
    totals: [],
    remarks: [
      ...(added === 0 ? [] : [`${counted(added, 'step')} added since, and so without slip.`]),
      ...(gone.length === 0 ? [] : [`${counted(gone.length, 'step')} gone since.`]),
    ],
  });
}

function row(slip: Slip, slipped: Slippage, view: View, day: (day: number) => string): readonly string[] {
  const { timeline } = view.plan;
  const { step, planned, days, own, after } = slip;
  const cause = causesOf(step, slipped, view).find((each) => each.step === step);
  return [
    timeline.steps.list[step]!.name,
    planned === undefined ? '' : day(planned.begins),
    planned === undefined ? '' : day(planned.done),
    day(slip.begins),
    day(slip.done),
    signed(days),
    signed(own),
    after === undefined ? '' : timeline.steps.list[after]!.name,
    cause === undefined ? '' : cause.text,
  ];
}

/** '+3d', '-2d', empty for none. */
function signed(days: number | undefined): string {
  return days === undefined || days === 0 ? '' : `${days > 0 ? '+' : '-'}${Math.abs(days)}d`;
}
