// The risk of the dates as somebody reads it who must promise one: by when it is done with which chance, what that leaves to
// the target, which steps decide it, and how sure the milestones are.
import { DAY_MINUTES, dayAndMonth, readIsoDate, shortDate } from '#kit/dates';
import { CHANCES, type PertAnswer, type RiskAnswer, type RiskStep } from './risk.ts';
import { finishText, planLabel } from './summary.ts';
import { counted, left, right, type Table, withoutEmpty } from './table.ts';
import { type Style, type View, writeDays } from './view.ts';

/** One below the other. */
export function riskTables(answer: RiskAnswer, view: View): readonly Table[] {
  if (!answer.uncertain) return [nothingUncertain(view)];
  return [
    ends(answer, view),
    ...(answer.steps.some(({ onChain }) => onChain >= SELDOM) ? [decisive(answer, view)] : []),
    ...(answer.milestones.length === 0 ? [] : [promises(answer)]),
  ];
}

function nothingUncertain(view: View): Table {
  return {
    heading: [`${planLabel(view)}: ${finishText(view) ?? 'no steps'}.`],
    columns: [],
    rows: [],
    totals: [],
    remarks: [
      'Nothing in this plan is uncertain, so every run would end on that day. A length may have a range (takes 3d..6d likely 4d), the plan or a trade may say how far all its lengths stray (lengths 85%..140%), a lead may have one (lead 8..10 weeks), a visit may fail (fails 15%), and outside work may lose days (weather, bad-weather).',
    ],
  };
}

function ends(answer: RiskAnswer, view: View): Table {
  const { style } = view;
  const { done, runs, seed, shape, weather, targetChance, target, pert } = answer;
  const finish = finishText(view);
  const day = target === undefined ? '' : dayAndMonth(readIsoDate(target)!);
  return withoutEmpty({
    heading: [
      `${planLabel(view)}: by the dates shown ${finish ?? 'no steps'}.`,
      `By ${formatCount(runs)} runs (seed ${seed}, lengths as ${shape === 'beta-pert' ? 'beta-PERT' : 'triangles'}${weather ? ', outside days lost by chance' : ''}), with the same calendars, links and crews; a chance is good to about ${errorText(runs)}.`,
      ...(shape === 'beta-pert' ? [] : ['Triangles give the ends of a range more weight than beta-PERT does.']),
    ],
    columns: [left('Chance'), left('Done by'), right('Later than shown'), right(target === undefined ? '' : `Against ${day}`)],
    rows: done.map(({ chance, finish: end, beyondShown, beyondTarget }) => [
      percent(chance),
      dayOf(end),
      beyondShown <= 0 ? 'not later' : wholeDays(beyondShown, style),
      beyondTarget === undefined
        ? ''
        : beyondTarget > 0
          ? `${wholeDays(beyondTarget, style)} after`
          : -beyondTarget < style.minutesPerDay
            ? 'just held'
            : `${writeDays(Math.floor(-beyondTarget / style.minutesPerDay) * style.minutesPerDay, style)} before`,
    ]),
    totals: [],
    remarks: [
      ...(targetChance === undefined ? [] : [targetText(answer, day, style)]),
      inHand(answer, style),
      ...(pert === undefined ? [] : [pertText(pert, style, day)]),
      'Lengths are drawn each for itself: what would slow the whole job (a slow lender, a bad year) is not in these figures.',
    ],
  });
}

function targetText({ targetChance, done }: RiskAnswer, day: string, style: Style): string {
  const missed = done.filter(({ beyondTarget }) => (beyondTarget ?? 0) > 0);
  const gains = missed.map(
    ({ chance, beyondTarget }) => `${wholeDays(beyondTarget!, style)} earlier to hold it in ${percent(chance)}`,
  );
  return `The target of ${day} is held in ${percent(targetChance!)} of the runs${gains.length === 0 ? '' : `; the work must come ${gains.join(', and ')}`}.`;
}

/** What lies between the dates shown and a promise. */
function inHand({ done }: RiskAnswer, style: Style): string {
  const kept = done.flatMap(({ chance, beyondShown }) =>
    chance === 0.5 ? [] : [`${beyondShown <= 0 ? 'none' : wholeDays(beyondShown, style)} for ${percent(chance)}`],
  );
  return `In hand, between the dates shown and the date that is promised: ${kept.join(', ')}.`;
}

/** 'By PERT …': always with what it leaves out. */
export function pertText({ finish, deviation, targetChance }: PertAnswer, style: Style, target?: string): string {
  const chance =
    targetChance === undefined || target === undefined
      ? ''
      : `, the target of ${target} with a chance of ${percent(targetChance)}`;
  return `By PERT: done ${dayOf(finish)} on average, standard deviation ${writeDays(deviation, style)}${chance}. It looks at the longest chain alone and knows neither weather nor failed visits: a hopeful figure.`;
}

/** Less often than this a step does not decide anything. */
const SELDOM = 0.05;

function decisive({ steps }: RiskAnswer, view: View): Table {
  const { style } = view;
  const often = steps.filter(({ onChain }) => onChain >= SELDOM).sort((a, b) => b.onChain - a.onChain);
  const rest = steps.length - often.length;
  return withoutEmpty({
    heading: ['Steps that set the end, and in how many of the runs. Average and deviation are PERT’s, of the range.'],
    columns: [left('Step'), left('Trade'), right('Sets the end'), left('Range'), right('Average'), right('Deviation')],
    rows: often.map((step) => [
      step.name,
      tradeLabel(step, view),
      percent(step.onChain),
      rangeText(step, style),
      amountText(step.range, step.range?.expected, style),
      step.range?.of === 'day' ? spanText(step.range.deviation) : amountText(step.range, step.range?.deviation, style),
    ]),
    totals: [],
    remarks: rest === 0 ? [] : [`${counted(rest, 'more step')} set it seldom or never.`],
  });
}

function rangeText({ range, fails }: RiskStep, style: Style): string {
  const failing = fails === undefined ? '' : `fails ${percent(fails)}`;
  if (range === undefined) return failing;
  const write = (minutes: number): string => amountText(range, minutes, style);
  const from = range.from === 'step' ? '' : `, by the ${range.from}`;
  return `${write(range.least)} to ${write(range.most)}, likely ${write(range.likely)}${range.of === 'lead' ? ', on its way' : ''}${from}`;
}

/** Working days of a length, days of a lead, the day itself. */
function amountText(range: RiskStep['range'], minutes: number | undefined, style: Style): string {
  if (range === undefined || minutes === undefined) return '';
  if (range.of === 'length') return writeDays(minutes, style);
  return range.of === 'lead' ? spanText(minutes) : dayAndMonth(Math.round(minutes / DAY_MINUTES));
}

/** Days by the calendar. */
function spanText(minutes: number): string {
  return counted(Math.round(minutes / DAY_MINUTES), 'day');
}

function promises({ milestones }: RiskAnswer): Table {
  return withoutEmpty({
    heading: ['Milestones and deadlines still ahead.'],
    columns: [
      left('Milestone'),
      left('By the dates shown'),
      ...CHANCES.map((chance) => left(percent(chance))),
      left('Deadline'),
      right('Held in'),
    ],
    rows: milestones.map(({ label, finish, done, deadline, deadlineChance }) => [
      label,
      dayOf(finish),
      ...done.map((each) => dayOf(each.finish)),
      deadline === undefined ? '' : shortDate(readIsoDate(deadline)!),
      deadlineChance === undefined ? '' : percent(deadlineChance),
    ]),
    totals: [],
    remarks: [],
  });
}

function tradeLabel({ trade }: RiskStep, { plan: { model } }: View): string {
  return trade === undefined ? '' : (model.list('trade').find(({ name }) => name === trade)?.label ?? trade);
}

/** '2027-12-09T15:30' as 'Thu 9 Dec 2027'; 'day 20T15:30' as 'day 20'. */
function dayOf(moment: string): string {
  const day = moment.slice(0, moment.indexOf('T'));
  const number = readIsoDate(day);
  return number === undefined ? day : shortDate(number);
}

/** Rounded up: a day that is promised must be there whole. */
function wholeDays(minutes: number, style: Style): string {
  return writeDays(Math.ceil(minutes / style.minutesPerDay - 1e-9) * style.minutesPerDay, style);
}

export function percent(chance: number): string {
  const rounded = Math.round(chance * 100);
  if (chance > 0 && rounded === 0) return 'under 1%';
  return chance < 1 && rounded === 100 ? 'over 99%' : `${rounded}%`;
}

/** Two standard errors of a chance of one half, in points of a percent. */
function errorText(runs: number): string {
  const points = Math.max(1, Math.ceil(100 / Math.sqrt(runs)));
  return `${points} in 100`;
}

function formatCount(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}
