// What would hold an order that nothing holds: one link to each step that must come first, one link to a step that waits for
// all of them, or the step's line moved below the other's. Made when somebody asks; which is cheapest, the editor tries out.
import { unheldFor } from '#checks/held';
import { type Order, reaches } from '#checks/order';
import { waitedFor, waitingFix } from '#checks/sequence-messages';
import type { Finding, Fix } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Rule, Step } from '#model/model';
import type { Plan } from '#server/pipeline';
import { listed } from './table.ts';

export interface Repair {
  readonly title: string;
  /** A change of one line; or a step's lines, to stand below another step. */
  readonly change: Fix | { readonly kind: 'move'; readonly step: Slot; readonly below: Slot };
}

/** More steps that wait for all are not offered. */
const MOST_THROUGH = 2;

/** Undefined for a finding that no rule of order has made, or that its own fixes answer best. */
export function repairsOf(found: Finding, plan: Plan): readonly Repair[] | undefined {
  const [area, name] = found.code.split('/');
  const rule = area === 'sequence' ? plan.model.rows('rule').find((each) => each.name === name) : undefined;
  const step = plan.timeline.steps.index.get(found.place.slot);
  if (rule === undefined || step === undefined) return undefined;
  if (rule.given['renewed by'] !== undefined) return undefined;
  if (rule.given.within !== undefined) return sooner(found, step, plan);
  const pairs = unheldFor(rule, step, plan).map(({ pair }) => pair);
  // Where only the wait is missing it is written on the link that is there.
  if (pairs.length === 0 || pairs.some(({ linked }) => linked)) return undefined;
  const earlier = lastOf([...new Set(pairs.map((pair) => pair.earlier))], rule, plan);
  return [...direct(step, earlier, rule, plan), ...through(step, earlier, rule, plan), ...moved(step, earlier, rule, plan)];
}

/** The first waits for what keeps the second; or what has the second's crew waits until that is done. */
function sooner({ fixes = [] }: Finding, step: number, { timeline, order }: Plan): readonly Repair[] {
  const busyWith = timeline.crews.heldByTask[step]!;
  const first = fixes.map((change): Repair => ({ title: change.title, change }));
  if (busyWith < 0 || reaches(order, busyWith, step)) return first;
  const [later, other] = [timeline.steps.list[step]!, timeline.steps.list[busyWith]!];
  const title = `Let "${other.name}" wait for "${later.name}"`;
  return [...first, { title, change: waitingFix(other, [later.name], title) }];
}

/** Those that no other of them waits for: a link to the last holds what is before it. A rule's wait is counted from each. */
function lastOf(earlier: readonly number[], { given }: Rule, { order }: Plan): readonly number[] {
  if (given.wait !== undefined) return earlier;
  return earlier.filter((each) => !earlier.some((other) => other !== each && reaches(order, each, other)));
}

function direct(step: number, earlier: readonly number[], rule: Rule, { timeline: { steps }, order }: Plan): readonly Repair[] {
  if (earlier.some((each) => reaches(order, step, each))) return [];
  const later = steps.list[step]!;
  const firsts = earlier.map((each) => steps.list[each]!);
  const title = `Let "${later.name}" wait for ${quoted(firsts.map((first) => first.name))}`;
  return [
    {
      title,
      change: waitingFix(
        later,
        firsts.map((first) => waitedFor(first, rule)),
        title,
      ),
    },
  ];
}

/** A step that all of them lead to; the soonest done come first, and of those a milestone or a visit. */
function through(step: number, earlier: readonly number[], rule: Rule, { timeline, order }: Plan): readonly Repair[] {
  const { steps, crews } = timeline;
  if (rule.given.wait !== undefined) return [];
  const later = steps.list[step]!;
  const found: number[] = [];
  for (let other = 0; other < steps.list.length; other++)
    if (other !== step && !earlier.includes(other) && waitsForAll(other, earlier, order) && !reaches(order, step, other))
      found.push(other);
  const finish = (each: number): number => crews.finish[each]!;
  const isWork = (each: number): number => (steps.list[each]!.kind === 'task' ? 1 : 0);
  return found
    .sort((a, b) => finish(a) - finish(b) || isWork(a) - isWork(b) || a - b)
    .slice(0, MOST_THROUGH)
    .map((each) => {
      const { name } = steps.list[each]!;
      const title = `Let "${later.name}" wait for "${name}", which waits for ${quoted(earlier.map((first) => steps.list[first]!.name))}`;
      return { title, change: waitingFix(later, [name], title) };
    });
}

function waitsForAll(step: number, earlier: readonly number[], order: Order): boolean {
  return earlier.every((each) => reaches(order, each, step));
}

/** In a phase in order, a step without words on what it waits for waits for the line above it. */
function moved(step: number, earlier: readonly number[], rule: Rule, { timeline: { steps } }: Plan): readonly Repair[] {
  const phase = steps.phases[step];
  const last = Math.max(...earlier);
  if (phase?.given['in order'] === undefined || rule.given.wait !== undefined) return [];
  const later = steps.list[step]!;
  if (waitsByWords(later) || steps.phases[last] !== phase || earlier.some((each) => steps.phases[each] !== phase)) return [];
  const below = steps.list[last]!;
  const numbers = steps.within.get(phase.slot) ?? [];
  if (numbers[numbers.indexOf(step) - 1] === last) return [];
  return [{ title: `Move "${later.name}" below "${below.name}"`, change: { kind: 'move', step: later.slot, below: below.slot } }];
}

function waitsByWords({ given }: Step): boolean {
  return (given.after ?? given.with ?? given['same day as'] ?? given.beside) !== undefined;
}

function quoted(names: readonly string[]): string {
  return listed(names.map((name) => `"${name}"`));
}
