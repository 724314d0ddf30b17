// Facts of a level: floor area, perimeter, height, the lengths of its sides.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { lengthOfSide, type Outline } from '#kit/shapes/outline';
import { type WithBays, withBays } from '../bays.ts';
import type { Facts } from '../facts.ts';
import { type FloorShape, floorShape, isRectangular } from '../floor-shape.ts';
import type { Level } from '../model.ts';

interface Shapes {
  readonly body: FloorShape | undefined;
  readonly whole: WithBays | undefined;
  readonly standing: FloorShape | undefined;
}
const shapes = new WeakMap<Level, Shapes>();

function shapesOf(level: Level): Shapes {
  let kept = shapes.get(level);
  if (kept === undefined) {
    const { footprint, bay } = level.given;
    const body = footprint === undefined ? undefined : floorShape(footprint.value);
    const whole = body === undefined ? undefined : withBays(body, bay);
    const onGround = bay.filter(({ deeper }) => deeper.hung === undefined);
    const standing = body === undefined || onGround.length === bay.length ? whole?.shape : withBays(body, onGround).shape;
    shapes.set(level, (kept = { body, whole, standing }));
  }
  return kept;
}

/** The floor of a level, with its bays. */
export function levelShape(level: Level): FloorShape | undefined {
  return shapesOf(level).whole?.shape;
}

/** Without them: what its roof covers. */
export function levelBody(level: Level): FloorShape | undefined {
  return shapesOf(level).body;
}

/** With those that stand on the ground and do not hang on its joists. */
export function levelOnGround(level: Level): FloorShape | undefined {
  return shapesOf(level).standing;
}

/** The numbers of its bays that fit on no wall. */
export function bayMisfits(level: Level): readonly number[] {
  return shapesOf(level).whole?.misfits ?? [];
}

export function levelFacts(level: Level): Facts {
  const shape = levelShape(level);
  const height = level.given.height?.value;
  if (shape === undefined) return { height };
  const along = (facing: 'north' | 'south' | 'east' | 'west'): Quantity<'length'> =>
    isRectangular(shape)
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
    'slanted-length': shape.square
      ? noSlanted
      : measure('length', slantedForm, constant('slanted sides', slanted(shape.outline), 'length')),
  };
}

const sideForm = (facing: string) => form(`${facing} side`, `the sides that face ${facing}, added`, (length = 0) => length);
const sideForms = { north: sideForm('north'), east: sideForm('east'), south: sideForm('south'), west: sideForm('west') };

const slantedForm = form('slanted sides', 'the sides at an angle, added', (length = 0) => length);
const noSlanted = constant('slanted sides', 0, 'length');

function slanted(outline: Outline): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    return from.x === to.x || from.y === to.y ? sum : sum + lengthOfSide(from, to);
  }, 0);
}

/** Length of all sides of an outline that face a way. */
function sideLength(outline: Outline, facing: 'north' | 'south' | 'east' | 'west'): number {
  // Anticlockwise outlines have their inside on the left; the sign of the area tells which way this one goes.
  const turn = signedArea(outline) >= 0 ? 1 : -1;
  let length = 0;
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const east = (next.x - point.x) * turn;
    const north = (next.y - point.y) * turn;
    if (east !== 0 && north !== 0) return;
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
