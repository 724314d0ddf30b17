// Heat along the edge of a slab on the ground: so much for each foot of its perimeter and degree, by a published table.
import { INCH, METRE } from '#kit/dimension';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { toBase } from '#kit/units';
import type { Foundation } from '#model/model';

const source = 'Washington WAC 51-11C-61061, Table A106.1, F-factors of slabs on grade that are not heated';
/** Btu/h for each foot and degree, by R upright at the edge; to a depth of 2 feet, and of 4. */
const BARE = 0.73;
const UPRIGHT: readonly { readonly insulates: number; readonly shallow: number; readonly deep: number }[] = [
  { insulates: 5, shallow: 0.58, deep: 0.54 },
  { insulates: 10, shallow: 0.54, deep: 0.48 },
  { insulates: 15, shallow: 0.52, deep: 0.45 },
];
const LEAST_DEPTH = 24 * INCH;
const GREAT_DEPTH = 48 * INCH;

const along = form('edge of the slab', 'F × perimeter', (factor = 0, perimeter = 0) => (factor * perimeter) / METRE, source);

/** The next lesser R and depth of the table count, so that nothing is read into it. */
export function edgeLoss(slab: Foundation, perimeter: Quantity<'length'>): Quantity<'transfer'> {
  const edge = slab.given.edge?.value;
  const deep = edge?.deep?.value ?? 0;
  const insulates = edge === undefined || deep < LEAST_DEPTH ? 0 : edge.insulates.value;
  // What was written as R-10 may have lost a last digit on its way to base units.
  const row = UPRIGHT.findLast((each) => insulates >= toBase(each.insulates, 'R')! * (1 - 1e-9));
  const factor = row === undefined ? BARE : deep >= GREAT_DEPTH ? row.deep : row.shallow;
  const label = row === undefined ? 'F of a bare edge' : `F of an edge with R-${row.insulates}`;
  return measure('transfer', along, constant(label, toBase(factor, 'Btu/hF')! / FOOT_IN_METRES, 'transfer/length'), perimeter);
}

/** So that W/K for a foot become W/K for a metre. */
const FOOT_IN_METRES = 0.3048;
