// The question "is there a schedule that ends before this moment?" as a model for a general solver of mixed-integer models,
// in the CPLEX LP format: for each step and each moment at which it may begin, whether it has begun by then (step variables:
// Pritsker, Watters & Wolfe 1969; Christofides, Alvarez-Valdes & Tamarit 1987). Links, calendars and crews stand in it as
// they do in the passes. It is exact, because every date a plan can lead to lies on the grid of its lengths and hours.
import { DAY_MINUTES } from '#kit/dates';
import { advance, canBegin, closingOf, firstOpening, retreat } from '../calendar.ts';
import { firstCrew, unitsAt } from '../crew-load.ts';
import { lateDates } from '../critical-path.ts';
import { earlyDates, recordedEnd, recordedStart, unplaced } from '../early-dates.ts';
import { linkBound, worksUntil } from '../link-bounds.ts';
import { FINISH_START, START_START } from '../network.ts';
import { hasStarted, type Timing, takesDay } from '../timing.ts';
import { type PlanParts, placeForward } from './calendar-pass.ts';
import { orderByRank } from './orders.ts';
import { forwardLinks } from './searched-plan.ts';

export interface ProofModel {
  readonly text: string;
  readonly variables: number;
  /** The end of the schedule that a solution stands for; `value` tells a variable's. */
  readonly endOf: (value: (name: string) => number) => {
    readonly end: number;
    readonly start: Float64Array;
    readonly finish: Float64Array;
  };
}

/** A model has no more variables than this: beyond, no solver is done in time. */
export const MOST_VARIABLES = 20_000;

/** A schedule that ends before `end`; undefined where links alone forbid it, and the number of variables where they are too many. */
export function proofModel(parts: PlanParts, end: number): ProofModel | number | undefined {
  const { network, timing, crews } = parts;
  const grid = gridOf(parts);
  const early = earlyDates(network, timing);
  if (early.end > end - 1) return undefined;
  const free: Timing = { ...timing, deadline: new Float64Array(network.count).fill(Number.POSITIVE_INFINITY) };
  const late = lateDates(network, free, { ...early, end: end - 1 });
  const begins: (readonly number[])[] = [];
  const ends: (readonly number[])[] = [];
  let variables = 0;
  for (let step = 0; step < network.count; step++) {
    const moments = hasStarted(timing, step) ? [] : beginsOf(parts, step, early.start[step]!, late.lateStart[step]!, grid);
    if (moments.length === 0 && !hasStarted(timing, step)) return undefined;
    begins.push(moments);
    ends.push(moments.map((moment) => endOf(parts, step, moment)));
    variables += Math.max(0, moments.length - 1);
    if (variables > MOST_VARIABLES) return variables;
  }
  const rows: string[] = [];
  for (let step = 0; step < network.count; step++) {
    for (let at = 1; at < begins[step]!.length; at++)
      relate(rows, [...term(1, begins, step, at - 1), ...term(-1, begins, step, at)], 0);
  }
  linkRows(parts, begins, ends, rows);
  crewRows(parts, begins, ends, rows);
  if (rows.includes(NEVER)) return undefined;
  const names: string[] = [];
  begins.forEach((moments, step) => {
    for (let at = 0; at < moments.length - 1; at++) names.push(`y${step}_${at}`);
  });
  const bounded = names.length === 0 ? ['y_none'] : names;
  return {
    text: [
      'Minimize',
      ` obj: 0 ${bounded[0]}`,
      'Subject To',
      ...(rows.length === 0 ? [` r: ${bounded[0]} <= 1`] : rows),
      'Binary',
      ...bounded.map((name) => ` ${name}`),
      'End',
      '',
    ].join('\n'),
    variables,
    endOf: (value) => {
      const rank = new Float64Array(network.count);
      for (let step = 0; step < network.count; step++) {
        const moments = begins[step]!;
        let at = 0;
        while (at < moments.length - 1 && value(`y${step}_${at}`) < 0.5) at++;
        rank[step] = moments[at] ?? Number.NEGATIVE_INFINITY;
      }
      const order = new Int32Array(network.count);
      orderByRank(forwardLinks(network), rank, order);
      const placed = unplaced(network.count);
      return { end: placeForward({ network, timing, crews }, order, placed), start: placed.start, finish: placed.finish };
    },
  };
}

/** All moments lie on whole multiples of this. */
function gridOf({ network, timing }: PlanParts): number {
  let grid = DAY_MINUTES;
  const add = (minutes: number): void => {
    let [a, b] = [grid, Math.abs(minutes)];
    while (b > 0) [a, b] = [b, a % b];
    grid = a;
  };
  for (let step = 0; step < network.count; step++) {
    add(timing.durations[step]!);
    for (const moment of [timing.notBefore[step]!, timing.fixedStart?.[step], timing.fixedFinish?.[step]]) {
      if (moment !== undefined && Number.isFinite(moment)) add(moment);
    }
  }
  add(timing.start);
  network.linkLag.forEach(add);
  for (let link = 0; link < network.linkShare.length; link++)
    add(Math.round(network.linkShare[link]! * Math.max(0, timing.durations[network.linkFrom[link]!]!)));
  for (const { week } of timing.calendars) for (const day of week.shifts) for (const [from, to] of day) [from, to].forEach(add);
  return grid;
}

function beginsOf({ timing }: PlanParts, step: number, from: number, to: number, grid: number): readonly number[] {
  const own = timing.calendars[timing.calendarOf[step]!]!;
  const moments: number[] = [];
  const isWhole = takesDay(timing, step);
  for (let moment = from; moment <= to && moments.length <= MOST_VARIABLES; moment += grid) {
    if (timing.durations[step]! <= 0 || (isWhole ? firstOpening(own, moment) === moment : canBegin(own, moment)))
      moments.push(moment);
  }
  return moments;
}

function endOf({ timing }: PlanParts, step: number, begin: number): number {
  const own = timing.calendars[timing.calendarOf[step]!]!;
  const length = Math.max(0, timing.durations[step]!);
  return length === 0 ? begin : takesDay(timing, step) ? closingOf(own, begin) : advance(own, begin, length);
}

/** Who hangs on another has begun by a moment only if that other had begun early enough. */
function linkRows(
  { network, timing }: PlanParts,
  begins: readonly (readonly number[])[],
  ends: readonly (readonly number[])[],
  rows: string[],
): void {
  const start = new Float64Array(network.count);
  const finish = new Float64Array(network.count);
  for (const link of network.incoming) {
    const [from, to] = [network.linkFrom[link]!, network.linkTo[link]!];
    if (hasStarted(timing, from) || hasStarted(timing, to)) continue;
    const kind = network.linkKind[link]!;
    const own = timing.calendars[timing.calendarOf[to]!]!;
    const allowed = begins[from]!.map((moment, at) => {
      start[from] = moment;
      finish[from] = ends[from]![at]!;
      const bound = linkBound(network, timing, link, { start, finish });
      if (kind === FINISH_START || kind === START_START) return bound;
      return retreat(own, worksUntil(network, timing, link, bound), Math.max(0, timing.durations[to]!));
    });
    let last = -1;
    begins[to]!.forEach((moment, at) => {
      while (last + 1 < allowed.length && allowed[last + 1]! <= moment) last++;
      if (last < allowed.length - 1) relate(rows, [...term(1, begins, to, at), ...term(-1, begins, from, last)], 0);
    });
  }
}

/** At each moment at which something may begin, no crew does more than there are of it. */
function crewRows(
  { network, timing, crews }: PlanParts,
  begins: readonly (readonly number[])[],
  ends: readonly (readonly number[])[],
  rows: string[],
): void {
  const users = Array.from({ length: crews.count }, (): { step: number; units: number }[] => []);
  for (let step = 0; step < network.count; step++) {
    if (firstCrew(crews, step) < 0 || timing.durations[step]! <= 0) continue;
    for (let slot = crews.taskStart[step]!; slot < crews.taskStart[step + 1]!; slot++) {
      if (unitsAt(crews, slot) > 0) users[crews.crew[slot]!]!.push({ step, units: unitsAt(crews, slot) });
    }
  }
  users.forEach((uses, crew) => {
    const moments = [...new Set(uses.flatMap(({ step }) => begins[step]!))].sort((a, b) => a - b);
    for (const moment of moments) {
      let left = crews.capacity[crew]!;
      let most = 0;
      const terms: Term[] = [];
      for (const { step, units } of uses) {
        if (hasStarted(timing, step)) {
          if (recordedStart(timing, step) <= moment && recordedEnd(timing, step) > moment) left -= units;
          continue;
        }
        const begun = lastAt(begins[step]!, moment);
        const done = lastAt(ends[step]!, moment);
        if (begun < 0 || done === begins[step]!.length - 1) continue;
        most += units;
        terms.push(...term(units, begins, step, begun), ...term(-units, begins, step, done));
      }
      // What was recorded together stays as it is.
      if (most > left) relate(rows, terms, Math.max(0, left));
    }
  });
}

const TERMS_IN_LINE = 12;

/** A row that nothing can hold to. */
const NEVER = 'never';

interface Term {
  readonly by: number;
  readonly name?: string;
}

/** `by` times whether a step has begun by its moment number `at`: nothing before the first, certain at the last. */
function term(by: number, begins: readonly (readonly number[])[], step: number, at: number): readonly Term[] {
  if (at < 0) return [];
  return at >= begins[step]!.length - 1 ? [{ by }] : [{ by, name: `y${step}_${at}` }];
}

function relate(rows: string[], terms: readonly Term[], most: number): void {
  const limit = terms.reduce((sum, { by, name }) => (name === undefined ? sum - by : sum), most);
  const named = terms.filter(({ name }) => name !== undefined);
  if (named.length === 0) {
    if (limit < 0) rows.push(NEVER);
    return;
  }
  const said = named.map(({ by, name }) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} ${name}`);
  // Readers of the format take no long lines.
  const lines = said.map((each, at) =>
    at % TERMS_IN_LINE === 0 && at > 0
      ? `
  ${each}`
      : each,
  );
  rows.push(` ${lines.join(' ')} <= ${limit}`);
}

/** The number of the last of some rising moments that is not after `moment`, or -1. */
function lastAt(moments: readonly number[], moment: number): number {
  let at = moments.length - 1;
  while (at >= 0 && moments[at]! > moment) at--;
  return at;
}
