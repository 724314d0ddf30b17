// What it costs to be done sooner, as two tables in one: each step alone, then the least price for each earlier end.
import { finishDay } from './days.ts';
import { bestEnd, carryingSaved, changed, type Faster, pricePerDay, shortenedText } from './faster.ts';
import { spareText } from './schedule-table.ts';
import { finishText, planLabel } from './summary.ts';
import { left, right, type Table } from './table.ts';
import { type View, writeDays, writeMoney } from './view.ts';

/** Each step that says "faster by": the dearest for a day last, those that gain nothing at the end. */
export function aloneTable(faster: Faster, view: View): Table {
  const { options, alone, timeline } = faster;
  const order = options.map((_, at) => at).sort((a, b) => worth(alone[a]) - worth(alone[b]) || a - b);
  return {
    heading: [
      `${planLabel(view)}: ${finishText(view) ?? 'no steps'}.`,
      options.length === 0
        ? 'No open step says by how much it can be done sooner. Write it at a task: faster by 2d for $300 each.'
        : 'Each step alone, by the amount with the least price for a day that the end gains. All dates are worked out anew, with calendars and crews. d is a working day.',
    ],
    columns: [
      left('Step'),
      left('Can be'),
      right('Best by'),
      right('Price'),
      right('End gains'),
      right('For a day'),
      left('Done'),
    ],
    rows: order.map((at) => {
      const { step, most, price, each } = options[at]!;
      const tried = alone[at];
      const can = `${writeDays(most, view.style)} faster for ${writeMoney(price, view.style)}${each ? ' each' : ''}`;
      const name = timeline.steps.list[step]!.name;
      if (tried === undefined) return [name, can, '', '', `nothing: ${spareOf(step, view)}`, '', ''];
      return [
        name,
        can,
        writeDays(tried.taken[at]!, view.style),
        writeMoney(tried.price, view.style),
        gainText(tried.gains, view),
        writeMoney(pricePerDay(tried), view.style),
        finishDay(tried.end, timeline),
      ];
    }),
    totals: [],
    remarks: [],
  };
}

/** The least price found for each end. */
export function endsTable(faster: Faster, view: View): Table {
  const { ends, timeline, isLeast } = faster;
  const best = bestEnd(faster, view);
  const saves = ends.some((tried) => (carryingSaved(tried, faster, view) ?? 0) > 0);
  const rows = ends.map((tried, nth) => {
    const before = ends[nth - 1];
    const more = { price: tried.price - (before?.price ?? 0), gains: tried.gains - (before?.gains ?? 0) };
    const saved = carryingSaved(tried, faster, view) ?? 0;
    return [
      finishDay(tried.end, timeline),
      gainText(tried.gains, view),
      writeMoney(tried.price, view.style),
      shortenedText(changed(tried.taken, before?.taken, faster), faster, view),
      writeMoney(pricePerDay(more), view.style),
      ...(saves ? [writeMoney(saved, view.style), tried === best ? 'the most is left over here' : ''] : []),
    ];
  });
  return {
    heading: ends.length === 0 ? [] : ['The least price for each earlier end, step by step:'],
    columns: [
      left('Done'),
      right('Sooner'),
      right('Price'),
      left('Paid for beyond the line above'),
      right('For a day more'),
      ...(saves ? [right('Carrying saved'), left('')] : []),
    ],
    rows,
    totals: [],
    remarks:
      ends.length === 0
        ? []
        : [
            `${isLeast ? 'Every combination was tried: none is cheaper.' : 'By links alone this is the least price for each end; where crews or calendars bind, it is the least that was found.'} To take a line, write the shorter "takes" and what it costs.`,
          ],
  };
}

function worth(tried: Faster['alone'][number]): number {
  return tried === undefined ? Number.POSITIVE_INFINITY : tried.price / tried.gains;
}

function gainText(gains: number, view: View): string {
  return writeDays(gains * view.style.minutesPerDay, view.style);
}

function spareOf(step: number, view: View): string {
  const spare = view.plan.timeline.floats.totalFloat[step]!;
  return spare > 0 ? `it has ${spareText(spare, view.style)} to spare` : 'other steps hold the end';
}
