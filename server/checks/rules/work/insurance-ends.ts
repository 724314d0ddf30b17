// Firms whose insurance or licence runs out before their last work here: told once for each paper, at the first step beyond it.
import { dayOfFinish, shortDate } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import { type Firm, firmsByTrade, readsOfFirms } from '#schedule/firms';
import type { Check, Results } from '../../check.ts';
import { isDone } from '../../outcomes.ts';

export const uninsured = findingSort<[firm: string, step: string, done: string, until: string]>({
  code: 'work/insurance-ends',
  severity: 'warning',
  say: (firm, step, done, until) =>
    `"${firm}" is insured until ${until}, and "${step}" is done on ${done}: damage and injury after that day may fall on the owner. Ask for the next certificate before that day, and write its date.`,
});

export const unlicensed = findingSort<[firm: string, step: string, done: string, until: string]>({
  code: 'work/insurance-ends',
  severity: 'warning',
  say: (firm, step, done, until) =>
    `The licence of "${firm}" runs to ${until}, and "${step}" is done on ${done}: the inspector may turn the work down. Ask whether it is renewed, and write its date.`,
});

export const insuranceEnds: Check = {
  code: 'work/insurance-ends',
  about:
    'A firm’s insurance and licence should last until its work is done. A firm is looked at for a trade that it alone does, or for which its bid is accepted.',
  wrong: `plan p
  start 2027-04-05
trade plumbing crew of 2
firm ruiz does plumbing
  insured until 2027-04-07
task pipes takes 5d by plumbing
`,
  right: `plan p
  start 2027-04-05
trade plumbing crew of 2
firm ruiz does plumbing
  insured until 2027-04-09
task pipes takes 5d by plumbing
`,
  reads: ({ model, timeline }) => {
    const hasPapers = model.list('firm').some(({ given }) => given.insured !== undefined || given.licensed !== undefined);
    if (!hasPapers) return [undefined];
    const { steps, trades, crews, timing, dated } = timeline;
    return [...readsOfFirms(model), steps, trades, crews, timing.fixedFinish, dated];
  },
  run: (results) => {
    const { model, timeline } = results;
    if (!timeline.dated) return [];
    const steps = stepsByFirm(results);
    return model.list('firm').flatMap((firm) => {
      const { insured, licensed } = firm.given;
      const own = steps.get(firm) ?? [];
      return [...beyond(firm, insured, own, uninsured, results), ...beyond(firm, licensed, own, unlicensed, results)];
    });
  },
};

/** Steps still to do, by the day they are done. */
function stepsByFirm({ model, timeline }: Results): ReadonlyMap<Firm, readonly number[]> {
  const firms = firmsByTrade(model);
  const found = new Map<Firm, number[]>();
  timeline.steps.list.forEach((step, at) => {
    const trade = timeline.trades[at];
    const firm = trade === undefined ? undefined : firms.get(trade.slot);
    if (firm === undefined || step.kind !== 'task' || isDone(at, timeline)) return;
    const list = found.get(firm);
    if (list === undefined) found.set(firm, [at]);
    else list.push(at);
  });
  const { finish } = timeline.crews;
  for (const list of found.values()) list.sort((a, b) => finish[a]! - finish[b]! || a - b);
  return found;
}

function beyond(
  firm: Firm,
  until: { readonly value: number; readonly place: Finding['place'] } | undefined,
  steps: readonly number[],
  sort: typeof uninsured,
  { timeline }: Results,
): readonly Finding[] {
  if (until === undefined) return [];
  const first = steps.find((at) => dayOfFinish(timeline.crews.finish[at]!) > until.value);
  if (first === undefined) return [];
  const step = timeline.steps.list[first]!;
  const done = shortDate(dayOfFinish(timeline.crews.finish[first]!));
  const made = finding(sort, until.place, firm.label, step.name, done, shortDate(until.value));
  return [{ ...made, related: [{ place: step.place, note: `"${step.name}", the first step beyond it` }] }];
}
