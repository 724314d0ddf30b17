// Steps that end after their own deadline.
import { DAY_MINUTES, dayOfFinish, shortDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { workBetween } from '#schedule/calendar';
import type { Steps } from '#schedule/steps';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { counted } from '../../show.ts';

export const missed = findingSort<[step: string, end: string, deadline: string, days: number, held: string | undefined]>({
  code: 'dates/deadline',
  severity: 'warning',
  say: (step, end, deadline, days, held) =>
    `"${step}" is done on ${end}, ${counted(days, 'working day')} after its deadline of ${deadline}${held === undefined ? '' : `; what it waits for last is "${held}"`}. Start what leads to it earlier, or move the deadline.`,
});

export const deadline: Check = {
  code: 'dates/deadline',
  about: 'A step that names a deadline should be done by the end of that day.',
  wrong: `plan p
  start 2027-04-05
task frame takes 5d, deadline 2027-04-07
`,
  right: `plan p
  start 2027-04-05
task frame takes 5d, deadline 2027-04-09
`,
  run: ({ timeline }) => {
    const { steps, timing, crews, byLinks, network } = timeline;
    if (!timeline.dated) return [];
    return limited(steps).flatMap((at) => {
      const step = steps.list[at]!;
      const given = step.given.deadline!;
      const due = (given.value + 1) * DAY_MINUTES;
      const end = crews.finish[at]!;
      if (end <= due) return [];
      const calendar = timing.calendars[timing.calendarOf[at]!]!;
      const days = Math.max(1, Math.ceil(workBetween(calendar, due, end) / timeline.minutesPerDay - 1e-9));
      const link = byLinks.heldBy[at]!;
      const held = link < 0 ? undefined : steps.list[network.linkFrom[link]!]?.name;
      return [finding(missed, given.place, step.name, shortDate(dayOfFinish(end)), shortDate(given.value), days, held)];
    });
  },
};

const limited = keptFor(({ list }: Steps): readonly number[] => {
  const numbers: number[] = [];
  for (let at = 0; at < list.length; at++) if (list[at]!.given.deadline !== undefined) numbers.push(at);
  return numbers;
});
