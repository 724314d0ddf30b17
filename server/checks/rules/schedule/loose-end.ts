// Steps that nothing waits for: if they come late, no date shows it.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Step } from '#model/model';
import { FINISH_FINISH, FINISH_START, type Network, START_START } from '#schedule/network';
import { isStanding } from '#schedule/step-windows';
import type { Timeline } from '#schedule/timeline';
import { hasStarted } from '#schedule/timing';
import type { Check } from '../../check.ts';
import { endOf } from '../../ends.ts';
import { keptFor } from '../../kept.ts';

export const loose = findingSort<[step: string, kind: Step['kind']]>({
  code: 'schedule/loose-end',
  severity: 'note',
  say: (step, kind) =>
    `Nothing waits for "${step}", so if it comes late ${kind === 'inspection' ? 'work goes on over it' : 'no date shows it'}. Let the step that needs it wait for it, or write "to the end".`,
});

export const looseFinish = findingSort<[step: string, waits: string]>({
  code: 'schedule/loose-end',
  severity: 'note',
  say: (step, waits) =>
    `"${waits}" waits for the start of "${step}" alone: if "${step}" takes longer, no date shows it. Let a later step wait for its end, or write "to the end".`,
});

export const looseStart = findingSort<[step: string, other: string]>({
  code: 'schedule/loose-end',
  severity: 'note',
  say: (step, other) =>
    `"${step}" is only tied to the end of its own work, by "${other}": nothing says what must be done before it begins. Say it with "after".`,
});

export const looseEnd: Check = {
  code: 'schedule/loose-end',
  gathers: true,
  about:
    'Every step but the last should have another that waits for its end, or say "to the end"; and one that is done with another, or after another begins, should also say what it begins after. Silent in a plan whose steps do not hang on each other at all.',
  wrong: `task floor takes 2d
task stove takes 1d after floor
task clean takes 1d after floor
milestone done after clean
`,
  right: `task floor takes 2d
task stove takes 1d after floor
task clean takes 1d after stove
milestone done after clean
`,
  reads: ({ timeline }) => {
    const { steps, network, timing } = timeline;
    return [steps, network, timing.fixedStart, timing.fixedFinish, lastOf(timeline)];
  },
  run: ({ timeline }) => {
    const { steps, network } = timeline;
    if (network.linkFrom.length === 0) return [];
    const awaited = awaitedIn(network);
    const last = lastOf(timeline);
    const findings: Finding[] = [];
    for (let at = 0; at < steps.list.length; at++) {
      const step = steps.list[at]!;
      if (isPast(at, timeline) || isStanding(step)) continue;
      const isOpen = (step.kind === 'task' || step.kind === 'inspection') && !hasStarted(timeline.timing, at);
      const held = isOpen ? tiedByEndAlone(at, network) : undefined;
      if (held !== undefined) findings.push(finding(looseStart, step.place, step.name, steps.list[held]!.name));
      if (awaited[at] === END || at === last || step.given['to the end'] !== undefined) continue;
      const started = awaited[at] === START ? startedWith(at, timeline) : undefined;
      if (started !== undefined && step.kind !== 'milestone') {
        findings.push(finding(looseFinish, step.place, step.name, steps.list[started]!.name));
      } else if (started === undefined) findings.push(finding(loose, step.place, step.name, step.kind));
    }
    return findings;
  },
};

const START = 1;
const END = 2;

/** What others wait for: nothing, the start alone, the end; links that close a loop count too. */
const awaitedIn = keptFor(({ count, linkFrom, linkKind }: Network): Uint8Array => {
  const awaited = new Uint8Array(count);
  for (let link = 0; link < linkFrom.length; link++) {
    const isEnd = linkKind[link] === FINISH_START || linkKind[link] === FINISH_FINISH;
    awaited[linkFrom[link]!]! |= isEnd ? END : START;
  }
  for (let step = 0; step < count; step++) if (awaited[step]! > END) awaited[step] = END;
  return awaited;
});

/** The step that only ends with, or after, another: that other; undefined where something holds its start. */
function tiedByEndAlone(step: number, { incomingStart, incoming, linkFrom, linkKind }: Network): number | undefined {
  const [from, to] = [incomingStart[step]!, incomingStart[step + 1]!];
  for (let slot = from; slot < to; slot++) {
    const kind = linkKind[incoming[slot]!];
    if (kind === FINISH_START || kind === START_START) return undefined;
  }
  return from < to ? linkFrom[incoming[from]!] : undefined;
}

/** The first that waits for its start; what stands with it waits for nothing. */
function startedWith(step: number, { network: { linkFrom, linkTo }, steps }: Timeline): number | undefined {
  for (let link = linkFrom.indexOf(step); link >= 0; link = linkFrom.indexOf(step, link + 1))
    if (!isStanding(steps.list[linkTo[link]!]!)) return linkTo[link];
  return undefined;
}

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
