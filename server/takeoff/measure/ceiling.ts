// The ceiling of a level: insulation by area or by volume, and membranes. Its board faces the rooms and is counted there.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Goods, Level } from '#model/model';
import { insulatesOf, resistanceSize, thicknessOf } from '../goods.ts';
import type { Portion, Where } from '../lines.ts';
import { depthMissing } from '../problems.ts';
import { isFace, isFrame, type Layer } from './layers.ts';
import { laidOf, type Measured, portion } from './portion.ts';

const loose = form('loose insulation', 'area × depth', (area = 0, depth = 0) => area * depth);
const depthFor = form('depth', 'R wanted ÷ R for each depth', (wanted = 0, each = 1) => (each > 0 ? wanted / each : 0));

export function measureCeiling(level: Level): Measured {
  const shape = levelShape(level);
  const ceiling = level.given.ceiling?.value;
  if (shape === undefined || ceiling === undefined) return { portions: [], findings: [] };
  const where = { element: level.slot, part: 'ceiling', level: level.slot };
  const findings: Finding[] = [];
  const portions = ceiling.given.layer.flatMap((layer) => layerPortions(layer, shape.area, where, findings));
  return { portions, findings };
}

function layerPortions(layer: Layer, area: Quantity<'area'>, where: Where, findings: Finding[]): readonly Portion[] {
  const goods = layer.value;
  if (isFace(goods)) return [];
  const filled = layer.deeper['filled with'];
  if (isFrame(layer))
    return filled === undefined
      ? []
      : [portion('ceiling-insulation-area', where, area, { goods: filled.value, depth: thicknessOf(goods) })];
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
export function looseDepth(goods: Goods): Quantity<'length'> | undefined {
  const thick = thicknessOf(goods);
  if (thick !== undefined) return thick;
  const wanted = resistanceSize(goods);
  const each = insulatesOf(goods);
  return wanted === undefined || each?.dimension !== 'resistance/length' ? undefined : measure('length', depthFor, wanted, each);
}
