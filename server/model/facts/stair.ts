// Facts of a stair: its rise, how many risers, the height of one, its flights and turns, how far it runs, headroom under the
// edge of its opening.
import { INCH } from '#kit/dimension';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Facts } from '../facts.ts';
import type { Stair } from '../model.ts';

type Length = Quantity<'length'>;
export type Turn = Stair['given']['turn'][number];

/** A part of a stair, from its foot up: steps straight on, a landing, or winders. */
export type Part =
  | { readonly kind: 'straight'; readonly risers: number }
  | { readonly kind: 'landing'; readonly turn: Turn; readonly size: { readonly left: Length; readonly right: Length } }
  | { readonly kind: 'winders'; readonly turn: Turn; readonly count: number };

const kept = new WeakMap<Stair, { readonly parts: readonly Part[] | undefined }>();

/**
 * Straight parts have one tread fewer than risers: the floor, landing or winder above is their last step. So many winders
 * have one riser fewer between them. Undefined where its turns do not fit its risers, or one is neither landing nor winders.
 */
export function stairParts(stair: Stair): readonly Part[] | undefined {
  let known = kept.get(stair);
  if (known === undefined) kept.set(stair, (known = { parts: partsOf(stair) }));
  return known.parts;
}

function partsOf({ given: { risers, turn: turns } }: Stair): readonly Part[] | undefined {
  const all = risers?.value;
  if (all === undefined || all < 1) return undefined;
  const parts: Part[] = [];
  let done = 0;
  for (const turn of [...turns].sort((one, other) => one.value - other.value)) {
    const { landing, winders } = turn.deeper;
    const straight = turn.value - done;
    if (straight < 1 || (landing === undefined) === (winders === undefined)) return undefined;
    parts.push({ kind: 'straight', risers: straight });
    done = turn.value;
    if (landing !== undefined) parts.push({ kind: 'landing', turn, size: landing.value });
    if (winders !== undefined) {
      if (winders.value < 1) return undefined;
      parts.push({ kind: 'winders', turn, count: winders.value });
      done += winders.value - 1;
    }
  }
  return all - done < 1 ? undefined : [...parts, { kind: 'straight', risers: all - done }];
}

const eachRiser = form('riser', 'rise ÷ risers', (rise = 0, risers = 1) => rise / risers);
const runOf = form('run', '(risers − 1) × tread', (risers = 0, tread = 0) => Math.max(0, risers - 1) * tread);
const runOfFlights = form('run', 'straight treads × tread: turns not in it', (treads = 0, tread = 0) => treads * tread);
const tallest = form('rise of the highest flight', 'its risers × riser', (risers = 0, riser = 0) => risers * riser);
const wholeRise = form('rise of the flight', 'floor to floor', (rise = 0) => rise);
const underEdge = form(
  'headroom',
  'opening × riser ÷ tread − floor above',
  (opening = 0, riser = 0, tread = 1, floor = 0) => (opening * riser) / tread - floor,
);

export function stairFacts(stair: Stair): Facts {
  const { given } = stair;
  const rise = given.rise?.value;
  const risers = riserCount(given.risers?.value);
  const tread = given.tread?.value;
  const riser =
    given.riser?.value ?? (rise === undefined || risers === undefined ? undefined : measure('length', eachRiser, rise, risers));
  const facts = { rise, risers, riser, headroom: headroomOf(stair, riser) };
  if (given.turn.length === 0)
    return {
      ...facts,
      run: risers === undefined || tread === undefined ? undefined : measure('length', runOf, risers, tread),
      flights: risers === undefined ? undefined : constant('flights', 1, 'number'),
      'flight-rise': rise === undefined ? undefined : measure('length', wholeRise, rise),
    };
  const parts = stairParts(stair);
  if (parts === undefined) return facts;
  const straight = parts.reduce((sum, part) => (part.kind === 'straight' ? sum + part.risers - 1 : sum), 0);
  const flights = flightsOf(parts);
  const landings = parts.flatMap((part) => (part.kind === 'landing' ? [part.size] : []));
  const least = (lengths: readonly Length[]): Length | undefined =>
    lengths.reduce<Length | undefined>((low, each) => (low === undefined || each.value < low.value ? each : low), undefined);
  return {
    ...facts,
    run:
      tread === undefined ? undefined : measure('length', runOfFlights, constant('straight treads', straight, 'number'), tread),
    flights: constant('flights', flights.length, 'number'),
    'flight-rise':
      riser === undefined ? undefined : measure('length', tallest, constant('risers', Math.max(...flights), 'number'), riser),
    'turn-landing': least(landings.map(({ left }) => left)),
    'turn-landing-width': least(landings.map(({ right }) => right)),
    'winder-tread': least(parts.flatMap((part) => (part.kind === 'winders' ? (walkedDepth(stair, part) ?? []) : []))),
  };
}

/** The risers from landing to landing; winders do not end a flight. */
function flightsOf(parts: readonly Part[]): readonly number[] {
  const flights = [0];
  for (const part of parts) {
    if (part.kind === 'landing') flights.push(0);
    else flights[flights.length - 1]! += part.kind === 'straight' ? part.risers : part.count - 1;
  }
  return flights;
}

/** The walk line lies a foot from the narrow side; a turn of 90 degrees is shared by its winders. */
const walkLine = constant('walk line', 12 * INCH, 'length', 'from memory: International Residential Code R311.7.4');
const alongWalkLine = form(
  'winder at the walk line',
  'narrow end + walk line × angle ÷ winders',
  (narrow = 0, line = 0, angle = 0, count = 1) => narrow + (line * angle) / count,
  'geometry of a sector; drawings tell it more closely',
);
const quarter = constant('angle of a quarter turn', Math.PI / 2, 'number');
const halfTurn = constant('angle of a half turn', Math.PI, 'number');

/** Undefined where nobody tells how deep winders are at their narrow end. */
export function walkedDepth({ given }: Stair, { turn, count }: Extract<Part, { kind: 'winders' }>): Length | undefined {
  const narrow = given.narrow?.value;
  if (narrow === undefined) return undefined;
  const angle = turn.deeper.half === undefined ? quarter : halfTurn;
  return measure('length', alongWalkLine, narrow, walkLine, angle, constant('winders', count, 'number'));
}

/** As given; else where the line of the nosings passes under the edge of the opening. */
function headroomOf({ given: { headroom, opening, tread } }: Stair, riser: Length | undefined): Length | undefined {
  if (headroom !== undefined) return headroom.value;
  if (opening === undefined || tread === undefined || riser === undefined || !(tread.value.value > 0)) return undefined;
  return measure('length', underEdge, opening.value.long, riser, tread.value, opening.value.floor);
}

function riserCount(count: number | undefined): Quantity<'number'> | undefined {
  return count === undefined || count < 1 ? undefined : constant('risers', count, 'number');
}
