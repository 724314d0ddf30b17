// How books count what geometry alone does not say, by the library's row that the plan chooses: studs, plates and headers;
// stringers and treads; how far apart rooms with one wall between them lie; still air, slab edges and earth.
import { constant, type Quantity } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

/** How studs, plates and headers are counted, by the book that the plan chooses or the usual one. */
export interface FramingCounts {
  readonly endStuds: Quantity<'number'>;
  readonly cornerStuds: Quantity<'number'>;
  /** At a corner that is not square. */
  readonly slantedCornerStuds: Quantity<'number'>;
  readonly crossingStuds: Quantity<'number'>;
  readonly openingStuds: Quantity<'number'>;
  readonly doorStuds: Quantity<'number'>;
  readonly wallByWall: boolean;
  readonly plates: Quantity<'number'>;
  readonly plateThickness: Quantity<'length'>;
  readonly headerPlies: Quantity<'number'>;
  readonly headerBearing: Quantity<'length'>;
}

type Convention = ElementOf<'convention'>;
const none = constant('none', 0, 'number');
const noLength = constant('none', 0, 'length');
const kept = new WeakMap<Convention, Map<Convention | undefined, FramingCounts>>();

/** The row that the plan chooses for something, else the usual one. */
function rowFor(name: string, model: Model): Convention | undefined {
  return (
    model.plan?.given.counts.find(({ value }) => value.of.name === name)?.value.by ??
    model.rows('convention').find(({ given }) => given.usual !== undefined && isOf(given, name))
  );
}

/** What the book chosen does not say is as usual. The same object for the same rows. */
export function framingCounts(model: Model): FramingCounts {
  const usual = model.rows('convention').find(({ given }) => given.usual !== undefined && isOf(given, 'studs'));
  const chosen = model.plan?.given.counts.find(({ value }) => value.of.name === 'studs')?.value.by ?? usual;
  if (chosen === undefined) return NO_COUNTS;
  let byUsual = kept.get(chosen);
  if (byUsual === undefined) kept.set(chosen, (byUsual = new Map()));
  let counts = byUsual.get(usual);
  if (counts === undefined) byUsual.set(usual, (counts = countsBy(chosen.given, usual?.given ?? chosen.given)));
  return counts;
}

export function isOf({ of }: Convention['given'], name: string): boolean {
  return of?.value.some(({ value }) => value.name === name) === true;
}

function countsBy(own: Convention['given'], usual: Convention['given']): FramingCounts {
  const number = (
    word:
      | 'end-studs'
      | 'corner-studs'
      | 'slanted-corner-studs'
      | 'crossing-studs'
      | 'opening-studs'
      | 'door-studs'
      | 'plates'
      | 'header-plies',
  ) => (own[word] ?? usual[word])?.value ?? none;
  const length = (word: 'plate-thickness' | 'header-bearing') => (own[word] ?? usual[word])?.value ?? noLength;
  return {
    endStuds: number('end-studs'),
    cornerStuds: number('corner-studs'),
    slantedCornerStuds: own['slanted-corner-studs']?.value ?? own['corner-studs']?.value ?? number('slanted-corner-studs'),
    crossingStuds: number('crossing-studs'),
    openingStuds: number('opening-studs'),
    doorStuds: own['door-studs']?.value ?? own['opening-studs']?.value ?? number('opening-studs'),
    wallByWall: own['wall-by-wall'] !== undefined,
    plates: number('plates'),
    plateThickness: length('plate-thickness'),
    headerPlies: number('header-plies'),
    headerBearing: length('header-bearing'),
  };
}

const NO_COUNTS: FramingCounts = {
  endStuds: none,
  cornerStuds: none,
  slantedCornerStuds: none,
  crossingStuds: none,
  openingStuds: none,
  doorStuds: none,
  wallByWall: false,
  plates: none,
  plateThickness: noLength,
  headerPlies: none,
  headerBearing: noLength,
};

/** Of the length bought: sticks of one more length are sorted out only where they save as much. */
export const anotherLength = constant('saving that another stock length must bring', 0.04, 'number', 'common practice');

/** How the stringers of a stair stand, and how wide steps outside are. */
export interface StairCounts {
  readonly stringerSpacing: Quantity<'length'>;
  readonly outsideTread: Quantity<'length'>;
  /** Of the joists of a landing. */
  readonly landingSpacing: Quantity<'length'>;
}
/** The same object for the same row, as are all that follow. */
export function stairCounts(model: Model): StairCounts {
  return keptFor(stairs, rowFor('stairs', model), ({ given }) => ({
    stringerSpacing: given['stringer-spacing']?.value ?? noLength,
    outsideTread: given['outside-tread']?.value ?? noLength,
    landingSpacing: given['landing-spacing']?.value ?? noLength,
  }));
}

/** Rooms further apart than this have no single wall between them: base units. */
export function widestPartition(model: Model): number {
  return rowFor('partitions', model)?.given['widest-partition']?.value.value ?? 0;
}

/** Share of an attic's free vent area near the ridge, where the roof does not say. */
export function highVents(model: Model): Quantity<'number'> {
  return rowFor('attic-vents', model)?.given['high-vents']?.value ?? none;
}

/** Still air at a surface; heat flow level through walls, upward through roofs and ceilings, downward through floors. */
export interface Films {
  readonly outside: Quantity<'resistance'>;
  readonly level: Quantity<'resistance'>;
  readonly upward: Quantity<'resistance'>;
  readonly downward: Quantity<'resistance'>;
}
export function airFilms(model: Model): Films {
  return keptFor(films, rowFor('air-films', model), ({ given }) => {
    const film = (at: keyof Films) => given.film.find(({ value }) => value.at === at)?.value.resistance ?? noResistance;
    return { outside: film('outside'), level: film('level'), upward: film('upward'), downward: film('downward') };
  });
}

export type SlabEdge = Convention['given']['edge'][number]['value'];
export function slabEdges(model: Model): readonly SlabEdge[] {
  return keptFor(edges, rowFor('slab-edges', model), ({ given }) => given.edge.map(({ value }) => value));
}

/** What earth against a basement is worth. */
export interface Earth {
  readonly soil: Quantity<'resistance/length'>;
  /** A bare wall or floor with the still air inside. */
  readonly bare: Quantity<'resistance'>;
}
export function earthAround(model: Model): Earth | undefined {
  return keptFor(earths, rowFor('earth', model), ({ given }) => {
    const { soil, 'wall-in-earth': bare } = given;
    return soil === undefined || bare === undefined ? undefined : { soil: soil.value, bare: bare.value };
  });
}

const noResistance = constant('none', 0, 'resistance');
const NO_ROW = { given: { film: [], edge: [] } } as unknown as Convention;
type Kept<T> = WeakMap<Convention, { readonly value: T }>;
const stairs: Kept<StairCounts> = new WeakMap();
const films: Kept<Films> = new WeakMap();
const edges: Kept<readonly SlabEdge[]> = new WeakMap();
const earths: Kept<Earth | undefined> = new WeakMap();

function keptFor<T>(all: Kept<T>, row: Convention | undefined, made: (row: Convention) => T): T {
  const key = row ?? NO_ROW;
  let known = all.get(key);
  if (known === undefined) all.set(key, (known = { value: made(key) }));
  return known.value;
}
