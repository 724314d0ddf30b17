// The walls between the plates of a level and its roof: the triangles under a gable, the ends and the high wall of a shed.
// They carry what the level's walls carry outside their framing; a roof of trusses brings its own gable framing.
import type { Finding } from '#kit/finding';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Roof } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import type { Portion, Where } from '../lines.ts';
import { isPanel, layersOf } from './layers.ts';
import { netOf } from './openings.ts';
import { inPart, laidOf, portion } from './portion.ts';
import type { RoofFigures } from './roof-figures.ts';
import { piecesAlong } from './runs.ts';
import { outerLayers, paintable } from './wall-layers.ts';

const triangles = form('two gables', '2 × span × rise ÷ 2', (span = 0, rise = 0) => span * rise);
const shedWalls = form(
  'ends and high wall',
  'span × rise + length × rise',
  (span = 0, rise = 0, along = 0) => span * rise + along * rise,
);
const half = form('height on average', 'rise ÷ 2', (rise = 0) => rise / 2);
const twoGables = form('studs in two gables', '2 × pieces in a gable', (pieces = 0) => 2 * pieces);
const twoSpans = form('length of both', '2 × span', (span = 0) => 2 * span);

export function gablePortions(roof: Roof, figures: RoofFigures, where: Where, counts: FramingCounts): readonly Portion[] {
  const assembly = roof.given.over?.value.given.walls?.value;
  if (assembly === undefined || !(figures.rise.value > 0)) return [];
  const area = areaOf(figures);
  if (area === undefined) return [];
  const part: Where = inPart(where, figures.form === 'gable' ? 'gables' : 'above the low wall');
  const findings: Finding[] = [];
  const height = measure('length', half, figures.rise);
  const length = measure('length', twoSpans, figures.span);
  const stretch = { where: part, area: netOf(area, []), length, height };
  const portions = [...outerLayers(assembly, stretch, findings), ...paintable(assembly, stretch)];
  const { main } = layersOf(assembly);
  const spacing = main?.deeper.at?.value;
  if (main !== undefined && !isPanel(main) && spacing !== undefined && hasRafters(roof)) {
    const count = measure('number', twoGables, piecesAlong(figures.span, spacing, counts.endStuds));
    portions.push(portion('wall-stud-count', part, count, { goods: main.value, pieces: [{ count, length: height }] }));
  }
  return portions;
}

function areaOf({ form: shape, span, rise, along }: RoofFigures): Quantity<'area'> | undefined {
  switch (shape) {
    case 'gable':
      return measure('area', triangles, span, rise);
    case 'shed':
      return measure('area', shedWalls, span, rise, along);
    default:
      return undefined;
  }
}

function hasRafters(roof: Roof): boolean {
  const framed = roof.given.framed?.value;
  return framed !== undefined && !('kind' in framed) && laidOf(framed.of) === 'framing';
}
