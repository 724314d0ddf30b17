// The steps of a plan in plan order, and the phases they stand in.
import type { Slot } from '#kit/place';
import type { Phase, Step, Task } from '#model/model';
import type { Model } from '#model/resolve';

export interface Steps {
  readonly list: readonly Step[];
  readonly tasks: readonly Task[];
  readonly index: ReadonlyMap<Slot, number>;
  readonly byName: ReadonlyMap<string, number>;
  /** The phase each step stands in. */
  readonly phases: readonly (Phase | undefined)[];
  /** Numbers of the steps in a phase, in its order. */
  readonly within: ReadonlyMap<Slot, readonly number[]>;
}

const KINDS = ['task', 'inspection', 'milestone', 'delivery'] as const;

export interface StepsMemory {
  /** The names and lists that `steps` was made from. */
  readonly from: readonly unknown[];
  readonly steps: Steps;
}

/** The same object while names, steps and phases are. */
export function stepsOf(model: Model, before?: StepsMemory): StepsMemory {
  const from = [model.names.names, model.list('phase'), ...KINDS.map((kind) => model.list(kind))];
  if (before !== undefined && from.every((each, at) => each === before.from[at])) return before;
  const steps = read(model, before?.steps);
  return { from, steps: before !== undefined && same(before.steps, steps) ? before.steps : steps };
}

function same(a: Steps, b: Steps): boolean {
  return a.list.length === b.list.length && a.list.every((step, at) => step === b.list[at] && a.phases[at] === b.phases[at]);
}

function read(model: Model, before: Steps | undefined): Steps {
  const list: Step[] = [];
  const phases: (Phase | undefined)[] = [];
  const kinds: ReadonlySet<string> = new Set(KINDS);
  for (const { slot, parent } of model.names.declared) {
    if (!kinds.has(slot.kind) || model.names.repeated.has(slot)) continue;
    const step = model.element(slot);
    if (step === undefined) continue;
    const phase = parent === undefined ? undefined : model.element(parent);
    list.push(step as Step);
    phases.push(phase?.kind === 'phase' ? phase : undefined);
  }
  const tasks = list.filter((step): step is Task => step.kind === 'task');
  // Where a step stands among the others seldom changes, and links hang on that alone.
  if (before !== undefined && sameOrder(before, list, phases)) return { ...before, list, tasks, phases };
  const within = new Map<Slot, number[]>();
  phases.forEach((phase, at) => {
    if (phase === undefined) return;
    const numbers = within.get(phase.slot);
    if (numbers === undefined) within.set(phase.slot, [at]);
    else numbers.push(at);
  });
  return {
    list,
    tasks,
    index: new Map(list.map((step, at) => [step.slot, at])),
    byName: new Map(list.map((step, at) => [step.name, at])),
    phases,
    within,
  };
}

function sameOrder(before: Steps, list: readonly Step[], phases: readonly (Phase | undefined)[]): boolean {
  return (
    before.list.length === list.length &&
    list.every((step, at) => step.slot === before.list[at]!.slot && phases[at]?.slot === before.phases[at]?.slot)
  );
}
