// How books count what geometry alone does not say: studs, plates and headers by the library's row that the plan chooses.
// Beside them numbers that no row of the library can say yet, each with its published source.
import { FOOT, INCH } from '#kit/dimension';
import { constant, type Quantity } from '#kit/quantity';
import { toBase } from '#kit/units';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

const fromMemory = (what: string) => `from memory: ${what}`;

/** How studs, plates and headers are counted, by the book that the plan chooses or the usual one. */
export interface FramingCounts {
  readonly endStuds: Quantity<'number'>;
  readonly cornerStuds: Quantity<'number'>;
  /** At a corner that is not square. */
  readonly slantedCornerStuds: Quantity<'number'>;
  readonly crossingStuds: Quantity<'number'>;
  readonly openingStuds: Quantity<'number'>;
  readonly doorStuds: Quantity<'number'>;
  readonly wallByWall: boolean;
  readonly plates: Quantity<'number'>;
  readonly plateThickness: Quantity<'length'>;
  readonly headerPlies: Quantity<'number'>;
  readonly headerBearing: Quantity<'length'>;
}

type Convention = ElementOf<'convention'>;
const none = constant('none', 0, 'number');
const noLength = constant('none', 0, 'length');
const kept = new WeakMap<Convention, Map<Convention | undefined, FramingCounts>>();

/** What the book chosen does not say is as usual. The same object for the same rows. */
export function framingCounts(model: Model): FramingCounts {
  const usual = model.rows('convention').find(({ given }) => given.usual !== undefined && isOf(given, 'studs'));
  const chosen = model.plan?.given.counts.find(({ value }) => value.of.name === 'studs')?.value.by ?? usual;
  if (chosen === undefined) return NO_COUNTS;
  let byUsual = kept.get(chosen);
  if (byUsual === undefined) kept.set(chosen, (byUsual = new Map()));
  let counts = byUsual.get(usual);
  if (counts === undefined) byUsual.set(usual, (counts = countsBy(chosen.given, usual?.given ?? chosen.given)));
  return counts;
}

export function isOf({ of }: Convention['given'], name: string): boolean {
  return of?.value.some(({ value }) => value.name === name) === true;
}

function countsBy(own: Convention['given'], usual: Convention['given']): FramingCounts {
  const number = (
    word:
      | 'end-studs'
      | 'corner-studs'
      | 'slanted-corner-studs'
      | 'crossing-studs'
      | 'opening-studs'
      | 'door-studs'
      | 'plates'
      | 'header-plies',
  ) => (own[word] ?? usual[word])?.value ?? none;
  const length = (word: 'plate-thickness' | 'header-bearing') => (own[word] ?? usual[word])?.value ?? noLength;
  return {
    endStuds: number('end-studs'),
    cornerStuds: number('corner-studs'),
    slantedCornerStuds: own['slanted-corner-studs']?.value ?? own['corner-studs']?.value ?? number('slanted-corner-studs'),
    crossingStuds: number('crossing-studs'),
    openingStuds: number('opening-studs'),
    doorStuds: own['door-studs']?.value ?? own['opening-studs']?.value ?? number('opening-studs'),
    wallByWall: own['wall-by-wall'] !== undefined,
    plates: number('plates'),
    plateThickness: length('plate-thickness'),
    headerPlies: number('header-plies'),
    headerBearing: length('header-bearing'),
  };
}

const NO_COUNTS: FramingCounts = {
  endStuds: none,
  cornerStuds: none,
  slantedCornerStuds: none,
  crossingStuds: none,
  openingStuds: none,
  doorStuds: none,
  wallByWall: false,
  plates: none,
  plateThickness: noLength,
  headerPlies: none,
  headerBearing: noLength,
};

/** Stringers cut for treads stand no further apart than this. */
export const stringerSpacing = constant(
  'spacing of stringers',
  18 * INCH,
  'length',
  fromMemory('AWC DCA 6, Prescriptive Residential Wood Deck Construction Guide: cut stringers 18 in apart at most'),
);
/** Joists of a landing. */
export const landingSpacing = constant('spacing of the joists of a landing', 16 * INCH, 'length', 'common practice');
/** Two boards of 5 1/2 in. */
export const outsideTread = constant('tread outside', 11 * INCH, 'length', 'common practice: two 5/4x6 boards a tread');
/** Of the length bought: sticks of one more length are sorted out only where they save as much. */
export const anotherLength = constant('saving that another stock length must bring', 0.04, 'number', 'common practice');

/** Rooms further apart than this have no single wall between them. */
export const WIDEST_PARTITION = FOOT;

/** Still air at a surface; heat flow level through walls, upward through roofs and ceilings, downward through floors. */
const ashrae = fromMemory('ASHRAE Handbook of Fundamentals, surface film resistances');
const resistance = (r: number): number => toBase(r, 'R') ?? 0;
export const films = {
  outside: constant('air film outside', resistance(0.17), 'resistance', 'layer values published by continuousinsulation.org'),
  wall: constant('air film inside', resistance(0.68), 'resistance', ashrae),
  up: constant('air film, heat upward', resistance(0.61), 'resistance', ashrae),
  down: constant('air film, heat downward', resistance(0.92), 'resistance', ashrae),
};
