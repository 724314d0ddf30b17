// Who stands on either side of a rule of order: the tasks that do a kind of work, or one that makes up a state; visits and
// moments of that name. A task without words on its work, but with its name, counts too.
import type { State } from '#model/model';
import type { Model } from '#model/resolve';
import type { Steps } from '#schedule/steps';

/** A step, for one kind of work that it does; without one it stands there as a whole. */
export interface Side {
  readonly step: number;
  readonly work: string | undefined;
}

interface Known {
  readonly states: ReadonlyMap<string, State>;
  readonly doers: ReadonlyMap<string, readonly Side[]>;
  readonly sides: Map<string, readonly Side[]>;
}

const kept = new WeakMap<Steps, Known>();

/** The sides that names of a rule stand for, in plan order; each step and work once. */
export function sidesOf(names: readonly string[], steps: Steps, model: Model): readonly Side[] {
  const known = knownOf(steps, model);
  const key = names.join(' ');
  let sides = known.sides.get(key);
  if (sides === undefined) known.sides.set(key, (sides = gathered(names, known)));
  return sides;
}

function gathered(names: readonly string[], { states, doers }: Known): readonly Side[] {
  const found = new Map<string, Side>();
  const add = (name: string): void => {
    for (const side of doers.get(name) ?? []) found.set(`${side.step} ${side.work ?? ''}`, side);
  };
  for (const name of names) {
    add(name);
    for (const { value } of states.get(name)?.given['made by']?.value ?? []) add(value.name);
  }
  return [...found.values()].sort((a, b) => a.step - b.step);
}

function knownOf(steps: Steps, model: Model): Known {
  const states = model.rows('state');
  const before = kept.get(steps);
  if (
    before !== undefined &&
    before.states.size === states.length &&
    states.every((state) => before.states.get(state.name) === state)
  )
    return before;
  const made: Known = {
    states: new Map(states.map((state) => [state.name, state])),
    doers: doersOf(steps),
    sides: new Map(),
  };
  kept.set(steps, made);
  return made;
}

function doersOf({ list }: Steps): ReadonlyMap<string, readonly Side[]> {
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
