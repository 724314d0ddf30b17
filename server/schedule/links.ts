// The plan's own words → links between steps. Rules of order never make links; only `after` and its kin, the order of a
// phase, what an inspection looks at and holds, and what a delivery brings.
import { DAY_MINUTES } from '#kit/dates';
import type { Place } from '#kit/place';
import type { At, NamePlace, Phase, Step, StepLink } from '#model/model';
import { FINISH_FINISH, FINISH_START, type Link, type LinkKind, START_FINISH, START_START } from './network.ts';
import type { Steps } from './steps.ts';
import { AROUND, CALENDAR_DAYS, type WaitClock, WORKING } from './waits.ts';

export interface PlanLink extends Link {
  /** The words it comes from: 'after', 'in order', 'looks at', 'holds', 'brings' … */
  readonly words: string;
  readonly place: Place;
  /** Notice of a visit, in minutes: the wait is what it leaves to wait. */
  readonly notice?: number;
  /** Begins when this share of the earlier step is done. */
  readonly share?: number;
}

export interface LinkSources {
  /** Tasks by the name of a kind of work they do. */
  readonly tasksOf: (work: string) => readonly number[];
  /** Tasks that install goods of a name. */
  readonly installers: (goods: string) => readonly number[];
}

export function planLinks(steps: Steps, sources: LinkSources): readonly PlanLink[] {
  const links: PlanLink[] = [];
  // What each step of a phase waits for by its order: for `beside`.
  const orders: (readonly PlanLink[])[] = [];
  steps.list.forEach((step, number) => {
    const own = keptLinks(step, number, steps) ?? linksOf(step, number, steps, orders, sources);
    // What a visit looks at and what a delivery brings hang on the other steps too, and `beside` on the line above.
    if ((step.kind === 'task' || step.kind === 'milestone') && step.given.beside === undefined)
      kept.set(step, { index: steps.index, phase: steps.phases[number], own });
    orders[number] = own.order;
    for (const link of own.order) links.push(link);
    for (const link of own.others) links.push(link);
  });
  return distinct(links, steps.list.length);
}

interface Own {
  readonly order: readonly PlanLink[];
  readonly others: readonly PlanLink[];
}
const kept = new WeakMap<Step, { readonly index: Steps['index']; readonly phase: Phase | undefined; readonly own: Own }>();

/** The links of a step that has not changed, in a phase that has not, among steps that stand where they stood. */
function keptLinks(step: Step, number: number, steps: Steps): Own | undefined {
  const known = kept.get(step);
  return known !== undefined && known.index === steps.index && known.phase === steps.phases[number] ? known.own : undefined;
}

function linksOf(step: Step, number: number, steps: Steps, orders: readonly (readonly PlanLink[])[], sources: LinkSources): Own {
  const { given } = step;
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
      order.push(...(orders[above] ?? []).map((link) => ({ ...link, to: number, words: 'beside', place: given.beside!.place })));
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
        order: order.map((link) => called(link, notice)),
        others: others.map((link) => (link.to === number ? called(link, notice) : link)),
      };
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
  return { order, others };
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

/** The same link said twice is one; the first words stay. */
function distinct(links: readonly PlanLink[], steps: number): readonly PlanLink[] {
  const seen = new Map<number, PlanLink[]>();
  return links.filter((link) => {
    if (link.from === link.to && link.words !== 'after') return false;
    const key = link.from * steps + link.to;
    const others = seen.get(key);
    if (others === undefined) seen.set(key, [link]);
    else if (others.some((other) => sameLink(other, link))) return false;
    else others.push(link);
    return true;
  });
}

function sameLink(a: PlanLink, b: PlanLink): boolean {
  return a.kind === b.kind && a.lag === b.lag && a.clock === b.clock && a.share === b.share;
}
