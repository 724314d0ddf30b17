// How long a step takes, and why: given, or the person-hours of its share of the work over its people.
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { Inspection, Step, Task, Trade } from '#model/model';
import type { Claim } from './claims.ts';

export interface Duration {
  /** Working minutes. */
  readonly minutes: number;
  readonly basis: 'given' | 'rate' | 'visit' | 'moment' | 'span' | 'none';
  /** What the rate says where a length is given. */
  readonly rate?: number;
  /** Person-minutes by the rates of its work, where any line has one. */
  readonly personMinutes?: number;
}

/** What somebody says it takes; of a range the likely length, else its middle. */
function likelyLength({ given: { takes } }: Task | Inspection): number | undefined {
  return (takes?.value.likely ?? takes?.value.time)?.value;
}

/** Whole minutes, so that dates are; less than one minute of work is one. */
export function durationOf(step: Step, claims: readonly Claim[], trade: Trade | undefined, minutesPerDay: number): Duration {
  switch (step.kind) {
    case 'milestone':
    case 'delivery':
      return { minutes: 0, basis: 'moment' };
    case 'inspection': {
      const given = likelyLength(step);
      // A visit comes at some hour of its day: the day is taken, and the next step begins the next morning (common practice).
      return given === undefined ? { minutes: minutesPerDay, basis: 'visit' } : { minutes: Math.round(given), basis: 'given' };
    }
    case 'task': {
      if (step.given.stands !== undefined) return { minutes: 0, basis: 'span' };
      const hours = personMinutes(claims);
      const rate = hours === undefined ? undefined : wholeMinutes(hours / people(step, trade));
      const given = likelyLength(step);
      if (hours === undefined || rate === undefined)
        return given === undefined ? { minutes: 0, basis: 'none' } : { minutes: Math.round(given), basis: 'given' };
      if (given !== undefined) return { minutes: Math.round(given), basis: 'given', rate, personMinutes: hours };
      return { minutes: rate, basis: 'rate', personMinutes: hours };
    }
  }
}

export function people(task: Task, trade: Trade | undefined): number {
  return Math.max(1, task.given['crew of']?.value ?? trade?.given['crew of']?.value ?? 1);
}

/** Person-minutes of the claimed shares; undefined where no line has a rate. */
export function personMinutes(claims: readonly Claim[]): number | undefined {
  let sum: number | undefined;
  for (const { line, share } of claims) if (line.hours !== undefined) sum = (sum ?? 0) + line.hours.value * share;
  return sum;
}

function wholeMinutes(minutes: number): number {
  return minutes > 0 ? Math.max(1, Math.ceil(minutes - minutes * 1e-9)) : 0;
}

const sharedHours = form('person-hours', 'hours × share', (hours = 0, share = 0) => hours * share);
const perPeople = form('duration', 'person-hours ÷ people', (hours = 0, crew = 1) => wholeMinutes(hours / crew));

/** The working behind a duration by rate, made when somebody asks. */
export function durationWorking(step: Task, claims: readonly Claim[], trade: Trade | undefined): Quantity<'time'> | undefined {
  const parts = claims.flatMap(({ line, share }) => {
    if (line.hours === undefined) return [];
    return [share === 1 ? line.hours : measure('time', sharedHours, line.hours, constant('share of it', share, 'number'))];
  });
  if (parts.length === 0) return undefined;
  const given = step.given['crew of']?.value ?? trade?.given['crew of']?.value;
  const crew = constant(given === undefined ? 'people (one, as none are given)' : 'people', people(step, trade), 'number');
  return measure('time', perPeople, total('person-hours', 'time', parts), crew);
}
