// The floor of a level or room as given: two sizes, or its sides walked. Area and perimeter carry their working.
import { type Form, form, measure, type Quantity } from '#kit/quantity';
import { area, corners, type Direction, type Outline, outlineFromWalk, perimeter, type Step } from '#kit/shapes/outline';
import type { At } from './model.ts';

export interface FloorShape {
  /** From its south-west bounding corner at 0, 0; anticlockwise or clockwise as walked. */
  readonly outline: Outline;
  readonly area: Quantity<'area'>;
  readonly perimeter: Quantity<'length'>;
  /** Corners that turn outwards and inwards. */
  readonly outside: number;
  readonly inside: number;
  /** East–west and north–south extent. */
  readonly width: Quantity<'length'>;
  readonly depth: Quantity<'length'>;
}

type Sizes = { readonly left: Quantity<'length'>; readonly right: Quantity<'length'> };
type Walk = readonly At<{ readonly side: Direction; readonly length: Quantity<'length'> }>[];

const rectangleArea = form('area', 'width × depth', (width = 0, depth = 0) => width * depth);
const rectanglePerimeter = form('perimeter', '2 × (width + depth)', (width = 0, depth = 0) => 2 * (width + depth));

/** Undefined where the sides walked do not close or make no floor. */
export function floorShape(given: Sizes | Walk): FloorShape | undefined {
  return 'left' in given ? rectangle(given.left, given.right) : walked(given);
}

function rectangle(width: Quantity<'length'>, depth: Quantity<'length'>): FloorShape | undefined {
  if (!(width.value > 0 && depth.value > 0)) return undefined;
  const outline = [
    { x: 0, y: 0 },
    { x: width.value, y: 0 },
    { x: width.value, y: depth.value },
    { x: 0, y: depth.value },
  ];
  return {
    outline,
    area: measure('area', rectangleArea, width, depth),
    perimeter: measure('length', rectanglePerimeter, width, depth),
    outside: 4,
    inside: 0,
    width,
    depth,
  };
}

function walked(sides: Walk): FloorShape | undefined {
  const directions = sides.map((side) => side.value.side);
  const lengths = sides.map((side) => side.value.length);
  const outline = outlineOf(
    directions,
    lengths.map((length) => length.value),
  );
  if (outline === undefined) return undefined;
  const { outside, inside } = corners(outline);
  const forms = walkForms(directions);
  return {
    outline,
    area: measure('area', forms.area, ...lengths),
    perimeter: measure('length', forms.perimeter, ...lengths),
    outside,
    inside,
    width: measure('length', forms.width, ...lengths),
    depth: measure('length', forms.depth, ...lengths),
  };
}

function outlineOf(directions: readonly Direction[], lengths: readonly number[]): Outline | undefined {
  const steps: Step[] = directions.map((direction, index) => ({ direction, length: lengths[index] ?? 0 }));
  const outline = outlineFromWalk(steps);
  if (outline === undefined) return undefined;
  const west = Math.min(...outline.map((point) => point.x));
  const south = Math.min(...outline.map((point) => point.y));
  return outline.map((point) => ({ x: point.x - west, y: point.y - south }));
}

interface WalkForms {
  readonly area: Form;
  readonly perimeter: Form;
  readonly width: Form;
  readonly depth: Form;
}
const walks = new Map<string, WalkForms>();

/** One set of forms a way of walking round, since the directions are part of the formula. */
function walkForms(directions: readonly Direction[]): WalkForms {
  const key = directions.join(' ');
  let forms = walks.get(key);
  if (forms === undefined) {
    const of =
      (measureOf: (outline: Outline) => number) =>
      (...lengths: readonly number[]) => {
        const outline = outlineOf(directions, lengths);
        return outline === undefined ? 0 : measureOf(outline);
      };
    forms = {
      area: form('area', `area within the sides walked ${key}`, of(area)),
      perimeter: form('perimeter', 'the sides walked, added', of(perimeter)),
      width: form(
        'width',
        'from the west side to the east side',
        of((outline) => Math.max(...outline.map((point) => point.x))),
      ),
      depth: form(
        'depth',
        'from the south side to the north side',
        of((outline) => Math.max(...outline.map((point) => point.y))),
      ),
    };
    walks.set(key, forms);
  }
  return forms;
}
