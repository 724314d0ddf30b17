// Bolts that hold the sill down: each piece of plate has its own, one near either end and the rest between at their spacing.
import { INCH } from '#kit/dimension';
import { constant, form, measure, type Quantity, roundUp } from '#kit/quantity';
import type { FloorShape } from '#model/floor-shape';
import type { Foundation } from '#model/model';
import { wallPieces } from './runs.ts';

type Length = Quantity<'length'>;

const inPiece = form(
  'bolts in a piece of plate',
  '(length − 2 × first bolt from the end) ÷ spacing, rounded up, and one; never less than two',
  (length = 0, end = 0, spacing = 1) => (spacing > 0 ? Math.max(2, roundUp(Math.max(0, length - 2 * end) / spacing) + 1) : 2),
  'American Wood Council, FAQ on R403.1.6: each piece of plate by itself',
);
const inAll = form('bolts', 'of each piece of plate, added', (...counts) => counts.reduce((sum, count) => sum + count, 0));

/** Where the plan does not say. From memory: International Residential Code, R403.1.6: within 12 in of each end of a piece. */
const fromEnd = constant('first bolt from the end', 12 * INCH, 'length');

/** The pieces that the plan tells; else each side out of the `longest` plates sold, in base units, and what is left. */
export function boltCount(
  foundation: Foundation,
  shape: FloorShape | undefined,
  length: Length,
  longest: number,
): Quantity<'number'> {
  const { bolts, plates } = foundation.given;
  const { at } = bolts!.value;
  const end = bolts!.deeper['from ends']?.value ?? fromEnd;
  const sides = shape === undefined ? [length] : wallPieces(shape, undefined).map((side) => side.length);
  const pieces = plates?.value.map(({ value }) => value) ?? sides.flatMap((side) => piecesOf(side, longest));
  return measure('number', inAll, ...pieces.map((piece) => measure('number', inPiece, piece, end, at)));
}

function piecesOf(side: Length, longest: number): readonly Length[] {
  const whole =
    longest > 0 && Number.isFinite(side.value) ? Math.min(MOST, Math.ceil((side.value / longest) * (1 - EXACT)) - 1) : 0;
  if (whole < 1) return [side];
  return [
    ...new Array<Length>(whole).fill(constant('longest plate sold', longest, 'length')),
    constant('the rest of the side', side.value - whole * longest, 'length'),
  ];
}

const EXACT = 1e-9;

/** More pieces no side of a house has. */
const MOST = 1000;
