// The steps of a plan in plan order, and the phases they stand in.
import { alike, sameList } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Inspection, Phase, Step } from '#model/model';
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

const KINDS = ['task', 'inspection', 'milestone', 'delivery'] as const;

export interface StepsMemory {
  /** What `steps` was made from: all that is declared, and the lists of phases and steps. */
  readonly declared: Declared;
  readonly lists: readonly (readonly unknown[])[];
  readonly steps: Steps;
  /** Which of `KINDS` each step is. */
  readonly kinds: Uint8Array;
}
type Declared = Model['names']['declared'];

/** The same object while steps and phases are, and stand as they stood. */
export function stepsOf(model: Model, before?: StepsMemory): StepsMemory {
  const { declared } = model.names;
  const own = KINDS.map((kind): readonly Step[] => (kind === 'inspection' ? visits(model.list(kind)) : model.list(kind)));
  const lists = [...own, model.list('phase')];
  const isInOrder =
    before !== undefined && lists[KINDS.length] === before.lists[KINDS.length] && standAs(before.declared, declared);
  const replaced = isInOrder ? withReplaced(before, own) : undefined;
  if (replaced !== undefined) return { declared, lists, steps: replaced, kinds: before!.kinds };
  const steps = read(model, before?.steps);
  const kinds = Uint8Array.from(steps.list, ({ kind }) => KINDS.indexOf(kind));
  return { declared, lists, steps: before !== undefined && same(before.steps, steps) ? before.steps : steps, kinds };
}

const kept = new WeakMap<readonly Inspection[], readonly Inspection[]>();

/** Those that are made: a visit that the town does not hold is no step. The same list while it is. */
function visits(all: readonly Inspection[]): readonly Inspection[] {
  if (!all.some(isDropped)) return all;
  let made = kept.get(all);
  if (made === undefined) kept.set(all, (made = all.filter((each) => !isDropped(each))));
  return made;
}

function isDropped(step: Step): boolean {
  return step.kind === 'inspection' && step.given['not held'] !== undefined;
}

function same(a: Steps, b: Steps): boolean {
  return sameList(a.list, b.list) && sameList(a.phases, b.phases);
}

/**
 * Whether all steps stand in the order and the phases in which they stood: no step is among the names that came and went,
 * between what is the same from the top and from the bottom.
 */
function standAs(before: Declared, now: Declared): boolean {
  const least = Math.min(before.length, now.length);
  let top = 0;
  for (; top < least; top++) {
    const [old, each] = [before[top]!, now[top]!];
    if (old === each) continue;
    if (old.slot !== each.slot) break;
    if (old.parent !== each.parent) return false;
  }
  let bottom = 0;
  for (; bottom < least - top; bottom++) {
    const [old, each] = [before[before.length - 1 - bottom]!, now[now.length - 1 - bottom]!];
    if (old === each) continue;
    if (old.slot !== each.slot) break;
    if (old.parent !== each.parent) return false;
  }
  for (let at = top; at < before.length - bottom; at++) if (STEP_KINDS.has(before[at]!.slot.kind)) return false;
  for (let at = top; at < now.length - bottom; at++) if (STEP_KINDS.has(now[at]!.slot.kind)) return false;
  return true;
}

const STEP_KINDS: ReadonlySet<string> = new Set(KINDS);

/** The steps as they stood, with those in place of them that were read anew; undefined where more than that changed. */
function withReplaced({ steps, kinds }: StepsMemory, lists: readonly (readonly Step[])[]): Steps | undefined {
  const taken = new Int32Array(KINDS.length);
  let list: Step[] | undefined;
  for (let number = 0; number < kinds.length; number++) {
    const kind = kinds[number]!;
    const step = lists[kind]![taken[kind]!++];
    if (step === steps.list[number]) continue;
    if (step?.slot !== steps.list[number]!.slot) return undefined;
    list ??= steps.list.slice();
    list[number] = step;
  }
  if (lists.some(({ length }, kind) => length !== taken[kind])) return undefined;
  return list === undefined ? steps : { ...steps, list };
}

function phaseOf(parent: Slot | undefined, model: Model): Phase | undefined {
  const phase = parent === undefined ? undefined : model.element(parent);
  return phase?.kind === 'phase' ? phase : undefined;
}

function read(model: Model, before: Steps | undefined): Steps {
  const list: Step[] = [];
  const phases: (Phase | undefined)[] = [];
  for (const { slot, parent } of model.names.declared) {
    if (!STEP_KINDS.has(slot.kind) || model.names.repeated.has(slot)) continue;
    const step = model.element(slot);
    if (step === undefined || isDropped(step as Step)) continue;
    list.push(step as Step);
    phases.push(phaseOf(parent, model));
  }
  // Where a step stands among the others seldom changes, and links hang on that alone.
  if (before !== undefined && sameOrder(before, list, phases)) return { ...before, list, phases };
  const within = new Map<Slot, number[]>();
  phases.forEach((phase, at) => {
    if (phase === undefined) return;
    addTo(within, phase.slot, at);
  });
  return {
    list,
    index: new Map(list.map((step, at) => [step.slot, at])),
    byName: new Map(list.map((step, at) => [step.name, at])),
    phases,
    within,
  };
}

function sameOrder(before: Steps, list: readonly Step[], phases: readonly (Phase | undefined)[]): boolean {
  return (
    alike(before.list, list, (old, step) => old.slot === step.slot) &&
    alike(before.phases, phases, (old, phase) => old?.slot === phase?.slot)
  );
}
