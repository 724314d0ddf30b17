// Slabs on the ground: concrete, mesh, what lies under it, and the forms at an edge that no wall holds.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Goods } from '#model/model';
import { thicknessOf } from '../goods.ts';
import type { Portion } from '../lines.ts';
import { depthMissing, lengthMissing } from '../problems.ts';
import type { Ground } from './foundation.ts';
import { laidOf, portion } from './portion.ts';
import { areaInside } from './runs.ts';

const thick = form('slab', 'area × thickness', (area = 0, thickness = 0) => area * thickness);
const bothWays = form(
  'bars both ways',
  '(one way ÷ spacing rounded down, and one) × other way, and the other way about',
  (width = 0, depth = 0, spacing = 1) =>
    spacing > 0 ? (Math.floor(width / spacing + 1e-9) + 1) * depth + (Math.floor(depth / spacing + 1e-9) + 1) * width : 0,
);
const layer = form('layer under the slab', 'area × thickness', (area = 0, thickness = 0) => area * thickness);

export function slabPortions(ground: Ground, findings: Finding[]): readonly Portion[] {
  const { foundation, where, shape, wallThickness } = ground;
  const slab = foundation.given.slab;
  if (slab === undefined) return [];
  const { thickness, mesh, over } = slab.value;
  const area = slab.value.area ?? (shape === undefined ? undefined : areaInside(shape, wallThickness));
  if (area === undefined) {
    findings.push(finding(lengthMissing, slab.place, foundation.label));
    return [];
  }
  const portions = [
    portion('slab-area', where, area),
    portion('slab-volume', where, measure('volume', thick, area, thickness), { goods: foundation.given.concrete?.value }),
  ];
  const { mat } = foundation.given;
  if (mat !== undefined && shape !== undefined) {
    const { bar, at } = mat.value;
    portions.push(portion('slab-bar-length', where, measure('length', bothWays, shape.width, shape.depth, at), { sizes: [bar] }));
  }
  if (mesh !== undefined) portions.push(portion('slab-mesh-area', where, area, { goods: mesh }));
  for (const { value } of over ?? []) portions.push(...under(ground, value, area, findings));
  const edge =
    foundation.given.long?.value ?? (slab.value.area === undefined && wallThickness === undefined ? shape?.perimeter : undefined);
  if (edge !== undefined && wallThickness === undefined) portions.push(portion('slab-edge-form-length', where, edge));
  return portions;
}

function under({ where }: Ground, goods: Goods, area: Quantity<'area'>, findings: Finding[]): readonly Portion[] {
  switch (laidOf(goods)) {
    case 'bulk':
    case 'poured':
    case 'loose': {
      const depth = thicknessOf(goods);
      if (depth === undefined) {
        findings.push(finding(depthMissing, goods.place, goods.name));
        return [];
      }
      return [portion('slab-base-volume', where, measure('volume', layer, area, depth), { goods: { ...goods, sizes: [] } })];
    }
    case 'sheets':
    case 'panels':
      return [portion('floor-insulation-area', where, area, { goods, otherwise: ['slab-vapour-area'] })];
    default:
      return [portion('slab-vapour-area', where, area, { goods })];
  }
}
