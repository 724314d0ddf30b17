// Which elements are measured, in plan order, and from what: each part with all that its numbers depend on, so that it is
// measured anew only when one of them is another object.
import { sameList } from '#kit/differing';
import type { Point } from '#kit/shapes/outline';
import type { Element, Foundation, Level, Roof, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { type FramingCounts, framingCounts, highVents, stairCounts, widestPartition } from './conventions.ts';
import { itemText } from './goods.ts';
import { bayRoofMissing, baysLackRoof, measureBayRoof } from './measure/bay-roof.ts';
import { measureCeiling } from './measure/ceiling.ts';
import { measureCrawl } from './measure/crawl.ts';
import { measureDeck } from './measure/deck.ts';
import { measureDryWell } from './measure/dry-well.ts';
import { measureExtra } from './measure/extra.ts';
import { measureFloor } from './measure/floor.ts';
import { measureFoundation } from './measure/foundation.ts';
import { measureHouse } from './measure/house.ts';
import { type Layout, layoutOf, sameRuns } from './measure/layout.ts';
import { openingsOf } from './measure/openings.ts';
import { levelOutlineFindings } from './measure/outline-findings.ts';
import { measureOverhang } from './measure/overhang.ts';
import { type WallOpening, wallOpenings } from './measure/panel-layout.ts';
import { closetWalls, measurePartitions } from './measure/partitions.ts';
import { measureRim } from './measure/rim.ts';
import { measureRoof } from './measure/roof.ts';
import { measureRoom } from './measure/room.ts';
import { insideOpenings, outsideSpots, type RoomContext, type Rooms, roomContext, roomsOf } from './measure/room-context.ts';
import { measureRunIn } from './measure/run-in-roof.ts';
import { measureSite } from './measure/site.ts';
import { measureStair } from './measure/stair.ts';
import { measureTrench } from './measure/trench.ts';
import { measureWalls } from './measure/walls.ts';
import type { Measuring, TakeOffMemory } from './memory.ts';
import { itemBy, longestBy, type Rows } from './rows.ts';
import { type Storey, storeysOf } from './storeys.ts';

/** Everything to be measured, in plan order. What is as it was is the same object as before. */
export function measurings(model: Model, rows: Rows, memory: TakeOffMemory): readonly Measuring[] {
  const site = model.list('site')[0];
  const dug = itemBy(rows, 'excavation-volume');
  const filled = itemBy(rows, 'fill-volume');
  const plate = longestBy(rows, 'sill-length');
  const foundations = model.list('foundation');
  const found: Measuring[] = [];
  const add = (element: Element, index: number, inputs: readonly unknown[], measure: Measuring['measure']): void => {
    found.push(keptWhole(element, index, inputs, measure, memory));
  };
  const { plan } = model;
  if (plan !== undefined) add(plan, 1, [plan], () => measureHouse(plan));
  for (const [index, each] of model.list('site').entries()) {
    const level = houseLevel(model.list('level'), foundations);
    add(each, index, [each, level, filled], () => measureSite(each, level, filled));
  }
  for (const [index, each] of model.list('trench').entries()) add(each, index, [each], () => measureTrench(each));
  for (const [index, each] of model.list('dry-well').entries()) add(each, index, [each], () => measureDryWell(each));
  for (const [index, each] of foundations.entries())
    add(each, index, [each, site, dug, plate], () => measureFoundation(each, site, dug, plate));
  for (const [index, each] of model.list('crawl').entries()) {
    const walls = foundations.find(({ given }) => given.wall !== undefined && given.under?.value === each.given.under?.value);
    add(each, index, [each, walls], () => measureCrawl(each, walls));
  }
  const counts = framingCounts(model);
  const steps = stairCounts(model);
  const widest = widestPartition(model);
  const high = highVents(model);
  for (const storey of storeysOf(model, memory.storeys))
    for (const each of keptStorey(storey, counts, widest, memory)) found.push(each);
  for (const [index, each] of model.list('roof').entries()) {
    const { into } = each.given;
    if (into !== undefined) {
      const main = model.list('roof').find(({ slot, given }) => slot === into.value.roof && given.into === undefined);
      add(each, index, [each, main], () => measureRunIn(each, main));
      continue;
    }
    if (each.given['over bays of'] !== undefined) {
      add(each, index, [each], () => measureBayRoof(each));
      continue;
    }
    const upper = storeyUpon(each, model.list('level'));
    const others = model.list('roof').filter(({ given }) => given.into?.value.roof === each.slot);
    add(each, index, [each, counts, high, upper, ...others], () => measureRoof(each, counts, high, upper, others));
  }
  for (const [index, each] of model.list('level').entries())
    if (baysLackRoof(each, model.list('roof'), model.list('level'))) add(each, index, [each], () => bayRoofMissing(each));
  for (const [index, each] of model.list('deck').entries()) add(each, index, [each, steps], () => measureDeck(each, steps));
  for (const [index, each] of model.list('stair').entries()) add(each, index, [each, steps], () => measureStair(each, steps));
  for (const [index, each] of model.list('extra').entries()) add(each, index, [each], () => measureExtra(each));
  return inPlanOrder(found, model, memory);
}

/** The order of the last look: which parts there were, as found and as they stand in the plan. */
export interface OrderMemory {
  readonly places: unknown;
  readonly found: readonly Measuring[];
  /** Where each of those found stands. */
  readonly ranks: Int32Array;
  readonly ordered: readonly Measuring[];
}

/** The same list as before while its members are; where only some are others of the same elements, they take their places. */
function inPlanOrder(found: readonly Measuring[], model: Model, memory: TakeOffMemory): readonly Measuring[] {
  const before = memory.order;
  const places = model.names.order;
  if (before?.places === places && before.found.length === found.length) {
    let ordered: Measuring[] | undefined;
    let at = 0;
    for (; at < found.length; at++) {
      const [old, now] = [before.found[at]!, found[at]!];
      if (old === now) continue;
      if (old.slot !== now.slot) break;
      ordered ??= before.ordered.slice();
      ordered[before.ranks[at]!] = now;
    }
    if (at === found.length) {
      if (ordered === undefined) return before.ordered;
      memory.order = { ...before, found, ordered };
      return ordered;
    }
  }
  const count = found.length;
  // One number for place and index, so that numbers are sorted and not pairs.
  const keys = Float64Array.from(found, ({ slot }, index) => (places.get(slot) ?? 0) * count + index).sort();
  const ranks = new Int32Array(count);
  const ordered = Array.from(keys, (key, rank) => {
    const index = key % count;
    ranks[index] = rank;
    return found[index]!;
  });
  memory.order = { places, found, ranks, ordered };
  return ordered;
}

function keptWhole(
  element: Element,
  index: number,
  inputs: readonly unknown[],
  measure: Measuring['measure'],
  memory: TakeOffMemory,
): Measuring {
  const scope = scopeOf(element, index);
  const kept = memory.wholes.get(element.slot);
  if (kept !== undefined && kept.scope === scope && sameList(kept.inputs, inputs)) return kept;
  const made = { slot: element.slot, part: '', scope, place: element.place, inputs, measure };
  memory.wholes.set(element.slot, made);
  return made;
}

/** Rooms go by their name, everything else by kind and name; what has no name by its number within its kind in the plan. */
function scopeOf(element: Element, index: number): string {
  if (element.kind === 'room') return element.name;
  const nameless = /^\d/.test(element.name);
  return `${element.kind}.${nameless ? index + 1 : element.name}`;
}

/** The level that stands on the ground: one with a foundation under it, else the first. */
function houseLevel(levels: readonly Level[], foundations: readonly Foundation[]): Level | undefined {
  return levels.find((level) => foundations.some(({ given }) => given.under?.value === level)) ?? levels[0];
}

/** A storey that stands on the level of a roof which does not say how large it is. */
function storeyUpon({ given: { over, size, beside } }: Roof, levels: readonly Level[]): Level | undefined {
  const slot = size === undefined && beside === undefined ? over?.value.slot : undefined;
  return slot === undefined ? undefined : levels.find(({ given }) => given.on?.value === slot);
}

function keptStorey(storey: Storey, counts: FramingCounts, widest: number, memory: TakeOffMemory): readonly Measuring[] {
  let kept = memory.storeyParts.get(storey);
  if (kept?.counts !== counts || kept.widest !== widest)
    memory.storeyParts.set(storey, (kept = { counts, widest, parts: storeyParts(storey, counts, widest, memory) }));
  return kept.parts;
}

function storeyParts(storey: Storey, counts: FramingCounts, widest: number, memory: TakeOffMemory): readonly Measuring[] {
  const { level } = storey;
  const rooms = roomsOf(storey.known);
  const layout = level === undefined ? nowhere : keptLayout(level, storey, widest, memory);
  const ofLevel = level === undefined ? [] : levelParts(level, storey, rooms, layout, counts);
  return [...ofLevel, ...storey.rooms.map((room) => roomPart(room, rooms, layout, storey))];
}

function keptLayout(level: Level, { rooms, walls }: Storey, widest: number, memory: TakeOffMemory): Layout {
  const fresh = layoutOf(level, rooms, walls, widest);
  const before = memory.runs.get(level.slot);
  const layout = before === undefined ? fresh : { ...fresh, runs: sameRuns(fresh.runs, before) };
  memory.runs.set(level.slot, layout.runs);
  return layout;
}

function levelParts(
  level: Level,
  { rooms, walls, panels, sill, vault, below }: Storey,
  all: Rooms,
  layout: Layout,
  counts: FramingCounts,
): readonly Measuring[] {
  const scope = scopeOf(level, 0);
  const part = (name: string, inputs: readonly unknown[], measure: Measuring['measure']): Measuring => ({
    slot: level.slot,
    part: name,
    scope,
    place: level.place,
    inputs,
    measure,
  });
  const outside = rooms.flatMap((room) => openingsOf(room).filter((opening) => opening.outside));
  const spots = rooms.flatMap((room) => outsideSpots(room, layout.beside.get(room.slot) ?? []));
  const openings = panels === undefined ? NO_OPENINGS : wallOpenings(rooms);
  const crossings = layout.runs.reduce((sum, run) => sum + run.outside, 0);
  const inside = insideOpenings(rooms, all);
  const closets = rooms.flatMap(closetWalls);
  const sloped = rooms.filter((room) => room.given.sloped !== undefined);
  return [
    part('outline', [level], () => ({ portions: [], findings: levelOutlineFindings(level) })),
    part('floor', [level], () => measureFloor(level)),
    part('overhang', [level, below], () => measureOverhang(level, below)),
    part('walls', [level, counts, panels, crossings, sill, placesOf(openings), spotsText(spots), ...outside], () =>
      measureWalls(level, outside, crossings, panels, sill, counts, openings, spots),
    ),
    part('rim', [level, counts, sill], () => measureRim(level, sill, counts)),
    part(
      'partitions',
      [
        level,
        counts,
        rooms.length > 1,
        layout.placed,
        layout.runs,
        closets.length,
        ...closets,
        walls.length,
        ...walls,
        ...inside.flatMap(({ room, opening }) => [room, opening]),
      ],
      () =>
        measurePartitions(
          level,
          { rooms: rooms.length, closets, placed: layout.placed, runs: layout.runs },
          walls,
          inside,
          counts,
        ),
    ),
    part('ceiling', [level, vault, ...sloped], () => measureCeiling(level, vault, sloped)),
  ];
}

function spotsText(spots: readonly (Point | undefined)[]): string {
  return spots.map((spot) => (spot === undefined ? '' : `${spot.x} ${spot.y}`)).join();
}

const NO_OPENINGS: readonly WallOpening[] = [];
/** Where openings stand, as one value that is the same while they do. */
function placesOf(openings: readonly WallOpening[]): string {
  return openings.map(({ side, from, to }) => `${side} ${from} ${to}`).join();
}

function roomPart(room: Room, rooms: Rooms, layout: Layout, { vault, level }: Storey): Measuring {
  const context = roomContext(room, rooms, layout, vault, level?.given.casing?.value);
  const { finishes, incoming, told, open, faces, casing, behind } = context;
  const inputs = [
    finishes.length,
    ...finishes,
    incoming.length,
    ...incoming,
    ...context.incomingFrom,
    told.length,
    ...told,
    ...behind,
    open.length,
    ...open,
    ...faces.flatMap(({ assembly, side, length }) => [assembly, side, length]),
    ...context.beside.map(({ room: other }) => other),
    besideText(context.beside),
    context.pitch,
    casing?.of,
    casing === undefined ? undefined : itemText(casing),
  ];
  return {
    slot: room.slot,
    part: '',
    scope: scopeOf(room, 0),
    place: room.place,
    inputs,
    measure: () => measureRoom(room, context),
  };
}

/** Where other rooms lie along a room, as one value that is the same while they do. */
function besideText(beside: RoomContext['beside']): string {
  return beside.map(({ ends: [from, to], open }) => `${from.x} ${from.y} ${to.x} ${to.y} ${open}`).join();
}

const nowhere: Layout = { placed: false, runs: [], faces: new Map(), open: new Map(), beside: new Map() };
