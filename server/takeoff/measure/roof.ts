// Roofs: surface and its layers, trusses or rafters, edges, gutters, soffit; and the gable walls under them.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Goods, Roof } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import type { Portion, Where } from '../lines.ts';
import { pitchMissing, sizeMissing } from '../problems.ts';
import { gablePortions } from './gables.ts';
import { layersOf } from './layers.ts';
import { counted, inPart, isNothing, laidOf, type Measured, portion } from './portion.ts';
import { type RoofFigures, roofFigures, roofPlan } from './roof-figures.ts';
import { piecesAlong, rectangle } from './runs.ts';

const twoSides = form('rafters', '2 × pieces on a side', (pieces = 0) => 2 * pieces);
const hipRafters = form('rafters', 'surface ÷ spacing + hips', (area = 0, spacing = 1, hips = 0) =>
  spacing > 0 ? area / spacing + hips : 0,
);
const lengthOfAll = form('rafters', 'rafters × length', (count = 0, length = 0) => count * length);
const edges = form('edges', 'eaves + rakes', (eaves = 0, rakes = 0) => eaves + rakes);

export function measureRoof(roof: Roof, counts: FramingCounts): Measured {
  const figures = roofFigures(roof);
  if (figures === undefined) return { portions: [], findings: lackOf(roof) };
  const level = roof.given.over?.value.slot;
  const where = level === undefined ? { element: roof.slot } : { element: roof.slot, level };
  const portions = [
    ...framePortions(roof, figures, where),
    ...layerPortions(roof, figures, where),
    ...edgePortions(roof, figures, where),
    ...gablePortions(roof, figures, where, counts),
  ];
  return { portions, findings: [] };
}

function lackOf(roof: Roof): readonly Finding[] {
  const { shape } = roof.given;
  if (shape === undefined) return [finding(sizeMissing, roof.place, roof.label, 'a shape ("shape gable 6:12")')];
  if (roofPlan(roof) === undefined)
    return [finding(sizeMissing, roof.place, roof.label, 'a plan: the level it is over, or a size')];
  return [finding(pitchMissing, shape.place, roof.label)];
}

function framePortions(roof: Roof, figures: RoofFigures, where: Where): readonly Portion[] {
  const framed = roof.given.framed?.value;
  if (framed === undefined) return [];
  if ('kind' in framed) return panelPortions(framed.of, figures, where);
  const { of, at } = framed;
  const along = piecesAlong(figures.along, at);
  if (laidOf(of) === 'pieces') return [portion('truss-count', where, along, { goods: of })];
  // Jacks grow shorter toward a hip: so much rafter as there is surface by the spacing, and the hips themselves.
  if (figures.form === 'hip' && figures.hips !== undefined)
    return [portion('rafter-length', where, measure('length', hipRafters, figures.area, at, figures.hips), { goods: of })];
  const count = figures.form === 'gable' ? measure('number', twoSides, along) : along;
  return [
    portion('rafter-length', where, measure('length', lengthOfAll, count, figures.rafter), {
      goods: of,
      pieces: [{ count, length: figures.rafter }],
    }),
  ];
}

/** A roof of panels: the panel itself, what its assembly lays on it, and a membrane below; the face below is the rooms'. */
function panelPortions(of: Goods, { area }: RoofFigures, where: Where): readonly Portion[] {
  if (of.of?.kind !== 'assembly') return [portion('roof-panel-area', where, area, { goods: of })];
  const { main, before, after } = layersOf(of.of);
  const panel = main === undefined ? [] : [portion('roof-panel-area', where, area, { goods: main.value })];
  const above = before
    .filter(({ value }) => laidOf(value) !== 'framing')
    .map(({ value }) =>
      portion('roof-deck-area', where, area, { goods: value, otherwise: ['roof-underlayment-area', 'roof-cover-area'] }),
    );
  const below = after
    .filter(({ value }) => laidOf(value) === 'membrane')
    .map(({ value }) => portion('wall-barrier-area', inPart(where, 'underside'), area, { goods: value }));
  return [...panel, ...above, ...below];
}

function layerPortions(roof: Roof, { area }: RoofFigures, where: Where): readonly Portion[] {
  const { deck, roofing } = roof.given;
  const portions: Portion[] = [];
  if (deck !== undefined && !isNothing(deck.value))
    portions.push(portion('roof-deck-area', where, area, { goods: deck.value, gross: area, openings: [] }));
  (roofing?.value ?? []).forEach(({ value }, index) => {
    if (isNothing(value)) return;
    // The first is what the weather meets; what lies under it is counted as its own work says.
    const measures =
      index === 0 ? (['roof-cover-area'] as const) : (['roof-underlayment-area', 'roof-deck-area', 'roof-cover-area'] as const);
    const [first, ...otherwise] = measures;
    portions.push(portion(first, where, area, otherwise.length === 0 ? { goods: value } : { goods: value, otherwise }));
  });
  return portions;
}

const soffitArea = form('soffit', 'length × overhang', (length = 0, out = 0) => length * out);

function edgePortions(roof: Roof, figures: RoofFigures, where: Where): readonly Portion[] {
  const { ridge, hips, eaves, rakes, eavesOut, rakesOut } = figures;
  const { gutters, leaders, soffit } = roof.given;
  const round = rakes.value === 0 ? eaves : measure('length', edges, eaves, rakes);
  const portions: Portion[] = [];
  if (ridge !== undefined && ridge.value > 0) portions.push(portion('ridge-length', where, ridge));
  if (hips !== undefined) portions.push(portion('hip-length', where, hips));
  portions.push(portion('eaves-length', where, eaves));
  if (rakes.value > 0) portions.push(portion('rake-length', where, rakes));
  if (figures.form === 'shed') portions.push(portion('high-edge-length', where, eaves));
  portions.push(portion('drip-edge-length', where, round), portion('fascia-length', where, round));
  const goods = soffit === undefined ? {} : { goods: soffit.value };
  if (soffit === undefined || !isNothing(soffit.value)) {
    if (eavesOut.value > 0)
      portions.push(portion('soffit-area', inPart(where, 'eaves'), measure('area', soffitArea, eaves, eavesOut), goods));
    if (rakes.value > 0 && rakesOut.value > 0)
      portions.push(portion('soffit-area', inPart(where, 'rakes'), rectangle(rakes, rakesOut), goods));
  }
  const guttered = gutterLength(
    figures,
    (gutters?.value ?? []).map(({ value }) => value),
  );
  if (guttered !== undefined) portions.push(portion('gutter-length', where, guttered));
  if (leaders !== undefined && leaders.value > 0)
    portions.push(portion('leader-count', where, counted('leaders', leaders.value)));
  return portions;
}

/** The eaves named; sides without an eave have no gutter. */
function gutterLength(figures: RoofFigures, named: readonly string[]): Quantity<'length'> | undefined {
  if (named.includes('eaves')) return figures.eaves;
  const parts = named.flatMap((side) => {
    const alongEave =
      figures.ridgeRuns === 'east-west' ? side === 'north' || side === 'south' : side === 'east' || side === 'west';
    if (side === 'none') return [];
    if (alongEave) return [figures.eave];
    return figures.end === undefined ? [] : [figures.end];
  });
  return parts.length === 0 ? undefined : total('gutters', 'length', parts);
}
