// The rooms of each level, those that are placed with their ground in the plan, and what the level's outside wall leaves
// for them. Kept for as long as the level's rooms are the same objects.
import { sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import { addTo } from '#kit/gathered';
import { withEachMoved } from '#kit/shapes/moved-sides';
import { isSlanted, type Outline, type Point } from '#kit/shapes/outline';
import { boundsOf, isRectangle, type Region, rectangleAt } from '#kit/shapes/region';
import { levelShape } from '#model/facts/level';
import { roomShape } from '#model/facts/room';
import type { Level, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { wallThickness } from '#takeoff/measure/layers';
import type { Results } from './check.ts';
import { keptFor } from './kept.ts';

export interface PlacedRoom {
  readonly room: Room;
  /** In base units from the outside south-west corner of the level's framing. */
  readonly ground: Region;
}

export interface LevelRooms {
  readonly level: Level;
  readonly rooms: readonly Room[];
  readonly placed: readonly PlacedRoom[];
  readonly byRoom: ReadonlyMap<Room, PlacedRoom>;
  /** The footprint, to the outside face of the framing. */
  readonly outside: Region | undefined;
  /** Depth of the outside wall's framing; undefined where nobody says what the wall is made of. */
  readonly wall: number | undefined;
  /** The footprint less the outside wall, as far as that is known. */
  readonly inside: Region | undefined;
}

/** All that checks of rooms look at; findings print lengths as the settings say. */
export function readsRooms({ model }: Results): readonly unknown[] {
  return [model.list('room'), model.list('level'), model.list('wall'), model.settings];
}

/** Findings of each level for itself, kept while its rooms, the inside walls and the settings are the same. */
export function byLevel(make: (level: LevelRooms, model: Model) => readonly Finding[]): (results: Results) => readonly Finding[] {
  const kept = new WeakMap<LevelRooms, { settings: unknown; walls: unknown; findings: readonly Finding[] }>();
  return ({ model }) => {
    const { settings } = model;
    const walls = model.list('wall');
    const findings: Finding[] = [];
    for (const level of levelRooms(model)) {
      let known = kept.get(level);
      if (known?.settings !== settings || known.walls !== walls)
        kept.set(level, (known = { settings, walls, findings: make(level, model) }));
      for (const each of known.findings) findings.push(each);
    }
    return findings;
  };
}

const latest = new WeakMap<Level, LevelRooms>();

/** The rooms of one level, in plan order. */
export function roomsOn(level: Level, model: Model): readonly Room[] {
  return levelRooms(model).find((each) => each.level === level)?.rooms ?? [];
}

/** Levels that have rooms, in plan order of their first room. */
export function levelRooms(model: Model): readonly LevelRooms[] {
  return ofRooms(model.list('room'));
}

const ofRooms = keptFor((rooms: readonly Room[]): readonly LevelRooms[] => {
  const byLevel = new Map<Level, Room[]>();
  for (const room of rooms) {
    const level = room.given.on?.value;
    if (level === undefined) continue;
    addTo(byLevel, level, room);
  }
  return [...byLevel].map(([level, list]) => {
    const before = latest.get(level);
    const made = before !== undefined && sameList(list, before.rooms) ? before : ofLevel(level, list);
    latest.set(level, made);
    return made;
  });
});

function ofLevel(level: Level, rooms: readonly Room[]): LevelRooms {
  const outline = levelShape(level)?.outline;
  const outside = outline === undefined ? undefined : regionOf(outline, { x: 0, y: 0 });
  const assembly = level.given.walls?.value;
  const wall = assembly === undefined ? undefined : wallThickness(assembly)?.value;
  const placed = rooms.flatMap((room) => {
    const ground = groundOf(room);
    return ground === undefined ? [] : [{ room, ground }];
  });
  return {
    level,
    rooms,
    placed,
    byRoom: new Map(placed.map((each) => [each.room, each])),
    outside,
    wall,
    inside: outside === undefined ? undefined : inset(outside, wall ?? 0),
  };
}

function groundOf(room: Room): Region | undefined {
  const at = room.given.at?.value;
  const shape = roomShape(room);
  return at === undefined || shape === undefined ? undefined : regionOf(shape.outline, { x: at.east.value, y: at.north.value });
}

/** An outline moved to its corner; four square corners are a rectangle. */
function regionOf(outline: Outline, corner: Point): Region {
  const moved = outline.map(({ x, y }) => ({ x: x + corner.x, y: y + corner.y }));
  if (outline.length !== 4 || isSlanted(outline)) return moved;
  const { west, south, east, north } = boundsOf(moved);
  return rectangleAt({ x: west, y: south }, east - west, north - south);
}

/** A region drawn in by so much along every side. Its sides run counter-clockwise, so the inside lies to their left. */
function inset(region: Region, by: number): Region | undefined {
  if (isRectangle(region))
    return { west: region.west + by, south: region.south + by, east: region.east - by, north: region.north - by };
  if (isSlanted(region)) return withEachMoved(region, () => -by);
  return region.map((corner, index) => {
    const before = region[(index + region.length - 1) % region.length]!;
    const after = region[(index + 1) % region.length]!;
    const [level, upright] =
      before.y === corner.y
        ? [
            [before, corner],
            [corner, after],
          ]
        : [
            [corner, after],
            [before, corner],
          ];
    return {
      x: corner.x + (upright![1]!.y > upright![0]!.y ? -by : by),
      y: corner.y + (level![1]!.x > level![0]!.x ? by : -by),
    };
  });
}
