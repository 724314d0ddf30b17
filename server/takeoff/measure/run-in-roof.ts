// What is bought for a roof that runs into another, a porch's or a dormer's: its own surface, edges and frame, a dormer's
// walls; what the other roof has less is in roof-others. Goods that it does not name are those of the other roof.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Roof } from '#model/model';
import type { Portion, Where } from '../lines.ts';
import { roofAboveRidge, runsIntoNothing } from '../problems.ts';
import { isPanel, layersOf } from './layers.ts';
import { netOf } from './openings.ts';
import { underRoof } from './piers.ts';
import { inPart, laidOf, type Measured, portion } from './portion.ts';
import { edgePortions, layerPortions, nothingTaken } from './roof.ts';
import { type RoofFigures, roofFigures } from './roof-figures.ts';
import { type RunIn, runIn, standsAbove } from './roof-into.ts';
import { piecesAlong } from './runs.ts';
import { fillingOf, outerLayers, paintable } from './wall-layers.ts';

const halfOf = form('run', 'width ÷ 2', (width = 0) => width / 2);
const riseOf = form('rise', 'run × pitch', (run = 0, pitch = 0) => run * pitch);
const alongOf = form('length', 'from its front to where it meets the other roof', (meets = 0, front = 0) => meets - front);
const rafterOf = form(
  'rafter',
  '(run + overhang) × √(1 + pitch²)',
  (run = 0, out = 0, pitch = 0) => (run + out) * Math.sqrt(1 + pitch * pitch),
);
const onPlan = form('plan of the roof', 'surface ÷ √(1 + pitch²)', (area = 0, pitch = 0) => area / Math.sqrt(1 + pitch * pitch));
const rafters = form('rafters', 'surface ÷ spacing + half the rakes', (area = 0, spacing = 1, rakes = 0) =>
  spacing > 0 ? area / spacing + rakes / 2 : 0,
);
const studLength = form('length of a stud', 'wall ÷ its length', (area = 0, length = 1) => (length > 0 ? area / length : 0));

/** `main` is the roof that it runs into. */
export function measureRunIn(roof: Roof, main: Roof | undefined): Measured {
  const run = main === undefined ? undefined : runIn(roof, main);
  const figures = main === undefined ? undefined : roofFigures(main);
  if (main === undefined || run === undefined || figures === undefined)
    return { portions: [], findings: [finding(runsIntoNothing, (roof.given.into ?? roof).place, roof.label)] };
  const findings: Finding[] = [];
  if (standsAbove(run, figures)) findings.push(finding(roofAboveRidge, roof.place, roof.label, main.label));
  const level = main.given.over?.value.slot;
  const where: Where = level === undefined ? { element: roof.slot } : { element: roof.slot, level };
  const { deck, roofing, soffit, framed } = main.given;
  const usual = Object.fromEntries(Object.entries({ deck, roofing, soffit, framed }).filter(([, given]) => given !== undefined));
  const dressed: Roof = { ...roof, given: { ...usual, ...roof.given } };
  const own = asFigures(run);
  return {
    portions: [
      ...underRoof(roof, where),
      ...frame(dressed, run, where),
      ...layerPortions(dressed, own, nothingTaken, where),
      ...edgePortions(dressed, own, where),
      ...(run.flashing === undefined ? [] : [portion('roof-wall-length', where, run.flashing)]),
      ...walls(main, run, where, findings),
    ],
    findings,
  };
}

function asFigures(run: RunIn): RoofFigures {
  const { form: shape, pitch, width, front, meets, area, ridge, hips, valleys, eaves, rakes, eavesOut, rakesOut } = run;
  const half = shape !== 'shed' ? measure('length', halfOf, width) : measure('length', alongOf, meets, front);
  return {
    form: shape,
    pitch,
    along: measure('length', alongOf, meets, front),
    span: width,
    run: half,
    rise: measure('length', riseOf, half, pitch),
    eavesOut,
    rakesOut,
    rafter: measure('length', rafterOf, half, eavesOut, pitch),
    area,
    plan: measure('area', onPlan, area, pitch),
    ridge,
    hips,
    valleys,
    eaves,
    eaveOn: {},
    rakes,
    gables: [],
  };
}

const hipRafters = form('rafters', 'surface ÷ spacing + hips', (area = 0, spacing = 1, hips = 0) =>
  spacing > 0 ? area / spacing + hips : 0,
);

function frame(roof: Roof, { area, rakes, hips }: RunIn, where: Where): readonly Portion[] {
  const framed = roof.given.framed?.value;
  // Trusses of the other roof do not serve here: what stands on them is framed.
  if (framed === undefined || 'kind' in framed || laidOf(framed.of) !== 'framing') return [];
  const length =
    hips === undefined
      ? measure('length', rafters, area, framed.at, rakes)
      : measure('length', hipRafters, area, framed.at, hips);
  return [portion('rafter-length', where, length, { goods: framed.of })];
}

/** The front, the sides and the gable carry what the walls below carry; a dormer's close rooms. */
function walls(main: Roof, run: RunIn, where: Where, findings: Finding[]): readonly Portion[] {
  const assembly = main.given.over?.value.given.walls?.value;
  if (assembly === undefined) return [];
  const { main: frameOf } = layersOf(assembly);
  const spacing = frameOf?.deeper.at?.value;
  const dormer = run.frontWall !== undefined;
  const faces: readonly (readonly [string, Quantity<'area'> | undefined, Quantity<'length'>])[] = [
    ['front', run.frontWall, run.width],
    ['sides', run.sideWalls, measure('length', alongOf, run.meets, run.front)],
    ['gable', run.gable, run.width],
  ];
  return faces.flatMap(([part, area, length]) => {
    if (area === undefined || !(area.value > 0)) return [];
    const at = inPart(where, part);
    const height = measure('length', studLength, area, length);
    const stretch = { where: at, area: netOf(area, []), length, height };
    const portions: Portion[] = [...outerLayers(assembly, stretch, findings), ...paintable(assembly, stretch)];
    if (!dormer || frameOf === undefined || isPanel(frameOf)) return portions;
    portions.push(...fillingOf(frameOf, stretch));
    if (spacing !== undefined) {
      const count = piecesAlong(length, spacing);
      portions.push(portion('wall-stud-count', at, count, { goods: frameOf.value, pieces: [{ count, length: height }] }));
    }
    return portions;
  });
}
