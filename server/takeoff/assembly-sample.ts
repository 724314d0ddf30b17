// A long straight stretch of a wall, a floor or a ceiling, without openings and ends, taken off as any is: what it needs and how
// long it takes for each unit of its area. It is a thousand spacings long, so that its ends do not count.
import { FOOT } from '#kit/dimension';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { Assembly } from '#model/model';
import type { Model } from '#model/resolve';
import { type FramingCounts, framingCounts } from './conventions.ts';
import { explode } from './explode.ts';
import { thicknessOf } from './goods.ts';
import type { Line, Portion, Where } from './lines.ts';
import { ceilingLayer } from './measure/ceiling.ts';
import { laidOnFloor } from './measure/floor.ts';
import { facesOf, isFace, isFrame, isPanel, type Layer, layersOf } from './measure/layers.ts';
import { counted, portion } from './measure/portion.ts';
import { facePortion } from './measure/room-walls.ts';
import { wallLayers } from './measure/wall-layers.ts';
import { plateLength, studLength } from './measure/walls.ts';
import { type Rows, rowsMemory, rowsOf } from './rows.ts';

export interface Sample {
  readonly area: Quantity<'area'>;
  readonly lines: readonly Line[];
  /** Person-hours for each unit of area; undefined where no work gives a rate. */
  readonly labour: Quantity<'time/area'> | undefined;
  /** Goods that no kind of work installs at a rate. */
  readonly withoutLabour: readonly string[];
}

const SPACES = 1000;
const tall = constant('height', 8 * FOOT, 'length', 'common practice: 8 feet high, or wide');
const usualSpacing = constant('spacing', 2 * FOOT, 'length', 'common practice');
const longAs = form('length', 'spaces × spacing', (spaces = 0, spacing = 0) => spaces * spacing);
const stretchArea = form('area of the stretch', 'length × height', (length = 0, height = 0) => length * height);
const each = form('labour', 'person-hours ÷ area', (hours = 0, area = 1) => hours / area);

/** Undefined for assemblies of a roof, which the roof itself frames, and for those that do not say where they are used. */
export function sampleOf(assembly: Assembly, model: Model): Sample | undefined {
  const { main } = layersOf(assembly);
  const length = measure('length', longAs, counted('spaces', SPACES), main?.deeper.at?.value ?? usualSpacing);
  const area = measure('area', stretchArea, length, tall);
  const whole = { net: area, gross: area, openings: [] };
  const where: Where = { element: assembly.slot };
  const layers = layerPortions(assembly, main, length, area, where, framingCounts(model));
  if (layers === undefined) return undefined;
  const portions = [...layers, ...facesOf(assembly).map((goods) => facePortion(goods, whole, where))];
  const lines = explode(portions, rowsIn(model), assembly.name, undefined).lines.filter(({ onlyIfDone }) => onlyIfDone !== true);
  const hours = lines.flatMap(({ hours: time, work }) =>
    time === undefined ? [] : [{ ...time, form: { ...time.form, label: work?.label ?? time.form.label } }],
  );
  return {
    area,
    lines,
    labour: hours.length === 0 ? undefined : measure('time/area', each, total('person-hours', 'time', hours), area),
    withoutLabour: lines.flatMap(({ goods, work, label }) => (goods !== undefined && work === undefined ? [label] : [])),
  };
}

/** The rows of works and goods, put in order once while they are the same. */
function rowsIn(model: Model): Rows {
  const works = model.rows('work');
  let memory = memories.get(works);
  if (memory === undefined) memories.set(works, (memory = rowsMemory()));
  return rowsOf(model, memory);
}
const memories = new WeakMap<readonly unknown[], ReturnType<typeof rowsMemory>>();

/** All but the faces of rooms. */
function layerPortions(
  assembly: Assembly,
  main: Layer | undefined,
  length: Quantity<'length'>,
  area: Quantity<'area'>,
  where: Where,
  counts: FramingCounts,
): readonly Portion[] | undefined {
  const { layer } = assembly.given;
  switch (assembly.given.for?.value) {
    case 'wall':
    case 'partition': {
      const inside = assembly.given.for.value === 'partition';
      const whole = { net: area, gross: area, openings: [] };
      const stretch = { where, area: whole, length, height: studLength(tall, main, counts) };
      return [...framing(main, inside, length, area, where, counts), ...wallLayers(assembly, stretch, [])];
    }
    case 'floor':
      return layer.flatMap((each) => (isFace(each.value) ? [] : floorPortions(each, area, where)));
    case 'ceiling':
      return layer.flatMap((each) => ceilingLayer(each, area, where, []));
    default:
      return undefined;
  }
}

/** Without the rim, which goes by the length round a floor. */
function floorPortions(layer: Layer, area: Quantity<'area'>, where: Where): readonly Portion[] {
  const goods = layer.value;
  if (isPanel(layer)) return [portion('floor-panel-area', where, area, { goods })];
  if (isFrame(layer)) {
    const count = counted('joists', SPACES);
    const filled = layer.deeper['filled with'];
    const frame = measure('length', longAs, count, tall);
    return [
      portion('floor-frame-length', where, frame, { goods, pieces: [{ count, length: tall }] }),
      portion('joist-count', where, count),
      ...(filled === undefined
        ? []
        : [portion('floor-insulation-area', where, area, { goods: filled.value, depth: thicknessOf(goods) })]),
    ];
  }
  return [laidOnFloor(goods, area, where)];
}

function framing(
  main: Layer | undefined,
  inside: boolean,
  length: Quantity<'length'>,
  area: Quantity<'area'>,
  where: Where,
  counts: FramingCounts,
): readonly Portion[] {
  if (main === undefined) return [];
  if (isPanel(main)) return [portion('wall-panel-area', where, area, { goods: main.value })];
  const count = counted('studs', SPACES);
  const plates = measure('length', plateLength, counts.plates, length);
  return [
    portion(inside ? 'partition-stud-count' : 'wall-stud-count', where, count, {
      goods: main.value,
      pieces: [{ count, length: studLength(tall, main, counts) }],
    }),
    portion(inside ? 'partition-plate-length' : 'wall-plate-length', where, plates, { sizes: main.value.sizes }),
  ];
}
