// Stairs, and the steps of a deck: stringers, treads, riser boards, handrail, from rise, risers, tread and width, flight by
// flight; what a turn takes has a file of its own.
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { stairFacts, stairParts } from '#model/facts/stair';
import type { ElementOf, Goods, Stair } from '#model/model';
import type { StairCounts } from '../conventions.ts';
import type { Portion, Where } from '../lines.ts';
import { sizeMissing, turnMisfit } from '../problems.ts';
import { boardRows } from './deck-boards.ts';
import { counted, inPart, isNothing, type Measured, portion } from './portion.ts';
import { turnPortions, turnRail, winderTreads } from './stair-turns.ts';

type Length = Quantity<'length'>;
type Count = Quantity<'number'>;

const spacesAndOne = form('stringers', 'width ÷ spacing rounded up, and one', (width = 0, spacing = 1) =>
  Math.max(2, Math.ceil(width / spacing - 1e-9) + 1),
);
const slopeOf = form(
  'stringer',
  '√(rise² + run²)',
  (rise = 0, run = 0) => Math.sqrt(rise * rise + run * run),
  'US Army correspondence subcourse EN5156, Carpentry, fig. 2-38: the rise is the height, the run the base, the stringer the hypotenuse',
);
const withEnds = form(
  'stringer as cut',
  'stringer + a tread where it bears',
  (slope = 0, tread = 0) => slope + tread,
  'common practice: one step more, for head and foot',
);
const lengthOfAll = form('stringers', 'stringers × length', (count = 0, length = 0) => count * length);
const treadsOf = form('treads', 'risers − 1: the floor above is the last step', (risers = 0) => Math.max(0, risers - 1));
const runOf = form('run', 'treads × tread', (treads = 0, tread = 0) => treads * tread);
const treadArea = form(
  'treads',
  'treads × width × (tread + nosing)',
  (count = 0, width = 0, tread = 0, nosing = 0) => count * width * (tread + nosing),
);
const deepOf = form('depth of a tread', 'tread + nosing', (tread = 0, nosing = 0) => tread + nosing);
const riserLength = form('riser boards', 'risers × width', (count = 0, width = 0) => count * width);
const flightRise = form(
  'rise of the flight',
  'its risers × rise ÷ all risers',
  (own = 0, rise = 0, all = 1) => (own * rise) / all,
);
const noNosing = constant('nosing', 0, 'length');

interface Flight {
  readonly rise: Length;
  readonly risers: Count;
  readonly tread: Length;
  readonly width: Length;
  readonly nosing: Length;
  readonly stringers: Count | undefined;
  readonly spacing: Length;
  readonly goods: { readonly stringer: Goods | undefined; readonly tread: Goods | undefined };
}

export function measureStair(stair: Stair, counts: StairCounts): Measured {
  const { given } = stair;
  const { rise, risers } = stairFacts(stair);
  const tread = given.tread?.value;
  if (rise?.dimension !== 'length' || risers?.dimension !== 'number' || tread === undefined)
    return { portions: [], findings: [] };
  const findings: Finding[] = [];
  const width = given.width?.value;
  if (width === undefined) {
    findings.push(finding(sizeMissing, stair.place, stair.label, 'its width'));
    return { portions: [], findings };
  }
  const parts = stairParts(stair);
  if (parts === undefined) {
    findings.push(finding(turnMisfit, (given.turn[0] ?? stair).place, stair.label, given.risers?.value ?? 0));
    return { portions: [], findings };
  }
  const { count, of } = given.stringers?.value ?? {};
  const whole: Flight = {
    rise: rise as Length,
    risers: risers as Count,
    tread,
    width,
    nosing: given.nosing?.value ?? noNosing,
    stringers: count === undefined ? undefined : counted('stringers', count),
    spacing: counts.stringerSpacing,
    goods: { stringer: of, tread: given.treads?.value },
  };
  const level = given.from?.value.slot;
  const where = level === undefined ? { element: stair.slot } : { element: stair.slot, level };
  const straights = parts.filter((part) => part.kind === 'straight');
  const flights = straights.length === 1 ? [whole] : straights.map((part) => flightOf(whole, part.risers));
  const isOutside = given.outside !== undefined;
  const boards = given['riser-boards']?.value;
  const closed = boards === undefined || !isNothing(boards);
  const railed = given.handrail !== undefined && given.handrail.value.value !== 0;
  const portions = flights.flatMap((flight, index) => {
    const at = flights.length === 1 ? where : inPart(where, `flight ${index + 1}`);
    const slope = slopeLength(flight);
    const rail = railed && slope.value > 0 ? [slope] : [];
    if (isOutside) return [...outside(flight, at), ...rail.map((length) => portion('step-rail-length', at, length))];
    const treads = treadCount(flight);
    return [
      ...(treads.value > 0 ? [stringers('stair-stringer-length', flight, at)] : []),
      portion('stair-tread-count', at, treads, { goods: flight.goods.tread }),
      ...(closed ? [riserBoards(flight, boards, at)] : []),
      ...rail.map((length) => portion('stair-rail-length', at, length)),
    ];
  });
  let number = 0;
  for (const part of parts) {
    if (part.kind === 'straight') continue;
    number += 1;
    const at = inPart(where, `turn ${number}`);
    portions.push(...turnPortions(part, width, closed ? { boards } : undefined, whole.goods.tread, isOutside, at, counts));
    if (part.kind === 'winders') portions.push(...winderTreads(part, isOutside, width, at));
    const rail = railed ? turnRail(stair, part) : undefined;
    if (rail !== undefined) portions.push(portion(isOutside ? 'step-rail-length' : 'stair-rail-length', at, rail));
  }
  return { portions, findings };
}

/** The flight of so many of the risers. */
function flightOf(whole: Flight, risers: number): Flight {
  const own = counted('risers', risers);
  return { ...whole, risers: own, rise: measure('length', flightRise, own, whole.rise, whole.risers) };
}

/** Steps of a deck that no stair tells of. */
export function deckSteps(deck: ElementOf<'deck'>, where: Where, counts: StairCounts, findings: Finding[]): readonly Portion[] {
  const { steps, high } = deck.given;
  if (steps === undefined || steps.value < 1) return [];
  const width = steps.deeper.wide?.value;
  if (width === undefined || high === undefined) {
    findings.push(finding(sizeMissing, steps.place, deck.label, width === undefined ? 'the width of its steps' : 'its height'));
    return [];
  }
  const flight: Flight = {
    rise: high.value,
    risers: counted('risers', steps.value),
    tread: counts.outsideTread,
    width,
    nosing: noNosing,
    stringers: undefined,
    spacing: counts.stringerSpacing,
    goods: { stringer: undefined, tread: deck.given.boards?.value },
  };
  return outside(flight, inPart(where, 'steps'));
}

function outside(flight: Flight, where: Where): readonly Portion[] {
  const { width, tread, nosing, goods } = flight;
  const count = treadCount(flight);
  const portions = count.value > 0 || flight.risers.value > 1 ? [stringers('step-stringer-length', flight, where)] : [];
  if (count.value > 0)
    portions.push(
      portion('step-tread-area', where, measure('area', treadArea, count, width, tread, nosing), {
        goods: goods.tread,
        pieces: boardRows(goods.tread, width, measure('length', deepOf, tread, nosing), count),
      }),
    );
  return portions;
}

function stringers(by: 'stair-stringer-length' | 'step-stringer-length', flight: Flight, where: Where): Portion {
  const count = flight.stringers ?? measure('number', spacesAndOne, flight.width, flight.spacing);
  const length = measure('length', withEnds, slopeLength(flight), flight.tread);
  return portion(by, where, measure('length', lengthOfAll, count, length), {
    goods: flight.goods.stringer,
    pieces: [{ count, length }],
  });
}

function slopeLength(flight: Flight): Length {
  return measure('length', slopeOf, flight.rise, measure('length', runOf, treadCount(flight), flight.tread));
}

function treadCount({ risers }: Flight): Count {
  return measure('number', treadsOf, risers);
}

function riserBoards({ risers, width }: Flight, goods: Goods | undefined, where: Where): Portion {
  return portion('stair-riser-length', where, measure('length', riserLength, risers, width), {
    goods,
    pieces: [{ count: risers, length: width }],
  });
}
