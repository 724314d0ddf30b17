// Facts of a level: floor area, perimeter, height, the lengths of its sides.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Outline } from '#kit/shapes/outline';
import type { Facts } from '../facts.ts';
import { type FloorShape, floorShape } from '../floor-shape.ts';
import type { Level } from '../model.ts';

const shapes = new WeakMap<Level, { readonly shape: FloorShape | undefined }>();

export function levelShape(level: Level): FloorShape | undefined {
  let kept = shapes.get(level);
  if (kept === undefined) {
    const footprint = level.given.footprint?.value;
    shapes.set(level, (kept = { shape: footprint === undefined ? undefined : floorShape(footprint) }));
  }
  return kept.shape;
}

export function levelFacts(level: Level): Facts {
  const shape = levelShape(level);
  const height = level.given.height?.value;
  if (shape === undefined) return { height };
  const along = (facing: 'north' | 'south' | 'east' | 'west'): Quantity<'length'> =>
    shape.outside === 4 && shape.inside === 0
      ? facing === 'north' || facing === 'south'
        ? shape.width
        : shape.depth
      : measure('length', sideForms[facing], constant(`sides that face ${facing}`, sideLength(shape.outline, facing), 'length'));
  return {
    'floor-area': shape.area,
    perimeter: shape.perimeter,
    width: shape.width,
    depth: shape.depth,
    height,
    corners: constant('corners', shape.outside + shape.inside, 'number'),
    'north-length': along('north'),
    'east-length': along('east'),
    'south-length': along('south'),
    'west-length': along('west'),
  };
}

const sideForm = (facing: string) => form(`${facing} side`, `the sides that face ${facing}, added`, (length = 0) => length);
const sideForms = { north: sideForm('north'), east: sideForm('east'), south: sideForm('south'), west: sideForm('west') };

/** Length of all sides of an outline that face a way. */
function sideLength(outline: Outline, facing: 'north' | 'south' | 'east' | 'west'): number {
  // Anticlockwise outlines have their inside on the left; the sign of the area tells which way this one goes.
  const turn = signedArea(outline) >= 0 ? 1 : -1;
  let length = 0;
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const east = (next.x - point.x) * turn;
    const north = (next.y - point.y) * turn;
    if (facing === 'south' && east > 0) length += east;
    if (facing === 'north' && east < 0) length -= east;
    if (facing === 'east' && north > 0) length += north;
    if (facing === 'west' && north < 0) length -= north;
  });
  return length;
}

function signedArea(outline: Outline): number {
  return outline.reduce((sum, point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    return sum + point.x * next.y - next.x * point.y;
  }, 0);
}
