// The floor of a level or room as given: two sizes, its sides walked, its corners, or rectangles put together and cut away.
// Area and perimeter carry their working. Bays are put to it in bays.ts.
import { type Form, form, measure, type Quantity } from '#kit/quantity';
import { outlineOfRectangles } from '#kit/shapes/joined-rectangles';
import {
  area,
  bounds,
  corners,
  crossesItself,
  isSlanted,
  type Outline,
  outlineFromCorners,
  perimeter,
  turnsOf,
} from '#kit/shapes/outline';
import { rectangleAt } from '#kit/shapes/region';
import { type Heading, outlineFromWalk, type Step } from '#kit/shapes/walk';
import type { At } from './model.ts';

export interface FloorShape {
  /** From its south-west bounding corner at 0, 0 (bays may stand out beyond it); counter-clockwise. */
  readonly outline: Outline;
  readonly area: Quantity<'area'>;
  readonly perimeter: Quantity<'length'>;
  /** Corners that turn outwards and inwards. */
  readonly outside: number;
  readonly inside: number;
  /** All corners are square. */
  readonly square: boolean;
  /** The tangents of half the angle that each corner turns by, added: corners outward less those inward where all are square. */
  readonly turns: number;
  /** East–west and north–south extent. */
  readonly width: Quantity<'length'>;
  readonly depth: Quantity<'length'>;
  /** The lengths that the outline is made from, so that whatever is computed from it carries its working back to them. */
  readonly made: Made;
}

/** How an outline is made from lengths, the same for all outlines of a key. */
export interface Made {
  readonly key: string;
  /** And the angles of bays. */
  readonly lengths: readonly Quantity[];
  readonly outline: (lengths: readonly number[]) => Outline | undefined;
}

type Sizes = { readonly left: Quantity<'length'>; readonly right: Quantity<'length'> };
type Walk = readonly At<{ readonly side: Heading; readonly length: Quantity<'length'> }>[];
interface Corners {
  readonly corners: readonly At<Sizes>[];
}
interface Rectangles {
  readonly first: Sizes;
  readonly more: readonly At<{ readonly how: 'plus' | 'less'; readonly size: Sizes; readonly at: Placed }>[];
}
interface Placed {
  readonly east: Quantity<'length'>;
  readonly north: Quantity<'length'>;
}
export type OutlineGiven = Walk | Corners | Rectangles;

const rectangleArea = form('area', 'width × depth', (width = 0, depth = 0) => width * depth);
const rectanglePerimeter = form('perimeter', '2 × (width + depth)', (width = 0, depth = 0) => 2 * (width + depth));

/** Undefined where what is given makes no floor: sides that do not close or cross, pieces apart. */
export function floorShape(given: Sizes | OutlineGiven): FloorShape | undefined {
  if ('left' in given) return rectangle(given.left, given.right);
  if ('corners' in given) return byCorners(given);
  return 'first' in given ? joined(given) : walked(given);
}

function rectangle(width: Quantity<'length'>, depth: Quantity<'length'>): FloorShape | undefined {
  if (!(width.value > 0 && depth.value > 0)) return undefined;
  return {
    outline: rectangleOutline([width.value, depth.value]),
    area: measure('area', rectangleArea, width, depth),
    perimeter: measure('length', rectanglePerimeter, width, depth),
    outside: 4,
    inside: 0,
    square: true,
    turns: 4,
    width,
    depth,
    made: { key: 'rectangle', lengths: [width, depth], outline: rectangleOutline },
  };
}

export function rectangleOutline([width = 0, depth = 0]: readonly number[]): Outline {
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

function byCorners({ corners: list }: Corners): FloorShape | undefined {
  const points = list.map(({ value }) => value);
  const made: Made = {
    key: `corners ${points.length}`,
    lengths: points.flatMap(({ left, right }) => [left, right]),
    outline: (values) => {
      const outline = outlineFromCorners(
        points.map((_, index) => ({ x: values[2 * index] ?? 0, y: values[2 * index + 1] ?? 0 })),
      );
      return outline === undefined || crossesItself(outline) ? undefined : fromCorner(outline);
    },
  };
  return outlined(made, 'within the corners given');
}

function joined({ first, more }: Rectangles): FloorShape | undefined {
  const hows = more.map(({ value }) => value.how);
  const made: Made = {
    key: `rectangles ${hows.join(' ')}`,
    lengths: [first.left, first.right, ...more.flatMap(({ value: { size, at } }) => [size.left, size.right, at.east, at.north])],
    outline: ([width = 0, depth = 0, ...rest]) => {
      const parts = hows.map((how, index) => {
        const [w = 0, d = 0, x = 0, y = 0] = rest.slice(4 * index, 4 * index + 4);
        return { how, ...rectangleAt({ x, y }, w, d) };
      });
      const outline = outlineOfRectangles([{ how: 'plus', ...rectangleAt({ x: 0, y: 0 }, width, depth) }, ...parts]);
      return outline === undefined ? undefined : fromCorner(outline);
    },
  };
  return outlined(made, `of the rectangles: the first${hows.map((how) => (how === 'plus' ? ' + one' : ' − one')).join('')}`);
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
    square: !isSlanted(outline),
    turns: turnsOf(outline),
    width: measure('length', forms.width, ...lengths),
    depth: measure('length', forms.depth, ...lengths),
    made,
  };
}

function walkedOutline(directions: readonly Heading[], lengths: readonly number[]): Outline | undefined {
  const steps: Step[] = directions.map((direction, index) => ({ direction, length: lengths[index] ?? 0 }));
  const outline = outlineFromWalk(steps);
  return outline === undefined || crossesItself(outline) ? undefined : fromCorner(outline);
}

/** Four square corners. */
export function isRectangular({ square, inside }: FloorShape): boolean {
  return square && inside === 0;
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
        of((outline) => bounds(outline).east - bounds(outline).west),
      ),
      depth: form(
        'depth',
        'from the south side to the north side',
        of((outline) => bounds(outline).north - bounds(outline).south),
      ),
    };
    known.set(key, forms);
  }
  return forms;
}
