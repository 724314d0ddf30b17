// What of a storey loses heat to the outside, part by part: walls net of openings, each type of opening, ceiling, floor or the
// edge of a slab, walls of a basement. Each part is U × area, and what does not tell its U is named and not in the sum.
import { sameList } from '#kit/differing';
import { METRE } from '#kit/dimension';
import { addTo } from '#kit/gathered';
import { type Form, form, measure, type Quantity, total } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Assembly, ElementOf, Foundation, Level, Opening, Roof, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { assemblyFigures } from '../assembly.ts';
import { airFilms, type Films, framingCounts, slabEdges } from '../conventions.ts';
import { insulationOf, isBare } from '../insulation.ts';
import { withSlopes } from '../measure/ceiling.ts';
import { netOf, openingsOf } from '../measure/openings.ts';
import { rimHeight } from '../measure/rim.ts';
import { roofFigures } from '../measure/roof-figures.ts';
import { type Buried, buriedBasement } from './in-earth.ts';
import { edgeLoss } from './slab-edge.ts';

type Area = Quantity<'area'>;
type U = Quantity<'conductance'>;

export interface Envelope {
  /** Heat through each part for a degree of difference: outside wall, w-3050, ceiling … */
  readonly parts: readonly Quantity<'transfer'>[];
  /** What loses heat too, and why it is not in the sum: 'd-2868 (no U)'. */
  readonly without: readonly string[];
  readonly volume: Quantity<'volume'> | undefined;
}

const throughAll = form('U over all', '1 ÷ R over all', (resistance = 1) => 1 / resistance);
const slope = form(
  'ceiling along the slope',
  'area × √(1 + pitch²)',
  (area = 0, pitch = 0) => area * Math.sqrt(1 + pitch * pitch),
);
const surface = form('wall surface', 'length round × height', (length = 0, height = 0) => length * height);
const room = form('volume of the storey', 'floor × height', (floor = 0, height = 0) => floor * height);
const covered = form('R of the wall with its insulation', 'the sum of', (...each) => each.reduce((sum, one) => sum + one, 0));
const lessSkylights = form('ceiling net of skylights', 'ceiling − skylights', (ceiling = 0, ...skylights) =>
  Math.max(
    0,
    skylights.reduce((rest, one) => rest - one, ceiling),
  ),
);
const manyOf = form('openings', 'count × area', (count = 0, area = 0) => count * area);

/** U of an assembly with its air films; undefined where a layer that insulates does not tell its R. */
export function conductanceOf(assembly: Assembly, films: Films): U | undefined {
  const { resistance, unknown } = assemblyFigures(assembly, films);
  return unknown.resistance.length > 0 || !(resistance.value > 0) ? undefined : measure('conductance', throughAll, resistance);
}

/** Undefined for a level without an outline. Kept while the level, its openings and what lies above and under it are the same. */
export function envelopeOf(level: Level, model: Model): Envelope | undefined {
  const around = [model.list('level'), model.list('roof'), model.list('foundation'), model.list('crawl')] as const;
  const rooms = roomsByLevel(model.list('room')).get(level) ?? [];
  const reads = [...around, ...rooms, model.rows('convention'), model.plan];
  const before = kept.get(level);
  if (before !== undefined && sameList(before.reads, reads)) return before.envelope;
  const envelope = made(level, rooms, model);
  kept.set(level, { reads, envelope });
  return envelope;
}

const kept = new WeakMap<Level, { readonly reads: readonly unknown[]; readonly envelope: Envelope | undefined }>();

const byLevel = new WeakMap<readonly Room[], ReadonlyMap<Level, readonly Room[]>>();
function roomsByLevel(rooms: readonly Room[]): ReadonlyMap<Level, readonly Room[]> {
  let known = byLevel.get(rooms);
  if (known === undefined) {
    const found = new Map<Level, Room[]>();
    for (const each of rooms) if (each.given.on !== undefined) addTo(found, each.given.on.value, each);
    byLevel.set(rooms, (known = found));
  }
  return known;
}

interface Sides {
  readonly films: Films;
  readonly parts: Quantity<'transfer'>[];
  readonly without: string[];
}

function made(level: Level, rooms: readonly Room[], model: Model): Envelope | undefined {
  const shape = levelShape(level);
  if (shape === undefined) return undefined;
  const { height, walls } = level.given;
  const sides: Sides = { films: airFilms(model), parts: [], without: [] };
  const held = rooms.flatMap((each) => openingsOf(each).filter(({ outside }) => outside));
  const skylights = held.filter(({ type }) => isSkylight(type));
  const inWalls = held.filter(({ type }) => !isSkylight(type));
  const below = groundUnder(level, model);
  const buried = level.given.basement === undefined ? undefined : buriedBasement(level, inWalls, below.foundation, model);
  if (height === undefined) sides.without.push('walls (no height)');
  else {
    const gross = measure('area', surface, shape.perimeter, height.value);
    const net = netOf(gross, inWalls).net;
    if (buried !== undefined) inEarth(buried, sides);
    else if (walls !== undefined) through('outside wall', net, walls.value, sides);
    else sides.without.push('walls (made of nothing yet)');
  }
  const types = new Map<Opening, Area[]>();
  for (const { type, count, area } of held)
    if (type !== undefined && area !== undefined) addTo(types, type, measure('area', manyOf, count, area));
  for (const [type, areas] of types) {
    const conductance = type.given.U?.value;
    if (conductance === undefined) sides.without.push(`${type.name} (no U)`);
    else pass(type.name, conductance, total(`openings ${type.name}`, 'area', areas), sides);
  }
  // A roof that is the ceiling follows its own pitch; else rooms may say slopes of theirs.
  const isRoof = level.given.ceiling?.value.given.for?.value === 'roof';
  above(
    level,
    isRoof ? shape.area : withSlopes(shape.area, rooms),
    skylights.flatMap(({ count, area }) => (area === undefined ? [] : [measure('area', manyOf, count, area)])),
    model,
    sides,
  );
  under(level, shape.area, shape.perimeter, below, model, sides);
  if (below.slab === undefined) rimOf(level, shape.perimeter, model, sides);
  const { parts, without } = sides;
  return {
    parts,
    without,
    volume: height === undefined ? undefined : measure('volume', room, shape.area, height.value),
  };
}

function isSkylight(type: Opening | undefined): boolean {
  return type?.kind === 'window' && type.given.skylight !== undefined;
}

/** Base units of area in a square metre, in which W/K are reckoned. */
const SQUARE_METRE = METRE * METRE;

const forms = new Map<string, Form>();
function passing(label: string): Form {
  let known = forms.get(label);
  if (known === undefined)
    forms.set(label, (known = form(label, 'U × area', (conductance = 0, area = 0) => (conductance * area) / SQUARE_METRE)));
  return known;
}

function pass(label: string, conductance: U, area: Area, { parts }: Sides): void {
  if (area.value > 0) parts.push(measure('transfer', passing(label), conductance, area));
}

/** Where what insulates tells its R and a thin layer does not, it passes as if that layer were none, and the layer is named. */
function through(label: string, area: Area, assembly: Assembly, sides: Sides): void {
  const { resistance, unknown } = assemblyFigures(assembly, sides.films);
  const silent = [...new Set(unknown.resistance)];
  const insulation = silent.length === 0 ? undefined : insulationOf(assembly);
  if (!(resistance.value > 0) || (silent.length > 0 && (insulation === undefined || isBare(insulation)))) {
    sides.without.push(`${label} (${silent[0] ?? assembly.name} tells no R)`);
    return;
  }
  for (const name of silent) sides.without.push(`R of ${name}`);
  pass(label, measure('conductance', throughAll, resistance), area, sides);
}

/** Walls of a basement above the ground and in it, and its floor. */
function inEarth({ above, wall, floor, without }: Buried, sides: Sides): void {
  if (above !== undefined) pass('basement wall above the ground', above.conductance, above.area, sides);
  if (wall !== undefined) pass('basement wall in the earth', wall.conductance, wall.area, sides);
  if (floor !== undefined) pass('basement floor', floor.conductance, floor.area, sides);
  sides.without.push(...without);
}

/** A ceiling loses heat where a roof stands over its level; where no roof says what it covers, over the last level. */
function above(level: Level, area: Area, skylights: readonly Area[], model: Model, sides: Sides): void {
  const over = model.list('roof').filter(({ given }) => given.over !== undefined);
  const roof = over.find(({ given }) => given.over?.value === level);
  if (roof === undefined && (over.length > 0 || model.list('level').at(-1) !== level)) return;
  const ceiling = level.given.ceiling?.value;
  if (ceiling === undefined) {
    sides.without.push('ceiling (made of nothing yet)');
    return;
  }
  const sloped = alongSlope(area, ceiling, roof);
  through('ceiling', skylights.length === 0 ? sloped : measure('area', lessSkylights, sloped, ...skylights), ceiling, sides);
}

/** What closes a storey along its rafters is as large as they make it. */
function alongSlope(area: Area, { given }: Assembly, roof: Roof | undefined): Area {
  const pitch = given.for?.value !== 'roof' || roof === undefined ? undefined : roofFigures(roof)?.pitch;
  return pitch === undefined || !(pitch.value > 0) ? area : measure('area', slope, area, pitch);
}

interface Ground {
  readonly foundation: Foundation | undefined;
  readonly slab: Foundation | undefined;
  readonly crawl: ElementOf<'crawl'> | undefined;
}

function groundUnder(level: Level, model: Model): Ground {
  const own = model.list('foundation').filter(({ given }) => given.under?.value === level);
  // What stands round a basement is often given under the storey that it carries.
  const foundations = own.length > 0 || level.given.basement === undefined ? own : model.list('foundation');
  return {
    foundation: foundations.find(({ given }) => given.wall !== undefined) ?? foundations[0],
    slab: foundations.find(({ given }) => given.slab !== undefined),
    crawl: model.list('crawl').find(({ given }) => given.under?.value === level),
  };
}

/** A floor over a crawl space or open air passes heat as if it stood in the air outside; a slab passes it along its edge. */
function under(level: Level, area: Area, perimeter: Quantity<'length'>, ground: Ground, model: Model, sides: Sides): void {
  if (level.given.basement !== undefined) return;
  if (ground.slab !== undefined) {
    const edge = edgeLoss(ground.slab, perimeter, slabEdges(model));
    if (edge === undefined) sides.without.push('edge of the slab (no table)');
    else sides.parts.push(edge);
    return;
  }
  const insulated = ground.crawl?.given.insulated?.value;
  const height = ground.foundation?.given.wall?.value.size.right;
  if (ground.crawl?.given.vents === undefined && insulated !== undefined && height !== undefined) {
    const resistance = measure('resistance', covered, sides.films.level, ...insulated.map(({ value }) => value.insulates));
    const walls = measure('area', surface, perimeter, height);
    pass('wall of the crawl space', measure('conductance', throughAll, resistance), walls, sides);
    return;
  }
  if (!isOverAir(level, ground, model)) return;
  const floor = level.given.floor?.value;
  if (floor === undefined) sides.without.push('floor (made of nothing yet)');
  else through('floor', area, floor, sides);
}

/** Over a crawl space, or over a foundation with no basement in it; the first level where a plan says nothing of the ground. */
function isOverAir(level: Level, { foundation, crawl }: Ground, model: Model): boolean {
  if (crawl !== undefined) return true;
  const levels = model.list('level');
  if (levels.some(({ given }) => given.basement !== undefined)) return false;
  if (foundation !== undefined) return true;
  return levels[0] === level && model.list('foundation').length === 0 && model.list('crawl').length === 0;
}

/** The edge of a floor loses heat as the wall does, unless the floor keeps its own: then it lies outside of what is warm. */
function rimOf(level: Level, perimeter: Quantity<'length'>, model: Model, sides: Sides): void {
  const walls = level.given.walls?.value;
  const height = rimHeight(level, false, framingCounts(model));
  if (walls === undefined || height === undefined || sides.parts.some(({ form: { label } }) => label === 'floor')) return;
  through('rim of the floor', measure('area', surface, perimeter, height), walls, sides);
}
