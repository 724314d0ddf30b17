// Sizes of a room: its lesser side, the floor under enough ceiling, window wells, its dryer duct and trap arm.
import { FOOT } from '#kit/dimension';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Goods, Room } from '#model/model';
import { thicknessOf } from '#takeoff/goods';
import { facesOf, isFace } from '#takeoff/measure/layers';
import { type FactTable, greatest, number, smallest } from './tables.ts';

const lesser = form('lesser side', 'the lesser of width and depth', (width = 0, depth = 0) => Math.min(width, depth));
const slopedArea = (feet: number) =>
  form(
    `floor under ${feet} feet or more`,
    `floor area × (high side − ${feet} ft) ÷ (high side − low side), from nothing to all of it`,
    (area = 0, low = 0, high = 0) => {
      if (low >= feet * FOOT) return area;
      return high <= feet * FOOT ? 0 : (area * (high - feet * FOOT)) / (high - low);
    },
  );
const levelArea = (feet: number) =>
  form(`floor under ${feet} feet or more`, `floor area, where the ceiling is ${feet} ft or more`, (area = 0, height = 0) =>
    height >= feet * FOOT ? area : 0,
  );
const FORMS = { 5: [slopedArea(5), levelArea(5)], 7: [slopedArea(7), levelArea(7)] } as const;

/** Floor with so much height above it. A room that tells no height is taken to have it. */
function areaUnder(feet: 5 | 7, room: Room): Quantity | undefined {
  const { 'floor-area': area, height } = factsOf(room);
  const sloped = room.given.sloped?.value;
  if (area === undefined) return undefined;
  const [slope, level] = FORMS[feet];
  if (sloped !== undefined) return measure('area', slope, area, sloped.low, sloped.high.height);
  return height === undefined ? area : measure('area', level, area, height);
}

const finished = form(
  'finished height',
  'height − what lies on the floor − board and lining overhead',
  (height = 0, floor = 0, ceiling = 0) => height - floor - ceiling,
);

/** What is laid on the floor and under the ceiling takes from the height; goods of unknown thickness take nothing. */
function finishedHeight(room: Room): Quantity | undefined {
  const { given } = room;
  const { height } = factsOf(room);
  if (height === undefined) return undefined;
  const named = goodsIn(given.ceiling);
  const level = given.on?.value.given.ceiling?.value;
  // A board or lining that the room names stands in place of the level's.
  const overhead = named.some(isFace) || level === undefined ? named : [...facesOf(level), ...named];
  return measure('length', finished, height, thickness('on the floor', goodsIn(given.floor)), thickness('overhead', overhead));
}

function goodsIn(line: Room['given']['floor']): readonly Goods[] {
  return line === undefined ? [] : line.value.flatMap(({ value }) => value.layers.map((layer) => layer.value));
}

function thickness(label: string, goods: readonly Goods[]): Quantity<'length'> {
  return total(
    label,
    'length',
    goods.flatMap((each) => thicknessOf(each) ?? []),
  );
}

const wellArea = form('window well', 'width × clear space before the window', (width = 0, out = 0) => width * out);
const halfRound = form(
  'half-round window well',
  'width × clear space before the window × π ÷ 4',
  (width = 0, out = 0) => (width * out * Math.PI) / 4,
);

const fallOf = form('fall of the trap arm', 'length × fall', (long = 0, falls = 0) => long * falls);

export const sizesOfRoom: FactTable<Room> = {
  lines: {
    'least-width': 'size',
    'area-over-5ft': 'size',
    'area-over-7ft': 'sloped',
    'finished-height': 'height',
    'well-area': 'well',
    'well-least': 'well',
    'well-depth': 'well',
    'dryer-run': 'dryer-duct',
    'dryer-pipe': 'dryer-duct',
    'dryer-transition': 'dryer-duct',
    'dryer-from-openings': 'dryer-duct',
    'trap-size': 'trap-arm',
    'trap-long': 'trap-arm',
    'trap-fall': 'trap-arm',
    'tailpiece-down': 'tailpiece',
    'tailpiece-across': 'tailpiece',
  },
  own: {
    'least-width': (room) => {
      const { width, depth } = factsOf(room);
      return width === undefined || depth === undefined ? undefined : measure('length', lesser, width, depth);
    },
    'area-over-5ft': (room) => areaUnder(5, room),
    'area-over-7ft': (room) => areaUnder(7, room),
    'finished-height': finishedHeight,
    longest: (room) => {
      const { width, depth } = factsOf(room);
      return width === undefined || depth === undefined ? undefined : greatest([width, depth]);
    },
    'in-basement': ({ given }) => number('basement', given.on?.value.given.basement === undefined ? 0 : 1),
    'well-area': ({ given }) =>
      smallest(
        given.well.map(({ value: { size, form: round } }) =>
          measure('area', round === undefined ? wellArea : halfRound, size.left, size.right),
        ),
      ),
    'well-least': ({ given }) => smallest(given.well.flatMap(({ value: { size } }) => [size.left, size.right])),
    'well-depth': ({ given }) =>
      greatest(given.well.flatMap(({ value: { deep, way } }) => (deep === undefined || way !== undefined ? [] : [deep]))),
    'dryer-run': ({ given }) => given['dryer-duct']?.value.long,
    'dryer-pipe': ({ given }) => given['dryer-duct']?.deeper.across?.value,
    'dryer-transition': ({ given }) => given['dryer-duct']?.deeper.transition?.value,
    'dryer-from-openings': ({ given }) => given['dryer-duct']?.deeper['from openings']?.value,
    'dryer-elbows': ({ given }) => number('elbows', given['dryer-duct']?.value.elbows ?? 0),
    'dryer-bends': ({ given }) => number('bends', given['dryer-duct']?.value.bends ?? 0),
    'tailpiece-down': ({ given }) => given.tailpiece?.value.down,
    'tailpiece-across': ({ given }) => given.tailpiece?.value.across,
    'trap-size': ({ given }) => given['trap-arm']?.value.size,
    'trap-long': ({ given }) => given['trap-arm']?.value.long,
    'trap-fall': ({ given }) => {
      const arm = given['trap-arm'];
      const falls = arm?.deeper.falls?.value;
      return arm === undefined || falls === undefined ? undefined : measure('length', fallOf, arm.value.long, falls);
    },
  },
};
