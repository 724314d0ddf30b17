// A storey that stands out over the one below it: the underside is closed with a soffit, and insulated where its floor is not.
import { type Finding, finding } from '#kit/finding';
import { constant, type Form, form, measure, type Quantity } from '#kit/quantity';
import type { Outline } from '#kit/shapes/outline';
import { differenceArea, sharedArea } from '#kit/shapes/region';
import { levelOnGround, levelShape } from '#model/facts/level';
import type { FloorShape } from '#model/floor-shape';
import type { Level } from '#model/model';
import { thicknessOf } from '../goods.ts';
import type { Portion } from '../lines.ts';
import { levelApart } from '../problems.ts';
import { isPanel, layersOf } from './layers.ts';
import { type Measured, portion } from './portion.ts';

const nowhere = constant('from the south-west corner', 0, 'length');
const kept = new Map<string, Form>();

/** `below` is the level that it stands on. */
export function measureOverhang(level: Level, below: Level | undefined): Measured {
  if (below === undefined) return hungBays(level);
  const [upper, lower] = [levelShape(level), levelShape(below)];
  if (upper === undefined || lower === undefined) return { portions: [], findings: [] };
  const east = level.given.at?.value.east ?? nowhere;
  const north = level.given.at?.value.north ?? nowhere;
  const area = measure('area', formOf(upper, lower), ...upper.made.lengths, ...lower.made.lengths, east, north);
  const findings: Finding[] = [];
  if (sharedArea([lower.outline], [moved(upper.outline, east.value, north.value)]) === 0)
    findings.push(finding(levelApart, (level.given.at ?? level).place, level.label, below.label));
  if (!(area.value > 0) || findings.length > 0) return { portions: [], findings };
  return { portions: underside(level, area), findings };
}

function underside(level: Level, area: Quantity<'area'>): readonly Portion[] {
  const where = { element: level.slot, part: 'overhang', level: level.slot };
  const insulation = fillingFor(level);
  const soffit = portion('soffit-area', where, area);
  return insulation === undefined ? [soffit] : [soffit, portion('floor-insulation-area', where, area, insulation)];
}

const hung = form('bays that hang', 'floor − floor without them', (whole = 0, standing = 0) => whole - standing);

/** Of a level on the ground only the bays without a foundation stand out over anything. */
function hungBays(level: Level): Measured {
  const [whole, standing] = [levelShape(level), levelOnGround(level)];
  if (whole === undefined || standing === undefined || whole === standing) return { portions: [], findings: [] };
  return { portions: underside(level, measure('area', hung, whole.area, standing.area)), findings: [] };
}

function formOf(upper: FloorShape, lower: FloorShape): Form {
  const key = `${upper.made.key} | ${lower.made.key}`;
  let how = kept.get(key);
  if (how === undefined) {
    const [above, under, first] = [upper.made.outline, lower.made.outline, upper.made.lengths.length];
    how = form('overhang', 'the outline above, less what of the outline below lies under it', (...values) => {
      const [top, bottom] = [above(values.slice(0, first)), under(values.slice(first, -2))];
      if (top === undefined || bottom === undefined) return 0;
      return differenceArea([moved(top, values.at(-2) ?? 0, values.at(-1) ?? 0)], [bottom]);
    });
    kept.set(key, how);
  }
  return how;
}

function moved(outline: Outline, east: number, north: number): Outline {
  return outline.map(({ x, y }) => ({ x: x + east, y: y + north }));
}

/** What fills the walls, as deep as the joists; nothing where the floor is filled or of panels. */
function fillingFor(level: Level) {
  const { floor, walls } = level.given;
  const main = floor === undefined ? undefined : layersOf(floor.value).main;
  if (main === undefined || isPanel(main) || main.deeper['filled with'] !== undefined) return undefined;
  const wall = walls === undefined ? undefined : layersOf(walls.value).main;
  const goods = wall === undefined || isPanel(wall) ? undefined : wall.deeper['filled with']?.value;
  const depth: Quantity<'length'> | undefined = thicknessOf(main.value);
  return goods === undefined ? undefined : { goods, depth };
}
