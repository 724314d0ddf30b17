// Heat that storeys and the house lose: UA of the envelope with what air through its cracks carries, and what that comes to
// between the temperatures that the plan gives. Air that fans bring in belongs to the house, not to a storey. A rough sum to
// compare by, and no load calculation: ducts, earth and sun are not in it.
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
  /** The same for air that fans bring in, less the heat recovered: of the house alone; undefined where the plan gives none. */
  readonly fresh: Quantity<'transfer'> | undefined;
  /** All of it between indoors and outdoors; undefined where the plan does not give the two. */
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
const lostWithFans = form(
  'heat loss',
  '(UA + air through cracks + air by fans) × difference',
  (ua = 0, cracks = 0, fans = 0, difference = 0) => (ua + cracks + fans) * difference,
);
/** Btu an hour for each cubic foot a minute and degree: 60 minutes × 0.018. */
const BY_FANS = 60 * 0.018 * (PER_DEGREE / (toBase(1, 'cfm') ?? 1));
const freshOf = form(
  'air by fans',
  '1.08 Btu an hour for a cubic foot a minute and degree × flow',
  (flow = 0) => BY_FANS * flow,
  'US Department of Housing and Urban Development, heat-loss formula (0.018 × 60)',
);
const overTime = form('fresh air', 'rate × share of time', (rate = 0, share = 1) => rate * share);
const unrecovered = form(
  'air by fans, less heat recovered',
  'heat of the air × (1 − share recovered)',
  (heat = 0, share = 0) => heat * (1 - share),
);
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
  const fans = model.plan?.given['fresh-air'] === undefined ? [] : ['air by fans (in the sum of the house)'];
  return {
    ua,
    air,
    fresh: undefined,
    loss: lossOf(ua, air, undefined, model),
    without: [...withoutOf(envelope, air), ...fans],
  };
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
  const fresh = airByFans(model);
  const without = model.list('level').flatMap((level) => {
    const envelope = envelopeOf(level, model);
    return envelope === undefined || envelope.parts.length === 0 ? [] : withoutOf(envelope, airThrough(envelope, model));
  });
  const fans = fresh === undefined ? ['air by fans (no fresh-air in the plan)'] : [];
  return { ua, air, fresh, loss: lossOf(ua, air, fresh, model), without: [...new Set([...without, ...fans])] };
}

/** What the plan's fresh air takes with it for each degree. */
function airByFans({ plan }: Model): Quantity<'transfer'> | undefined {
  const given = plan?.given['fresh-air']?.value;
  if (given === undefined) return undefined;
  const flow = given.running === undefined ? given.rate : measure('flow', overTime, given.rate, given.running);
  const heat = measure('transfer', freshOf, flow);
  return given.recovers === undefined ? heat : measure('transfer', unrecovered, heat, given.recovers);
}

function airThrough({ volume }: Envelope, model: Model): Quantity<'transfer'> | undefined {
  const changes = airChanges(model);
  if (changes === undefined || volume === undefined) return undefined;
  // Air is spoken of in cubic feet, not in the yards of concrete.
  return measure('transfer', airOf, changes, quantityIn(volume, model.settings.units === 'feet' ? 'cf' : 'm3'));
}

function lossOf(
  ua: Quantity<'transfer'>,
  air: Quantity<'transfer'> | undefined,
  fresh: Quantity<'transfer'> | undefined,
  model: Model,
): Quantity<'power'> | undefined {
  const difference = designDifference(model);
  if (difference === undefined) return undefined;
  const one = air ?? fresh;
  const loss =
    one === undefined
      ? measure<'power'>('power', lostWithoutAir, ua, difference)
      : air !== undefined && fresh !== undefined
        ? measure<'power'>('power', lostWithFans, ua, air, fresh, difference)
        : measure<'power'>('power', lost, ua, one, difference);
  return model.settings.units === 'feet' ? quantityIn(loss, 'Btu/h') : loss;
}

function withoutOf({ without }: Envelope, air: Quantity | undefined): readonly string[] {
  return air === undefined ? [...without, 'air through cracks'] : without;
}
