// Which pairs of steps a plan's own links hold in the order that the library's rules ask for: counted by walking the links,
// without the checks. A pair is held where a path of links leads from the finish of the first to the start of the other, so
// that no step, however long it takes, can turn them round; where the rule asks for a wait, the waits and work on the path
// must make it up.
import { asksOrder } from '#checks/visits';
import type { Rule, Step } from '#model/model';
import { waiting } from '#schedule/links';
import { FINISH_FINISH, FINISH_START, START_FINISH } from '#schedule/network';
import { WORKING } from '#schedule/waits';
import type { Plan } from '#server/pipeline';

/** 'rule: earlier → later', each pair that is held and meets. */
export function heldPairs(plan: Plan, isAbout: (rule: Rule) => boolean): ReadonlySet<string> {
  const { timeline, model } = plan;
  const steps = timeline.steps.list;
  const after = reachIn(plan);
  const made = new Map(
    model.rows('state').map(({ name, given }) => [name, given['made by']?.value.map(({ value }) => value.name) ?? []]),
  );
  const held = new Set<string>();
  for (const rule of model.rows('rule')) {
    if (!isAbout(rule) || !asksOrder(rule)) continue;
    const sides = (names: readonly string[]): readonly (readonly [step: number, work: string])[] =>
      names
        .flatMap((name) => [name, ...(made.get(name) ?? [])])
        .flatMap((name) => steps.flatMap((step, at) => (doesIt(step, name) ? [[at, name] as const] : [])));
    const first = sides(rule.given.first?.value.map(({ value }) => value.name) ?? []);
    const then = sides(rule.given.then?.value.map(({ value }) => value.name) ?? []);
    const minutes = waitOf(rule);
    for (const [a, workA] of first)
      for (const [b, workB] of then) {
        const between = after[a]![b]!;
        if (a !== b && between >= minutes && meets(rule, a, workA, b, workB, plan))
          held.add(`${rule.name}: ${steps[a]!.name} → ${steps[b]!.name}`);
      }
  }
  return held;
}

/** 'earlier → later', each pair of steps that the links hold, whatever the rules say of it. */
export function orderedPairs(plan: Plan): ReadonlySet<string> {
  const steps = plan.timeline.steps.list;
  const reach = reachIn(plan);
  return new Set(
    steps.flatMap((step, at) => {
      const after = reach[at]!;
      return steps.flatMap((other, to) => (to !== at && after[to]! >= 0 ? [`${step.name} → ${other.name}`] : []));
    }),
  );
}

/** A task by the works that it does, any other step by its name. */
function doesIt(step: Step, name: string): boolean {
  if (step.kind === 'delivery') return false;
  const works = step.kind === 'task' ? (step.given.does?.value ?? []) : [];
  return works.length === 0 ? step.name === name : works.some(({ value }) => value.work.name === name);
}

/** The wait that a rule asks for, in minutes by the calendar. */
function waitOf(rule: Rule): number {
  const wait = rule.given.wait?.value;
  if (wait === undefined) return 0;
  // A working day is a day and a night.
  const { lag, clock } = waiting(wait);
  return clock === WORKING ? lag * 3 : lag;
}

const reached = new WeakMap<Plan, readonly Float64Array[]>();

/** By step, what lies between its finish and each start. */
function reachIn(plan: Plan): readonly Float64Array[] {
  let reach = reached.get(plan);
  if (reach === undefined) {
    const edges = edgesOf(plan);
    reached.set(plan, (reach = plan.timeline.steps.list.map((_, step) => reachedFrom(step, edges, plan))));
  }
  return reach;
}

type Edge = readonly [from: number, to: number, minutes: number];

/** Links and work as edges between moments, two a step: its start, and its finish. In the order of the dates, as far as it goes. */
function edgesOf({ timeline }: Plan): readonly Edge[] {
  const { steps, links, timing, crews } = timeline;
  const edges: Edge[] = links
    .filter(({ lag }) => lag >= 0)
    .map(({ from, to, kind, lag, clock }) => [
      2 * from + (kind === FINISH_START || kind === FINISH_FINISH ? 1 : 0),
      2 * to + (kind === FINISH_FINISH || kind === START_FINISH ? 1 : 0),
      clock === WORKING ? lag * 3 : lag,
    ]);
  steps.list.forEach((step, at) => {
    edges.push([2 * at, 2 * at + 1, timing.durations[at]! * 3]);
    if (step.kind === 'milestone') edges.push([2 * at + 1, 2 * at, 0]);
  });
  const moment = (at: number): number => (at % 2 === 0 ? crews.start : crews.finish)[at >> 1]!;
  return edges.sort((a, b) => moment(a[0]) - moment(b[0]) || moment(a[1]) - moment(b[1]));
}

/** The most minutes that surely lie between a step's finish and the start of each other; below zero where no path leads there. */
function reachedFrom(step: number, edges: readonly Edge[], { timeline }: Plan): Float64Array {
  const { list } = timeline.steps;
  const most = new Float64Array(2 * list.length).fill(-1);
  most[2 * step + 1] = 0;
  if (list[step]!.kind === 'milestone') most[2 * step] = 0;
  // A ring would never come to rest.
  for (let round = 0, changed = true; changed && round < list.length; round++) {
    changed = false;
    for (const [from, to, minutes] of edges) {
      if (most[from]! < 0 || most[from]! + minutes <= most[to]!) continue;
      most[to] = most[from]! + minutes;
      changed = true;
    }
  }
  return most.filter((_, at) => at % 2 === 0);
}

/** Whether two steps work where each matters to the other: for want of a place, they do. */
function meets(rule: Rule, a: number, workA: string, b: number, workB: string, { timeline }: Plan): boolean {
  const scope = rule.given.scope?.value ?? 'house';
  if (scope === 'house') return true;
  const { steps, claims } = timeline;
  const placesOf = (step: number, work: string | undefined): ReadonlySet<unknown> => {
    const places = new Set<unknown>();
    const visit = steps.list[step]!;
    // A visit is where the steps are that it looks at.
    if (visit.kind === 'inspection')
      for (const { value } of visit.given.of?.value ?? []) {
        const seen = steps.byName.get(value.name);
        if (seen !== undefined) for (const place of placesOf(seen, undefined)) places.add(place);
      }
    for (const { line } of claims.byStep[step] ?? []) {
      if (work !== undefined && line.work?.name !== work) continue;
      const { element, level, room } = line.where;
      if (scope === 'same room') places.add(room ?? 'house');
      else for (const slot of [element, level, room]) if (slot !== undefined) places.add(slot);
    }
    return places;
  };
  const [one, other] = [placesOf(a, workA), placesOf(b, workB)];
  if (one.size === 0 || other.size === 0 || one.has('house') || other.has('house')) return true;
  return [...one].some((slot) => other.has(slot));
}
