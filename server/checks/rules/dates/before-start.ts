// Days given for steps that lie before the plan's first day: mostly a wrong year. A paper may be got long before work begins:
// a milestone or step that says how long it is good for, or that a row of the library says lapses.
import { isoDate } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import type { Steps } from '#schedule/steps';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { lapsingIn } from '../../validity.ts';

export const early = findingSort<[what: string, day: string, start: string]>({
  code: 'dates/before-start',
  severity: 'warning',
  say: (what, day, start) =>
    `${what} is ${day}, before the plan starts on ${start}, so it holds nothing. Most likely the year is wrong: mend it, or let the plan start earlier.`,
});

export const reached = findingSort<[step: string, day: string, start: string]>({
  code: 'dates/before-start',
  severity: 'warning',
  say: (step, day, start) =>
    `The day of "${step}" is ${day}, before the plan starts on ${start}, so it holds nothing. If it was reached then, write that in the diary ("${step} finished ${day}"); if not, mend the day, or let the plan start earlier.`,
});

export const recorded = findingSort<[step: string, day: string, start: string]>({
  code: 'dates/before-start',
  severity: 'note',
  say: (step, day, start) =>
    `The diary has "${step}" on ${day}, before the plan starts on ${start}. Let the plan start with its first day of work, or check the year.`,
});

export const beforeStart: Check = {
  code: 'dates/before-start',
  about:
    'A day given for a step, for the target or in the diary should not lie before the plan’s start. Orders, bids and prices may be older.',
  wrong: `plan p
  start 2027-04-05
task frame takes 5d, not before 2026-04-12
`,
  right: `plan p
  start 2027-04-05
task frame takes 5d, not before 2027-04-12
`,
  run: (results) => {
    const { model, timeline } = results;
    const start = model.plan?.given.start?.value;
    if (start === undefined) return [];
    const findings: Finding[] = [];
    const look = (what: string, given: Dated | undefined): void => {
      if (given !== undefined && given.value < start)
        findings.push(finding(early, given.place, what, isoDate(given.value), isoDate(start)));
    };
    const isPaper = (at: number): boolean =>
      lapsingIn(results).has(at) ||
      (timeline.steps.list[at]!.kind !== 'delivery' && timeline.steps.list[at]!.given['good for'] !== undefined);
    look('The target', model.plan?.given.target);
    for (const step of dated(timeline.steps)) {
      look(`The day that "${step.name}" waits for`, step.given['not before']);
      look(`The deadline of "${step.name}"`, step.given.deadline);
      const on = step.kind === 'milestone' ? step.given.on : undefined;
      const at = timeline.steps.byName.get(step.name)!;
      if (on === undefined || on.value >= start || isPaper(at) || timeline.progress.records.get(at)?.finished === on.value)
        continue;
      findings.push(finding(reached, on.place, step.name, isoDate(on.value), isoDate(start)));
    }
    for (const { entries } of model.list('progress')) {
      for (const { value, deeper } of entries) {
        const at = timeline.steps.byName.get(value.name);
        if (at !== undefined && (timeline.steps.list[at]!.kind === 'milestone' || isPaper(at))) continue;
        const given = [deeper.started, deeper.finished, deeper.passed].find((each) => each !== undefined && each.value < start);
        if (given !== undefined) findings.push(finding(recorded, given.place, value.name, isoDate(given.value), isoDate(start)));
      }
    }
    return findings;
  },
};

type Dated = { readonly value: number; readonly place: Finding['place'] };

const dated = keptFor(({ list }: Steps): readonly Step[] =>
  list.filter(
    ({ kind, given }) =>
      given['not before'] !== undefined || given.deadline !== undefined || (kind === 'milestone' && given.on !== undefined),
  ),
);
