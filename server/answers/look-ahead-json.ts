// The next weeks for programs, and as rows for a spreadsheet. The shape is published in server/schemas/look-ahead.schema.json.
import { isoDate, isoMoment } from '#kit/dates';
import type { Cell } from '#kit/table';
import type { Call, LookAhead, Stay } from './look-ahead.ts';
import type { View } from './view.ts';

export interface LookAheadAnswer {
  readonly screed: 1;
  readonly from: string;
  readonly to: string;
  readonly asOf?: string;
  readonly calls: readonly ListedCall[];
  readonly arrivals: readonly {
    readonly kind: 'delivery' | 'milestone';
    readonly name: string;
    readonly label: string;
    readonly day: string;
    readonly who?: string;
    readonly phone?: string;
  }[];
  readonly trades: readonly {
    readonly name: string;
    readonly label: string;
    readonly who: string;
    readonly phone?: string;
    readonly confirmBy?: string;
    readonly steps: readonly ListedStay[];
  }[];
  /** That no trade is named for. */
  readonly unnamed: readonly ListedStay[];
}

export interface ListedCall {
  readonly kind: Call['kind'];
  readonly by: string;
  readonly late: boolean;
  readonly who: string;
  readonly phone?: string;
  readonly about: string;
  readonly steps: readonly string[];
  readonly for: string;
}

export interface ListedStay {
  readonly name: string;
  readonly label: string;
  readonly start: string;
  readonly finish: string;
  /** Working minutes. */
  readonly duration: number;
  readonly wholeDays: boolean;
  readonly begun: boolean;
  readonly goesOn: boolean;
  readonly where: readonly string[];
}

export function lookAheadAnswer(
  { from, to, trades, unnamed, calls, arrivals }: LookAhead,
  { plan: { timeline } }: View,
): LookAheadAnswer {
  const nameOf = (step: number): string => timeline.steps.list[step]!.name;
  const stayOf = ({ step, start, finish, wholeDays, begun, goesOn, where }: Stay): ListedStay => ({
    name: nameOf(step),
    label: timeline.steps.list[step]!.label,
    start: isoMoment(start),
    finish: isoMoment(finish),
    duration: timeline.durations[step]!.minutes,
    wholeDays,
    begun,
    goesOn,
    where,
  });
  const { asOf } = timeline.progress;
  return {
    screed: 1,
    from: isoDate(from),
    to: isoDate(to),
    ...(asOf === undefined ? {} : { asOf: isoDate(asOf) }),
    calls: calls.map(({ kind, by, late, who, phone, about, steps, for: day }) => ({
      kind,
      by: isoDate(by),
      late,
      who,
      ...(phone === undefined ? {} : { phone }),
      about,
      steps: steps.map(nameOf),
      for: isoDate(day),
    })),
    arrivals: arrivals.map(({ step, day, who, phone }) => ({
      kind: timeline.steps.list[step]!.kind === 'delivery' ? 'delivery' : 'milestone',
      name: nameOf(step),
      label: timeline.steps.list[step]!.label,
      day: isoDate(day),
      ...(who === '' ? {} : { who }),
      ...(phone === undefined ? {} : { phone }),
    })),
    trades: trades.map(({ trade, who, phone, stays, confirmBy }) => ({
      name: trade.name,
      label: trade.label,
      who,
      ...(phone === undefined ? {} : { phone }),
      ...(confirmBy === undefined ? {} : { confirmBy: isoDate(confirmBy) }),
      steps: stays.map(stayOf),
    })),
    unnamed: unnamed.map(stayOf),
  };
}

/** One row a call, one a delivery or milestone, then one a step of each trade. */
export function lookAheadRows(ahead: LookAhead, view: View): readonly (readonly Cell[])[] {
  const { calls, trades, unnamed, arrivals } = lookAheadAnswer(ahead, view);
  return [
    ['row', 'by', 'trade', 'who', 'phone', 'name', 'label', 'where', 'start', 'finish', 'minutes'],
    ...calls.map(({ kind, by, who, phone, about, steps, for: day }): readonly Cell[] => [
      kind,
      by,
      undefined,
      who,
      phone,
      steps.join(' '),
      about,
      undefined,
      day,
      undefined,
      undefined,
    ]),
    ...arrivals.map(({ kind, name, label, day, who, phone }): readonly Cell[] => [
      kind,
      undefined,
      undefined,
      who,
      phone,
      name,
      label,
      undefined,
      day,
      undefined,
      undefined,
    ]),
    ...[...trades, { name: undefined, who: undefined, phone: undefined, confirmBy: undefined, steps: unnamed }].flatMap(
      ({ name, who, phone, steps, confirmBy }) =>
        steps.map((step): readonly Cell[] => [
          'on site',
          confirmBy,
          name,
          who,
          phone,
          step.name,
          step.label,
          step.where.join(', '),
          step.start,
          step.finish,
          step.duration,
        ]),
    ),
  ];
}
