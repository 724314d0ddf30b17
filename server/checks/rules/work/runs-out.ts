// What a step of the plan gets is good only for a time, by its own words, and what follows it begins when that is over. Steps
// that a row of the library judges are that row's.
import { dayOfFinish } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Check, Results } from '../../check.ts';
import { reaches } from '../../order.ts';
import { begunAt } from '../../outcomes.ts';
import { spelled } from '../../sequence-messages.ts';
import { startText } from '../../show.ts';
import { gotAt, gotDay, lapsingIn, saidOf, validTo, yearText } from '../../validity.ts';

export const over = findingSort<
  [later: string, laterDay: string, got: string, gotDay: string, goodFor: string, to: string, renewed: string | undefined]
>({
  code: 'work/runs-out',
  severity: 'warning',
  say: (later, laterDay, got, day, goodFor, to, renewed) =>
    `"${later}" begins on ${laterDay}, but "${got}" (${day}) is good for ${goodFor}${renewed === undefined ? '' : `, and "${renewed}" is the last visit to renew it`}: it runs out with ${to}. Work that goes on without it is stopped, or done twice. Bring "${later}" forward, get "${got}" later, or plan to have it renewed before that day and say how long it is good for then.`,
});

export const runsOut: Check = {
  code: 'work/runs-out',
  about:
    'What a step says it is good for holds until it runs out: marks on the ground for the work that waits for them, a paper for all that follows it. A visit that is passed renews a paper.',
  wrong: `plan p
  start 2027-05-03
task locate takes 1h, good for 14 days
task dig takes 2d after locate + 20 days
`,
  right: `plan p
  start 2027-05-03
task locate takes 1h, good for 30 days
task dig takes 2d after locate + 20 days
`,
  reads: (results) => {
    const { steps, crews, timing, links, dated, start } = results.timeline;
    return [steps, crews, timing, links, dated, start, results.order, lapsingIn(results)];
  },
  run: (results) => {
    const { list } = results.timeline.steps;
    return list.flatMap((step, got) => (saidOf(step) === undefined ? [] : firstAfter(got, results)));
  },
};

/** The first step that needs it and begins when it has run out. */
function firstAfter(got: number, results: Results): readonly Finding[] {
  const { timeline } = results;
  const { steps, crews } = timeline;
  const goodFor = saidOf(steps.list[got]!)!;
  const judged = lapsingIn(results).get(got);
  const following = [...followersOf(got, results)].sort((a, b) => crews.start[a]! - crews.start[b]! || a - b);
  const renewing = steps.list[got]!.kind === 'milestone' ? following.filter((at) => steps.list[at]!.kind === 'inspection') : [];
  for (const later of following) {
    const start = crews.start[later]!;
    if (begunAt(later, timeline) !== undefined || judged?.has(later) === true || isServedAnew(got, later, results)) continue;
    let last = got;
    for (const visit of renewing)
      if (visit !== later && crews.finish[visit]! <= start && gotAt(visit, timeline) > gotAt(last, timeline)) last = visit;
    const to = validTo(last, goodFor, timeline);
    if (to >= start) continue;
    const [step, own] = [steps.list[later]!, steps.list[got]!];
    const told = finding(
      over,
      step.place,
      step.name,
      startText(start, timeline),
      own.name,
      yearText(gotDay(got, timeline), start, timeline),
      spelled(goodFor),
      yearText(dayOfFinish(to), start, timeline),
      last === got ? undefined : steps.list[last]!.name,
    );
    return [{ ...told, related: [{ place: own.place, note: `"${own.name}", which is good for ${spelled(goodFor)}` }] }];
  }
  return [];
}

/** Work and visits that wait for it; for a paper, those behind them, too. */
function followersOf(got: number, { timeline: { steps, links }, order }: Results): readonly number[] {
  const isWork = (at: number): boolean => steps.list[at]!.kind === 'task' || steps.list[at]!.kind === 'inspection';
  if (steps.list[got]!.kind === 'milestone')
    return steps.list.flatMap((_, at) => (isWork(at) && reaches(order, got, at) ? [at] : []));
  return [...new Set(links.flatMap(({ from, to }) => (from === got && isWork(to) ? [to] : [])))];
}

/** Whether it waits for another step as well that gets the like, and that is good on the day. */
function isServedAnew(got: number, later: number, { timeline }: Results): boolean {
  const { steps, links, crews } = timeline;
  return links.some(({ from, to }) => {
    const goodFor = to === later && from !== got ? saidOf(steps.list[from]!) : undefined;
    if (goodFor === undefined || gotAt(from, timeline) < gotAt(got, timeline)) return false;
    return steps.list[from]!.kind === steps.list[got]!.kind && validTo(from, goodFor, timeline) >= crews.start[later]!;
  });
}
