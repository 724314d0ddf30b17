// The shape of a table of facts, and what several of them ask: fixtures and devices by what they serve as.
import { NONE } from '#kit/differing';
import type { Dimension } from '#kit/dimension';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { Goods, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { keptFor } from '../kept.ts';

export interface FactTable<E> {
  /** The property whose line tells a fact, where that is not its own word. */
  readonly lines?: { readonly [fact: string]: string };
  /** Told by the thing itself and the plan's settings. */
  readonly own?: Facts<E>;
  /** Told by those beside it as well: for a room `roomsBeside`, for a level its rooms. */
  readonly beside?: Facts<E>;
  /** Told by others anywhere. */
  readonly around?: Facts<E>;
}

interface Facts<E> {
  readonly [fact: string]: (thing: E, model: Model) => Quantity | undefined;
}

type Listed = Room['given']['fixtures'][number]['value'][number]['value'];

/** What a room lists under fixtures or devices that serves as something. */
export function serving(lines: Room['given']['fixtures'], service: string): readonly Listed[] {
  if (lines.length === 0) return NONE;
  const known = servings(lines);
  let listed = known.get(service);
  if (listed === undefined)
    known.set(
      service,
      (listed = lines.flatMap((line) => line.value.flatMap(({ value }) => (servesAs(value.type, service) ? [value] : [])))),
    );
  return listed;
}

/** The same room is asked for the same again whenever another changes. */
const servings = keptFor((_: Room['given']['fixtures']) => new Map<string, readonly Listed[]>());

function servesAs({ of }: Goods, service: string): boolean {
  return of?.kind === 'fixture' && (of.given['serves as']?.value.some(({ value }) => value === service) ?? false);
}

/** How many of the devices of these rooms serve as something; where no room tells its devices, nobody knows. */
export function devicesIn(rooms: readonly Room[], service: string): Quantity | undefined {
  let told = false;
  let count = 0;
  for (const { given } of rooms) {
    if (given.devices.length === 0) continue;
    told = true;
    count += countOf(serving(given.devices, service));
  }
  return told ? number(`${service}s`, count) : undefined;
}

/** How many of them. */
export function countOf(listed: readonly Listed[]): number {
  return listed.reduce((sum, { count }) => sum + (typeof count === 'number' ? count : 1), 0);
}

/** The ratings of one dimension behind a fixture: 80 cfm, 200 A. */
export function ratingOf({ ratings }: Listed, dimension: Dimension): number | undefined {
  for (const { value } of ratings)
    if ('kind' in value && value.kind === 'quantity' && value.dimension === dimension) return value.value;
  return undefined;
}

export function smallest<D extends Dimension>(values: readonly Quantity<D>[]): Quantity<D> | undefined {
  return values.reduce<Quantity<D> | undefined>(
    (least, each) => (least === undefined || each.value < least.value ? each : least),
    undefined,
  );
}

export function greatest<D extends Dimension>(values: readonly Quantity<D>[]): Quantity<D> | undefined {
  return values.reduce<Quantity<D> | undefined>(
    (most, each) => (most === undefined || each.value > most.value ? each : most),
    undefined,
  );
}

export function number(label: string, value: number): Quantity<'number'> {
  return constant(label, value, 'number');
}

const ratio = form('share', 'part ÷ whole', (part = 0, whole = 1) => part / whole);
/** One area over another. */
export function shareOf(part: Quantity, whole: Quantity): Quantity<'number'> | undefined {
  return whole.value > 0 ? measure('number', ratio, part, whole) : undefined;
}

export function areas(label: string, list: readonly Quantity<'area'>[]): Quantity<'area'> {
  return total(label, 'area', list);
}
