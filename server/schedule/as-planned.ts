// Schedules that were kept to compare with: what each step was to be, by name, since steps come and go.
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

export interface PlannedStep {
  /** Days since 1970-01-01. A moment only has the day it falls on. */
  readonly begins: number;
  readonly done: number;
  readonly cents?: number;
}

export interface AsPlanned {
  readonly element: ElementOf<'as-planned'>;
  /** The day it stood so. */
  readonly on: number | undefined;
  readonly cents: number | undefined;
  readonly steps: ReadonlyMap<string, PlannedStep>;
  /** The last day of them; undefined where it names no step with a day. */
  readonly end: number | undefined;
}

const kept = new WeakMap<ElementOf<'as-planned'>, AsPlanned>();

export function asPlannedOf(element: ElementOf<'as-planned'>): AsPlanned {
  let known = kept.get(element);
  if (known === undefined) kept.set(element, (known = read(element)));
  return known;
}

/** The one of that name; without a name the latest, of several of one day the last in the plan. */
export function chosenSchedule(model: Model, name?: string): AsPlanned | undefined {
  const all = model.list('as-planned').map(asPlannedOf);
  if (name !== undefined) return all.find(({ element }) => element.name === name.toLowerCase());
  return all.reduce<AsPlanned | undefined>(
    (latest, each) =>
      latest === undefined || (each.on ?? Number.NEGATIVE_INFINITY) >= (latest.on ?? Number.NEGATIVE_INFINITY) ? each : latest,
    undefined,
  );
}

function read(element: ElementOf<'as-planned'>): AsPlanned {
  const steps = new Map<string, PlannedStep>();
  let end: number | undefined;
  for (const { value, deeper } of element.entries) {
    const done = deeper.done?.value ?? deeper.begins?.value;
    if (done === undefined) continue;
    const cents = deeper.costs === undefined ? {} : { cents: Math.round(deeper.costs.value.value) };
    steps.set(value.name, { begins: deeper.begins?.value ?? done, done, ...cents });
    end = end === undefined ? done : Math.max(end, done);
  }
  const { on, costs } = element.given;
  return { element, on: on?.value, cents: costs === undefined ? undefined : Math.round(costs.value.value), steps, end };
}
