// Steps that nothing waits for: if they come late, no date shows it.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import type { Network } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import type { Check } from '../../check.ts';
import { endOf } from '../../ends.ts';
import { keptFor } from '../../kept.ts';

export const loose = findingSort<[step: string, kind: Step['kind']]>({
  code: 'schedule/loose-end',
  severity: 'note',
  say: (step, kind) =>
    `Nothing waits for "${step}", so if it comes late ${kind === 'inspection' ? 'work goes on over it' : 'no date shows it'}. Let the step that needs it wait for it, or write "to the end".`,
});

export const looseEnd: Check = {
  code: 'schedule/loose-end',
  gathers: true,
  about:
    'Every step but the last should have another that waits for it, or say "to the end". Silent in a plan whose steps do not hang on each other at all.',
  wrong: `task floor takes 2d
task stove takes 1d after floor
task clean takes 1d after floor
milestone done after clean
`,
  right: `task floor takes 2d
task stove takes 1d after floor
task clean takes 1d after floor, stove
milestone done after clean
`,
  reads: ({ timeline }) => [timeline.steps, timeline.network, timeline.timing.fixedFinish, lastOf(timeline)],
  run: ({ timeline }) => {
    const { steps, network } = timeline;
    if (network.linkFrom.length === 0) return [];
    const awaited = awaitedIn(network);
    const last = lastOf(timeline);
    const findings: Finding[] = [];
    for (let at = 0; at < steps.list.length; at++) {
      if (awaited[at] === 1 || at === last || isPast(at, timeline)) continue;
      const step = steps.list[at]!;
      if (step.given['to the end'] === undefined) findings.push(finding(loose, step.place, step.name, step.kind));
    }
    return findings;
  },
};

/** 1 for steps that another waits for; links that close a loop count too. */
const awaitedIn = keptFor(({ count, linkFrom }: Network): Uint8Array => {
  const awaited = new Uint8Array(count);
  for (const from of linkFrom) awaited[from] = 1;
  return awaited;
});

/** The last milestone that nothing waits for; without one, the step that ends last. */
function lastOf(timeline: Timeline): number | undefined {
  const awaited = awaitedIn(timeline.network);
  const { list } = timeline.steps;
  for (let at = list.length - 1; at >= 0; at--) if (list[at]!.kind === 'milestone' && awaited[at] === 0) return at;
  return endOf(timeline)?.step;
}

/** What is done can come late no more. */
function isPast(at: number, { timing }: Timeline): boolean {
  return timing.fixedFinish !== undefined && !Number.isNaN(timing.fixedFinish[at]);
}
