// Who stands on either side of a rule of order: the tasks that do a kind of work, or one that makes up a state; visits and
// moments of that name. A task without words on its work, but with its name, counts too.
import type { State } from '#model/model';
import type { Model } from '#model/resolve';
import type { Steps } from '#schedule/steps';
import type { Results } from './check.ts';
import type { Order } from './order.ts';

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
/** An edit that leaves links and works alone leaves the sides alone, too. */
const latest = new WeakMap<Order, Known>();

/** The sides that names of a rule stand for, in plan order, each step and work once; the same list while they are. */
export function sidesOf(
  names: readonly string[],
  { timeline: { steps }, model, order }: Pick<Results, 'timeline' | 'model' | 'order'>,
): readonly Side[] {
  const known = knownOf(steps, model, order);
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

function knownOf(steps: Steps, model: Model, order: Order): Known {
  const states = model.rows('state');
  const isCurrent = (known: Known | undefined): known is Known =>
    known !== undefined && known.states.size === states.length && states.every((state) => known.states.get(state.name) === state);
  const before = kept.get(steps);
  if (isCurrent(before)) return before;
  const doers = doersOf(steps);
  const last = latest.get(order);
  const known: Known =
    isCurrent(last) && sameDoers(last.doers, doers)
      ? last
      : { states: new Map(states.map((state) => [state.name, state])), doers, sides: new Map() };
  kept.set(steps, known);
  latest.set(order, known);
  return known;
}

function sameDoers(a: Known['doers'], b: Known['doers']): boolean {
  if (a.size !== b.size) return false;
  for (const [name, sides] of a) {
    const others = b.get(name);
    if (others === undefined || others.length !== sides.length) return false;
    for (let at = 0; at < sides.length; at++)
      if (sides[at]!.step !== others[at]!.step || sides[at]!.work !== others[at]!.work) return false;
  }
  return true;
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
