// DOOR: all findings of all phases → what is told, and what is set apart: answered in the plan, or known from the baseline.
// In the order of the text; those of one sort are told together last, so that what is new never hides among what is known.
import { type Finding, sameFinding } from '#kit/finding';
import { samePlace } from '#kit/place';
import { lineOf } from '#model/standing';
import { type Accepted, type AcceptMemory, acceptMemory, answered } from './accept.ts';
import { type Baseline, type Known, splitKnown } from './baseline.ts';
import { withoutConsequences } from './causes.ts';
import type { Results } from './check.ts';
import { gathered } from './gather.ts';
import { remindersTogether } from './hazard-messages.ts';
import { asBefore } from './lasting.ts';
import { gathers } from './rules.ts';

export interface Told {
  /** In the order of files, lines, columns and codes; those of one sort told as one, above three of them. */
  readonly findings: readonly Finding[];
  /** One by one, with what only follows from others. */
  readonly single: readonly Finding[];
  readonly accepted: readonly Accepted[];
  /** In the baseline, and still found. */
  readonly known: readonly Known[];
}

export interface ToldMemory {
  readonly accept: AcceptMemory;
  findings: readonly Finding[];
  known: readonly Finding[];
}
export function toldMemory(): ToldMemory {
  return { accept: acceptMemory(), findings: [], known: [] };
}

/** Findings that say what one of the last look said are that one. */
export function toldOf(
  found: readonly Finding[],
  results: Results,
  baseline: Baseline | undefined,
  memory: ToldMemory = toldMemory(),
): Told {
  const { open, accepted } = answered(found, results, memory.accept);
  const sorted = withoutTwins(inOrder(open, results, (each) => each));
  const { fresh, known } = baseline === undefined ? { fresh: sorted, known: [] } : splitKnown(sorted, baseline, results.model);
  memory.findings = asBefore(remindersTogether(gathered(withoutConsequences(fresh, results), gathers)), memory.findings);
  memory.known = asBefore(
    known.map(({ finding }) => finding),
    memory.known,
  );
  return {
    findings: memory.findings,
    single: fresh,
    accepted: inOrder(accepted, results, ({ finding }) => finding),
    known: known.map(({ key }, at) => ({ key, finding: memory.known[at]! })),
  };
}

/** Two phases may say the very same of one place: once is enough. */
function withoutTwins(findings: readonly Finding[]): readonly Finding[] {
  const twins = new Set<Finding>();
  for (let at = 1; at < findings.length; at++) {
    const each = findings[at]!;
    for (let before = at - 1; before >= 0 && samePlace(findings[before]!.place, each.place); before--)
      if (sameFinding(findings[before]!, each)) twins.add(each);
  }
  return twins.size === 0 ? findings : findings.filter((each) => !twins.has(each));
}

/** By file, line, column and code, so that the same plan gives the same list. */
function inOrder<T>(list: readonly T[], { model }: Results, findingOf: (each: T) => Finding): readonly T[] {
  if (list.length < 2) return list;
  const fileOrder = new Map(model.files.map((file, at) => [file.path, at]));
  const keys = new Float64Array(list.length);
  const order = new Uint32Array(list.length);
  for (let at = 0; at < list.length; at++) {
    const { place } = findingOf(list[at]!);
    const file = fileOrder.get(place.slot.file) ?? fileOrder.size;
    keys[at] = (file * MOST + lineOf(place, model)) * MOST + Math.min(place.spot.from, MOST - 1);
    order[at] = at;
  }
  order.sort((a, b) => keys[a]! - keys[b]! || byCode(findingOf(list[a]!), findingOf(list[b]!)) || a - b);
  return Array.from(order, (at) => list[at]!);
}

/** Lines and columns are fewer, so that file, line and column make one number that is exact. */
const MOST = 2_097_152;

function byCode({ code: a }: Finding, { code: b }: Finding): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
