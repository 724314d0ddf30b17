// Insulation of a storey as tables of a code ask for it: between the framing, outside it, over all; floor and ceiling.
import { NONE } from '#kit/differing';
import { addTo } from '#kit/gathered';
import { form, measure, type Quantity } from '#kit/quantity';
import type { ElementOf, Level } from '#model/model';
import type { Model } from '#model/resolve';
import { assemblyFigures } from '#takeoff/assembly';
import { insulationOf } from '#takeoff/insulation';
import { keptFor } from '../kept.ts';
import { type FactTable, number } from './tables.ts';

type Crawl = ElementOf<'crawl'>;

const throughAll = form('U over all', '1 ÷ R over all', (resistance = 1) => 1 / resistance);
const both = form('R between and outside the framing', 'between + outside', (between = 0, outside = 0) => between + outside);

function wall(level: Level, part: 'between' | 'outside'): Quantity | undefined {
  const walls = level.given.walls?.value;
  return walls === undefined ? undefined : insulationOf(walls)?.[part];
}

const inwardOf = form('share inside of the heavy layer', 'inside ÷ all', (inside = 0, all = 0) => (all > 0 ? inside / all : 0));

/** Of a heavy wall alone: how much of its insulation lies on the room's side. Bare, it has none there. */
function inwardShare({ given }: Level): Quantity | undefined {
  const walls = given.walls?.value;
  const insulation = walls === undefined ? undefined : insulationOf(walls);
  if (insulation?.inward === undefined) return undefined;
  return measure('number', inwardOf, insulation.inward, measure('resistance', both, insulation.between, insulation.outside));
}

function allOf(level: Level, surface: 'walls' | 'floor' | 'ceiling'): Quantity | undefined {
  const assembly = level.given[surface]?.value;
  const insulation = assembly === undefined ? undefined : insulationOf(assembly);
  return insulation === undefined ? undefined : measure('resistance', both, insulation.between, insulation.outside);
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
    'mass-share': inwardShare,
    'mass-wall-r': (level) => (inwardShare(level) === undefined ? undefined : allOf(level, 'walls')),
    'wall-cavity': (level) => wall(level, 'between'),
    'wall-outside': (level) => wall(level, 'outside'),
    'wall-u': ({ given }) => {
      const walls = given.walls?.value;
      if (walls === undefined || insulationOf(walls) === undefined) return undefined;
      const { resistance, unknown } = assemblyFigures(walls);
      return unknown.resistance.length > 0 || !(resistance.value > 0)
        ? undefined
        : measure('conductance', throughAll, resistance);
    },
    'ceiling-r': (level) => allOf(level, 'ceiling'),
    'raised-heels': ({ given }) => number('raised heels', given.ceiling?.deeper['raised heels'] === undefined ? 0 : 1),
  },
  beside: {
    // Only a floor over open air under the house is asked to keep heat.
    'floor-r': (level, model) =>
      crawlsUnder(level, model).some(({ given }) => given.vents !== undefined) ? allOf(level, 'floor') : undefined,
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
