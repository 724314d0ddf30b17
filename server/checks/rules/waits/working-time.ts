// Waits for concrete, compound, mortar and the like that are spelled in working days: they harden at weekends too.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Rule } from '#model/model';
import { type PlanLink, waiting } from '#schedule/links';
import { WORKING } from '#schedule/waits';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const workingWait = findingSort<[later: string, earlier: string, wait: string, calendar: string]>({
  code: 'waits/working-time',
  severity: 'note',
  say: (later, earlier, wait, calendar) =>
    `"${later}" waits ${wait} of working time after "${earlier}", so a weekend in between makes it longer; what must harden or dry does so at weekends too. Write "+ ${calendar}" if that is what it waits for.`,
});

export const workingTime: Check = {
  code: 'waits/working-time',
  about:
    'After work that must harden, dry or be made elsewhere, a wait runs by the calendar: "+ 2 days", not "+ 2d". Which work that is, the rules of order say that ask for such a wait.',
  wrong: `trade concrete crew of 3 at $58/h
task footings does pour-footings takes 1d by concrete
task forms does form-stem-walls takes 2d by concrete after footings + 2d
`,
  right: `trade concrete crew of 3 at $58/h
task footings does pour-footings takes 1d by concrete
task forms does form-stem-walls takes 2d by concrete after footings + 2 days
`,
  reads: ({ model, timeline }) => [timeline.links, timeline.steps, timeline.minutesPerDay, model.rows('rule')],
  run: ({ model, timeline }) => {
    const { links, steps, minutesPerDay } = timeline;
    const waits = spokenWaits(links);
    if (waits.length === 0) return [];
    const works = hardening(model.rows('rule'));
    const findings: Finding[] = [];
    for (const link of waits) {
      const [earlier, later] = [steps.list[link.from]!, steps.list[link.to]!];
      if (earlier.kind !== 'task' || !(earlier.given.does?.value ?? []).some(({ value }) => works.has(value.work.name))) continue;
      const days = Math.round((link.lag / minutesPerDay) * 100) / 100;
      if (!Number.isInteger(days)) continue;
      findings.push(
        finding(workingWait, link.place, later.name, earlier.name, `${days}d`, `${days} day${days === 1 ? '' : 's'}`),
      );
    }
    return findings;
  },
};

const spokenWaits = keptFor((links: readonly PlanLink[]) =>
  links.filter(({ clock, lag, words }) => clock === WORKING && lag > 0 && (words === 'after' || words === 'also after')),
);

/** Works after which some rule asks for a wait by the calendar. */
const hardening = keptFor(
  (rules: readonly Rule[]): ReadonlySet<string> =>
    new Set(
      rules.flatMap((rule) => (waitsByCalendar(rule) ? (rule.given.first?.value.map(({ value }) => value.name) ?? []) : [])),
    ),
);

function waitsByCalendar({ given }: Rule): boolean {
  return given.wait !== undefined && waiting(given.wait.value).clock !== WORKING;
}
