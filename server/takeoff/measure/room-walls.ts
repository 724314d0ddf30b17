// The walls of a room: board by face, lining, tile, paint, and the base at their foot. The assemblies give the board; what
// the room names replaces it; tile takes paint away, and tile on a backer takes the board behind it away too.
import { type Finding, finding } from '#kit/finding';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { roomHeight, roomShape, roomSlope } from '#model/facts/room';
import type { FloorShape } from '#model/floor-shape';
import type { Goods, Room } from '#model/model';
import { itemText, materialOf } from '../goods.ts';
import type { Face, Faces, Portion, Where } from '../lines.ts';
import { heightMissing } from '../problems.ts';
import { asStretch, closetFaces, roomFaces, toldFaces, type Where as Which, without as withoutStretches } from './faces.ts';
import { facesOf, isFace } from './layers.ts';
import type { Beside } from './layout.ts';
import { type Held, type Net, netOf, openingsOf } from './openings.ts';
import { closetWalls } from './partitions.ts';
import { inPart, isNothing, laidOf, portion } from './portion.ts';
import type { Finish, Finishes } from './room.ts';
import type { RoomContext } from './room-context.ts';
import { slopedWallFaces } from './sloped-faces.ts';
import type { Hung } from './wall-parts.ts';

type Area = Quantity<'area'>;
type Length = Quantity<'length'>;

const lessOpen = form('length of wall', 'perimeter − stretches without a wall', (perimeter = 0, ...open) =>
  Math.max(
    0,
    open.reduce((rest, length) => rest - length, perimeter),
  ),
);
const withClosets = form('length of wall', 'wall + 2 × walls of closets inside', (wall = 0, ...closets) =>
  closets.reduce((sum, length) => sum + 2 * length, wall),
);
const surface = form('wall surface', 'length × height', (length = 0, height = 0) => length * height);
const lessOthers = form('rest of the walls', 'walls − other finishes', (walls = 0, ...others) =>
  Math.max(
    0,
    others.reduce((rest, area) => rest - area, walls),
  ),
);
const lessWidths = form('base', 'wall − openings to the floor', (wall = 0, ...widths) =>
  Math.max(
    0,
    widths.reduce((rest, width) => rest - width, wall),
  ),
);
const manyWidths = form('openings to the floor', 'count × width', (count = 0, width = 0) => count * width);

/** How long the walls of a room are; and each by itself where the plan tells them so. */
export interface Around {
  readonly perimeter: Length;
  readonly told: readonly Length[];
}

export function wallsAround(room: Room, shape: FloorShape | undefined): Around | undefined {
  if (shape !== undefined) return { perimeter: shape.perimeter, told: [] };
  const told = room.given['wall-lengths']?.value.map(({ value }) => value) ?? [];
  return told.length === 0 ? undefined : { perimeter: total('length of wall', 'length', told), told };
}

export function baseAndWalls(
  room: Room,
  { perimeter, told }: Around,
  finishes: Finishes,
  context: RoomContext,
  where: Where,
  findings: Finding[],
): readonly Portion[] {
  const own = openingsOf(room);
  // A closet has its front inside the room and its back inside the closet: both are walls of this room.
  const held = [...own, ...own.filter(({ inCloset }) => inCloset), ...context.incoming];
  const closets = closetWalls(room);
  const outer = context.open.length === 0 ? perimeter : measure('length', lessOpen, perimeter, ...context.open);
  const length = closets.length === 0 ? outer : measure('length', withClosets, outer, ...closets);
  const base = basePortions(finishes.base, length, held, where);
  const height = roomSlope(room)?.height ?? roomHeight(room);
  if (height === undefined) {
    if (finishes.walls !== undefined || room.given.on?.value.given.walls !== undefined)
      findings.push(finding(heightMissing, room.place, room.label));
    // What is given by area needs no height.
    return [...tiledParts(room, finishes.walls, length, undefined, held, inPart(where, 'walls')).portions, ...base];
  }
  const area = netOf(measure('area', surface, length, height), held);
  const surfaces = told.length > 1 && held.length === 0 ? told.map((one) => measure('area', surface, one, height)) : undefined;
  const at: Where = inPart(where, 'walls');
  const tiled = tiledParts(room, finishes.walls, length, height, held, at);
  return [
    ...boardPortions(
      room,
      finishes.walls,
      context,
      { length, height, area, surfaces, held, behind: tiled.behind, faces: wallFaces(room, told, height, context) },
      at,
    ),
    ...tiled.portions,
    ...paintPortions(finishes.walls, area, tiled.areas, at),
    ...base,
  ];
}

/** Its walls one by one, those of its closets among them; or only a part of them. */
type OwnFaces = (which?: Which) => readonly Face[];

function wallFaces(room: Room, told: readonly Length[], height: Length, context: RoomContext): OwnFaces | undefined {
  if (roomSlope(room) !== undefined) return context.beside.some(({ open }) => open) ? undefined : () => slopedWallFaces(room);
  return (which = { less: [] }) => {
    const shape = roomShape(room);
    const [inClosets, own] = [openingsOf(room).filter(isInCloset), openingsOf(room).filter((each) => !isInCloset(each))];
    const incoming = context.incoming.map((held, nth) => ({
      held: { ...held, side: undefined, at: [] },
      leads: context.incomingFrom[nth],
    }));
    const hung: readonly Hung[] = [...own.map((held) => ({ held, leads: held.to })), ...incoming];
    const walls = shape === undefined ? toldFaces(told, height, hung) : roomFaces(shape, height, hung, context.beside, which);
    return 'only' in which ? walls : [...walls, ...closetFaces(room, closetWalls(room), height, inClosets)];
  };
}

const isInCloset = ({ inCloset }: Held): boolean => inCloset;

function basePortions(base: Finishes['base'], length: Length, held: readonly Held[], where: Where): readonly Portion[] {
  if (base === undefined || isNothing(base.value)) return [];
  const widths = held.flatMap(({ type, count, width }) => {
    if (type?.kind === 'window' || width === undefined) return [];
    return [count.value === 1 ? width : measure('length', manyWidths, count, width)];
  });
  const net = widths.length === 0 ? length : measure('length', lessWidths, length, ...widths);
  return [portion('base-length', inPart(where, 'base'), net, { goods: base.value })];
}

interface Walls {
  readonly length: Length;
  readonly height: Length;
  readonly area: Net;
  readonly surfaces: readonly Area[] | undefined;
  readonly held: readonly Held[];
  readonly faces: OwnFaces | undefined;
  /** Areas whose own backer takes the place of the board. */
  readonly behind: readonly Area[];
}

function boardPortions(room: Room, finish: Finish, context: RoomContext, walls: Walls, where: Where): readonly Portion[] {
  const groups = (finish ?? []).map(({ value }) => value);
  const layers = groups.flatMap((group) => group.layers.map(({ value }) => value));
  if (layers.some((goods) => goods.name === 'bare' && goods.of === undefined)) return [];
  const whole: Goods[] = [];
  const parts: { goods: Goods; area: Area }[] = [];
  for (const group of groups) {
    for (const { value: goods } of group.layers) {
      if (!isFace(goods)) continue;
      if (group.to === undefined) whole.push(goods);
      else parts.push({ goods, area: tileArea(walls.length, group.to, walls.held) });
    }
  }
  const low = parts.map(({ goods, area }) => facePortion(goods, netOf(area, []), inPart(where, 'foot of the walls')));
  const taken = [...walls.behind, ...parts.map(({ area }) => area)];
  const { surfaces } = walls;
  const { faces } = walls;
  if (whole.length > 0)
    return [
      ...whole.map((goods) =>
        facePortion(goods, without(walls.area, taken), where, surfaces, lessAreas(room, faces, taken, walls.height)),
      ),
      ...low,
    ];
  const usual = usualFaces(room, context, walls);
  return [
    ...usual.map(({ goods, area, faces: own }, index) =>
      index === 0
        ? facePortion(goods, without(area, taken), where, surfaces, lessAreas(room, own, taken, walls.height))
        : facePortion(goods, area, where, surfaces, lessAreas(room, own, [], walls.height)),
    ),
    ...low,
  ];
}

/** Takes tiled areas out of a wall's surface, gross and net alike. */
function without(area: Net, areas: readonly Area[]): Net {
  if (areas.length === 0) return area;
  return {
    ...area,
    net: measure('area', lessOthers, area.net, ...areas),
    gross: measure('area', lessOthers, area.gross, ...areas),
  };
}

/** Its rectangles without what is covered otherwise, as stretches of full height. */
function lessAreas(room: Room, faces: OwnFaces | undefined, areas: readonly Area[], height: Length): Faces | undefined {
  if (faces === undefined) return undefined;
  if (areas.length === 0) return () => faces();
  // Walls under a slope are no rectangles that a stretch could be taken from.
  if (roomSlope(room) !== undefined) return undefined;
  return () =>
    withoutStretches(
      faces(),
      areas.map((area) => asStretch(area, height)),
    );
}

export function facePortion(goods: Goods, area: Net, where: Where, surfaces?: readonly Area[], faces?: Faces): Portion {
  const lining = materialOf(goods)?.given['serves as']?.value === 'lining';
  return portion(lining ? 'lining-area' : 'board-area', where, area.net, {
    gross: area.gross,
    openings: area.openings,
    goods,
    surfaces,
    faces,
  });
}

/** The faces that the assemblies give: one make all round, or the outside wall's and the inside walls' apart. */
function usualFaces(
  room: Room,
  context: RoomContext,
  walls: Walls,
): readonly { goods: Goods; area: Net; faces: OwnFaces | undefined }[] {
  const level = room.given.on?.value;
  const outer = level?.given.walls === undefined ? undefined : facesOf(level.given.walls.value)[0];
  const inner = level?.given.partitions === undefined ? undefined : facesOf(level.given.partitions.value)[0];
  const others = new Map<string, { goods: Goods; lengths: Length[]; beside: Beside[] }>();
  const usual = outer ?? inner;
  for (const { assembly, side, length, beside } of context.faces) {
    const faces = facesOf(assembly);
    const goods = side === 'first' ? faces[0] : faces[faces.length - 1];
    if (goods === undefined || (usual !== undefined && itemText(goods) === itemText(usual))) continue;
    const other = others.get(itemText(goods));
    if (other === undefined) others.set(itemText(goods), { goods, lengths: [length], beside: [beside] });
    else {
      other.lengths.push(length);
      other.beside.push(beside);
    }
  }
  if (usual === undefined) return [];
  if (others.size === 0) return [{ goods: usual, area: walls.area, faces: walls.faces }];
  const own = walls.faces;
  const parts = [...others.values()].map(({ goods, lengths, beside }) => ({
    goods,
    area: netOf(measure('area', surface, total('inside walls', 'length', lengths), walls.height), []),
    faces: own === undefined ? undefined : () => own({ only: beside }),
  }));
  const taken = [...others.values()].flatMap(({ beside }) => beside);
  // Openings are taken from the usual board; only where a single wall is of another make could it matter which.
  return [
    {
      goods: usual,
      area: without(
        walls.area,
        parts.map(({ area }) => area.net),
      ),
      faces: own === undefined ? undefined : () => own({ less: taken }),
    },
    ...parts,
  ];
}

interface Tiled {
  readonly portions: readonly Portion[];
  /** Every tiled area: it is not painted. */
  readonly areas: readonly Area[];
  /** Those with a backer of their own. */
  readonly behind: readonly Area[];
}

/** Tile to a height, wet walls, and splashes. */
function tiledParts(
  room: Room,
  finish: Finish,
  length: Length,
  height: Length | undefined,
  held: readonly Held[],
  where: Where,
): Tiled {
  const portions: Portion[] = [];
  const areas: Area[] = [];
  const behind: Area[] = [];
  const addTile = (area: Area, layers: readonly Goods[], part: string): void => {
    const at = inPart(where, part);
    portions.push(...layers.flatMap((goods, index) => tilePortion(goods, index, area, at)));
    areas.push(area);
    if (layers.some((goods, index) => index > 0 && isBacker(goods))) behind.push(area);
  };
  for (const { value } of finish ?? []) {
    const layers = value.layers.map((layer) => layer.value);
    if (layers[0] === undefined || laidOf(layers[0]) !== 'tiles') continue;
    const to = value.to ?? height;
    if (to !== undefined) addTile(tileArea(length, to, held), layers, 'walls');
  }
  for (const { value } of room.given.wet)
    addTile(
      value.area,
      [...value.layers.map((layer) => layer.value), ...(value.behind ?? []).map((layer) => layer.value)],
      'wet walls',
    );
  for (const { value } of room.given.tile) addTile(value.area, [value.of], 'splash');
  return { portions, areas, behind };
}

function isBacker(goods: Goods): boolean {
  return laidOf(goods) === 'sheets' && !isFace(goods);
}

/** A layer of tiled work: the tile, then what lies behind or under it. */
export function tilePortion(goods: Goods, index: number, area: Area, where: Where, faces?: Faces): readonly Portion[] {
  if (isNothing(goods)) return [];
  switch (laidOf(goods)) {
    case 'membrane':
      return [portion('membrane-area', where, area, { goods })];
    case 'sheets':
      return [portion('tile-backer-area', where, area, { goods, faces, otherwise: ['floor-underlay-area', 'board-area'] })];
    default:
      return [portion(index === 0 ? 'tile-area' : 'membrane-area', where, area, { goods, faces })];
  }
}

const below = form('tile', 'length × height − openings below it', (length = 0, height = 0, ...openings) =>
  Math.max(
    0,
    openings.reduce((rest, area) => rest - area, length * height),
  ),
);
const covered = form(
  'opening below the tile',
  'count × width × (the lower of its head and the tile − its sill)',
  (count = 0, width = 0, height = 0, sill = 0, to = 0) => count * width * Math.max(0, Math.min(sill + height, to) - sill),
);
function tileArea(length: Length, to: Length, held: readonly Held[]): Area {
  const openings = held.flatMap(({ type, count, width, height }) => {
    if (width === undefined || height === undefined) return [];
    const sill = (type?.kind === 'window' ? type.given.sill?.value : undefined) ?? floorSill;
    return [measure('area', covered, count, width, height, sill, to)];
  });
  return measure('area', below, length, to, ...openings);
}
const floorSill = measure(
  'length',
  form('sill', 'at the floor', () => 0),
);

function paintPortions(finish: Finish, area: Net, tiled: readonly Area[], where: Where): readonly Portion[] {
  const coats = (finish ?? [])
    .flatMap(({ value }) => value.layers.map((layer) => layer.value))
    .filter((goods) => laidOf(goods) === 'coats');
  const rest = without(area, tiled);
  return coats.map((goods) =>
    portion('painted-wall-area', where, rest.net, { gross: rest.gross, openings: area.openings, goods }),
  );
}
