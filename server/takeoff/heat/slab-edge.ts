// Heat along the edge of a slab on the ground: so much for each length of its perimeter and degree, by the library's table.
import { form, measure, type Quantity } from '#kit/quantity';
import type { Foundation } from '#model/model';
import type { SlabEdge } from '../conventions.ts';

const along = form('edge of the slab', 'F × perimeter', (factor = 0, perimeter = 0) => factor * perimeter);

/**
 * The next lesser R and depth of the table count, so that nothing is read into it. Undefined where no row of it holds.
 */
export function edgeLoss(
  slab: Foundation,
  perimeter: Quantity<'length'>,
  edges: readonly SlabEdge[],
): Quantity<'transfer'> | undefined {
  const edge = slab.given.edge?.value;
  const deep = edge?.deep?.value ?? 0;
  // What was written as R-10 may have lost a last digit on its way to base units.
  const insulates = (edge?.insulates.value ?? 0) * (1 + 1e-9);
  const holding = edges.filter(
    (row) => row.insulates === 'bare' || (row.insulates.value <= insulates && (row.deep?.value ?? 0) <= deep),
  );
  const [least, ...others] = holding;
  if (least === undefined) return undefined;
  const row = others.reduce((best, each) => (each.factor.value < best.factor.value ? each : best), least);
  return measure('transfer', along, row.factor, perimeter);
}
