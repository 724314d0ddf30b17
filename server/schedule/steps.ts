// The steps of a plan in plan order, and the phases they stand in.
import type { Slot } from '#kit/place';
import type { Phase, Step } from '#model/model';
import type { Model } from '#model/resolve';

export interface Steps {
  readonly list: readonly Step[];
  readonly index: ReadonlyMap<Slot, number>;
  readonly byName: ReadonlyMap<string, number>;
  /** The phase each step stands in. */
  readonly phases: readonly (Phase | undefined)[];
  /** Numbers of the steps in a phase, in its order. */
  readonly within: ReadonlyMap<Slot, readonly number[]>;
}

const KINDS: ReadonlySet<string> = new Set(['task', 'inspection', 'milestone', 'delivery']);

/** The same object while steps and phases are. */
export function stepsOf(model: Model, before?: Steps): Steps {
  const list: Step[] = [];
  const phases: (Phase | undefined)[] = [];
  for (const declared of model.names.declared) {
    const { slot } = declared;
    if (!KINDS.has(slot.kind) || slot.again > 0 || model.names.repeated.has(slot)) continue;
    const step = model.element(slot);
    if (step === undefined) continue;
    const phase = declared.parent === undefined ? undefined : model.element(declared.parent);
    list.push(step as Step);
    phases.push(phase?.kind === 'phase' ? phase : undefined);
  }
  if (
    before !== undefined &&
    before.list.length === list.length &&
    list.every((step, at) => step === before.list[at] && phases[at] === before.phases[at])
  )
    return before;
  const index = new Map(list.map((step, at) => [step.slot, at]));
  const within = new Map<Slot, number[]>();
  phases.forEach((phase, at) => {
    if (phase === undefined) return;
    const numbers = within.get(phase.slot);
    if (numbers === undefined) within.set(phase.slot, [at]);
    else numbers.push(at);
  });
  return { list, index, byName: new Map(list.map((step, at) => [step.name, at])), phases, within };
}
