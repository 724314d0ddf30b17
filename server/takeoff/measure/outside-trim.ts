// Trim boards on a sided wall: four sides of a window, legs and head of a door, two boards up each outside corner (common
// practice). A sill of its own and boards in inside corners are not counted.
import { form, measure, type Quantity, total } from '#kit/quantity';
import { turnAt } from '#kit/shapes/outline';
import type { FloorShape } from '#model/floor-shape';
import type { Assembly } from '#model/model';
import type { Portion } from '../lines.ts';
import { isFace, layersOf } from './layers.ts';
import type { Held } from './openings.ts';
import { counted, laidOf, portion } from './portion.ts';
import type { Stretch } from './wall-layers.ts';

const roundWindow = form(
  'round windows',
  'count × 2 × (width + height)',
  (count = 0, width = 0, height = 0) => count * 2 * (width + height),
);
const overDoor = form(
  'legs and heads of doors',
  'count × (width + 2 × height)',
  (count = 0, width = 0, height = 0) => count * (width + 2 * height),
);
const upCorners = form('corner boards', 'outside corners × 2 × height', (corners = 0, height = 0) => corners * 2 * height);

/** What is laid so may be siding; masonry has no trim boards. */
const SIDING: ReadonlySet<string> = new Set(['courses', 'sheets', 'panels']);

/** Counts if somebody sides the walls: whether the outermost layer is siding, the works have the last word. */
export function outsideTrim(assembly: Assembly, shape: FloorShape, stretch: Stretch, held: readonly Held[]): readonly Portion[] {
  const outermost = layersOf(assembly)
    .after.filter(({ value }) => !isFace(value) && laidOf(value) !== 'coats')
    .at(-1);
  if (outermost === undefined || !SIDING.has(laidOf(outermost.value) ?? '')) return [];
  const lengths: Quantity<'length'>[] = held.flatMap(({ type, count, width, height }) =>
    width === undefined || height === undefined
      ? []
      : [measure('length', type?.kind === 'window' ? roundWindow : overDoor, count, width, height)],
  );
  const corners = shape.outline.filter((_, index) => turnAt(shape.outline, index) > 0).length;
  lengths.push(measure('length', upCorners, counted('outside corners', corners), stretch.outside ?? stretch.height));
  return [portion('outside-trim-length', stretch.where, total('trim', 'length', lengths), { onlyIfDone: true })];
}
