// Counting conventions that no row of the library can say yet. Each is a number with its published source; books differ on
// them, and the working of every quantity shows which was used.
import { FOOT, INCH } from '#kit/dimension';
import { constant } from '#kit/quantity';
import { toBase } from '#kit/units';

const modernCarpentry = 'Modern Carpentry, Goodheart-Willcox, 2022 ed., p. 269';
const fromMemory = (what: string) => `from memory: ${what}`;

/** Studs beyond those at the spacing. Another book adds one at a corner of 2x6 (Dagostino & Peterson, 7th ed., p. 157). */
export const cornerStuds = constant('extra studs a corner', 2, 'number', modernCarpentry);
export const crossingStuds = constant('extra studs where walls meet', 2, 'number', modernCarpentry);
export const openingStuds = constant('extra studs an opening', 2, 'number', modernCarpentry);
/** One sole plate and two top plates. */
export const wallPlates = constant('plates', 3, 'number', modernCarpentry);
/** A stud stands between its plates: three of 1 1/2 in. */
export const plateThickness = constant(
  'thickness of a plate',
  1.5 * INCH,
  'length',
  'PS 20, American Softwood Lumber Standard, Table 3',
);
/** Two lengths of header side by side; a header bears on a jack of 1 1/2 in at each end. */
export const headerPlies = constant(
  'header pieces side by side',
  2,
  'number',
  'Dagostino & Peterson, Estimating in Building Construction, 7th ed., p. 160: doubled',
);
export const headerBearing = constant(
  'bearing at both ends',
  3 * INCH,
  'length',
  'common practice: a jack of 1 1/2 in each side',
);

/** Stringers cut for treads stand no further apart than this. */
export const stringerSpacing = constant(
  'spacing of stringers',
  18 * INCH,
  'length',
  fromMemory('AWC DCA 6, Prescriptive Residential Wood Deck Construction Guide: cut stringers 18 in apart at most'),
);
/** Two boards of 5 1/2 in. */
export const outsideTread = constant('tread outside', 11 * INCH, 'length', 'common practice: two 5/4x6 boards a tread');
/** Of the length bought: sticks of one more length are sorted out only where they save as much. */
export const anotherLength = constant('saving that another stock length must bring', 0.04, 'number', 'common practice');

/** Rooms further apart than this have no single wall between them. */
export const WIDEST_PARTITION = FOOT;

/** An excavation this deep must have its sides sloped, shored or shielded. */
export const PROTECTED_DEPTH = 5 * FOOT;

/** Still air at a surface; heat flow level through walls, upward through roofs and ceilings, downward through floors. */
const ashrae = fromMemory('ASHRAE Handbook of Fundamentals, surface film resistances');
const resistance = (r: number): number => toBase(r, 'R') ?? 0;
export const films = {
  outside: constant('air film outside', resistance(0.17), 'resistance', 'layer values published by continuousinsulation.org'),
  wall: constant('air film inside', resistance(0.68), 'resistance', ashrae),
  up: constant('air film, heat upward', resistance(0.61), 'resistance', ashrae),
  down: constant('air film, heat downward', resistance(0.92), 'resistance', ashrae),
};
