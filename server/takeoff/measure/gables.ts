// The walls between the plates of a level and its roof: the triangles under a gable, the ends and the high wall of a shed.
// They carry what the level's walls carry outside their framing; a roof of trusses brings its own gable framing.
import type { Finding } from '#kit/finding';
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Roof } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import type { Pieces, Portion, Where } from '../lines.ts';
import { byBreak, byRise, bySlope, type Height, steppedStuds } from './gable-studs.ts';
import { isPanel, layersOf } from './layers.ts';
import { netOf } from './openings.ts';
import { inPart, laidOf, portion } from './portion.ts';
import { gableFaces } from './roof-faces.ts';
import type { RoofFigures } from './roof-figures.ts';
import { piecesAlong } from './runs.ts';
import { fillingOf, outerLayers, paintable } from './wall-layers.ts';

const triangles = form('two gables', '2 × span × rise ÷ 2', (span = 0, rise = 0) => span * rise);
const shedWalls = form(
  'ends and high wall',
  'span × rise + length × rise',
  (span = 0, rise = 0, along = 0) => span * rise + along * rise,
);
const oneGable = form('gable', 'span × (span ÷ 2 × pitch) ÷ 2', (span = 0, pitch = 0) => (span * span * pitch) / 4);
const onAverage = form('height on average', 'two gables ÷ 2 ÷ span', (area = 0, span = 1) => area / 2 / span);
const onLength = form('height on average', 'gables ÷ their length', (area = 0, length = 1) => (length > 0 ? area / length : 0));
const half = form('height on average', 'rise ÷ 2', (rise = 0) => rise / 2);
const twoGables = form('studs in two gables', '2 × pieces in a gable', (pieces = 0) => 2 * pieces);
const twoSpans = form('length of both', '2 × span', (span = 0) => 2 * span);

export function gablePortions(roof: Roof, figures: RoofFigures, where: Where, counts: FramingCounts): readonly Portion[] {
  const assembly = roof.given.over?.value.given.walls?.value;
  if (assembly === undefined || !(figures.rise.value > 0)) return [];
  const area = areaOf(figures);
  if (area === undefined) return [];
  const part: Where = inPart(where, figures.gables.length > 0 ? 'gables' : 'above the low wall');
  const findings: Finding[] = [];
  const { gables, span, onPlan } = figures;
  const { gambrel } = figures;
  // One gable, several of their own widths, or two alike.
  const apart = onPlan !== undefined || gables.length === 1 || (gambrel !== undefined && figures.bySurface === true);
  const length = apart ? total('length of the gables', 'length', gables) : measure('length', twoSpans, span);
  const height =
    gambrel === undefined
      ? measure('length', half, figures.rise)
      : apart
        ? measure('length', onLength, gambrel.gables, length)
        : measure('length', onAverage, gambrel.gables, span);
  const faces = gableFaces(figures, area);
  const stretch = { where: part, area: netOf(area, []), length, height, faces };
  const portions = [...outerLayers(assembly, stretch, findings), ...paintable(assembly, stretch)];
  const { main } = layersOf(assembly);
  // Under a vaulted ceiling the gable closes rooms, not an attic.
  const closesRooms = roof.given.over?.value.given.ceiling?.value.given.for?.value === 'roof';
  if (closesRooms && main !== undefined && !isPanel(main)) portions.push(...fillingOf(main, stretch));
  const spacing = main?.deeper.at?.value;
  if (main !== undefined && !isPanel(main) && spacing !== undefined && (closesRooms || hasRafters(roof))) {
    const studs = apart ? eachGable(figures, spacing, counts) : twoAlike(figures, spacing, counts);
    const pieces = studs.flatMap((each) => each.pieces);
    const all = studs.map((each) => each.count);
    const count = all.length === 1 ? all[0]! : total('studs in the gables', 'number', all);
    portions.push(portion('wall-stud-count', part, count, { goods: main.value, pieces }));
  }
  return portions;
}

/** Of one gable, or of two alike. */
interface Studs {
  readonly count: Quantity<'number'>;
  readonly pieces: readonly Pieces[];
}

function twoAlike(figures: RoofFigures, spacing: Quantity<'length'>, { endStuds }: FramingCounts): readonly Studs[] {
  const { form: shape, span, rise } = figures;
  const one = piecesAlong(span, spacing, endStuds);
  const sheds = shape === 'shed';
  const height = sheds ? byRise(rise, span) : heightOf(figures);
  return [{ count: measure('number', twoGables, one), pieces: steppedStuds(span, spacing, one, 2, !sheds, height) }];
}

function eachGable(figures: RoofFigures, spacing: Quantity<'length'>, { endStuds }: FramingCounts): readonly Studs[] {
  return figures.gables.map((width) => {
    const count = piecesAlong(width, spacing, endStuds);
    return { count, pieces: steppedStuds(width, spacing, count, 1, true, heightOf(figures)) };
  });
}

function heightOf({ pitch, gambrel }: RoofFigures): Height {
  return gambrel === undefined ? bySlope(pitch) : byBreak(gambrel.breakAt, pitch, gambrel.upper);
}

function areaOf({
  form: shape,
  span,
  rise,
  along,
  gables,
  pitch,
  onPlan,
  wallAbove,
  gambrel,
}: RoofFigures): Quantity<'area'> | undefined {
  if (wallAbove !== undefined) return wallAbove;
  if (gambrel !== undefined) return gambrel.gables;
  if (onPlan !== undefined || gables.length === 1)
    return gables.length === 0
      ? undefined
      : total(
          'gables',
          'area',
          gables.map((width) => measure('area', oneGable, width, pitch)),
        );
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
