// Floor and ceiling of a room: finish floor and what lies under it, ceiling board, lining and paint, up a slope too.
import { form, measure, type Quantity } from '#kit/quantity';
import { roomSlope } from '#model/facts/room';
import type { FloorShape } from '#model/floor-shape';
import type { Goods, Room } from '#model/model';
import type { Faces, Portion, Where } from '../lines.ts';
import { flatFaces } from './faces.ts';
import { facesOf, isFace } from './layers.ts';
import { inPart, isNothing, laidOf, portion } from './portion.ts';
import type { Finish } from './room.ts';
import { facePortion, tilePortion } from './room-walls.ts';
import { slopedCeilingFaces } from './sloped-faces.ts';

export function floorPortions(shape: FloorShape, finish: Finish, where: Where): readonly Portion[] {
  const { area } = shape;
  const faces: Faces = () => flatFaces(shape, 'floor');
  const at: Where = inPart(where, 'floor');
  return (finish ?? []).flatMap(({ value }) => {
    const layers = value.layers.map((layer) => layer.value);
    const tiled = layers[0] !== undefined && laidOf(layers[0]) === 'tiles';
    return layers.flatMap((goods, index) => {
      if (isNothing(goods)) return [];
      if (tiled) return tilePortion(goods, index, area, at, faces);
      if (index === 0) return [portion('floor-finish-area', at, area, { goods, faces })];
      return [underFloor(goods, at, area, faces)];
    });
  });
}

function underFloor(goods: Goods, where: Where, area: FloorShape['area'], faces: Faces): Portion {
  return laidOf(goods) === 'membrane'
    ? portion('membrane-area', where, area, { goods, otherwise: ['floor-underlay-area'] })
    : portion('floor-underlay-area', where, area, { goods, faces, otherwise: ['membrane-area'] });
}

export const underRoof = form(
  'ceiling under the roof',
  'floor area × √(1 + pitch²)',
  (area = 0, pitch = 0) => area * Math.sqrt(1 + pitch * pitch),
);

/** The board of the level's ceiling unless the room names another, a lining, or none. */
export function ceilingPortions(
  room: Room,
  shape: FloorShape,
  finish: Finish,
  where: Where,
  pitch: Quantity<'slope'> | undefined,
): readonly Portion[] {
  const area = roomSlope(room)?.ceiling ?? (pitch === undefined ? shape.area : measure('area', underRoof, shape.area, pitch));
  const at: Where = inPart(where, 'ceiling');
  const layers = (finish ?? []).flatMap(({ value }) => value.layers.map((layer) => layer.value));
  if (layers.some((goods) => goods.name === 'bare' && goods.of === undefined)) return [];
  const named = layers.filter(isFace);
  const ceiling = room.given.on?.value.given.ceiling?.value;
  const usual = ceiling === undefined ? [] : facesOf(ceiling).slice(0, 1);
  const flat: Faces | undefined =
    area === shape.area
      ? () => flatFaces(shape, 'ceiling')
      : roomSlope(room) === undefined
        ? undefined
        : () => slopedCeilingFaces(room);
  const faces = (named.length > 0 ? named : usual).map((goods) =>
    facePortion(goods, { net: area, gross: area, openings: [] }, at, undefined, flat),
  );
  const coats = layers
    .filter((goods) => laidOf(goods) === 'coats')
    .map((goods) => portion('painted-ceiling-area', at, area, { goods }));
  return [...faces, ...coats];
}
