// Why a step takes as long as it does, begins when it does, costs what it costs, and how far it may slip.
import { endOf } from '#checks/ends';
import { civil, DAY_MINUTES, monthName } from '#kit/dates';
import { addTo } from '#kit/gathered';
import type { Step } from '#model/model';
import { nextWork } from '#schedule/calendar';
import { durationWorking, people, personMinutes } from '#schedule/durations';
import { chainOf, holdOf } from '#schedule/holds';
import { boundOf } from '#schedule/late-bounds';
import type { PlanLink } from '#schedule/links';
import { pausesOf } from '#schedule/pauses';
import type { Timeline } from '#schedule/timeline';
import { briefStart, finishDay, lengthMinutes, span, startDay, stepFinishDay } from './days.ts';
import { hazardReason } from './explain-hazards.ts';
import { costReason } from './explain-money.ts';
import { orderReason } from './explain-order.ts';
import { rangeReasons, stepRisk } from './explain-risk.ts';
import { holdText, linkText, nameOf } from './holding.ts';
import { type ListedReason, listedReason, saying } from './listed-reason.ts';
import { isAssumed, spareText, standing } from './schedule-table.ts';
import { slipReason } from './slippage.ts';
import { counted } from './table.ts';
import { type View, write, writeDays } from './view.ts';

/** One sentence. */
export function whyStep(step: number, view: View): string {
  const { timeline } = view.plan;
  const when = startText(step, view);
  const stands = standing(step, timeline);
  const { basis } = timeline.durations[step]!;
  if (stands === 'done' && basis === 'span' && isAssumed(step, timeline))
    return `It stood ${stoodText(step, view)}, as long as what it stands for.`;
  if (stands === 'done' && timeline.progress.records.get(step)?.finished === undefined && timeline.progress.records.has(step))
    return `It is taken as done by ${stepFinishDay(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline)}: by the diary nothing of it is left, and it does not say when it was done.`;
  if (stands === 'begun' && basis === 'span')
    return `It stands ${stoodText(step, view)}, as long as what it stands for; it ${slipText(step, view)}.`;
  if (stands === 'done' && isAssumed(step, timeline))
    return `It is taken as done by ${stepFinishDay(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline)}: all that follows it has begun, and the diary does not say when.`;
  if (stands === 'done') return `It was ${doneText(step, view)}, as the diary says.`;
  if (stands === 'begun')
    return `It was begun ${when}, and ${leftText(step, view)}; it ${pauseText(step, view)}${slipText(step, view)}.`;
  const pause = pauseText(step, view);
  const slip = `${pause}${slipText(step, view)}`;
  const takes = takesText(step, view);
  if (takes === undefined) return `It falls on ${when}, and it ${slip}.`;
  return timeline.durations[step]!.basis === 'none'
    ? `Nothing says how long it takes; it begins ${when}, and ${slip}.`
    : `It takes ${takes}, begins ${when}, ${pause === '' ? 'and ' : ''}${slip}.`;
}

export function stepReasons(step: number, view: View): readonly ListedReason[] {
  const { timeline, budget } = view.plan;
  const begins = beginsReason(step, view);
  const next = timeline.links.filter(({ from }) => from === step).map(({ to }) => nameOf(to, timeline));
  return [
    ...optional(takesReason(step, view)),
    begins,
    saying('done', stepFinishDay(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline)),
    ...(standing(step, timeline) === 'done' ? [] : [spareReason(step, view)]),
    ...optional(stepRisk(step, view)),
    ...slipReason(step, view),
    ...(next.length === 0 ? [] : [saying('waited for by', [...new Set(next)].join(', '))]),
    ...optional(orderReason(step, view)),
    ...optional(hazardReason(timeline.steps.list[step]!)),
    ...workReasons(step, view),
    ...optional(costReason(budget.linesOfStep(step), view)),
  ];
}

/** How long, by what was given or by the rate. */
export function takesReason(step: number, view: View): ListedReason | undefined {
  const { timeline } = view.plan;
  const { minutes, basis, rate } = timeline.durations[step]!;
  const task = timeline.steps.list[step]!;
  const working = task.kind === 'task' ? durationWorking(task, timeline.claims.byStep[step]!, timeline.trades[step]) : undefined;
  const byRate =
    working === undefined ? undefined : { ...listedReason(working, view), text: writeDays(working.value, view.style) };
  const text = writeDays(minutes, view.style);
  const days = { value: minutes / 60, unit: 'h', text };
  switch (basis) {
    case 'moment':
      return undefined;
    case 'none':
      return saying('takes', 'nothing says how long');
    case 'span':
      return saying('takes', `${writeDays(lengthMinutes(step, timeline), view.style)}: as long as what it stands for`);
    case 'visit':
      return saying('takes', `${text}: a visit comes at some hour of its day`);
    case 'rate':
      return { ...byRate, ...days, inputs: byRate?.inputs ?? [], label: 'takes' };
    case 'given': {
      const given = task.kind === 'task' || task.kind === 'inspection' ? task.given.takes : undefined;
      const said = given === undefined ? [] : [saying('given', text, rangeReasons(task, view), given.place, view)];
      return {
        ...days,
        label: 'takes',
        inputs: [...said, ...(rate === undefined || byRate === undefined ? [] : [{ ...byRate, label: 'the rate says' }])],
      };
    }
  }
}

/** The steps it waits for, the tight one first. */
export function beginsReason(step: number, view: View): ListedReason {
  const { timeline } = view.plan;
  const hold = holdOf(step, timeline);
  const others = timeline.links.filter((link) => link.to === step && (hold.kind !== 'link' || link !== hold.link));
  const waits = [
    saying('because', holdText(hold, step, timeline, view.style), [], hold.kind === 'link' ? hold.link.place : undefined, view),
    ...alsoWaits(others, view),
  ];
  const early = timeline.byLinks.start[step]!;
  const byLinks =
    early === timeline.crews.start[step] ? [] : [saying('by links alone it could begin', startDay(early, timeline))];
  return saying('begins', startDay(timeline.crews.start[step]!, timeline), [...waits, ...byLinks]);
}

/** What does not hold it; the steps of a phase it waits for together, in one. */
function alsoWaits(links: readonly PlanLink[], view: View): readonly ListedReason[] {
  const { timeline } = view.plan;
  const together = new Map<string, PlanLink[]>();
  for (const link of links) {
    const { slot, spot } = link.place;
    const key = JSON.stringify([slot.file, slot.kind, slot.name, spot]);
    addTo(together, key, link);
  }
  return [...together.values()].map((list) => {
    const [first] = list;
    if (list.length === 1) return saying('also waits', linkText(first!, timeline, view.style), [], first!.place, view);
    const last = list.reduce((a, b) => (timeline.crews.finish[b.from]! > timeline.crews.finish[a.from]! ? b : a));
    return saying(
      'also waits',
      `for ${list.length} steps, the last of which: ${linkText(last, timeline, view.style)}`,
      [],
      first!.place,
      view,
    );
  });
}

function spareReason(step: number, { plan: { timeline }, style }: View): ListedReason {
  const { totalFloat, freeFloat, lateStart } = timeline.floats;
  const latest = startDay(lateStart[step]!, timeline);
  return saying('to spare before the end moves', spareText(totalFloat[step]!, style), [
    saying('may begin as late as', latest),
    saying('to spare before another step feels it', spareText(freeFloat[step]!, style)),
  ]);
}

/** What it does: its share of each line of the take-off. */
function workReasons(step: number, view: View): readonly ListedReason[] {
  const { timeline } = view.plan;
  const claims = timeline.claims.byStep[step]!;
  if (claims.length === 0) return [];
  const inputs = claims.map(({ line, share }): ListedReason => {
    const hours =
      line.hours === undefined ? '' : `, ${write({ value: line.hours.value * share, dimension: 'time' }, view.style)}`;
    const part = share === 1 ? '' : ` (${Math.round(share * 1000) / 10}% of it)`;
    return saying(line.id, `${write({ ...line.net, value: line.net.value * share }, view.style)}${part}${hours}`);
  });
  return [saying('does', `${claims.length} ${claims.length === 1 ? 'line' : 'lines'} of the take-off`, inputs)];
}

/** '2.5d (60 h of work for 3 people)'; undefined for a moment. */
function takesText(step: number, view: View): string | undefined {
  const { timeline } = view.plan;
  const { minutes, basis, rate } = timeline.durations[step]!;
  const text = writeDays(minutes, view.style);
  switch (basis) {
    case 'moment':
      return undefined;
    case 'none':
      return '';
    case 'span':
      return `${writeDays(lengthMinutes(step, timeline), view.style)}, as long as what it stands for`;
    case 'visit':
      return `${text}, as a visit comes at some hour of its day`;
    case 'given':
      return `${text} as given${rate === undefined ? '' : ` (the rate says ${writeDays(rate, view.style)})`}`;
    case 'rate': {
      const task = timeline.steps.list[step]! as Extract<Step, { kind: 'task' }>;
      const work = personMinutes(timeline.claims.byStep[step]!) ?? 0;
      const count = people(task, timeline.trades[step]);
      return `${text} (${write({ value: work, dimension: 'time' }, view.style)} of work for ${count === 1 ? 'one person' : `${count} people`})`;
    }
  }
}

function startText(step: number, view: View): string {
  const { timeline } = view.plan;
  const day = startDay(timeline.crews.start[step]!, timeline);
  const hold = holdOf(step, timeline);
  return hold.kind === 'record' ? `${day} as the diary says` : `${day} because ${holdText(hold, step, timeline, view.style)}`;
}

/** 'begun Tue 4 May 2027 and finished Wed 5 May 2027'. */
function doneText(step: number, { plan: { timeline } }: View): string {
  const [start, finish] = [timeline.crews.start[step]!, timeline.crews.finish[step]!];
  const [begun, done] = [startDay(start, timeline), stepFinishDay(start, finish, timeline)];
  return begun === done ? `done ${done}` : `begun ${begun} and finished ${done}`;
}

/** 'from Mon 3 May 2027 to Thu 13 May 2027'. */
function stoodText(step: number, { plan: { timeline } }: View): string {
  const [start, finish] = [timeline.crews.start[step]!, timeline.crews.finish[step]!];
  return `from ${startDay(start, timeline)} to ${stepFinishDay(start, finish, timeline)}`;
}

/** '1d of 4d is left, which goes on Mon 10 May 2027 and is done Tue 11 May 2027'. */
function leftText(step: number, { plan: { timeline }, style }: View): string {
  const { timing, durations, crews } = timeline;
  const left = timing.durations[step]!;
  const done = finishDay(crews.finish[step]!, timeline);
  if (left === 0) return `nothing of it is left on ${done}`;
  const own = timing.calendars[timing.calendarOf[step]!]!;
  const goesOn = startDay(nextWork(own, Math.max(crews.start[step]!, timing.notBefore[step]!)), timeline);
  const whole = writeDays(durations[step]!.minutes, style);
  return `${writeDays(left, style)} of ${whole} is left, which ${goesOn === done ? 'is' : `goes on ${goesOn} and is`} done ${done}`;
}

/** 'is held up 5 working days (Plumbing is away 7 Jul – 13 Jul), and '; nothing where nobody is away and no day is lost. */
function pauseText(step: number, { plan: { timeline, model } }: View): string {
  const pauses = pausesOf(step, timeline, model);
  if (pauses.length === 0) return '';
  const days = pauses.reduce((sum, pause) => sum + pause.days, 0);
  const reasons = pauses.map(({ why, first, last, days: lost }) => {
    if (why === 'allowance') return `${counted(lost, 'day')} lost to the weather allowance of ${monthName(civil(first).month)}`;
    const when = span(first * DAY_MINUTES, (last + 1) * DAY_MINUTES, timeline);
    return why === 'away' ? `${timeline.trades[step]?.label ?? 'its trade'} is away ${when}` : `${why} ${when}`;
  });
  return `is held up ${counted(days, 'working day')} (${reasons.join('; ')}), and `;
}

function slipText(step: number, { plan: { timeline }, style }: View): string {
  const spare = timeline.floats.totalFloat[step]!;
  if (spareText(spare, style) === 'none') return 'cannot slip without moving the end';
  if (spare > 0) return `can slip ${writeDays(spare, style)} before the end moves`;
  return `is ${writeDays(-spare, style)} later than ${boundText(step, timeline)} allows`;
}

/** 'its deadline', 'the day on which "pour" must start': the given date that leaves a step less than no time. */
function boundText(step: number, timeline: Timeline): string {
  const bound = boundOf(step, timeline);
  if (bound === undefined) return 'its deadline';
  const { name, given } = timeline.steps.list[bound.step]!;
  const isOwn = bound.step === step;
  if (bound.kind === 'start') return `the day on which ${isOwn ? 'it' : `"${name}"`} must start`;
  const what = given.deadline === undefined ? 'last day' : 'deadline';
  return isOwn ? `its ${what}` : `the ${what} of "${name}"`;
}

/** The steps that set the day the plan is done, the first of them first. */
export function endChain(view: View): ListedReason | undefined {
  const { timeline } = view.plan;
  const last = endOf(timeline)?.step;
  if (last === undefined) return undefined;
  const chain = [...chainOf(last, timeline)].reverse();
  const inputs = chain.map((step) =>
    saying(
      nameOf(step, timeline),
      `${briefStart(timeline.crews.start[step]!, timeline)}, because ${holdText(holdOf(step, timeline), step, timeline, view.style)}`,
    ),
  );
  return saying('done', finishDay(timeline.crews.end, timeline), inputs);
}

function optional(reason: ListedReason | undefined): readonly ListedReason[] {
  return reason === undefined ? [] : [reason];
}
