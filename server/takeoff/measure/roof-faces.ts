// The slopes of a roof and the walls under them, as boards are laid on them: each slope as long as it is up the slope, each
// gable by its outline. Checked against the surface that is counted: a roof that comes to another one goes by area.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { area, type Outline, type Point } from '#kit/shapes/outline';
import type { Face, Faces } from '../lines.ts';
import { shapedFace } from './faces.ts';
import type { RoofFigures } from './roof-figures.ts';

type Length = Quantity<'length'>;

const halfRise = form('height of the gable', 'span ÷ 2 × pitch', (span = 0, pitch = 0) => (span / 2) * pitch);

/** None where its slopes are not known one by one. */
export function slopeFaces(figures: RoofFigures): Faces {
  return closing(figures.area, () => slopesOf(figures));
}

/** The triangles under gables, and above the low wall of a shed. */
export function gableFaces(figures: RoofFigures, counted: Quantity<'area'>): Faces {
  return closing(counted, () => gablesOf(figures));
}

/** Made when asked for; none where they do not come to what is counted. */
function closing(counted: Quantity<'area'>, make: () => readonly Face[]): Faces {
  return () => {
    const faces = make();
    const sum = faces.reduce((all, { length, height, shapes }) => all + areaOf(length, height, shapes), 0);
    return Math.abs(sum - counted.value) <= SLIGHT * counted.value ? faces : [];
  };
}
const SLIGHT = 0.02;

function areaOf(length: Length, height: Length, shapes: readonly Outline[] | undefined): number {
  return shapes === undefined ? length.value * height.value : shapes.reduce((sum, shape) => sum + Math.abs(area(shape)), 0);
}

function slopesOf(figures: RoofFigures): readonly Face[] {
  const { form: shape, onPlan, ridge, rafter, gambrel, eaves, eaveOn, pitch } = figures;
  if (onPlan !== undefined) return planSlopes(figures);
  const [one = 'slope 1', other = 'slope 2'] = Object.keys(eaveOn).map((side) => `${side} slope`);
  const rectangle = (label: string, length: Length, height: Length): Face => ({ label, length, height, openings: [] });
  if (gambrel !== undefined && ridge !== undefined)
    return [one, other].flatMap((label) => [
      rectangle(`${label} below the break`, ridge, gambrel.low),
      rectangle(`${label} above the break`, ridge, gambrel.high),
    ]);
  if (shape === 'gable' && ridge !== undefined) return [one, other].map((label) => rectangle(label, ridge, rafter));
  if (shape === 'shed') return [rectangle('slope', eaves, rafter)];
  const [length, width] = figures.plan.inputs as readonly (Length | undefined)[];
  return shape === 'flat' && pitch.value === 0 && length !== undefined && width !== undefined
    ? [rectangle('roof', length, width)]
    : [];
}

/** Turned so that the eave lies level, and as long up the slope as it is. */
function planSlopes({ onPlan, pitch }: RoofFigures): readonly Face[] {
  const longer = Math.sqrt(1 + pitch.value * pitch.value);
  return (onPlan?.faces ?? []).flatMap(({ slope: { a, b }, pieces }): readonly Face[] => {
    const steep = Math.sqrt(a * a + b * b);
    if (pieces.length === 0 || !(steep > 0)) return [];
    const [up, across] = [
      { x: a / steep, y: b / steep },
      { x: b / steep, y: -a / steep },
    ];
    const turned = ({ x, y }: Point): Point => ({
      x: x * across.x + y * across.y,
      y: (x * up.x + y * up.y) * longer,
    });
    const looks = Math.abs(a) > Math.abs(b) ? (a > 0 ? 'west' : 'east') : b > 0 ? 'south' : 'north';
    return [
      shapedFace(
        `${looks} slope`,
        pieces.map((piece) => piece.map(turned)),
      ),
    ];
  });
}

function gablesOf({ form: shape, span, rise, along, gables, pitch, gambrel, wallAbove }: RoofFigures): readonly Face[] {
  if (wallAbove !== undefined) return [];
  if (shape === 'shed')
    return [
      ...['end 1', 'end 2'].map((label) => triangle(label, span, rise, span.value)),
      { label: 'high side', length: along, height: rise, openings: [] },
    ];
  if (gambrel !== undefined) return gables.map((width, nth) => brokenGable(`gable ${nth + 1}`, width, gambrel, pitch.value));
  return gables.map((width, nth) =>
    triangle(`gable ${nth + 1}`, width, measure('length', halfRise, width, pitch), width.value / 2),
  );
}

function triangle(label: string, length: Length, height: Length, top: number): Face {
  const outline = [
    { x: 0, y: 0 },
    { x: length.value, y: 0 },
    { x: top, y: height.value },
  ];
  return { label, length, height, openings: [], shapes: [outline] };
}

function brokenGable(label: string, width: Length, gambrel: NonNullable<RoofFigures['gambrel']>, pitch: number): Face {
  const { breakAt, upper } = gambrel;
  const [at, half] = [breakAt.value, width.value / 2];
  const high = at * pitch;
  const top = high + (half - at) * upper.value;
  const outline = [
    { x: 0, y: 0 },
    { x: width.value, y: 0 },
    { x: width.value - at, y: high },
    { x: half, y: top },
    { x: at, y: high },
  ];
  return { label, length: width, height: constant('height of the gable', top, 'length'), openings: [], shapes: [outline] };
}
