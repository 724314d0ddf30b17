// The ceiling of a level: insulation by area or by volume, and membranes, along the slope where rooms or a roof go up. Its
// board faces the rooms and is counted there. A roof that is the ceiling brings its own deck and rafters where the roof
// itself names none.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import { roomShape, roomSlope } from '#model/facts/room';
import type { Goods, Level, Roof, Room } from '#model/model';
import { inSpace, insulatesOf, resistanceSize, thicknessOf } from '../goods.ts';
import type { Portion, Where } from '../lines.ts';
import { depthMissing, sizeMissing, spacingMissing } from '../problems.ts';
import { isFace, isFrame, isPanel, type Layer, layersOf } from './layers.ts';
import { inPart, isNothing, laidOf, type Measured, portion } from './portion.ts';
import { slopeFaces } from './roof-faces.ts';
import { roofFigures } from './roof-figures.ts';
import { rafterPortions } from './roof-frame.ts';
import { underRoof } from './room-surfaces.ts';

type Area = Quantity<'area'>;

const loose = form('loose insulation', 'area × depth', (area = 0, depth = 0) => area * depth);
const depthFor = form('depth', 'R wanted ÷ R for each depth', (wanted = 0, each = 1) => (each > 0 ? wanted / each : 0));
const slopeAdds = form('what a slope adds', 'ceiling along the slope − floor area', (ceiling = 0, floor = 0) => ceiling - floor);

/** `vault` is the roof that is the ceiling itself; `sloped` the rooms that have slopes of their own. */
export function measureCeiling(level: Level, vault: Roof | undefined, sloped: readonly Room[]): Measured {
  const shape = levelShape(level);
  const ceiling = level.given.ceiling?.value;
  if (shape === undefined || ceiling === undefined) return { portions: [], findings: [] };
  const where = { element: level.slot, part: 'ceiling', level: level.slot };
  const findings: Finding[] = [];
  const pitch = vault === undefined ? undefined : vaultPitch(vault);
  const isRoof = ceiling.given.for?.value === 'roof';
  if (isRoof && pitch === undefined && vault?.given.shape?.value.form !== 'flat')
    findings.push(finding(sizeMissing, (level.given.ceiling ?? level).place, level.label, ONE_SLOPE));
  const area = pitch === undefined ? withSlopes(shape.area, sloped) : measure('area', underRoof, shape.area, pitch);
  if (!isRoof) {
    const portions = ceiling.given.layer.flatMap((layer) => ceilingLayer(layer, area, where, findings));
    return { portions, findings };
  }
  const { main, before, after } = layersOf(ceiling);
  const inside = [...(main === undefined ? [] : [main]), ...after];
  const portions = [
    ...above(before, area, vault, where),
    ...carrying(main, vault, where, findings),
    ...inside.flatMap((layer) => ceilingLayer(layer, area, where, findings)),
  ];
  return { portions, findings };
}

const ONE_SLOPE =
  'a roof of one pitch over its ceiling (give rooms under a gambrel "sloped", and the level a ceiling of its own)';

/** Undefined for a roof that has not one pitch. */
export function vaultPitch({ given: { shape } }: Roof): Quantity<'slope'> | undefined {
  return shape === undefined || shape.value.form === 'gambrel' ? undefined : shape.value.pitch;
}

/** A level's ceiling with what rooms that have slopes of their own add to it. */
export function withSlopes(plan: Area, sloped: readonly Room[]): Area {
  const more = sloped.flatMap((room) => {
    const [floor, slope] = [roomShape(room), roomSlope(room)];
    return floor === undefined || slope === undefined ? [] : [measure('area', slopeAdds, slope.ceiling, floor.area)];
  });
  return more.length === 0 ? plan : total('ceiling along the slopes', 'area', [plan, ...more]);
}

/** The deck of a roof that is the ceiling, unless the roof names its own. */
function above(layers: readonly Layer[], inside: Area, vault: Roof | undefined, where: Where): readonly Portion[] {
  const named = vault?.given.deck;
  if (named !== undefined && !isNothing(named.value)) return [];
  const figures = vault === undefined ? undefined : roofFigures(vault);
  const area = figures?.area ?? inside;
  const faces = figures === undefined ? undefined : slopeFaces(figures);
  return layers
    .filter(({ value }) => !isFace(value) && laidOf(value) !== 'framing')
    .map(({ value }) =>
      portion('roof-deck-area', inPart(where, 'roof'), area, {
        goods: value,
        faces: laidOf(value) === 'sheets' ? faces : undefined,
        otherwise: ['roof-underlayment-area', 'roof-cover-area'],
      }),
    );
}

/** Its rafters or panels, unless the roof says what it is framed of. */
function carrying(main: Layer | undefined, vault: Roof | undefined, where: Where, findings: Finding[]): readonly Portion[] {
  const figures = vault === undefined ? undefined : roofFigures(vault);
  if (main === undefined || figures === undefined || vault?.given.framed !== undefined) return [];
  const at = inPart(where, 'roof');
  if (isPanel(main)) return [portion('roof-panel-area', at, figures.area, { goods: main.value })];
  const spacing = main.deeper.at?.value;
  if (spacing !== undefined) return rafterPortions(main.value, spacing, figures, at);
  findings.push(finding(spacingMissing, main.place, main.value.name));
  return [];
}

/** A layer under the roof's own framing; the face of a room is the room's. */
export function ceilingLayer(layer: Layer, area: Area, where: Where, findings: Finding[]): readonly Portion[] {
  const goods = layer.value;
  if (isFace(goods)) return [];
  const filled = layer.deeper['filled with'];
  if (isFrame(layer))
    return filled === undefined
      ? []
      : [
          portion('ceiling-insulation-area', where, area, {
            goods: inSpace(filled.value, layer.deeper.at?.value, thicknessOf(goods)),
            depth: thicknessOf(goods),
          }),
        ];
  switch (laidOf(goods)) {
    case 'loose': {
      const depth = looseDepth(goods);
      if (depth !== undefined)
        return [portion('ceiling-insulation-volume', where, measure('volume', loose, area, depth), { goods })];
      findings.push(finding(depthMissing, goods.place, goods.name));
      return [];
    }
    case 'membrane':
    case 'rolls':
      return [portion('wall-barrier-area', where, area, { goods })];
    default:
      return [portion('ceiling-insulation-area', where, area, { goods, otherwise: ['wall-foam-area'] })];
  }
}

/** A thickness as given, or what the R wanted makes of the goods' R for each inch. */
function looseDepth(goods: Goods): Quantity<'length'> | undefined {
  const thick = thicknessOf(goods);
  if (thick !== undefined) return thick;
  const wanted = resistanceSize(goods);
  const each = insulatesOf(goods);
  return wanted === undefined || each?.dimension !== 'resistance/length' ? undefined : measure('length', depthFor, wanted, each);
}
