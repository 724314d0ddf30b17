// Who stands on either side of a rule of order: the tasks that do a kind of work, or one that makes up a state; visits and
// moments of that name. A task without words on its work, but with its name, counts too.
import { addTo } from '#kit/gathered';
import type { State } from '#model/model';
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

/** The same object while nobody does other work than before, and states are made by the same works. */
export interface Doing {
  readonly states: readonly State[];
  readonly made: ReadonlyMap<string, State>;
  readonly doers: Doers;
  /** Filled as they are asked for; by the list of names itself, which a rule keeps. */
  readonly sides: WeakMap<readonly string[], readonly Side[]>;
}

/** By the places of steps among each other, which most edits leave alone. */
const latest = new WeakMap<Steps['index'], { readonly steps: Steps; readonly doing: Doing }>();

/** The sides that names of a rule stand for, in plan order, each step and work once; the same list while they are. */
export function sidesOf(names: readonly string[], doing: Doing): readonly Side[] {
  let sides = doing.sides.get(names);
  if (sides === undefined) doing.sides.set(names, (sides = gathered(names, doing)));
  return sides;
}

function gathered(names: readonly string[], { made, doers }: Doing): readonly Side[] {
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

export function doingIn({ timeline: { steps }, model }: Pick<Results, 'timeline' | 'model'>): Doing {
  const states = model.rows('state');
  const last = latest.get(steps.index);
  if (last?.steps === steps && last.doing.states === states) return last.doing;
  const sameDoing = last !== undefined && doTheSame(last.steps, steps);
  const doers = sameDoing ? last.doing.doers : doersOf(steps);
  const same = sameDoing && last.doing.states === states;
  const doing = same
    ? last.doing
    : { states, made: new Map(states.map((state) => [state.name, state])), doers, sides: new WeakMap() };
  latest.set(steps.index, { steps, doing });
  return doing;
}

/** Whether steps that stand in the places of others do the same works; their names are the same, or they stood elsewhere. */
function doTheSame(before: Steps, now: Steps): boolean {
  for (let at = 0; at < now.list.length; at++) {
    const [old, step] = [before.list[at]!, now.list[at]!];
    if (step !== old && step.kind === 'task' && old.kind === 'task' && !doSameWorks(step, old)) return false;
  }
  return true;
}

function doersOf({ list }: Steps): Doers {
  const doers = new Map<string, Side[]>();
  const add = (name: string, side: Side): void => {
    addTo(doers, name, side);
  };
  list.forEach((each, step) => {
    if (each.kind === 'delivery') return;
    const works = each.kind === 'task' ? (each.given.does?.value ?? []) : [];
    for (const { value } of works) add(value.work.name, { step, work: value.work.name });
    if (works.length === 0) add(each.name, { step, work: undefined });
  });
  return doers;
}
