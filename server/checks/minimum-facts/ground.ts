// What the ground asks for: footings, walls and bolts of a foundation, piers of a deck, vents of a crawl space, fall of drains and of the
// ground, rain in a dry well.
import { NONE } from '#kit/differing';
import { constant, form, measure, type Quantity, roundUp, total } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { ElementOf, Foundation, Trench } from '#model/model';
import { ownResistance } from '#takeoff/assembly';
import { isVeneer } from '#takeoff/insulation';
import { postAround } from '#takeoff/measure/piers';
import { isBareBasement, isBareCrawl } from './lived-in.ts';
import { type FactTable, greatest, number, smallest } from './tables.ts';

type WallInsulation = Foundation['given']['insulated'];

/** Of a wall that tells any, or that is known to have none: nothing of a sort that it does not tell. */
function insulationOfWall(line: WallInsulation, bare: boolean, sort: 'unbroken' | 'between framing'): Quantity | undefined {
  if (line === undefined && !bare) return undefined;
  const layers = (line?.value ?? NONE).flatMap(({ value }) => ((value.way ?? 'unbroken') === sort ? [value.insulates] : []));
  return total(`R ${sort}`, 'resistance', layers);
}

const beyond = form('footing beyond the wall', '(footing − wall) ÷ 2', (footing = 0, wall = 0) => (footing - wall) / 2);
const above = form(
  'wall above the ground',
  'wall + footing − depth',
  (wall = 0, footing = 0, depth = 0) => wall + footing - depth,
);
const boltsOf = form(
  'bolts in a piece of plate',
  '(length − 2 × first bolt from the end) ÷ spacing, rounded up, and one; never less than two',
  (length = 0, end = 0, spacing = 1) => Math.max(2, roundUp(Math.max(0, length - 2 * end) / spacing) + 1),
  'American Wood Council, FAQ on R403.1.6: each piece of plate by itself',
);
const allBolts = form('bolts', 'of each piece of plate, added', (...counts) => counts.reduce((sum, count) => sum + count, 0));

function boltsNeeded({ given: { bolts, plates } }: Foundation): Quantity | undefined {
  const ends = bolts?.deeper['from ends']?.value;
  if (bolts === undefined || plates === undefined || ends === undefined || !(bolts.value.at.value > 0)) return undefined;
  const counts = plates.value.map(({ value }) => measure('number', boltsOf, value, ends, bolts.value.at));
  return measure('number', allBolts, ...counts);
}

export const factsOfFoundation: FactTable<Foundation> = {
  lines: {
    'footing-width': 'footing',
    'footing-thickness': 'footing',
    'footing-projection': 'footing',
    'wall-above-grade': 'wall',
    'wall-thickness': 'wall',
    'bolt-size': 'bolts',
    'bolt-spacing': 'bolts',
    'bolt-end': 'bolts',
    'bolt-count': 'bolts',
    'bolt-depth': 'bolts',
    unbroken: 'insulated',
    'slab-thickness': 'slab',
    'pier-across': 'piers',
    'edge-r': 'edge',
    'edge-depth': 'edge',
  },
  own: {
    'footing-width': ({ given }) => given.footing?.value.size.left,
    'footing-thickness': ({ given }) => given.footing?.value.size.right,
    'footing-projection': ({ given: { footing, wall } }) =>
      footing === undefined || wall === undefined
        ? undefined
        : measure('length', beyond, footing.value.size.left, wall.value.size.left),
    'wall-above-grade': ({ given: { footing, wall, bottom } }) =>
      footing === undefined || wall === undefined || bottom === undefined
        ? undefined
        : measure('length', above, wall.value.size.right, footing.value.size.right, bottom.value),
    'wall-thickness': ({ given }) => given.wall?.value.size.left,
    'bolt-size': ({ given }) => given.bolts?.value.size,
    'bolt-spacing': ({ given }) => given.bolts?.value.at,
    'bolt-end': ({ given }) => given.bolts?.deeper['from ends']?.value,
    'bolt-count': ({ given }) => {
      const count = given.bolts?.deeper.altogether?.value;
      return count === undefined ? undefined : number('bolts', count);
    },
    'bolts-needed': boltsNeeded,
    'bolt-depth': ({ given }) => given.bolts?.deeper.deep?.value,
    'slab-thickness': ({ given }) => given.slab?.value.thickness,
    'pier-across': ({ given }) => (given.piers?.value.size?.third === undefined ? given.piers?.value.size?.first : undefined),
    'pier-post': ({ given }) => {
      const post = postAround(given.piers?.deeper.around?.value);
      return post === undefined ? undefined : greatest([post.thick, post.wide]);
    },
    'edge-r': ({ given }) => given.edge?.value.insulates,
    'edge-depth': ({ given }) => given.edge?.value.deep,
    'under-slab': ({ given }) =>
      total('R under the slab', 'resistance', given.slab?.value.over?.flatMap(({ value }) => ownResistance(value) ?? []) ?? []),
    'slab-heated': ({ given }) => number('heated slab', given.slab?.deeper.heated === undefined ? 0 : 1),
    'masonry-veneer': ({ given }) =>
      number('masonry veneer', given.under?.value.given.walls?.value.given.layer.some(({ value }) => isVeneer(value)) ? 1 : 0),
  },
  beside: {
    unbroken: (foundation, model) => insulationOfWall(foundation.given.insulated, isBareBasement(foundation, model), 'unbroken'),
    'between-framing': (foundation, model) =>
      insulationOfWall(foundation.given.insulated, isBareBasement(foundation, model), 'between framing'),
  },
};

const SHARE = /^1\/(\d+)$/;
/** 1/150 as a number. */
export function shareWritten(text: string): Quantity<'number'> | undefined {
  const under = Number(SHARE.exec(text)?.[1] ?? 0);
  return under > 0 ? number('vents', 1 / under) : undefined;
}

export const factsOfCrawl: FactTable<ElementOf<'crawl'>> = {
  lines: {
    'vent-share': 'vents',
    'access-least': 'access',
    'access-most': 'access',
    'corner-to-vent': 'corners',
    unbroken: 'insulated',
  },
  own: {
    'vent-share': ({ given }) => (given.vents === undefined ? undefined : shareWritten(given.vents.value)),
    'access-least': ({ given }) =>
      smallest(given.access === undefined ? [] : [given.access.value.left, given.access.value.right]),
    'access-most': ({ given }) => greatest(given.access === undefined ? [] : [given.access.value.left, given.access.value.right]),
    'floor-hatch': ({ given }) => number('hatches in the floor', given.access?.deeper['through floor'] === undefined ? 0 : 1),
    'corner-to-vent': ({ given }) => given.corners?.value,
    'floor-area': ({ given }) => (given.under === undefined ? undefined : factsOf(given.under.value)['floor-area']),
  },
  beside: {
    unbroken: (crawl, model) => insulationOfWall(crawl.given.insulated, isBareCrawl(crawl, model), 'unbroken'),
    'between-framing': (crawl, model) => insulationOfWall(crawl.given.insulated, isBareCrawl(crawl, model), 'between framing'),
  },
};

export const factsOfTrench: FactTable<Trench> = {
  lines: {
    'pipe-size': 'pipe',
  },
  own: {
    'pipe-size': ({ given }) =>
      smallest(
        given.pipe.flatMap(({ value }) =>
          value.sizes.flatMap((size) =>
            size.kind === 'quantity' && size.dimension === 'length' ? [constant('pipe', size.value, 'length')] : [],
          ),
        ),
      ),
  },
};

const fallOver = form('fall', 'fall ÷ distance', (fall = 0, within = 1) => fall / within);

const share = form('fall', 'fall ÷ distance', (slope = 0) => slope);
function asShare(slope: Quantity<'slope'> | undefined): Quantity<'number'> | undefined {
  return slope === undefined ? undefined : measure('number', share, slope);
}

const lotArea = form('lot', 'length × width', (length = 0, width = 0) => length * width);

export const factsOfSite: FactTable<ElementOf<'site'>> = {
  lines: {
    'grade-fall': 'grade',
    'drive-fall': 'drive',
    'fence-length': 'fence',
  },
  own: {
    'drive-fall': ({ given }) => asShare(given.drive?.deeper.falls?.value),
    'fence-length': ({ given }) => given.fence?.value,
    'lot-area': ({ given: { size } }) =>
      size === undefined ? undefined : measure('area', lotArea, size.value.left, size.value.right),
    slope: ({ given }) => asShare(given.falls?.value.slope),
    'low-side': ({ given: { size, falls } }) => {
      const to = falls?.value.to;
      if (size === undefined || to === undefined) return undefined;
      return to === 'north' || to === 'south' ? size.value.left : size.value.right;
    },
    'grade-fall': ({ given }) => {
      const grade = given.grade?.value;
      return grade === undefined || !(grade.within.value > 0) ? undefined : measure('number', fallOver, grade.fall, grade.within);
    },
  },
};

type DryWell = ElementOf<'dry-well'>;
const partOf = form('roof drained', 'plan of the roof × share', (area = 0, share = 1) => area * share);
const allOf = form('roof drained', 'all parts added', (...parts) => parts.reduce((sum, part) => sum + part, 0));

const planOf = form('plan of the roof', 'length × width', (length = 0, width = 0) => length * width);

/** By the plan that each roof gives, else by the level below it; without overhangs. */
function drained({ given }: DryWell): Quantity<'area'> | undefined {
  const parts = given.for.map(({ value: { of: roof, share } }) => {
    const [size, level] = [roof.given.size?.value, roof.given.over?.value];
    const below = level === undefined ? undefined : factsOf(level)['floor-area'];
    const area = size === undefined ? below : measure('area', planOf, size.left, size.right);
    return area === undefined ? undefined : measure('area', partOf, area, share ?? number('all of it', 1));
  });
  if (parts.length === 0 || parts.some((part) => part === undefined)) return undefined;
  return measure('area', allOf, ...(parts as readonly Quantity<'area'>[]));
}

const soaking = form(
  'time to soak away',
  'roof × rain ÷ (bottom of the well × half the measured rate)',
  (roof = 0, rain = 0, bottom = 1, rate = 1) => (roof * rain) / (bottom * (rate / 2)),
  'New Jersey Stormwater Best Management Practices Manual, chapter 9.3: factor of safety of 2',
);
const bottomOf = form('bottom of the well', 'length × width', (length = 0, width = 0) => length * width);

export const factsOfDryWell: FactTable<DryWell> = {
  lines: {
    'drained-area': 'for',
    'soak-time': 'size',
  },
  own: {
    'drained-area': drained,
    'soak-time': (well) => {
      const { storm, size, soaks } = well.given;
      const roof = drained(well);
      if (roof === undefined || storm === undefined || size === undefined || soaks === undefined || !(soaks.value.value > 0))
        return undefined;
      const bottom = measure('area', bottomOf, size.value.left, size.value.right);
      return measure('time', soaking, roof, storm.value, bottom, soaks.value);
    },
  },
};
