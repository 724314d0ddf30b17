// From the net of geometry to what is needed: deductions by the goods' convention, plies, coverage and coats, laps, waste,
// each a step that shows in the working. For what is not bought but dug and filled: how its volume changes.
import { INCH, overDimension } from '#kit/dimension';
import { constant, form, measure, type Quantity, quantityIn, roundUp } from '#kit/quantity';
import type { GoodsRow, Material } from '#model/model';
import { actualSize, packagesOf, thicknessOf, weighsOf } from './goods.ts';
import type { NamedGoods, Portion } from './lines.ts';

const kept = form('openings taken off', 'gross − openings larger than the goods leave in', (gross = 0, _over = 0, ...openings) =>
  openings.reduce((rest, area) => rest - area, gross),
);
const plies = form('side by side', 'quantity × how often', (quantity = 0, times = 1) => quantity * times);
const coated = form('coats', 'quantity × coats', (quantity = 0, coats = 1) => quantity * coats);
const covered = form('by what one covers', 'quantity ÷ what one covers', (quantity = 0, covers = 1) => quantity / covers);
const inCourses = form('in courses', 'area ÷ part of each that shows', (area = 0, face = 1) => area / face);
const laidDeep = form('volume', 'area × depth', (area = 0, depth = 0) => area * depth);
const weighed = form('weight', 'quantity × weight of each', (quantity = 0, weight = 0) => quantity * weight);
const lapped = form('with laps', 'quantity × (1 + lap)', (quantity = 0, lap = 0) => quantity * (1 + lap));
const lappedWidth = form('with laps', 'quantity × width ÷ (width − lap)', (quantity = 0, width = 1, lap = 0) =>
  width > lap ? (quantity * width) / (width - lap) : quantity,
);
const lappedLength = form('with laps', 'quantity × length of one ÷ (length of one − lap)', (quantity = 0, length = 1, lap = 0) =>
  length > lap ? (quantity * length) / (length - lap) : quantity,
);
const wasteAdded = form('with waste', 'quantity × (1 + waste)', (quantity = 0, waste = 0) => quantity * (1 + waste));
const wasteDivided = form('with waste', 'quantity ÷ (1 − waste)', (quantity = 0, waste = 0) =>
  waste < 1 ? quantity / (1 - waste) : quantity,
);
const wholeParts = form(
  'in whole packages, each part by itself',
  'what one holds × each part ÷ it, rounded up; added',
  (one = 1, ...parts) => parts.reduce((sum, part) => sum + (one > 0 ? one * roundUp(part / one) : part), 0),
);
const boardMeasure = form(
  'board measure',
  'length × nominal thickness × nominal width',
  (length = 0, thick = 0, wide = 0) => length * thick * wide,
  'US Army subcourse EN5155, Carpentry, p. 1-28: thickness in inches × width in inches × length in feet ÷ 12',
);
const loosened = form('loose', 'bank volume × (1 + swell)', (bank = 0, swell = 0) => bank * (1 + swell));
const fromBank = form('from the bank', 'compacted volume ÷ what compacting leaves', (compacted = 0, shrink = 1) =>
  shrink > 0 ? compacted / shrink : compacted,
);

export interface Needed {
  readonly quantity: Quantity;
  readonly coats: number;
}

/** What is needed of goods for a portion. `net` stands in for the portion's own quantity where a work uses goods up. */
export function neededOf(goods: NamedGoods, row: GoodsRow | undefined, portion: Portion, net: Quantity): Needed {
  switch (row?.kind) {
    case 'material':
      return materialNeeded(goods, row, portion, net);
    case 'item':
      return { quantity: itemNeeded(row, net), coats: 1 };
    default:
      return { quantity: net, coats: 1 };
  }
}

function materialNeeded(goods: NamedGoods, row: Material, portion: Portion, net: Quantity): Needed {
  const coats = portion.coats ?? row.given.coats?.value ?? 1;
  let quantity = net === portion.quantity ? afterDeductions(row, portion) : net;
  if (portion.times !== undefined && portion.times.value !== 1 && net === portion.quantity)
    quantity = measure(quantity.dimension, plies, quantity, portion.times);
  if (coats !== 1) quantity = measure(quantity.dimension, coated, quantity, constant('coats', coats, 'number'));
  quantity = inPackageUnits(goods, row, portion, quantity);
  if (row.given.whole !== undefined) quantity = wholeInEachPart(goods, row, portion, quantity);
  return { quantity: inSoldUnit(goods, row, withWaste(row, withLaps(goods, row, quantity))), coats };
}

/** A part is the portion, or each of its surfaces. */
function wholeInEachPart(goods: NamedGoods, row: Material, { surfaces }: Portion, quantity: Quantity): Quantity {
  const one = packagesOf(row, goods.sizes).find(({ holds }) => holds.dimension === quantity.dimension)?.holds;
  if (one === undefined) return quantity;
  const parts = surfaces !== undefined && surfaces[0]?.dimension === quantity.dimension ? surfaces : [quantity];
  return measure(quantity.dimension, wholeParts, one, ...parts);
}

/** Paint is spoken of in gallons and lumber in board feet, whatever the units of the plan; other volumes print as everything else does. */
function inSoldUnit(goods: NamedGoods, row: Material, quantity: Quantity): Quantity {
  if (quantity.dimension !== 'volume') return quantity;
  const unit = packagesOf(row, goods.sizes).find(({ holds }) => holds.dimension === 'volume')?.holds.unit;
  return unit === undefined || !LIQUID.has(unit) ? quantity : quantityIn(quantity, unit);
}
const LIQUID: ReadonlySet<string> = new Set(['gal', 'l', 'ml', 'bf']);

/** Openings up to a size stay in where the row says so; else all of them are taken off, which is the net. */
function afterDeductions(row: Material, portion: Portion): Quantity {
  const over = row.given.deducts?.value;
  const { gross, openings } = portion;
  if (over === undefined || gross === undefined || openings === undefined || openings.length === 0) return portion.quantity;
  const large = openings.filter((area) => area.value > over.value);
  return large.length === openings.length ? portion.quantity : measure(gross.dimension, kept, gross, over, ...large);
}

/** Into what the goods are sold by: area into gallons, courses into lengths, volume into weight. */
function inPackageUnits(goods: NamedGoods, row: Material, portion: Portion, quantity: Quantity): Quantity {
  const covers = row.given.covers?.value.amount;
  if (covers !== undefined && covers.value > 0) {
    const dimension = overDimension(quantity.dimension, covers.dimension);
    if (dimension !== undefined && !dimension.includes('/')) return measure(dimension, covered, quantity, covers);
  }
  const wanted = row.given.rounds[0]?.value.dimension ?? packagesOf(row, goods.sizes)[0]?.holds.dimension;
  if (wanted === undefined || wanted === quantity.dimension) return quantity;
  const { dimension } = quantity;
  if (dimension === 'area' && wanted === 'length') {
    const face = portion.face ?? row.given.face?.value ?? actualSize(goods)?.right;
    return face === undefined || face.value <= 0 ? quantity : measure('length', inCourses, quantity, face);
  }
  const nominal = dimension === 'length' && wanted === 'volume' ? nominalSize(goods) : undefined;
  if (nominal !== undefined) return measure('volume', boardMeasure, quantity, nominal.thick, nominal.wide);
  if (dimension === 'area' && (wanted === 'volume' || wanted === 'weight')) {
    const depth = thicknessOf(goods) ?? portion.depth;
    if (depth !== undefined) {
      const volume = measure('volume', laidDeep, quantity, depth);
      return wanted === 'volume' ? volume : inPackageUnits(goods, row, portion, volume);
    }
  }
  if (wanted === 'weight') {
    const weight = dimension === 'volume' ? (row.given.density?.value ?? weighsOf(goods)) : weighsOf(goods);
    if (weight !== undefined && weight.dimension === `weight/${dimension}`) return measure('weight', weighed, quantity, weight);
  }
  return quantity;
}

/** Lumber is measured by its nominal size, and what is under an inch thick as an inch. */
function nominalSize({
  sizes,
}: NamedGoods): { readonly thick: Quantity<'length'>; readonly wide: Quantity<'length'> } | undefined {
  const size = sizes.find((each) => each.kind === 'nominal' && each.unit === undefined);
  if (size?.kind !== 'nominal') return undefined;
  const [thick = 0, wide = 0] = size.across;
  return {
    thick: constant('nominal thickness, an inch at least', Math.max(1, thick) * INCH, 'length'),
    wide: constant('nominal width', wide * INCH, 'length'),
  };
}

function withLaps(goods: NamedGoods, row: Material, quantity: Quantity): Quantity {
  const lap = row.given.lap?.value;
  if (lap === undefined || lap.value === 0) return quantity;
  if (lap.dimension === 'number') return measure(quantity.dimension, lapped, quantity, lap);
  const width = rollWidth(row);
  if (width !== undefined) return measure(quantity.dimension, lappedWidth, quantity, width, lap);
  const stick = quantity.dimension === 'length' ? packagesOf(row, goods.sizes)[0]?.holds : undefined;
  return stick?.dimension === 'length' ? measure(quantity.dimension, lappedLength, quantity, stick, lap) : quantity;
}

/** A lap as a length loses its part of the narrow side of the roll. */
function rollWidth(row: Material): Quantity<'length'> | undefined {
  const holds = row.given['sold by'][0]?.value.holds;
  if (holds === undefined || !('left' in holds)) return undefined;
  return holds.left.value <= holds.right.value ? holds.left : holds.right;
}

function withWaste(row: Material, quantity: Quantity): Quantity {
  const waste = row.given.waste?.value;
  if (waste === undefined || waste.rate.value === 0) return quantity;
  return measure(quantity.dimension, waste.form === 'divided' ? wasteDivided : wasteAdded, quantity, waste.rate);
}

/** What a quantity is multiplied by for waste. */
export function wasteFactor(row: Material): number {
  const waste = row.given.waste?.value;
  if (waste === undefined) return 1;
  return (waste.form === 'divided' ? wasteDivided : wasteAdded).compute(1, waste.rate.value);
}

function itemNeeded(row: Extract<GoodsRow, { kind: 'item' }>, net: Quantity): Quantity {
  const { shrinks, swells } = row.given;
  const bank = shrinks === undefined ? net : measure(net.dimension, fromBank, net, shrinks.value);
  return swells === undefined ? bank : measure(net.dimension, loosened, bank, swells.value);
}
