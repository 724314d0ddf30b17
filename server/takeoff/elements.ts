// Which elements are measured, in plan order, and from what: each part with all that its numbers depend on, so that it is
// measured anew only when one of them is another object.
import type { Slot } from '#kit/place';
import type { Element, ElementOf, Foundation, Level, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { measureCeiling } from './measure/ceiling.ts';
import { measureCrawl } from './measure/crawl.ts';
import { measureDeck } from './measure/deck.ts';
import { measureDryWell } from './measure/dry-well.ts';
import { measureFloor } from './measure/floor.ts';
import { measureFoundation } from './measure/foundation.ts';
import { measureHouse } from './measure/house.ts';
import { type Layout, layoutOf, sameRuns, type Wall } from './measure/layout.ts';
import { openingsOf } from './measure/openings.ts';
import { closetWalls, measurePartitions } from './measure/partitions.ts';
import { measureRoof } from './measure/roof.ts';
import { measureRoom, walkFindings } from './measure/room.ts';
import { insideOpenings, type Rooms, roomContext, roomsOf } from './measure/room-context.ts';
import { measureSite } from './measure/site.ts';
import { measureTrench } from './measure/trench.ts';
import { measureWalls } from './measure/walls.ts';
import type { Measuring, TakeOffMemory } from './memory.ts';
import { itemBy, type Rows, sameList } from './rows.ts';

/** Everything to be measured, in plan order. */
export function measurings(model: Model, rows: Rows, memory: TakeOffMemory): readonly Measuring[] {
  const list = model.list('room');
  if (memory.rooms?.list !== list) memory.rooms = roomsOf(list);
  const rooms = memory.rooms;
  const onLevel = roomsByLevel(list);
  const layouts = new Map<Slot, Layout>();
  for (const level of model.list('level'))
    layouts.set(level.slot, keptLayout(level, onLevel.get(level.slot) ?? [], wallsOn(level, model.list('wall'), rooms), memory));
  const site = model.list('site')[0];
  const dug = itemBy(rows, 'excavation-volume');
  const foundations = model.list('foundation');
  const found: Measuring[] = [
    ...(model.plan === undefined ? [] : [whole(model.plan, 1, [model.plan], () => measureHouse(model.plan!))]),
    ...model.list('site').map((each, index) => {
      const level = houseLevel(model.list('level'), foundations);
      return whole(each, index, [each, level], () => measureSite(each, level));
    }),
    ...model.list('trench').map((each, index) => whole(each, index, [each], () => measureTrench(each))),
    ...model.list('dry-well').map((each, index) => whole(each, index, [each], () => measureDryWell(each))),
    ...foundations.map((each, index) => whole(each, index, [each, site, dug], () => measureFoundation(each, site, dug))),
    ...model.list('crawl').map((each, index) => {
      const walls = foundations.find(({ given }) => given.wall !== undefined && given.under?.value === each.given.under?.value);
      return whole(each, index, [each, walls], () => measureCrawl(each, walls));
    }),
    ...model
      .list('level')
      .flatMap((level) => levelParts(level, onLevel.get(level.slot) ?? [], rooms, layouts.get(level.slot)!, model)),
    ...list.map((room) => roomPart(room, rooms, layouts)),
    ...model.list('roof').map((each, index) => whole(each, index, [each], () => measureRoof(each))),
    ...model.list('deck').map((each, index) => whole(each, index, [each], () => measureDeck(each))),
  ];
  const { order } = model.names;
  return found
    .map((each, index) => ({ each, index, at: order.get(each.slot) ?? 0 }))
    .sort((a, b) => a.at - b.at || a.index - b.index)
    .map(({ each }) => each);
}

function whole(element: Element, index: number, inputs: readonly unknown[], measure: Measuring['measure']): Measuring {
  return { slot: element.slot, part: '', scope: scopeOf(element, index), place: element.place, inputs, measure };
}

/** Rooms go by their name, everything else by kind and name; what has no name by its number within its kind in the plan. */
function scopeOf(element: Element, index: number): string {
  if (element.kind === 'room') return element.name;
  const nameless = /^\d/.test(element.name);
  return `${element.kind}.${nameless ? index + 1 : element.name}`;
}

function roomsByLevel(list: readonly Room[]): ReadonlyMap<Slot, readonly Room[]> {
  const map = new Map<Slot, Room[]>();
  for (const room of list) {
    const slot = room.given.on?.value.slot;
    if (slot === undefined) continue;
    const rooms = map.get(slot);
    if (rooms === undefined) map.set(slot, [room]);
    else rooms.push(room);
  }
  return map;
}

/** Named inside walls belong to the level of the rooms they part. */
function wallsOn(level: Level, walls: readonly Wall[], rooms: Rooms): readonly Wall[] {
  return walls.filter(({ given }) =>
    given.between?.value.some(({ value }) => {
      const at = rooms.order.get(value);
      return at !== undefined && rooms.list[at]!.given.on?.value === level;
    }),
  );
}

function keptLayout(level: Level, rooms: readonly Room[], walls: readonly Wall[], memory: TakeOffMemory): Layout {
  const inputs = [level, ...rooms, ...walls];
  const kept = memory.layouts.get(level.slot);
  if (kept !== undefined && sameList(kept.inputs, inputs)) return kept.layout;
  const fresh = layoutOf(level, rooms, walls);
  const layout = kept === undefined ? fresh : { ...fresh, runs: sameRuns(fresh.runs, kept.layout.runs) };
  memory.layouts.set(level.slot, { inputs, layout });
  return layout;
}

/** The level that stands on the ground: one with a foundation under it, else the first. */
function houseLevel(levels: readonly Level[], foundations: readonly Foundation[]): Level | undefined {
  return levels.find((level) => foundations.some(({ given }) => given.under?.value === level)) ?? levels[0];
}

function levelParts(level: Level, rooms: readonly Room[], all: Rooms, layout: Layout, model: Model): readonly Measuring[] {
  const scope = scopeOf(level, 0);
  const part = (name: string, inputs: readonly unknown[], measure: Measuring['measure']): Measuring => ({
    slot: level.slot,
    part: name,
    scope,
    place: level.place,
    inputs,
    measure,
  });
  const panels = model
    .list('panels')
    .find((each: ElementOf<'panels'>) => each.given.for?.value.some(({ value }) => value === level));
  const outside = rooms.flatMap((room) => openingsOf(room).filter((opening) => opening.outside));
  const crossings = layout.runs.reduce((sum, run) => sum + run.outside, 0);
  const inside = insideOpenings(rooms, all);
  const walls = wallsOn(level, model.list('wall'), all);
  const closets = rooms.flatMap(closetWalls);
  const { footprint } = level.given;
  return [
    part('outline', [level], () => ({
      portions: [],
      findings:
        footprint === undefined || 'left' in footprint.value
          ? []
          : walkFindings({ ...footprint, value: footprint.value }, level.label),
    })),
    part('floor', [level], () => measureFloor(level)),
    part('walls', [level, panels, crossings, ...outside], () => measureWalls(level, outside, crossings, panels)),
    part(
      'partitions',
      [
        level,
        rooms.length > 1,
        layout.placed,
        layout.runs,
        closets.length,
        ...closets,
        walls.length,
        ...walls,
        ...inside.flatMap(({ room, opening }) => [room, opening]),
      ],
      () => measurePartitions(level, { rooms: rooms.length, closets, placed: layout.placed, runs: layout.runs }, walls, inside),
    ),
    part('ceiling', [level], () => measureCeiling(level)),
  ];
}

function roomPart(room: Room, rooms: Rooms, layouts: ReadonlyMap<Slot, Layout>): Measuring {
  const level = room.given.on?.value.slot;
  const context = roomContext(room, rooms, (level === undefined ? undefined : layouts.get(level)) ?? nowhere);
  const { finishes, incoming, told, open, faces } = context;
  const inputs = [
    finishes.length,
    ...finishes,
    incoming.length,
    ...incoming,
    told.length,
    ...told,
    open.length,
    ...open,
    ...faces.flatMap(({ assembly, side, length }) => [assembly, side, length]),
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

const nowhere: Layout = { placed: false, runs: [], faces: new Map(), open: new Map() };
