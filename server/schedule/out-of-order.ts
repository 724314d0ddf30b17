// What the diary has as begun or done before something that it follows was done: said, with the rule by which it goes on. Under
// a visit that has not passed it is a warning: what was covered may have to be opened.
import { dayAndMonth, dayOfFinish, dayOfStart } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import { nextWork } from './calendar.ts';
import { FINISH_START } from './network.ts';
import { nextMorning } from './progress.ts';
import { goesOnFrom, isUnderWay } from './resumed.ts';
import type { Timeline } from './timeline.ts';
import { hasFinished } from './timing.ts';

/** What comes of it. */
type Outcome =
  | { readonly kind: 'over' }
  | { readonly kind: 'done-first'; readonly expected: string }
  | { readonly kind: 'waits' | 'continues'; readonly expected: string; readonly from: string; readonly done: string };

export const begunAhead = findingSort<[name: string, other: string, day: string, outcome: Outcome]>({
  code: 'schedule/out-of-order',
  severity: 'note',
  say: (name, other, day, outcome) => {
    switch (outcome.kind) {
      case 'over':
        return `"${name}" is recorded as begun on ${day}, before "${other}" was done. Both dates stand as recorded. If one of them is a slip of the pen, put it right; if the two need not wait for each other, take the link out.`;
      case 'done-first':
        return `"${name}" is recorded as done on ${day}, and "${other}", which comes before it, is still to be done (${outcome.expected}). The record stands; look whether "${name}" must be opened again, and take the link out if it need not wait.`;
      case 'waits':
        return `"${name}" is recorded as begun on ${day}, before "${other}" is done (${outcome.expected}). What is left of it waits: it goes on ${outcome.from} and is done ${outcome.done}. That is one of two common practices, and the careful one; if the work goes on all the same, write "begun-early continues" below the plan, or take the link out.`;
      case 'continues':
        return `"${name}" is recorded as begun on ${day}, before "${other}" is done (${outcome.expected}). What is left of it continues, as "begun-early continues" says, and is done ${outcome.done}. If it has to wait, it goes on ${outcome.from} at the earliest and the dates behind it do not hold.`;
    }
  },
});

/** Work that covers what an inspector has not passed, or has failed. */
export const begunUnderVisit = findingSort<
  [name: string, visit: string, day: string, failed: string | undefined, outcome: Exclude<Outcome, { kind: 'over' }>]
>({
  code: 'schedule/out-of-order',
  severity: 'warning',
  say: (name, visit, day, failed, outcome) => {
    const stands = failed === undefined ? 'has not passed' : `failed on ${failed} and has not passed since`;
    const what = `"${name}" is recorded as ${outcome.kind === 'done-first' ? 'done' : 'begun'} on ${day}, and "${visit}", which must pass before it, ${stands} (${outcome.expected} by these dates). An inspector passes only what is in sight, so what "${name}" has covered may have to be opened again.`;
    const todo = `${failed === undefined ? 'Have it looked at' : 'Put right what failed, have it looked at again'} before more is covered, and ask the inspector what must be opened.`;
    switch (outcome.kind) {
      case 'done-first':
        return `${what} ${todo}`;
      case 'waits':
        return `${what} Stop there. ${todo} What is left of it waits: it goes on ${outcome.from} and is done ${outcome.done}.`;
      case 'continues':
        return `${what} Stop there. ${todo} What is left of it continues in these dates, as "begun-early continues" says, and is done ${outcome.done}; if it waits, it goes on ${outcome.from} at the earliest.`;
    }
  },
});

/** One finding for each such step, at the first thing that it follows and that was not done; a visit before all. */
export function outOfOrder(timeline: Timeline, waits: boolean): readonly Finding[] {
  const { steps, links, timing, crews, progress } = timeline;
  if (progress.asOf === undefined) return [];
  const told = new Map<number, { readonly rank: number; readonly finding: Finding }>();
  for (const { from, to, kind, lag } of links) {
    const record = progress.records.get(to);
    const began = record?.started ?? record?.finished;
    if (kind !== FINISH_START || lag < 0 || began === undefined) continue;
    const isOpen = !hasFinished(timing, from);
    const earlier = isOpen ? crews.finish[from]! : timing.fixedFinish![from]!;
    const other = steps.list[from]!;
    // What is still to be done counts before what was only late, and a visit before all else.
    const rank = !isOpen ? 0 : other.kind === 'inspection' ? 2 : 1;
    const known = told.get(to);
    if (earlier <= nextMorning(began) || (known !== undefined && rank <= known.rank)) continue;
    const step = steps.list[to]!;
    const outcome = outcomeOf(from, to, isOpen, waits, timeline);
    const day = dayAndMonth(outcome.kind === 'done-first' ? (record?.finished ?? began) : began);
    const failed = progress.records.get(from)?.failed.at(-1);
    const made =
      rank === 2 && outcome.kind !== 'over'
        ? finding(
            begunUnderVisit,
            step.place,
            step.name,
            other.name,
            day,
            failed === undefined ? undefined : dayAndMonth(failed),
            outcome,
          )
        : finding(begunAhead, step.place, step.name, other.name, day, outcome);
    told.set(to, { rank, finding: { ...made, related: [{ place: other.place, note: `"${other.name}" comes before it` }] } });
  }
  return [...told.values()].map((each) => each.finding);
}

function outcomeOf(from: number, to: number, isOpen: boolean, waits: boolean, timeline: Timeline): Outcome {
  const { network, timing, crews } = timeline;
  if (!isOpen) return { kind: 'over' };
  const expected = dayAndMonth(dayOfFinish(crews.finish[from]!));
  if (!isUnderWay(timing, to)) return { kind: 'done-first', expected };
  const bound = Math.max(timing.notBefore[to]!, goesOnFrom(network, timing, to, crews));
  return {
    kind: waits ? 'waits' : 'continues',
    expected,
    from: dayAndMonth(dayOfStart(nextWork(timing.calendars[timing.calendarOf[to]!]!, bound))),
    done: dayAndMonth(dayOfFinish(crews.finish[to]!)),
  };
}
