// Heat that storeys and the house lose: UA of the envelope with what air through its cracks carries, and what that comes to
// between the temperatures that the plan gives. A rough sum to compare by, and no load calculation: ventilation, ducts, earth
// and sun are not in it.
import { FOOT } from '#kit/dimension';
import { form, measure, type Quantity, quantityIn, total } from '#kit/quantity';
import { toBase } from '#kit/units';
import type { Level } from '#model/model';
import type { Model } from '#model/resolve';
import { type Envelope, envelopeOf } from './envelope.ts';

export interface HeatLoss {
  /** UA: what is lost through floors, walls, ceilings and openings for each degree. */
  readonly ua: Quantity<'transfer'>;
  /** The same for air through cracks; undefined where nothing says how much comes in. */
  readonly air: Quantity<'transfer'> | undefined;
  /** Both between indoors and outdoors; undefined where the plan does not give the two. */
  readonly loss: Quantity<'power'> | undefined;
  /** What is not in it. */
  readonly without: readonly string[];
}

const CUBIC_FOOT = FOOT * FOOT * FOOT;
const PER_DEGREE = toBase(1, 'Btu/hF') ?? 0;
const airOf = form(
  'air through cracks',
  '0.018 Btu for a cubic foot and degree × air changes an hour × volume',
  (changes = 0, volume = 0) => (0.018 * changes * volume * PER_DEGREE) / CUBIC_FOOT,
  'US Department of Housing and Urban Development, heat-loss formula (0.018)',
);
const atRest = form(
  'air changes an hour',
  'air changes at 50 Pa ÷ 20',
  (tested = 0) => tested / 20,
  'from memory: a rule of thumb of Lawrence Berkeley Laboratory; it differs with climate, height and shelter',
);
const apart = form('indoors over outdoors', 'indoors − outdoors', (inside = 0, outside = 0) => inside - outside);
const lost = form('heat loss', '(UA + air) × difference', (ua = 0, air = 0, difference = 0) => (ua + air) * difference);
const lostWithoutAir = form('heat loss', 'UA × difference', (ua = 0, difference = 0) => ua * difference);

/** Air changes an hour through cracks: as given, else by the leakage that was asked for or tested. */
export function airChanges({ plan }: Model): Quantity<'number'> | undefined {
  const given = plan?.given.infiltration?.value;
  if (given !== undefined) return given;
  const tested = plan?.given['air-leakage']?.value;
  return tested === undefined ? undefined : measure('number', atRest, tested);
}

/** How much warmer it is kept than it is outside on the coldest days; undefined where it is not. */
export function designDifference({ plan, settings }: Model): Quantity<'temperature'> | undefined {
  const inside = plan?.given.indoors?.value.temperature;
  const outside = plan?.given.outdoors?.value.temperature;
  if (inside === undefined || outside === undefined || inside.value <= outside.value) return undefined;
  return quantityIn(measure('temperature', apart, inside, outside), settings.units === 'feet' ? 'degrees F' : 'K');
}

/** Undefined for a level of which no part tells what it loses. */
export function heatLossOf(level: Level, model: Model): HeatLoss | undefined {
  const envelope = envelopeOf(level, model);
  if (envelope === undefined || envelope.parts.length === 0) return undefined;
  const ua = total('UA', 'transfer', envelope.parts);
  const air = airThrough(envelope, model);
  return { ua, air, loss: lossOf(ua, air, model), without: withoutOf(envelope, air) };
}

/** All storeys together. */
export function heatLossOfHouse(model: Model): HeatLoss | undefined {
  const storeys = model.list('level').flatMap((level) => heatLossOf(level, model) ?? []);
  if (storeys.length === 0) return undefined;
  const ua = total(
    'UA of the house',
    'transfer',
    storeys.map((each) => each.ua),
  );
  const airs = storeys.flatMap(({ air }) => air ?? []);
  const air = airs.length === 0 ? undefined : total('air through cracks of the house', 'transfer', airs);
  return { ua, air, loss: lossOf(ua, air, model), without: [...new Set(storeys.flatMap(({ without }) => without))] };
}

function airThrough({ volume }: Envelope, model: Model): Quantity<'transfer'> | undefined {
  const changes = airChanges(model);
  return changes === undefined || volume === undefined ? undefined : measure('transfer', airOf, changes, volume);
}

function lossOf(ua: Quantity<'transfer'>, air: Quantity<'transfer'> | undefined, model: Model): Quantity<'power'> | undefined {
  const difference = designDifference(model);
  if (difference === undefined) return undefined;
  const loss =
    air === undefined
      ? measure<'power'>('power', lostWithoutAir, ua, difference)
      : measure<'power'>('power', lost, ua, air, difference);
  return model.settings.units === 'feet' ? quantityIn(loss, 'Btu/h') : loss;
}

function withoutOf({ without }: Envelope, air: Quantity | undefined): readonly string[] {
  return air === undefined ? [...without, 'air through cracks'] : without;
}
