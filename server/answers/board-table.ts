// The board as a table: for each trade its weeks, one column a plan, and the days on which two ask for one crew or one machine.
import { shortDate, shortWeekday, weekday } from '#kit/dates';
import type { TextRow } from '#kit/table';
import type { Board, BoardStep } from './board.ts';
import { planLabel } from './summary.ts';
import { counted, left, type Table } from './table.ts';

export function boardTable({ views, trades }: Board): Table {
  const several = views.length > 1;
  const days = trades.reduce((sum, { weeks }) => sum + weeks.reduce((own, week) => own + week.clashes.length, 0), 0);
  return {
    heading: [
      several
        ? `${views.map(planLabel).join(', ')}: trades, machines and firms that they share, and the days on which more is asked of one than there is.`
        : `${views.map(planLabel).join('')}: who is on site, week by week.`,
      ...(trades.length > 0 ? [] : [several ? NOTHING_SHARED : 'No trade has a step with dates that is still to do.']),
    ],
    columns: [left('Week of'), ...views.map((view) => left(planLabel(view))), ...(several ? [left('Asked for twice')] : [])],
    rows: trades.flatMap(({ kind, label, crews, weeks }): readonly TextRow[] => [
      `${label}, ${counted(crews, kind === 'machine' ? 'machine' : 'crew')}`,
      ...weeks.map(
        (week): TextRow => [
          shortDate(week.monday),
          ...week.houses.map((steps) => steps.map(stepText).join(', ')),
          ...(several ? [daysText(week.clashes)] : []),
        ],
      ),
    ]),
    totals: [],
    remarks:
      several && trades.length > 0
        ? [
            days === 0
              ? 'None of them is asked for twice.'
              : `${counted(days, 'day')} asked for twice; each plan’s dates know only its own steps.`,
          ]
        : [],
  };
}

const NOTHING_SHARED =
  'They share no trade with steps still to do. Put the trades into one file and include it from each plan: include "../crews.screed".';

/** 'walls-up Mon-Wed'. */
function stepText({ step, days }: BoardStep): string {
  return `${step} ${daysText(days)}`;
}

/** 'Mon-Wed, Fri'. */
export function daysText(days: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const day of days) {
    const last = runs[runs.length - 1];
    if (last !== undefined && last[1] === day - 1) last[1] = day;
    else runs.push([day, day]);
  }
  const name = (day: number): string => shortWeekday(weekday(day));
  return runs.map(([from, to]) => (from === to ? name(from) : `${name(from)}-${name(to)}`)).join(', ');
}
