// The floor of a level or room as given: two sizes, or its sides walked. Area and perimeter carry their working.
import { type Form, form, measure, type Quantity } from '#kit/quantity';
import { area, corners, type Direction, type Outline, outlineFromWalk, perimeter, type Step } from '#kit/shapes/outline';
import type { At } from './model.ts';

export interface FloorShape {
  /** From its south-west bounding corner at 0, 0; counter-clockwise. */
  readonly outline: Outline;
  readonly area: Quantity<'area'>;
  readonly perimeter: Quantity<'length'>;
  /** Corners that turn outwards and inwards. */
  readonly outside: number;
  readonly inside: number;
  /** East–west and north–south extent. */
  readonly width: Quantity<'length'>;
  readonly depth: Quantity<'length'>;
  /** The lengths that the outline is made from, so that whatever is computed from it carries its working back to them. */
  readonly made: Made;
}

/** How an outline is made from lengths, the same for all outlines of a key. */
export interface Made {
  readonly key: string;
  readonly lengths: readonly Quantity<'length'>[];
  readonly outline: (lengths: readonly number[]) => Outline | undefined;
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
  return {
    outline: rectangleOutline([width.value, depth.value]),
    area: measure('area', rectangleArea, width, depth),
    perimeter: measure('length', rectanglePerimeter, width, depth),
    outside: 4,
    inside: 0,
    width,
    depth,
    made: { key: 'rectangle', lengths: [width, depth], outline: rectangleOutline },
  };
}

function rectangleOutline([width = 0, depth = 0]: readonly number[]): Outline {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: depth },
    { x: 0, y: depth },
  ];
}

function walked(sides: Walk): FloorShape | undefined {
  const directions = sides.map((side) => side.value.side);
  const lengths = sides.map((side) => side.value.length);
  const key = directions.join(' ');
  return outlined({ key, lengths, outline: (values) => walkedOutline(directions, values) }, `within the sides walked ${key}`);
}

/** A floor of an outline made from lengths; `within` says of what its area is. */
export function outlined(made: Made, within: string): FloorShape | undefined {
  const { lengths } = made;
  const outline = made.outline(lengths.map(({ value }) => value));
  if (outline === undefined) return undefined;
  const { outside, inside } = corners(outline);
  const forms = outlineForms(made, within);
  return {
    outline,
    area: measure('area', forms.area, ...lengths),
    perimeter: measure('length', forms.perimeter, ...lengths),
    outside,
    inside,
    width: measure('length', forms.width, ...lengths),
    depth: measure('length', forms.depth, ...lengths),
    made,
  };
}

function walkedOutline(directions: readonly Direction[], lengths: readonly number[]): Outline | undefined {
  const steps: Step[] = directions.map((direction, index) => ({ direction, length: lengths[index] ?? 0 }));
  const outline = outlineFromWalk(steps);
  return outline === undefined ? undefined : fromCorner(outline);
}

/** Moved so that its south-west bounding corner is at 0, 0. */
export function fromCorner(outline: Outline): Outline {
  const west = Math.min(...outline.map((point) => point.x));
  const south = Math.min(...outline.map((point) => point.y));
  return outline.map((point) => ({ x: point.x - west, y: point.y - south }));
}

interface OutlineForms {
  readonly area: Form;
  readonly perimeter: Form;
  readonly width: Form;
  readonly depth: Form;
}
const known = new Map<string, OutlineForms>();

/** One set of forms a way of making an outline, since that is part of the formula. */
function outlineForms({ key, outline: outlineOf }: Made, within: string): OutlineForms {
  let forms = known.get(key);
  if (forms === undefined) {
    const of =
      (measureOf: (outline: Outline) => number) =>
      (...lengths: readonly number[]) => {
        const outline = outlineOf(lengths);
        return outline === undefined ? 0 : measureOf(outline);
      };
    forms = {
      area: form('area', `area ${within}`, of(area)),
      perimeter: form('perimeter', 'all sides, added', of(perimeter)),
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
    known.set(key, forms);
  }
  return forms;
}
