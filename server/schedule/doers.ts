// Who does each kind of work: a doer for each work that a task says it does, with the part its words take. What was read
// of a step is kept while the step is; the list of a work while its doers are.
import { keptWhereSame } from '#kit/differing';
import type { Step, Task } from '#model/model';
import { type Scope, scopeOf } from './scope.ts';

export interface Doer {
  readonly task: Task;
  readonly work: string;
  readonly scope: Scope;
}

export interface WorkDoers {
  readonly doers: readonly Doer[];
  /** The number of the step that each stands for: the same list while the numbers are. */
  readonly numbers: readonly number[];
}

export interface Doers {
  readonly steps: readonly Step[];
  readonly byStep: readonly (readonly Doer[])[];
  readonly byWork: ReadonlyMap<string, WorkDoers>;
}

/** Doers in plan order; the same object while the steps are. */
export function doersOf(steps: readonly Step[], before: Doers | undefined): Doers {
  if (before?.steps === steps) return before;
  const byStep = new Array<readonly Doer[]>(steps.length);
  const works = new Map<string, { doers: Doer[]; numbers: number[] }>();
  for (let number = 0; number < steps.length; number++) {
    const step = steps[number]!;
    const own = before?.steps[number] === step ? before.byStep[number]! : doersOfStep(step);
    byStep[number] = own;
    for (const doer of own) {
      let list = works.get(doer.work);
      if (list === undefined) works.set(doer.work, (list = { doers: [], numbers: [] }));
      list.doers.push(doer);
      list.numbers.push(number);
    }
  }
  const byWork = new Map<string, WorkDoers>();
  for (const [work, now] of works) {
    const old = before?.byWork.get(work);
    const doers = keptWhereSame(old?.doers, now.doers);
    const numbers = keptWhereSame(old?.numbers, now.numbers);
    byWork.set(work, doers === old?.doers && numbers === old.numbers ? old : { doers, numbers });
  }
  return { steps, byStep, byWork };
}

const NO_DOERS: readonly Doer[] = [];
const kept = new WeakMap<Step, readonly Doer[]>();

function doersOfStep(step: Step): readonly Doer[] {
  const does = step.kind === 'task' ? step.given.does : undefined;
  if (step.kind !== 'task' || does === undefined) return NO_DOERS;
  let doers = kept.get(step);
  if (doers === undefined) {
    doers = does.value.map(({ value }) => ({ task: step, work: value.work.name, scope: scopeOf(step, value.amount) }));
    kept.set(step, doers);
  }
  return doers;
}
