// The board for programs: days are local dates. The shape is published in server/schemas/board.schema.json.
import { isoDate } from '#kit/dates';
import type { Board } from './board.ts';
import { planLabel } from './summary.ts';

export interface BoardAnswer {
  readonly screed: 1;
  readonly plans: readonly { readonly file: string; readonly label: string }[];
  readonly trades: readonly {
    readonly kind: 'trade' | 'machine' | 'firm';
    readonly name: string;
    readonly label: string;
    readonly crews: number;
    readonly weeks: readonly {
      readonly week: string;
      /** `plan` is the number of the plan in `plans`. */
      readonly steps: readonly { readonly plan: number; readonly step: string; readonly days: readonly string[] }[];
      readonly askedTwice: readonly string[];
    }[];
  }[];
}

export function boardAnswer({ views, trades }: Board): BoardAnswer {
  return {
    screed: 1,
    plans: views.map((view) => ({ file: view.fileName(view.plan.root), label: planLabel(view) })),
    trades: trades.map(({ kind, name, label, crews, weeks }) => ({
      kind,
      name,
      label,
      crews,
      weeks: weeks.map((week) => ({
        week: isoDate(week.monday),
        steps: week.houses.flatMap((steps, plan) => steps.map(({ step, days }) => ({ plan, step, days: days.map(isoDate) }))),
        askedTwice: week.clashes.map(isoDate),
      })),
    })),
  };
}
