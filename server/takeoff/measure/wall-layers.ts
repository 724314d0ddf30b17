// The layers of a wall as portions: what each sort of goods is counted by. The library's works have the last word, since a
// sheet may be sheathing, insulation or cladding; what faces a room is counted with the room.
import { type Finding, finding } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import type { Assembly } from '#model/model';
import { inSpace, thicknessOf } from '../goods.ts';
import type { Faces, Measure, Portion, Where } from '../lines.ts';
import { spacingMissing } from '../problems.ts';
import { isFace, isFrame, isPanel, type Layer, layersOf } from './layers.ts';
import type { Net } from './openings.ts';
import { laidOf, portion } from './portion.ts';
import { piecesAlong } from './runs.ts';

/** A stretch of wall: its surface, and the length and height that its uprights stand in. */
export interface Stretch {
  readonly where: Where;
  readonly area: Net;
  readonly length: Quantity<'length'>;
  /** How tall uprights are on average. */
  readonly height: Quantity<'length'>;
  /** And those outside the framing, where they run on down over the rim of the floor. */
  readonly outside?: Quantity<'length'>;
  /** The walls that it is made of. */
  readonly faces?: Faces;
}

const counts: { readonly [laid: string]: readonly [Measure, ...Measure[]] } = {
  sheets: ['wall-sheathing-area', 'wall-foam-area', 'wall-cladding-area'],
  membrane: ['wall-barrier-area'],
  rolls: ['wall-barrier-area'],
  batts: ['wall-insulation-area'],
  loose: ['wall-insulation-area'],
  coats: ['outside-paint-area'],
  boards: ['wall-cladding-area', 'wall-sheathing-area'],
};
const cladding: readonly [Measure, ...Measure[]] = ['wall-cladding-area'];

/** Everything of an assembly but its main framing and the faces of rooms. */
export function wallLayers(assembly: Assembly, stretch: Stretch, findings: Finding[]): readonly Portion[] {
  const { before, main } = layersOf(assembly);
  const filling = main === undefined || isPanel(main) ? [] : fillingOf(main, stretch);
  const inside = before.filter(({ value }) => !isFace(value)).flatMap((layer) => layerPortions(layer, stretch, findings));
  return [...filling, ...inside, ...outerLayers(assembly, stretch, findings)];
}

/** Only what lies outside the framing: what a gable carries. */
export function outerLayers(assembly: Assembly, stretch: Stretch, findings: Finding[]): readonly Portion[] {
  const outside = stretch.outside === undefined ? stretch : { ...stretch, height: stretch.outside };
  return layersOf(assembly)
    .after.filter(({ value }) => !isFace(value))
    .flatMap((layer) => layerPortions(layer, outside, findings));
}

function layerPortions(layer: Layer, stretch: Stretch, findings: Finding[]): readonly Portion[] {
  if (isFrame(layer)) return [...uprights(layer, stretch, findings), ...fillingOf(layer, stretch)];
  const [first, ...otherwise] = counts[laidOf(layer.value) ?? ''] ?? cladding;
  return [surface(first, layer, stretch, otherwise)];
}

function surface(measure: Measure, layer: Layer, { where, area, faces }: Stretch, otherwise: readonly Measure[]): Portion {
  return portion(measure, where, area.net, {
    gross: area.gross,
    openings: area.openings,
    faces,
    goods: layer.value,
    face: layer.deeper['to the weather']?.value,
    otherwise: otherwise.length === 0 ? undefined : otherwise,
  });
}

/** Battens: one at each space along the wall, as tall as it is. */
function uprights(layer: Layer, { where, length, height }: Stretch, findings: Finding[]): readonly Portion[] {
  const spacing = layer.deeper.at?.value;
  if (spacing === undefined) {
    findings.push(finding(spacingMissing, layer.place, layer.value.name));
    return [];
  }
  const count = piecesAlong(length, spacing);
  return [portion('wall-stud-count', where, count, { goods: layer.value, pieces: [{ count, length: height }] })];
}

export function fillingOf(layer: Layer, { where, area }: Pick<Stretch, 'where' | 'area'>): readonly Portion[] {
  const filled = layer.deeper['filled with'];
  if (filled === undefined) return [];
  return [
    portion('wall-insulation-area', where, area.net, {
      gross: area.gross,
      openings: area.openings,
      goods: inSpace(filled.value, layer.deeper.at?.value, thicknessOf(layer.value)),
      depth: thicknessOf(layer.value),
    }),
  ];
}

/** A clad wall may be painted where no layer names a paint: it counts if somebody does that. */
export function paintable(assembly: Assembly, { where, area }: Stretch): readonly Portion[] {
  const { after } = layersOf(assembly);
  if (after.length === 0 || after.some(({ value }) => laidOf(value) === 'coats')) return [];
  return [portion('outside-paint-area', where, area.net, { gross: area.gross, openings: area.openings, onlyIfDone: true })];
}
