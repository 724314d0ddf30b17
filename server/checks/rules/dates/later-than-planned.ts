// A plan that ends later than the schedule that was kept of it.
import { isoDate, shortDate } from '#kit/dates';
import { finding, findingSort } from '#kit/finding';
import { chosenSchedule } from '#schedule/as-planned';
import { endSlip } from '#schedule/slippage';
import type { Check } from '../../check.ts';
import { counted } from '../../show.ts';

export const later = findingSort<
  [days: number, now: string, planned: string, label: string, on: string | undefined, last: string]
>({
  code: 'dates/later-than-planned',
  severity: 'note',
  say: (days, now, planned, label, on, last) =>
    `The plan ends ${counted(days, 'working day')} later than in "${label}"${on === undefined ? '' : ` of ${on}`}: on ${now} instead of ${planned}. Whoever was promised that day (bank, buyer, the next house) does not know. "screed schedule PLAN --against" says which step it comes from; hover "${last}" for the chain. Tell them, and keep the schedule that is promised now.`,
});

export const laterThanPlanned: Check = {
  code: 'dates/later-than-planned',
  about:
    'A schedule that was kept is a promise to somebody. Where the plan ends later now, they should hear of it from whoever builds, and early.',
  wrong: `plan p
  start 2027-05-03
task board takes 6d
as-planned bank on 2027-04-01
  board begins 2027-05-03, done 2027-05-06
`,
  right: `plan p
  start 2027-05-03
task board takes 4d
as-planned bank on 2027-04-01
  board begins 2027-05-03, done 2027-05-06
`,
  reads: ({ model, timeline }) => [model.list('as-planned'), timeline.crews, timeline.steps, timeline.timing],
  run: ({ model, timeline }) => {
    const against = chosenSchedule(model);
    const end = against === undefined ? undefined : endSlip(timeline, against);
    if (against === undefined || end === undefined || end.days <= 0) return [];
    const { element, on } = against;
    const last = timeline.steps.list[end.last]!;
    const day = on === undefined ? undefined : isoDate(on);
    const made = finding(
      later,
      element.place,
      end.days,
      shortDate(end.now),
      shortDate(end.planned),
      element.label,
      day,
      last.name,
    );
    return [{ ...made, related: [{ place: last.place, note: `"${last.name}" ends last` }] }];
  },
};
