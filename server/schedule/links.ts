// The plan's own words → links between steps. Rules of order never make links; only `after` and its kin, the order of a
// phase, what an inspection looks at and holds, and what a delivery brings.
import { DAY_MINUTES } from '#kit/dates';
import type { Place } from '#kit/place';
import type { At, NamePlace, Step, StepLink, Task } from '#model/model';
import type { LinkSources } from './link-sources.ts';
import { FINISH_FINISH, FINISH_START, type Link, type LinkKind, START_FINISH, START_START } from './network.ts';
import { standsFrom } from './step-windows.ts';
import type { Steps } from './steps.ts';
import { AROUND, CALENDAR_DAYS, type WaitClock, WORKING } from './waits.ts';

export interface PlanLink extends Link {
  /** The words it comes from: 'after', 'in order', 'looks at', 'holds', 'brings' … */
  readonly words: string;
  readonly place: Place;
  /** Notice of a visit, in minutes: the wait is what it leaves to wait. */
  readonly notice?: number;
}

/** What a step's own words make. */
export interface Own {
  /** What it waits for by its order comes first. */
  readonly links: readonly PlanLink[];
  /** How many of the links those are: a step `beside` it waits for the same. */
  readonly inOrder: number;
  /** The step above whose order it shares. */
  readonly beside: number | undefined;
}

/** `owns` holds the links of the steps above. */
export function linksOf(step: Step, number: number, steps: Steps, owns: readonly Own[], sources: LinkSources): Own {
  const { given } = step;
  let beside: number | undefined;
  const phase = steps.phases[number];
  const order: PlanLink[] = [];
  const others: PlanLink[] = [];
  const stated = (list: readonly At<StepLink>[] | undefined, kind: LinkKind, words: string): PlanLink[] =>
    (list ?? []).flatMap(({ value }) => fromStep(value, number, kind, words, steps));
  order.push(...stated(given.after?.value, FINISH_START, 'after'));
  const otherwise = [
    ...stated(given.with?.value, START_START, 'with'),
    ...stated(given['same day as']?.value, START_START, 'same day as'),
    ...stated(given['done with']?.value, FINISH_FINISH, 'done with'),
    ...stated(given['done after']?.value, START_FINISH, 'done after'),
  ];
  if (phase !== undefined) {
    const numbers = steps.within.get(phase.slot) ?? [];
    const above = numbers[numbers.indexOf(number) - 1];
    if (given.beside !== undefined && above !== undefined) {
      beside = above;
      const { links, inOrder } = owns[above]!;
      for (const link of links.slice(0, inOrder)) order.push({ ...link, to: number, words: 'beside', place: given.beside.place });
    } else if (
      phase.given['in order'] !== undefined &&
      given.after === undefined &&
      given.with === undefined &&
      given['same day as'] === undefined &&
      above !== undefined
    ) {
      order.push({ from: above, to: number, kind: FINISH_START, lag: 0, clock: WORKING, words: 'in order', place: step.place });
    }
    others.push(...stated(phase.given.after?.value, FINISH_START, 'phase after'));
  }
  others.push(...otherwise, ...stated(given['also after']?.value, FINISH_START, 'also after'));
  if (step.kind === 'inspection') {
    const { given: told } = step;
    for (const from of named(told.of?.value, steps, sources)) others.push(finishStart(from.step, number, 'looks at', from.place));
    for (const to of named(told.before?.value, steps, sources)) others.push(finishStart(number, to.step, 'holds', to.place));
    const notice = told.call?.value;
    if (notice !== undefined)
      return {
        links: [...order, ...others].map((link) => (link.to === number ? called(link, notice) : link)),
        inOrder: order.length,
        beside,
      };
  }
  const stands = standsFrom(step, steps);
  if (stands !== undefined) {
    const { place } = (step as Task).given.stands!;
    const bound = (from: number, kind: LinkKind): PlanLink => ({
      from,
      to: number,
      kind,
      lag: 0,
      clock: WORKING,
      words: 'stands',
      place,
    });
    others.push(...stands.from.map((from) => bound(from, START_START)), ...stands.to.map((to) => bound(to, FINISH_FINISH)));
  }
  if (step.kind === 'delivery') {
    const { given: told } = step;
    for (const { value } of told.brings?.value ?? [])
      for (const to of sources.installers(value.name)) others.push(finishStart(number, to, 'brings', value.place));
    const arrives = told.arrives?.value;
    const before = arrives === undefined ? undefined : steps.index.get(arrives.step);
    if (arrives !== undefined && before !== undefined)
      others.push({
        from: number,
        to: before,
        kind: FINISH_START,
        ...waiting(arrives.before),
        words: 'arrives',
        place: told.arrives!.place,
      });
    const lead = told.lead?.value;
    for (const { value } of told['measured after']?.value ?? []) {
      const from = steps.index.get(value.step);
      if (from !== undefined)
        others.push({
          from,
          to: number,
          kind: FINISH_START,
          ...(lead === undefined ? NO_WAIT : waiting(lead)),
          words: 'measured after',
          place: value.place,
        });
    }
  }
  return { links: [...order, ...others], inOrder: order.length, beside };
}

/** A step named in a clause; a phase means all its steps. */
function fromStep(link: StepLink, to: number, kind: LinkKind, words: string, steps: Steps): PlanLink[] {
  const froms = link.step.kind === 'phase' ? (steps.within.get(link.step) ?? []) : [steps.index.get(link.step)];
  return froms.flatMap((from) => {
    if (from === undefined) return [];
    const wait = link.lag === undefined ? NO_WAIT : waiting(link.lag);
    const lag = link.lead === true ? -wait.lag : wait.lag;
    const made: PlanLink = { from, to, kind: kindFrom(kind, link), lag, clock: wait.clock, words, place: link.place };
    return [link.share === undefined ? made : { ...made, share: link.share }];
  });
}

/** `after start of X` starts with the start; `50% of X` is counted from the start too. */
function kindFrom(kind: LinkKind, link: StepLink): LinkKind {
  if (link.from === 'finish' && link.share === undefined) return kind;
  return kind === FINISH_START ? START_START : kind === FINISH_FINISH ? START_FINISH : kind;
}

function finishStart(from: number, to: number, words: string, place: Place): PlanLink {
  return { from, to, kind: FINISH_START, lag: 0, clock: WORKING, words, place };
}

const NO_WAIT: { readonly lag: number; readonly clock: WaitClock } = { lag: 0, clock: WORKING };

/** Minutes and clock of a wait as spelled: 2d and 2w work, 2 days run, 24h go round the clock. */
export function waiting(wait: { readonly value: number; readonly unit?: string }): {
  readonly lag: number;
  readonly clock: WaitClock;
} {
  switch (wait.unit) {
    case 'd':
    case 'w':
      return { lag: wait.value, clock: WORKING };
    case 'days':
    case 'weeks':
    case 'months':
    case 'years':
      return { lag: wait.value, clock: CALENDAR_DAYS };
    default:
      return { lag: wait.value, clock: AROUND };
  }
}

/** A wait in days ends with a date; what ends this much later begins on the next morning. */
const PAST_MIDNIGHT = 1;

/**
 * Called when the work is done, one day ahead is a visit on the next day: the last day of the notice is the visit's own, so
 * the wait ends with the day before it, and never before the day of the call is over.
 */
function called(link: PlanLink, notice: { readonly value: number; readonly unit?: string }): PlanLink {
  if (link.kind !== FINISH_START || link.lag !== 0) return link;
  const { lag, clock } = waiting(notice);
  const told = { ...link, notice: notice.value, clock };
  return clock === CALENDAR_DAYS ? { ...told, lag: Math.max(PAST_MIDNIGHT, lag - DAY_MINUTES) } : { ...told, lag };
}

/** Steps, or the tasks of a kind of work, that an inspection names. */
function named(
  names: readonly At<NamePlace>[] | undefined,
  steps: Steps,
  sources: LinkSources,
): readonly { step: number; place: Place }[] {
  return (names ?? []).flatMap(({ value }) => {
    const step = steps.byName.get(value.name);
    const found = step === undefined ? sources.tasksOf(value.name) : [step];
    return found.map((number) => ({ step: number, place: value.place }));
  });
}
