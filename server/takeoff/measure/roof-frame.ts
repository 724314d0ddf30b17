// What carries a roof: trusses, rafters with their hips and valleys, or panels.
import { INCH } from '#kit/dimension';
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Goods, Roof } from '#model/model';
import type { Pieces, Portion, Where } from '../lines.ts';
import { slantedTrusses, trussesMeet } from '../problems.ts';
import { layersOf } from './layers.ts';
import { inPart, laidOf, portion } from './portion.ts';
import type { RoofFigures } from './roof-figures.ts';
import { type RoofOnPlan, raftersAt, trussesAt } from './roof-plan.ts';
import { piecesAlong } from './runs.ts';

const twoSides = form('rafters', '2 × pieces on a side', (pieces = 0) => 2 * pieces);
const lengthOfAll = form('rafters', 'rafters × length', (count = 0, length = 0) => count * length);
const tiesAll = form('collar ties', 'ties × length', (count = 0, length = 0) => count * length);
const onSlope = form('rafter', 'on plan × √(1 + pitch²)', (plan = 0, pitch = 0) => plan * Math.sqrt(1 + pitch * pitch));
const onDiagonal = form('hip or valley', 'run × √(2 + pitch²)', (run = 0, pitch = 0) => run * Math.sqrt(2 + pitch * pitch));
const allPieces = form('rafters', 'rafters, hips and valleys: count × length, added', (...values) => {
  let sum = 0;
  for (let at = 0; at + 1 < values.length; at += 2) sum += values[at]! * values[at + 1]!;
  return sum;
});
const trusses = form('trusses', 'one at each end and at every spacing of each part', (count = 0) => count);
const fromSurface = form(
  'rafters',
  'surface ÷ spacing + hips and valleys',
  (area = 0, spacing = 1, ...diagonals) => (spacing > 0 ? diagonals.reduce((sum, each) => sum + each, area / spacing) : 0),
  'common practice: where hardly two rafters are alike',
);
/** Shorter jacks than this are blocks. */
const LEAST = 3 * INCH;

export function framePortions(roof: Roof, figures: RoofFigures, where: Where, findings: Finding[]): readonly Portion[] {
  const framed = roof.given.framed?.value;
  if (framed === undefined) return [];
  if ('kind' in framed) return panelPortions(framed.of, figures, where);
  const { of, at } = framed;
  const { onPlan } = figures;
  if (laidOf(of) === 'pieces') {
    if (figures.bySurface === true) {
      findings.push(finding(slantedTrusses, (roof.given.framed ?? roof).place, roof.label));
      return [];
    }
    if (onPlan === undefined || onPlan.bodies.length < 2)
      return [portion('truss-count', where, piecesAlong(figures.along, at), { goods: of })];
    findings.push(finding(trussesMeet, (roof.given.framed ?? roof).place, roof.label));
    const count = measure('number', trusses, constant('trusses', trussesAt(onPlan, at.value, LEAST), 'number'));
    return [portion('truss-count', where, count, { goods: of })];
  }
  return [...rafterPortions(of, at, figures, where), ...ridgeAndTies(roof, figures, where)];
}

/** A board between the rafters along the ridge, and the ties that the plan names. */
function ridgeAndTies({ given }: Roof, { ridge, along }: RoofFigures, where: Where): readonly Portion[] {
  const portions: Portion[] = [];
  const board = given['ridge-board']?.value;
  if (ridge !== undefined && ridge.value > 0)
    portions.push(portion('ridge-board-length', where, ridge, board === undefined ? {} : { sizes: [board] }));
  const ties = given['collar-ties']?.value;
  if (ties !== undefined) {
    const count = piecesAlong(along, ties.at);
    const length = measure('length', tiesAll, count, ties.long);
    portions.push(portion('collar-tie-length', where, length, { sizes: [ties.size], pieces: [{ count, length: ties.long }] }));
  }
  return portions;
}

/** Rafters of goods at a spacing, with the hips and valleys among them. */
export function rafterPortions(of: Goods, at: Quantity<'length'>, figures: RoofFigures, where: Where): readonly Portion[] {
  if (figures.bySurface === true) {
    const diagonals = [
      ...(figures.hips === undefined ? [] : [figures.hips]),
      ...(figures.valleys === undefined ? [] : [figures.valleys]),
    ];
    return [portion('rafter-length', where, measure('length', fromSurface, figures.area, at, ...diagonals), { goods: of })];
  }
  if (figures.onPlan !== undefined) return [jacks(figures.onPlan, figures.pitch, at, of, where)];
  const along = piecesAlong(figures.along, at);
  if (figures.gambrel !== undefined) {
    const { low, high, rafter } = figures.gambrel;
    const sides = measure('number', twoSides, along);
    const pieces = [
      { count: sides, length: low },
      { count: sides, length: high },
    ];
    return [portion('rafter-length', where, measure('length', lengthOfAll, sides, rafter), { goods: of, pieces })];
  }
  const count = figures.form === 'gable' ? measure('number', twoSides, along) : along;
  return [
    portion('rafter-length', where, measure('length', lengthOfAll, count, figures.rafter), {
      goods: of,
      pieces: [{ count, length: figures.rafter }],
    }),
  ];
}

/** Each common and jack rafter in its length, then the hips and valleys one by one. */
function jacks(onPlan: RoofOnPlan, pitch: Quantity<'slope'>, spacing: Quantity<'length'>, of: Goods, where: Where): Portion {
  const rafters = [...raftersAt(onPlan, spacing.value, LEAST)]
    .sort(([one], [other]) => other - one)
    .map(
      ([length, count]): Pieces => ({
        count: constant('rafters', count, 'number'),
        length: measure('length', onSlope, constant('rafter on plan', length, 'length'), pitch),
      }),
    );
  const diagonals = onPlan.diagonals.map(
    (run): Pieces => ({
      count: constant('hips and valleys', 1, 'number'),
      length: measure('length', onDiagonal, constant('run', run, 'length'), pitch),
    }),
  );
  const pieces = [...rafters, ...diagonals];
  const length = measure('length', allPieces, ...pieces.flatMap(({ count, length: each }) => [count, each]));
  return portion('rafter-length', where, length, { goods: of, pieces });
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
