// Steps that must start on a day, and milestones set for one, that come later: who is booked for it comes in vain. With what
// causes it: the chain of steps, or whoever has the crew on that day.
import { DAY_MINUTES, dayOfStart, shortDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import { workBetween } from '#schedule/calendar';
import { holdOf } from '#schedule/holds';
import type { Limit } from '#schedule/limits';
import { mustStart } from '#schedule/step-windows';
import type { Steps } from '#schedule/steps';
import { chainText } from '../../chain-text.ts';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { begunAt } from '../../outcomes.ts';
import { counted } from '../../show.ts';

export const late = findingSort<[step: string, day: string, begins: string, days: number, chain: string | undefined]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, begins, days, chain) =>
    `"${step}" must start on ${day} and begins on ${begins}, ${counted(days, 'working day')} late: who is booked for that day comes in vain.${chain === undefined ? '' : ` The chain that sets its date: ${chain}.`} Start what leads to it earlier, or book another day.`,
});

export const busy = findingSort<[step: string, day: string, begins: string, days: number, taken: string, other: string]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, begins, days, taken, other) =>
    `"${step}" must start on ${day} and begins on ${begins}, ${counted(days, 'working day')} late: ${taken} at "${other}" until then, and who is booked for that day comes in vain. Nothing else holds it. Let "${other}" wait for "${step}" ("after"), get more to do the work, or book another day.`,
});

export const missed = findingSort<[step: string, day: string, falls: string, days: number, chain: string | undefined]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, falls, days, chain) =>
    `"${step}" is set for ${day} and falls on ${falls}, ${counted(days, 'working day')} late: who counts on that day counts in vain.${chain === undefined ? '' : ` The chain that sets its date: ${chain}.`} Start what leads to it earlier, or set another day.`,
});

export const closed = findingSort<[step: string, day: string, begins: string]>({
  code: 'dates/must-start',
  severity: 'warning',
  say: (step, day, begins) =>
    `"${step}" must start on ${day}, when those who do it do not work; it begins on ${begins}. Give it another day, or give that day its hours ("works", "hours").`,
});

export const mustStartCheck: Check = {
  code: 'dates/must-start',
  about:
    'A step with a day on which it must start should begin on it: a crane, a pump or a crew is booked for that day. A milestone set for a day should fall on it. The finding tells the chain of steps that makes it late, or what has the crew on that day.',
  wrong: `plan p
  start 2027-04-05
task forms takes 6d
task pour takes 1d, must start 2027-04-12, after forms
`,
  right: `plan p
  start 2027-04-05
task forms takes 5d
task pour takes 1d, must start 2027-04-12, after forms
`,
  reads: ({ timeline }) => {
    const { steps, crews, timing, links, limits } = timeline;
    return [steps, ...(timeline.dated && bound(steps).length > 0 ? [crews, timing, links, limits] : [])];
  },
  run: ({ timeline }) => {
    const { steps, timing, crews } = timeline;
    if (!timeline.dated) return [];
    return bound(steps).flatMap((at) => {
      const step = steps.list[at]!;
      const day = dayOf(step)!;
      const start = crews.start[at]!;
      if (begunAt(at, timeline) !== undefined || start < (day + 1) * DAY_MINUTES) return [];
      if (step.kind === 'milestone') {
        const late = workBetween(timing.calendars[timing.planCalendar]!, (day + 1) * DAY_MINUTES, start);
        const count = Math.max(1, Math.ceil(late / timeline.minutesPerDay - 1e-9));
        const falls = shortDate(dayOfStart(start));
        return [finding(missed, step.given.on!.place, step.name, shortDate(day), falls, count, chainText(at, timeline))];
      }
      const { place } = (step.kind === 'task' || step.kind === 'inspection' ? step.given['must start'] : undefined) ?? step;
      const begins = shortDate(dayOfStart(start));
      const calendar = timing.calendars[timing.calendarOf[at]!]!;
      if (workBetween(calendar, day * DAY_MINUTES, start) <= 0)
        return [finding(closed, place, step.name, shortDate(day), begins)];
      const days = Math.max(1, Math.floor(workBetween(calendar, day * DAY_MINUTES, start) / timeline.minutesPerDay + 1e-9));
      const hold = holdOf(at, timeline);
      if (hold.kind === 'crew' && crews.ready[at]! < (day + 1) * DAY_MINUTES) {
        const other = steps.list[hold.from]!.name;
        return [finding(busy, place, step.name, shortDate(day), begins, days, takenText(hold.of), other)];
      }
      return [finding(late, place, step.name, shortDate(day), begins, days, chainText(at, timeline))];
    });
  },
};

const bound = keptFor(({ list }: Steps): readonly number[] =>
  list.flatMap((step, at) => (dayOf(step) === undefined ? [] : [at])),
);

function dayOf(step: Step): number | undefined {
  return step.kind === 'milestone' ? step.given.on?.value : mustStart(step);
}

/** 'its crew (Framing) is', 'the machine "crane" is'. */
function takenText(limit: Limit | undefined): string {
  switch (limit?.kind) {
    case undefined:
      return 'its crew is';
    case 'trade':
      return `its crew (${limit.label}) is`;
    case 'firm':
      return `the crew of its firm (${limit.label}) is`;
    case 'machine':
    case 'room':
      return `the ${limit.kind} "${limit.name}" is`;
  }
}
