// Insulation of a storey as tables of a code ask for it: between the framing, outside it, over all; floor and ceiling.
import { NONE } from '#kit/differing';
import { addTo } from '#kit/gathered';
import { form, measure, type Quantity } from '#kit/quantity';
import type { Assembly, ElementOf, Level } from '#model/model';
import type { Model } from '#model/resolve';
import { airFilms } from '#takeoff/conventions';
import { conductanceOf } from '#takeoff/heat/envelope';
import { type Insulation, insulationOf, isBare } from '#takeoff/insulation';
import { keptFor } from '../kept.ts';
import { isLivedIn } from './lived-in.ts';
import { type FactTable, number } from './tables.ts';

type Crawl = ElementOf<'crawl'>;

const both = form('R between and outside the framing', 'between + outside', (between = 0, outside = 0) => between + outside);

/** That they have none at all counts only where somebody lives: garages and sheds may stand bare. */
function insulated(assembly: Assembly | undefined, level: Level, model: Model): Insulation | undefined {
  const insulation = assembly === undefined ? undefined : insulationOf(assembly);
  return insulation !== undefined && isBare(insulation) && !isLivedIn(level, model) ? undefined : insulation;
}

const wall = (level: Level, model: Model) => insulated(level.given.walls?.value, level, model);

const inwardOf = form('share inside of the heavy layer', 'inside ÷ all', (inside = 0, all = 0) => (all > 0 ? inside / all : 0));

/** Of a heavy wall alone: how much of its insulation lies on the room's side. Bare, it has none there. */
function inwardShare(level: Level, model: Model): Quantity | undefined {
  const insulation = wall(level, model);
  return insulation?.inward === undefined ? undefined : measure('number', inwardOf, insulation.inward, allOf(insulation));
}

function allOf({ between, outside }: Insulation): Quantity {
  return measure('resistance', both, between, outside);
}

/** A bare one may be the floor of the storey above. */
function ceiling({ given }: Level): Quantity | undefined {
  const insulation = given.ceiling === undefined ? undefined : insulationOf(given.ceiling.value);
  return insulation === undefined || isBare(insulation) ? undefined : allOf(insulation);
}

export const energyOfLevel: FactTable<Level> = {
  lines: {
    'wall-cavity': 'walls',
    'wall-outside': 'walls',
    'wall-u': 'walls',
    'mass-wall-r': 'walls',
    'ceiling-r': 'ceiling',
    'floor-r': 'floor',
  },
  own: {
    'ceiling-r': ceiling,
    'raised-heels': ({ given }) => number('raised heels', given.ceiling?.deeper['raised heels'] === undefined ? 0 : 1),
  },
  beside: {
    'mass-share': inwardShare,
    'mass-wall-r': (level, model) => {
      const insulation = wall(level, model);
      return insulation?.inward === undefined ? undefined : allOf(insulation);
    },
    'wall-cavity': (level, model) => wall(level, model)?.between,
    'wall-outside': (level, model) => wall(level, model)?.outside,
    'wall-u': (level, model) => {
      const walls = level.given.walls?.value;
      return walls === undefined || wall(level, model) === undefined ? undefined : conductanceOf(walls, airFilms(model));
    },
    // Only a floor over open air under the house is asked to keep heat.
    'floor-r': (level, model) => {
      if (!crawlsUnder(level, model).some(({ given }) => given.vents !== undefined)) return undefined;
      const insulation = insulated(level.given.floor?.value, level, model);
      return insulation === undefined ? undefined : allOf(insulation);
    },
  },
};

export function crawlsUnder(level: Level, model: Model): readonly Crawl[] {
  return byLevel(model.list('crawl')).get(level) ?? NONE;
}

const byLevel = keptFor((crawls: readonly Crawl[]): ReadonlyMap<Level, readonly Crawl[]> => {
  const found = new Map<Level, Crawl[]>();
  for (const crawl of crawls) if (crawl.given.under !== undefined) addTo(found, crawl.given.under.value, crawl);
  return found;
});
