// The rim of a floor: outside, what the walls carry runs on down over the floor's edge to the foundation, or to the wall
// below it; inside, the rim is insulated where the floor itself is not. Everything inside stays as high as the wall.
import type { Finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Assembly, Level } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import { actualSize, thicknessOf } from '../goods.ts';
import type { Portion, Where } from '../lines.ts';
import { sideFaces } from './faces.ts';
import { framingGoods, isFace, isFrame, isPanel, type Layer, layersOf } from './layers.ts';
import { netOf } from './openings.ts';
import { type Measured, portion } from './portion.ts';
import { outerLayers, paintable } from './wall-layers.ts';

type Length = Quantity<'length'>;

const band = form(
  'height of the rim',
  'what lies on the joists, joists and sill, added',
  (...parts) => parts.reduce((sum, part) => sum + part, 0),
  'common practice: sheathing and siding cover the rim and the sill, down to the concrete',
);
const deck = form('what lies on the joists', 'its thickness', (thickness = 0) => thickness);
const joists = form('joists or panels', 'their depth', (depth = 0) => depth);
const plate = form('sill', 'its thickness', (thickness = 0) => thickness);
const around = form('area of the rim', 'length round × height of the rim', (length = 0, height = 0) => length * height);
const along = form('area of the rim', 'length round × depth of the joists', (length = 0, depth = 0) => length * depth);

/**
 * How far the outside of the walls runs on below the top of a level's floor: as the plan says, or its deck and its joists
 * or panels, and the sill where the floor stands on a wall or slab (`sill`). Undefined where there is no such floor.
 */
export function rimHeight(level: Level, sill: boolean, counts: FramingCounts): Length | undefined {
  const { rim, floor, walls } = level.given;
  if (rim !== undefined) return rim.value === 'none' || rim.value.value === 0 ? undefined : rim.value;
  if (floor === undefined || walls === undefined) return undefined;
  const parts = edgeOf(floor.value);
  if (parts === undefined) return undefined;
  return measure('length', band, ...parts, ...(sill ? [measure('length', plate, sillOf(walls.value, counts))] : []));
}

/** The thickness of each layer from the top of the floor to the underside of its joists or panels. */
function edgeOf(floor: Assembly): readonly Length[] | undefined {
  const { main, before } = layersOf(floor);
  const depth = main === undefined ? undefined : thicknessOf(main.value);
  if (depth === undefined) return undefined;
  const above = before.flatMap(({ value }) => (isFace(value) ? [] : (thicknessOf(value) ?? [])));
  return [...above.map((thickness) => measure('length', deck, thickness)), measure('length', joists, depth)];
}

/** A sill is sawn as the studs are, and as thick. */
function sillOf(walls: Assembly, { plateThickness }: FramingCounts): Length {
  const framing = framingGoods(walls);
  return (framing === undefined ? undefined : actualSize(framing)?.left) ?? plateThickness;
}

export function measureRim(level: Level, sill: boolean, counts: FramingCounts): Measured {
  const shape = levelShape(level);
  const walls = level.given.walls?.value;
  const height = rimHeight(level, sill, counts);
  if (shape === undefined || walls === undefined || height === undefined) return { portions: [], findings: [] };
  const where = { element: level.slot, part: 'rim', level: level.slot };
  const findings: Finding[] = [];
  const area = netOf(measure('area', around, shape.perimeter, height), []);
  const outside = { where, area, length: shape.perimeter, height, faces: () => sideFaces(shape, height, []) };
  const portions = [
    // Battens run down from the wall in one length: they are counted there.
    ...outerLayers(walls, outside, findings).filter(({ measure }) => measure !== 'wall-stud-count'),
    ...paintable(walls, outside),
    ...insulation(level, walls, shape.perimeter, where),
  ];
  return { portions, findings };
}

/**
 * What the plan names, else what fills the walls; nothing where the floor is filled, because that fills the joists up to the
 * rim and is counted out to it.
 */
function insulation(level: Level, walls: Assembly, perimeter: Length, where: Where): readonly Portion[] {
  const { floor, rim } = level.given;
  const main = floor === undefined ? undefined : layersOf(floor.value).main;
  const named = rim?.deeper['filled with']?.value;
  const usual = main === undefined || isPanel(main) || isFilled(floor!.value) ? undefined : fillingOf(layersOf(walls).main);
  const goods = named ?? usual;
  const depth = main === undefined ? (rim?.value === 'none' ? undefined : rim?.value) : thicknessOf(main.value);
  if (goods === undefined || depth === undefined) return [];
  return [portion('wall-insulation-area', where, measure('area', along, perimeter, depth), { goods })];
}

function isFilled(floor: Assembly): boolean {
  return floor.given.layer.some((layer) => isFrame(layer) && layer.deeper['filled with'] !== undefined);
}

function fillingOf(layer: Layer | undefined) {
  return layer === undefined || isPanel(layer) ? undefined : layer.deeper['filled with']?.value;
}
