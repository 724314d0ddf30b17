// Inside walls: length, studs, plates and filling, by what they are made of. Where rooms are placed their gaps give the
// lengths; else the length given. Their faces are counted with the rooms.
import { type Finding, finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { roomShape } from '#model/facts/room';
import type { Assembly, Level, Room } from '#model/model';
import type { FramingCounts } from '../conventions.ts';
import type { Portion, Where } from '../lines.ts';
import { heightMissing, partitionsMissing, spacingMissing } from '../problems.ts';
import { sameAsBefore } from '../same.ts';
import { isPanel, layersOf } from './layers.ts';
import type { Run, Wall } from './layout.ts';
import { type Held, netOf } from './openings.ts';
import { counted, type Measured, portion } from './portion.ts';
import { piecesAlong } from './runs.ts';
import { wallLayers } from './wall-layers.ts';
import { plateLength, studLength, studs } from './walls.ts';

const surface = form('wall surface', 'length × height', (length = 0, height = 0) => length * height);
const pieces = form('studs', 'along each wall length ÷ spacing rounded up, and one; added', (...counts) =>
  counts.reduce((sum, count) => sum + count, 0),
);
const closetWall = form('walls of a closet', 'front + one end', (front = 0, end = 0) => front + end);

/** All inside walls of one make. */
interface Group {
  readonly assembly: Assembly;
  readonly runs: readonly Quantity<'length'>[];
  readonly corners: Quantity<'number'>;
  readonly crossings: Quantity<'number'>;
  readonly held: readonly Held[];
}

/** What the rooms of a level, in plan order, give its inside walls. */
export interface Inside {
  readonly rooms: number;
  readonly closets: readonly Quantity<'length'>[];
  readonly placed: boolean;
  readonly runs: readonly Run[];
}

/** `held` are the openings that do not stand in an outside wall, each once. */
export function measurePartitions(
  level: Level,
  inside: Inside,
  walls: readonly Wall[],
  held: readonly { readonly room: Slot; readonly opening: Held }[],
  counts: FramingCounts,
): Measured {
  const findings: Finding[] = [];
  const groups = groupsOf(level, inside, walls, held, findings);
  if (groups.length === 0) return { portions: [], findings };
  const height = level.given.height?.value;
  if (height === undefined) return { portions: [], findings: [finding(heightMissing, level.place, level.label)] };
  const portions = groups.flatMap((group, index) => {
    const part = index === 0 ? 'partitions' : `partitions ${group.assembly.name}`;
    return groupPortions(group, height, counts, { element: level.slot, part, level: level.slot }, findings);
  });
  return { portions, findings };
}

function groupsOf(
  level: Level,
  inside: Inside,
  walls: readonly Wall[],
  held: readonly { readonly room: Slot; readonly opening: Held }[],
  findings: Finding[],
): readonly Group[] {
  const usual = level.given.partitions;
  const given = usual?.deeper.long?.value;
  const lists = new Map<
    Assembly,
    { runs: Quantity<'length'>[]; crossings: number; held: Held[]; pairs: (readonly [Slot, Slot])[] }
  >();
  const listFor = (assembly: Assembly) => {
    let list = lists.get(assembly);
    if (list === undefined) lists.set(assembly, (list = { runs: [], crossings: 0, held: [], pairs: [] }));
    return list;
  };
  if (usual !== undefined) {
    const list = listFor(usual.value);
    if (given !== undefined) list.runs.push(given);
    else list.runs.push(...inside.closets);
  }
  // A length given stands for all walls of the usual make; walls of another make are counted beside it.
  for (const run of inside.runs) {
    const list = listFor(run.assembly);
    list.pairs.push(...run.pairs);
    if (given !== undefined && run.assembly === usual?.value) continue;
    list.runs.push(run.length);
    list.crossings += run.inside;
  }
  for (const wall of walls) {
    const { of, long } = wall.given;
    if (of !== undefined && long !== undefined) listFor(of.value).runs.push(long.value);
  }
  for (const { room, opening } of held) {
    const owner = [...lists].find(([, { pairs }]) =>
      pairs.some((pair) => pair.includes(room) && opening.to !== undefined && pair.includes(opening.to)),
    );
    const list = owner?.[1] ?? (usual === undefined ? undefined : lists.get(usual.value));
    list?.held.push(opening);
  }
  if (usual !== undefined && lists.get(usual.value)!.runs.length === 0 && !inside.placed && inside.rooms > 1)
    findings.push(finding(partitionsMissing, usual.place, level.label));
  return [...lists].flatMap(([assembly, { runs, crossings, held: openings }]) => {
    // Corners are told only of a length given; placed walls are counted each from end to end.
    const told = assembly === usual?.value ? usual.deeper : undefined;
    const corners = told?.corners?.value ?? noCorners;
    const met = told?.intersections?.value ?? counted('inside walls that meet', crossings);
    return runs.length === 0 ? [] : [{ assembly, runs, corners, crossings: met, held: openings }];
  });
}

/** A closet stands in a corner of its room: its front, and one end unless the front runs from wall to wall. */
export function closetWalls(room: Room): readonly Quantity<'length'>[] {
  let walls = closets.get(room);
  if (walls === undefined) {
    walls = sameAsBefore(closetLengths(room), closetsBefore.get(room.slot));
    closets.set(room, walls);
    closetsBefore.set(room.slot, walls);
  }
  return walls;
}
const closets = new WeakMap<Room, readonly Quantity<'length'>[]>();
const closetsBefore = new WeakMap<Slot, readonly Quantity<'length'>[]>();

function closetLengths(room: Room): readonly Quantity<'length'>[] {
  const shape = roomShape(room);
  return room.given.closet.map(({ value }) => {
    const { left, right } = value.size;
    const across = value.side === 'east' || value.side === 'west' ? shape?.depth : shape?.width;
    return across !== undefined && left.value >= across.value ? left : measure('length', closetWall, left, right);
  });
}

function groupPortions(
  { assembly, runs, corners, crossings, held }: Group,
  height: Quantity<'length'>,
  counts: FramingCounts,
  where: Where,
  findings: Finding[],
): readonly Portion[] {
  const length = runs.length === 1 ? runs[0]! : total('inside walls', 'length', runs);
  const portions = [portion('partition-length', where, length)];
  const area = netOf(measure('area', surface, length, height), held);
  const { main } = layersOf(assembly);
  if (main !== undefined && !isPanel(main)) {
    const spacing = main.deeper.at?.value;
    if (spacing === undefined) findings.push(finding(spacingMissing, main.place, main.value.name));
    else {
      const along = runs.map((run) => piecesAlong(run, spacing, counts.endStuds));
      const spaced = along.length === 1 ? along[0]! : measure('number', pieces, ...along);
      const count = studs(spaced, corners, crossings, held, counts);
      portions.push(
        portion('partition-stud-count', where, count, {
          goods: main.value,
          pieces: [{ count, length: studLength(height, main, counts) }],
        }),
      );
    }
    portions.push(
      portion('partition-plate-length', where, measure('length', plateLength, counts.plates, length), {
        sizes: main.value.sizes,
      }),
    );
  }
  return [...portions, ...wallLayers(assembly, { where, area, length, height: studLength(height, main, counts) }, findings)];
}
const noCorners = counted('corners', 0);
