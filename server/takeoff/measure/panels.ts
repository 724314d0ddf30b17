// Walls of structural insulated panels: how many stand round a level, the joints between them, splines and sealant.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { FloorShape } from '#model/floor-shape';
import type { ElementOf } from '#model/model';
import { thicknessOf } from '../goods.ts';
import type { Portion, Where } from '../lines.ts';
import type { Layer } from './layers.ts';
import type { Net } from './openings.ts';
import { panelWalls, piecesIn, type WallOpening } from './panel-layout.ts';
import { counted, portion } from './portion.ts';

const panelsOf = form('panels', 'wall ÷ width, rounded up', (length = 0, width = 1) => piecesIn(length, width));
const allPanels = form('panels', 'those of each wall, added', (...counts) => counts.reduce((sum, count) => sum + count, 0));
const jointCount = form('joints', 'panels − one a wall + one a corner', (panels = 0, walls = 0, corners = 0) =>
  Math.max(0, panels - walls + corners),
);
const jointLength = form('joints', 'joints × height − openings that lie across one', (joints = 0, height = 0, ...cut) =>
  Math.max(
    0,
    cut.reduce((rest, opening) => rest - opening, joints * height),
  ),
);
const sealantLength = form(
  'sealant',
  'beads at a plate × 2 plates × length + beads at a joint × joints',
  (atPlates = 0, plates = 0, length = 0, atJoints = 0, joints = 0) => atPlates * plates * length + atJoints * joints,
);
const twoPlates = constant('plates', 2, 'number');

export function panelPortions(
  main: Layer,
  shape: FloorShape,
  height: Quantity<'length'>,
  area: Net,
  panels: ElementOf<'panels'> | undefined,
  openings: readonly WallOpening[],
  where: Where,
): readonly Portion[] {
  const portions = [
    portion('wall-panel-area', where, area.net, { gross: area.gross, openings: area.openings, goods: main.value }),
  ];
  const width = panels?.given.width?.value;
  if (panels === undefined || width === undefined) return portions;
  const walls = panelWalls(shape, width, thicknessOf(main.value), openings);
  const count = measure('number', allPanels, ...walls.map(({ length }) => measure('number', panelsOf, length, width)));
  const corners = shape.outside + shape.inside;
  const joints = measure('number', jointCount, count, counted('walls', walls.length), counted('corners', corners));
  const spline = measure('length', jointLength, joints, height, ...walls.flatMap(({ cut }) => cut));
  const { joint, beads } = panels.given;
  portions.push(portion('panel-count', where, count));
  portions.push(portion('panel-spline-length', where, spline, { goods: joint?.value.spline }));
  const inJoint = joint?.value.beads;
  if (inJoint !== undefined || beads !== undefined) {
    const atPlates = counted('beads at a plate', beads?.value.count ?? 0);
    const atJoints = counted('beads at a joint', inJoint?.count ?? 0);
    const sealant = measure('length', sealantLength, atPlates, twoPlates, shape.perimeter, atJoints, spline);
    portions.push(portion('panel-sealant-length', where, sealant, { goods: inJoint?.of }));
  }
  return portions;
}
