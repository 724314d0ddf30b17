// Days that weather takes from outside work: those the diary says were lost, and the allowance of each month, spread evenly
// over its working days from the status date on. What a kind of work bears stands in its row (`exposed`).
import { civil, dayOf } from '#kit/dates';
import type { ElementOf, Plan, Step } from '#model/model';
import type { Model } from '#model/resolve';

export const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const KINDS = ['rain', 'frost', 'wind', 'heat'] as const;
/** Set for whatever weather stops. */
const ANY = 1 << KINDS.length;
/** Months for which the allowance is laid out. */
const AHEAD = 60;

/** What of a plan's weather there is to take days, and which kinds of weather that is, as bits. */
export interface Weather {
  readonly kinds: number;
  readonly allowed: Allowance;
  readonly lost: readonly { readonly kind: number; readonly first: number; readonly last: number }[];
  /** The allowance counts from here on: until then the diary says what was lost. */
  readonly from: number;
}
type Allowance = NonNullable<Plan['given']['weather']>['value'];

const exposures = new WeakMap<Step, number>();
/** Which kinds of weather stop a step, as bits; 0 for work inside. */
export function exposureOf(step: Step): number {
  if (step.kind !== 'task') return 0;
  let known = exposures.get(step);
  if (known === undefined) {
    known = 0;
    for (const { value } of step.given.does?.value ?? [])
      for (const each of value.work.given.exposed?.value ?? []) known |= ANY | (1 << KINDS.indexOf(each.value));
    exposures.set(step, known);
  }
  return known;
}

/** The plan's own allowance before that of its climate; the diary up to the status date. */
export function weatherOf(model: Model, asOf: number | undefined): Weather {
  const { plan } = model;
  const allowed = plan?.given.weather?.value ?? plan?.given.climate?.value.given.weather?.value ?? [];
  const lost = asOf === undefined ? [] : model.list('progress').flatMap((block) => (isKnown(block, asOf) ? lostIn(block) : []));
  let kinds = 0;
  for (const { value } of allowed) kinds |= bitOf(value.to);
  for (const { kind } of lost) kinds |= kind;
  return { kinds, allowed, lost, from: asOf === undefined ? Number.NEGATIVE_INFINITY : asOf + 1 };
}

/** Working minutes that the allowance of a month takes from work of an exposure. */
export function allowedIn({ allowed }: Weather, month: number, exposure: number): number {
  let minutes = 0;
  for (const { value } of allowed)
    if (value.month === MONTHS[month - 1] && (bitOf(value.to) & exposure) !== 0) minutes += value.lost.value;
  return minutes;
}

function bitOf(kind: (typeof KINDS)[number] | undefined): number {
  return kind === undefined ? ANY : 1 << KINDS.indexOf(kind);
}

type Block = ElementOf<'progress'>;
function isKnown({ takes }: Block, asOf: number): boolean {
  return takes !== undefined && takes <= asOf;
}

function lostIn({ given }: Block): Weather['lost'] {
  return KINDS.flatMap((each, at) => given[each].map(({ value }) => ({ kind: 1 << at, first: value.first, last: value.last })));
}

/** The days on which work that bears `exposure` badly cannot be done. `isWorked` says which days would be worked. */
export function daysLost(
  { allowed, lost, from }: Weather,
  exposure: number,
  first: number,
  dayMinutes: number,
  isWorked: (day: number) => boolean,
): (day: number) => boolean {
  const spans = lost.filter(({ kind }) => (kind & exposure) !== 0);
  const planned = allowedDays(allowed, exposure, first, from, dayMinutes, isWorked);
  return (day) => planned.has(day) || spans.some((span) => day >= span.first && day <= span.last);
}

function allowedDays(
  allowed: Allowance,
  exposure: number,
  first: number,
  from: number,
  dayMinutes: number,
  isWorked: (day: number) => boolean,
): ReadonlySet<number> {
  const counts = new Float64Array(MONTHS.length);
  for (const { value } of allowed)
    if ((bitOf(value.to) & exposure) !== 0) counts[MONTHS.indexOf(value.month)]! += value.lost.value / Math.max(1, dayMinutes);
  const chosen = new Set<number>();
  const { year, month } = civil(first);
  for (let ahead = 0; ahead < AHEAD; ahead++) {
    const at = month - 1 + ahead;
    const [y, m] = [year + Math.floor(at / 12), (at % 12) + 1];
    const count = Math.round(counts[m - 1]!);
    if (count <= 0) continue;
    const days: number[] = [];
    const end = m === 12 ? dayOf(y + 1, 1, 1) : dayOf(y, m + 1, 1);
    for (let day = dayOf(y, m, 1); day < end; day++) if (isWorked(day)) days.push(day);
    for (let nth = 0; nth < Math.min(count, days.length); nth++) {
      const day = days[Math.floor(((nth + 0.5) * days.length) / count)]!;
      if (day >= from) chosen.add(day);
    }
  }
  return chosen;
}
