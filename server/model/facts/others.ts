// Facts of openings, foundations, roofs, trenches and trades.
import { constant, form, measure } from '#kit/quantity';
import type { Facts } from '../facts.ts';
import type { Deck, Foundation, Opening, Roof, Trade, Trench } from '../model.ts';
import { dugWhole } from './dug-whole.ts';

const openingArea = form('opening area', 'width × height', (width = 0, height = 0) => width * height);

export function openingFacts({ takes }: Opening): Facts {
  if (takes === undefined) return {};
  return { width: takes.left, height: takes.right, area: measure('area', openingArea, takes.left, takes.right) };
}

export function foundationFacts(foundation: Foundation): Facts {
  return {
    bottom: foundation.given.bottom?.value,
    'wall-height': foundation.given.wall?.value.size.right,
    fill: unbalancedFill(foundation),
  };
}

const fromFooting = form('earth against the wall', 'bottom − footing', (bottom = 0, footing = 0) =>
  Math.max(0, bottom - footing),
);

/**
 * How much higher the earth stands outside the wall than inside: as given, or down to the top of the footing. Where a slab
 * lies on earth that is not dug out, it stands as high on both sides.
 * From memory: International Residential Code, definition of unbalanced backfill height.
 */
function unbalancedFill(foundation: Foundation): Facts[string] {
  const { fill, bottom, footing, slab } = foundation.given;
  if (fill !== undefined || bottom === undefined) return fill?.value;
  if (slab !== undefined && !dugWhole(foundation)) return constant('earth against the wall', 0, 'length');
  return footing === undefined ? bottom.value : measure('length', fromFooting, bottom.value, footing.value.size.right);
}

const deckArea = form('deck area', 'along × out', (along = 0, out = 0) => along * out);

export function deckFacts(deck: Deck): Facts {
  const size = deck.given.size?.value;
  return size === undefined ? {} : { area: measure('area', deckArea, size.left, size.right) };
}

export function roofFacts(roof: Roof): Facts {
  return { pitch: roof.given.shape?.value.pitch };
}

export function trenchFacts(trench: Trench): Facts {
  return { length: trench.given.long?.value, depth: trench.given.deep?.value };
}

export function tradeFacts(trade: Trade): Facts {
  return { people: constant('people in a crew', trade.given['crew of']?.value ?? 1, 'number') };
}
