// What may become of the dates: the plan run many times over, PERT's figures beside it, and what a promised date needs. For
// programs; the shape is published in server/schemas/risk.schema.json, and the tables are made from it.
import { endOf } from '#checks/ends';
import { DAY_MINUTES, isoDate } from '#kit/dates';
import { workBetween } from '#schedule/calendar';
import { chanceBy, deviationOf, expectedLength, pertOf } from '#schedule/risk/pert';
import { type Asked, chanceOf, doneIn, type Simulation, simulate } from '#schedule/risk/simulate';
import type { Timeline } from '#schedule/timeline';
import { momentText } from './days.ts';
import { nameOf } from './holding.ts';
import type { View } from './view.ts';

/** Even odds, what most people call safe, and nearly certain. */
export const CHANCES = [0.5, 0.8, 0.95] as const;

export interface RiskAnswer {
  readonly screed: 1;
  readonly dated: boolean;
  readonly minutesPerDay: number;
  readonly runs: number;
  readonly seed: number;
  readonly shape: Asked['shape'];
  readonly asOf?: string;
  /** By the dates shown. */
  readonly finish: string;
  readonly target?: string;
  /** Whether anything is uncertain. */
  readonly uncertain: boolean;
  /** Whether days of outside work were lost by chance. */
  readonly weather: boolean;
  readonly done: readonly DoneBy[];
  /** The share of the runs that held the target. */
  readonly targetChance?: number;
  readonly pert?: PertAnswer;
  readonly steps: readonly RiskStep[];
  readonly milestones: readonly RiskMilestone[];
}

export interface DoneBy {
  readonly chance: number;
  readonly finish: string;
  /** Working minutes of the plan beyond the dates shown: what is to be kept in hand for that chance. */
  readonly beyondShown: number;
  /** Working minutes beyond the target, of which so many must be gained; below zero, to spare. */
  readonly beyondTarget?: number;
}

export interface PertAnswer {
  readonly finish: string;
  /** Working minutes. */
  readonly deviation: number;
  readonly chain: readonly string[];
  readonly targetChance?: number;
}

export interface RiskStep {
  readonly name: string;
  readonly label: string;
  readonly trade?: string;
  /** The share of the runs in which it was on a chain that set the end. */
  readonly onChain: number;
  readonly range?: {
    readonly of: 'length' | 'lead' | 'day';
    readonly from: 'step' | 'trade' | 'plan' | 'diary';
    /** Minutes: of work, as the wait counts them, or of a day since 1970. */
    readonly least: number;
    readonly likely: number;
    readonly most: number;
    readonly expected: number;
    readonly deviation: number;
  };
  /** How often a visit fails. */
  readonly fails?: number;
}

export interface RiskMilestone {
  readonly name: string;
  readonly label: string;
  readonly finish: string;
  readonly done: readonly { readonly chance: number; readonly finish: string }[];
  readonly deadline?: string;
  readonly deadlineChance?: number;
}

/** `target`: the day to be asked about, if it is not the plan's own. */
export function riskAnswer(view: View, asked: Asked, target?: number): RiskAnswer {
  const { model, timeline } = view.plan;
  const { dated, minutesPerDay, crews, progress } = timeline;
  const due = targetOf(view, target);
  const simulation = simulate(model, timeline, asked);
  const spare = (from: number, to: number): number =>
    workBetween(timeline.timing.calendars[timeline.timing.planCalendar]!, from, to);
  const shown = endOf(timeline)?.moment ?? crews.end;
  const pert = pertAnswer(view, target);
  return {
    screed: 1,
    dated,
    minutesPerDay,
    runs: asked.runs,
    seed: asked.seed,
    shape: asked.shape,
    ...(progress.asOf === undefined ? {} : { asOf: isoDate(progress.asOf) }),
    finish: momentText(shown, timeline),
    ...(due === undefined ? {} : { target: isoDate(due / DAY_MINUTES - 1) }),
    uncertain: simulation.ranges.length > 0 || simulation.visits.length > 0 || simulation.weather,
    weather: simulation.weather,
    done: CHANCES.map((chance) => {
      const moment = doneIn(simulation.ends, chance);
      return {
        chance,
        finish: momentText(moment, timeline),
        beyondShown: spare(shown, moment),
        ...(due === undefined ? {} : { beyondTarget: spare(due, moment) }),
      };
    }),
    ...(due === undefined ? {} : { targetChance: chanceOf(simulation.ends, due) }),
    ...(pert === undefined ? {} : { pert }),
    steps: riskSteps(simulation, timeline),
    milestones: milestones(simulation, timeline),
  };
}

/** PERT's figures, without any run: cheap enough for a pointer that passes by. */
export function pertAnswer(view: View, target?: number): PertAnswer | undefined {
  const { model, timeline } = view.plan;
  const pert = pertOf(model, timeline);
  if (pert === undefined) return undefined;
  const due = targetOf(view, target);
  return {
    finish: momentText(pert.end, timeline),
    deviation: Math.round(pert.deviation),
    chain: pert.chain.map((step) => nameOf(step, timeline)),
    ...(due === undefined ? {} : { targetChance: rounded(chanceBy(pert, due, timeline)) }),
  };
}

/** The end of the target's day. */
function targetOf({ plan: { model, timeline } }: View, asked: number | undefined): number | undefined {
  const target = asked ?? model.plan?.given.target?.value;
  return target === undefined || !timeline.dated ? undefined : (target + 1) * DAY_MINUTES;
}

/** Steps still to be done that are uncertain or were on a chain, in plan order. */
function riskSteps({ ranges, visits, onChain }: Simulation, { steps, trades }: Timeline): readonly RiskStep[] {
  const byStep = new Map(ranges.map((range) => [range.step, range]));
  const fails = new Map(visits.map((visit) => [visit.step, visit.fails]));
  return steps.list.flatMap(({ name, label }, step) => {
    const range = byStep.get(step);
    const trade = trades[step]?.name;
    const often = fails.get(step);
    if (range === undefined && often === undefined && onChain[step] === 0) return [];
    return [
      {
        name,
        label,
        ...(trade === undefined ? {} : { trade }),
        onChain: onChain[step]!,
        ...(range === undefined
          ? {}
          : {
              range: {
                of: range.what,
                from: range.from,
                least: Math.round(range.least),
                likely: Math.round(range.likely),
                most: Math.round(range.most),
                expected: Math.round(expectedLength(range)),
                deviation: Math.round(deviationOf(range)),
              },
            }),
        ...(often === undefined ? {} : { fails: often }),
      },
    ];
  });
}

function milestones({ watched }: Simulation, timeline: Timeline): readonly RiskMilestone[] {
  return watched.map(({ step, ends }) => {
    const { name, label, given } = timeline.steps.list[step]!;
    const deadline = given.deadline?.value;
    return {
      name,
      label,
      finish: momentText(timeline.crews.finish[step]!, timeline),
      done: CHANCES.map((chance) => ({ chance, finish: momentText(doneIn(ends, chance), timeline) })),
      ...(deadline === undefined
        ? {}
        : { deadline: isoDate(deadline), deadlineChance: chanceOf(ends, (deadline + 1) * DAY_MINUTES) }),
    };
  });
}

/** The series behind the normal curve is good to seven digits; four are more than anybody can use. */
function rounded(chance: number): number {
  return Math.round(chance * 10_000) / 10_000;
}
