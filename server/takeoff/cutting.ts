// Pieces cut from sticks of stock lengths. For each length of piece the stock that leaves least over is taken: pieces from
// one stick where they fit, sticks end to end where a piece is longer than any stock.
import { constant, form, measure, type Quantity, roundUp, total } from '#kit/quantity';
import type { Material } from '#model/model';
import type { Package } from './goods.ts';
import type { Line, Pieces } from './lines.ts';
import { withWaste } from './needed.ts';

export interface Cut {
  readonly package: Package;
  readonly lines: readonly Line[];
  readonly net: Quantity;
  /** The pieces, or their length, with waste. */
  readonly needed: Quantity;
  readonly sticks: Quantity<'number'>;
}

const fromEach = form('sticks', 'pieces ÷ pieces from one stick', (count = 0, from = 1) => (from > 0 ? count / from : 0));
const forEach = form('sticks', 'pieces × sticks for one', (count = 0, sticks = 1) => count * sticks);
const upward = form('bought', 'sticks, rounded up', (sticks = 0) => roundUp(sticks));
const lengthOf = form('length of the pieces', 'pieces × length', (count = 0, length = 0) => count * length);

export function cutting(lines: readonly Line[], stock: readonly Package[], row: Material): readonly Cut[] {
  const counted = lines[0]?.needed?.dimension === 'number';
  const byStock = new Map<Package, { lines: Line[]; sticks: Quantity<'number'>[]; pieces: Quantity[] }>();
  for (const line of lines)
    for (const pieces of line.pieces ?? []) {
      if (!(pieces.length.value > 0) || !(pieces.count.value > 0)) continue;
      const { package: chosen, each } = bestStock(pieces, stock);
      let share = byStock.get(chosen);
      if (share === undefined) byStock.set(chosen, (share = { lines: [], sticks: [], pieces: [] }));
      if (!share.lines.includes(line)) share.lines.push(line);
      share.sticks.push(sticksFor(pieces, each));
      // Goods that are counted stay counted; what is measured along its length stays a length.
      share.pieces.push(counted ? pieces.count : measure('length', lengthOf, pieces.count, pieces.length));
    }
  return [...byStock].map(([chosen, { lines: part, sticks, pieces }]) => {
    const net = sum(counted ? 'pieces' : 'length of the pieces', pieces);
    const all = withWaste(row, sum('sticks', sticks));
    return { package: chosen, lines: part, net, needed: withWaste(row, net), sticks: measure('number', upward, all) };
  });
}

/** Positive: so many pieces from one stick; negative: so many sticks for one piece. */
interface Choice {
  readonly package: Package;
  readonly each: number;
  readonly left: number;
}

function bestStock({ count, length }: Pieces, stock: readonly Package[]): Choice {
  const choices = stock.map((each) => choiceOf(length.value, count.value, each));
  const whole = choices.filter(({ each }) => each > 0);
  const [first, ...others] = whole.length > 0 ? whole : choices;
  return others.reduce((best, next) => (next.left < best.left - 1e-6 ? next : best), first!);
}

function choiceOf(length: number, count: number, stock: Package): Choice {
  const holds = stock.holds.value;
  const from = Math.floor(holds / length + 1e-9);
  // What is left of all sticks: four pieces from ten feet leave less than four from a stick of twelve that would give five.
  if (from >= 1) return { package: stock, each: from, left: (Math.ceil(count / from - 1e-9) * holds) / count - length };
  const sticks = Math.ceil(length / holds - 1e-9);
  return { package: stock, each: -sticks, left: sticks * holds - length };
}

function sticksFor({ count }: Pieces, each: number): Quantity<'number'> {
  return each > 0
    ? measure('number', fromEach, count, constant('pieces from one stick', each, 'number'))
    : measure('number', forEach, count, constant('sticks for one', -each, 'number'));
}

function sum(label: string, parts: readonly Quantity[]): Quantity {
  return parts.length === 1 ? parts[0]! : total(label, parts[0]!.dimension, parts);
}
