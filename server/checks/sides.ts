// Who stands on either side of a rule of order: the tasks that do a kind of work, or one that makes up a state; visits and
// moments of that name. A task without words on its work, but with its name, counts too.
import type { State } from '#model/model';
import type { Model } from '#model/resolve';
import { doSameWorks } from '#model/same-works';
import type { Steps } from '#schedule/steps';
import type { Results } from './check.ts';

/** A step, for one kind of work that it does; without one it stands there as a whole. */
export interface Side {
  readonly step: number;
  readonly work: string | undefined;
}

/** Who does each kind of work, in plan order; what has no words on its work goes by its name. */
export type Doers = ReadonlyMap<string, readonly Side[]>;

interface Known {
  readonly states: readonly State[];
  readonly made: ReadonlyMap<string, State>;
  readonly doers: Doers;
  /** By the list of names itself, which a rule keeps. */
  readonly sides: WeakMap<readonly string[], readonly Side[]>;
}

/** By the places of steps among each other, which most edits leave alone. */
const latest = new WeakMap<Steps['index'], { readonly steps: Steps; readonly known: Known }>();

/** The sides that names of a rule stand for, in plan order, each step and work once; the same list while they are. */
export function sidesOf(
  names: readonly string[],
  { timeline: { steps }, model }: Pick<Results, 'timeline' | 'model'>,
): readonly Side[] {
  const known = knownOf(steps, model);
  let sides = known.sides.get(names);
  if (sides === undefined) known.sides.set(names, (sides = gathered(names, known)));
  return sides;
}

/** The same map while nobody does other work than before. */
export function doersIn({ timeline: { steps }, model }: Pick<Results, 'timeline' | 'model'>): Doers {
  return knownOf(steps, model).doers;
}

function gathered(names: readonly string[], { made, doers }: Known): readonly Side[] {
  const found = new Map<string, Side>();
  const add = (name: string): void => {
    for (const side of doers.get(name) ?? []) found.set(`${side.step} ${side.work ?? ''}`, side);
  };
  for (const name of names) {
    add(name);
    for (const { value } of made.get(name)?.given['made by']?.value ?? []) add(value.name);
  }
  return [...found.values()].sort((a, b) => a.step - b.step);
}

function knownOf(steps: Steps, model: Model): Known {
  const states = model.rows('state');
  const last = latest.get(steps.index);
  if (last?.steps === steps && last.known.states === states) return last.known;
  const sameDoing = last !== undefined && doTheSame(last.steps, steps);
  const doers = sameDoing ? last.known.doers : doersOf(steps);
  const same = sameDoing && last.known.states === states;
  const known = same
    ? last.known
    : { states, made: new Map(states.map((state) => [state.name, state])), doers, sides: new WeakMap() };
  latest.set(steps.index, { steps, known });
  return known;
}

/** Whether steps that stand in the places of others do the same works; their names are the same, or they stood elsewhere. */
function doTheSame(before: Steps, now: Steps): boolean {
  return now.list.every((step, at) => {
    const old = before.list[at]!;
    return step === old || step.kind !== 'task' || old.kind !== 'task' || doSameWorks(step, old);
  });
}

function doersOf({ list }: Steps): Doers {
  const doers = new Map<string, Side[]>();
  const add = (name: string, side: Side): void => {
    const sides = doers.get(name);
    if (sides === undefined) doers.set(name, [side]);
    else sides.push(side);
  };
  list.forEach((each, step) => {
    if (each.kind === 'delivery') return;
    const works = each.kind === 'task' ? (each.given.does?.value ?? []) : [];
    for (const { value } of works) add(value.work.name, { step, work: value.work.name });
    if (works.length === 0) add(each.name, { step, work: undefined });
  });
  return doers;
}
