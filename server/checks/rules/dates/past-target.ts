// A plan that ends after its target: by how much, and which step ends last.
import { DAY_MINUTES, dayOfFinish, shortDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { workBetween } from '#schedule/calendar';
import type { Check } from '../../check.ts';
import { endOf } from '../../ends.ts';
import { counted } from '../../show.ts';

export const late = findingSort<[end: string, target: string, days: number, last: string]>({
  code: 'dates/past-target',
  severity: 'warning',
  say: (end, target, days, last) =>
    `The plan ends on ${end}, ${counted(days, 'working day')} after its target of ${target}: "${last}" ends last. Whatever hangs on that day (loan, lease, weather) is not held. Shorten the chain that leads to "${last}", or move the target.`,
});

export const pastTarget: Check = {
  code: 'dates/past-target',
  about: 'The last step of the plan should be done by its target.',
  wrong: `plan p
  start  2027-04-05
  target 2027-04-06
task frame takes 5d
`,
  right: `plan p
  start  2027-04-05
  target 2027-04-09
task frame takes 5d
`,
  run: ({ model, timeline }) => {
    const target = model.plan?.given.target;
    const end = endOf(timeline);
    if (target === undefined || end === undefined || !timeline.dated) return [];
    const due = (target.value + 1) * DAY_MINUTES;
    if (end.moment <= due) return [];
    const { calendars, planCalendar } = timeline.timing;
    const over = workBetween(calendars[planCalendar]!, due, end.moment);
    const days = Math.max(1, Math.ceil(over / timeline.minutesPerDay - 1e-9));
    const last = timeline.steps.list[end.step]!;
    const made = finding(late, target.place, shortDate(dayOfFinish(end.moment)), shortDate(target.value), days, last.name);
    return [{ ...made, related: [{ place: last.place, note: `"${last.name}" ends last` }] }];
  },
};
