// Roofs: surface and its layers, edges, gutters, soffit; what carries them and the gable walls under them have own files.
import { INCH } from '#kit/dimension';
import { type Finding, finding } from '#kit/finding';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { Direction } from '#kit/shapes/outline';
import type { Level, Roof } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import type { Literal, Portion, Where } from '../lines.ts';
import { overhangsMeet, pitchMissing, ridgesSideBySide, roofUnderStorey, sizeMissing } from '../problems.ts';
import { gablePortions } from './gables.ts';
import { underRoof } from './piers.ts';
import { counted, inPart, isNothing, laidOf, type Measured, portion } from './portion.ts';
import { slopeFaces } from './roof-faces.ts';
import { besideOf, outlineUnder, type RoofFigures, roofFigures, roofPlan } from './roof-figures.ts';
import { framePortions } from './roof-frame.ts';
import { gambrelFits } from './roof-gambrels.ts';
import { runIn } from './roof-into.ts';
import { withOthers } from './roof-others.ts';
import { countsOverSlanted } from './roof-slanted.ts';
import { rectangle } from './runs.ts';
import { atticPortions } from './vents.ts';

const edges = form('edges', 'eaves + rakes', (eaves = 0, rakes = 0) => eaves + rakes);

/**
 * `high` is the usual share of vents near the ridge; `upper` a storey that stands on the level of the roof; `others` the
 * roofs that run into it.
 */
export function measureRoof(
  roof: Roof,
  counts: FramingCounts,
  high: Quantity<'number'>,
  upper?: Level,
  others: readonly Roof[] = [],
): Measured {
  const whole = roofFigures(roof);
  if (whole === undefined) return { portions: [], findings: lackOf(roof) };
  const runIns = others.flatMap((other) => runIn(other, roof) ?? []);
  const { figures, covered, cutOut } = withOthers(whole, runIns);
  const level = roof.given.over?.value.slot;
  const where = level === undefined ? { element: roof.slot } : { element: roof.slot, level };
  const findings: Finding[] = [];
  if (upper !== undefined)
    findings.push(finding(roofUnderStorey, roof.place, roof.label, roof.given.over?.value.label ?? '', upper.label));
  if (figures.onPlan?.stepped === true)
    findings.push(finding(ridgesSideBySide, roof.given.shape?.place ?? roof.place, roof.label));
  const portions = [
    ...underRoof(roof, where),
    ...framePortions(roof, figures, where, findings),
    ...layerPortions(roof, figures, { covered, cutOut }, where),
    ...edgePortions(roof, figures, where),
    ...atticPortions(roof, figures.ridge !== undefined && figures.ridge.value > 0, high, where),
    ...gablePortions(roof, figures, where, counts),
  ];
  return { portions, findings };
}

const ONE_PIECE = 'one piece of its level beside the storey, under a single slope or flat (else give each part its "size")';
const AGAINST =
  'a rectangle of its level that one wall of the storey bounds, with its ridge running square against that wall, and as a hip roof half as long as wide; else a single slope, flat, or parts with "size"';

const SLANTED =
  'parts with sizes of their own: over slanted sides only flat roofs, single slopes and hip roofs without inward corners are counted (a bay is better given as "bay" of its level, with a roof "over bays of" it)';

function lackOf(roof: Roof): readonly Finding[] {
  const { shape } = roof.given;
  if (shape === undefined) return [finding(sizeMissing, roof.place, roof.label, 'a shape ("shape gable 6:12")')];
  if (roofPlan(roof) === undefined)
    return [finding(sizeMissing, roof.place, roof.label, 'a plan: the level it is over, or a size')];
  if (shape.value.pitch === undefined && shape.value.form !== 'flat') return [finding(pitchMissing, shape.place, roof.label)];
  const single = shape.value.form === 'shed' || shape.value.form === 'flat';
  if (roof.given.beside !== undefined && (!single || besideOf(roof) === undefined)) {
    const lacks = shape.value.form === 'gable' || shape.value.form === 'hip' ? AGAINST : ONE_PIECE;
    return [finding(sizeMissing, shape.place, roof.label, lacks)];
  }
  if (shape.value.form === 'shed' && shape.value.high === undefined)
    return [finding(sizeMissing, shape.place, roof.label, 'its high side ("shape shed 3:12, high north")')];
  const outline = outlineUnder(roof);
  if (outline !== undefined && !outline.square && !single && !countsOverSlanted(outline, shape.value.form))
    return [finding(sizeMissing, shape.place, roof.label, SLANTED)];
  if (shape.value.form === 'gambrel') {
    const lacks = 'its upper pitch and its break, between wall and ridge ("shape gambrel 18:12, upper 6:12, break 5\'")';
    const { upper, break: at } = shape.value;
    const meet = outline !== undefined && upper !== undefined && at !== undefined && gambrelFits(outline, at.value);
    return meet
      ? [finding(overhangsMeet, (roof.given.overhang ?? shape).place, roof.label)]
      : [finding(sizeMissing, shape.place, roof.label, lacks)];
  }
  return [finding(overhangsMeet, (roof.given.overhang ?? shape).place, roof.label)];
}

/** What other roofs cover of this one, and of that what is open below them. */
export interface Taken {
  readonly covered: readonly Quantity<'area'>[];
  readonly cutOut: readonly Quantity<'area'>[];
}
export const nothingTaken: Taken = { covered: [], cutOut: [] };

const lessCovered = form('surface not under others', 'surface − what other roofs cover', (area = 0, ...others) =>
  Math.max(
    0,
    others.reduce((rest, each) => rest - each, area),
  ),
);

export function layerPortions(roof: Roof, figures: RoofFigures, { covered, cutOut }: Taken, where: Where): readonly Portion[] {
  const gross = figures.area;
  const { deck, roofing } = roof.given;
  const portions: Portion[] = [];
  const less = (openings: readonly Quantity<'area'>[]) =>
    openings.length === 0 ? gross : measure('area', lessCovered, gross, ...openings);
  if (deck !== undefined && !isNothing(deck.value))
    portions.push(
      portion('roof-deck-area', where, less(cutOut), {
        goods: deck.value,
        gross,
        openings: cutOut,
        // What another roof opens lies on slopes that nobody tells.
        faces: cutOut.length === 0 ? slopeFaces(figures) : undefined,
      }),
    );
  const area = less(covered);
  const more = covered.length === 0 ? {} : { gross, openings: covered };
  (roofing?.value ?? []).forEach(({ value }, index) => {
    if (isNothing(value)) return;
    // The first is what the weather meets; what lies under it is counted as its own work says.
    const measures =
      index === 0 ? (['roof-cover-area'] as const) : (['roof-underlayment-area', 'roof-deck-area', 'roof-cover-area'] as const);
    const [first, ...otherwise] = measures;
    portions.push(
      portion(first, where, area, { goods: value, otherwise: otherwise.length === 0 ? undefined : otherwise, ...more }),
    );
  });
  return portions;
}

const soffitArea = form('soffit', 'length × overhang', (length = 0, out = 0) => length * out);

export function edgePortions(roof: Roof, figures: RoofFigures, where: Where): readonly Portion[] {
  const { ridge, hips, valleys, eaves, rakes, eavesOut, rakesOut } = figures;
  const { gutters, leaders, soffit, fascia, roofing } = roof.given;
  // A roof that nothing covers yet gets none of what goes with a covering.
  const cover = roofing?.value.map(({ value }) => value).find((goods) => !isNothing(goods));
  const round = rakes.value === 0 ? eaves : measure('length', edges, eaves, rakes);
  const portions: Portion[] = [];
  if (cover !== undefined && ridge !== undefined && ridge.value > 0) portions.push(portion('ridge-length', where, ridge));
  if (cover !== undefined && hips !== undefined) portions.push(portion('hip-length', where, hips));
  if (valleys !== undefined) portions.push(portion('valley-length', where, valleys));
  if (figures.againstWalls !== undefined) portions.push(portion('roof-wall-length', where, figures.againstWalls));
  if (eaves.value > 0) portions.push(portion('eaves-length', where, eaves));
  if (cover !== undefined && laidOf(cover) === 'courses' && eaves.value > 0)
    portions.push(portion('starter-length', where, eaves));
  if (rakes.value > 0) portions.push(portion('rake-length', where, rakes));
  if (figures.form === 'shed') portions.push(portion('high-edge-length', where, eaves));
  if (cover !== undefined) portions.push(portion('drip-edge-length', where, round));
  portions.push(portion('fascia-length', where, round, { sizes: sizesOf(fascia) }));
  const goods = soffit === undefined ? {} : { goods: soffit.value };
  if (soffit === undefined || !isNothing(soffit.value)) {
    if (eavesOut.value > 0)
      portions.push(portion('soffit-area', inPart(where, 'eaves'), measure('area', soffitArea, eaves, eavesOut), goods));
    if (rakes.value > 0 && rakesOut.value > 0)
      portions.push(portion('soffit-area', inPart(where, 'rakes'), rectangle(rakes, rakesOut), goods));
  }
  portions.push(...eavesPaint(roof, round, portions, where));
  const named = (gutters?.value ?? []).map(({ value }) => value);
  const guttered = gutterLength(figures, named);
  if (guttered !== undefined) {
    const sizes = sizesOf(gutters?.deeper.size);
    portions.push(portion('gutter-length', where, guttered, { sizes }));
    const ends = gutterEnds(figures, named);
    if (ends > 0) portions.push(portion('gutter-end-count', where, counted('ends of gutters', ends), { sizes }));
  }
  if (leaders !== undefined && leaders.value > 0) {
    portions.push(portion('leader-count', where, counted('leaders', leaders.value), { sizes: sizesOf(leaders.deeper.size) }));
    const open = leaders.value - (leaders.deeper.piped?.value ?? 0);
    if (open > 0) portions.push(portion('open-leader-count', where, counted('leaders that no pipe takes', open)));
  }
  return portions;
}

function sizesOf(size: { readonly value: Literal } | undefined): readonly Literal[] | undefined {
  return size === undefined ? undefined : [size.value];
}

const fasciaFace = form('face of the fascia', 'length × width as it is named', (length = 0, wide = 0) => length * wide);

/** Fascia and soffit take the paint of the walls, where somebody paints those and the roof does not say that they come finished. */
function eavesPaint(
  { given: { fascia, unpainted, soffit } }: Roof,
  round: Quantity<'length'>,
  portions: readonly Portion[],
  where: Where,
): readonly Portion[] {
  if (unpainted !== undefined) return [];
  const wide = fascia?.value.kind === 'nominal' ? fascia.value : undefined;
  const across = wide?.across[1];
  const parts: Quantity<'area'>[] = [];
  if (wide !== undefined && across !== undefined) {
    const width = constant('width of the fascia', wide.unit === undefined ? across * INCH : across, 'length');
    parts.push(measure('area', fasciaFace, round, width));
  }
  if (soffit !== undefined)
    for (const each of portions) if (each.measure === 'soffit-area') parts.push(each.quantity as Quantity<'area'>);
  return parts.length === 0
    ? []
    : [
        portion('eaves-paint-area', inPart(where, 'fascia and soffit'), total('fascia and soffit', 'area', parts), {
          onlyIfDone: true,
        }),
      ];
}

/** Two of each gutter; those of a hip roof go on round a corner where both sides have one. */
function gutterEnds({ rakes, eaveOn }: RoofFigures, named: readonly string[]): number {
  const all = Object.keys(eaveOn) as Direction[];
  const sides = named.includes('eaves') ? all : all.filter((side) => named.includes(side));
  if (rakes.value > 0) return 2 * sides.length;
  const round: readonly Direction[] = ['north', 'east', 'south', 'west'];
  const corners = round.filter((side, at) => sides.includes(side) && sides.includes(round[(at + 1) % round.length]!));
  return 2 * sides.length - 2 * corners.length;
}

/** The eaves named; sides without an eave have no gutter. */
function gutterLength(figures: RoofFigures, named: readonly string[]): Quantity<'length'> | undefined {
  if (named.includes('eaves')) return figures.eaves;
  const parts = named.flatMap((side) => figures.eaveOn[side as Direction] ?? []);
  return parts.length === 0 ? undefined : total('gutters', 'length', parts);
}
