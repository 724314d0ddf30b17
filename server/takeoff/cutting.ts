// Pieces cut from sticks of stock lengths: which sticks to buy, and how each is cut. Of goods by length what cutting leaves over
// counts as waste, and more sticks come only where that is less than the goods' rate; of counted goods the waste is whole
// pieces more (`spare-pieces.ts`). A quick rule, not a proven optimum; it never buys more than
// one length for each piece would.
import { constant, type Quantity, roundUp, total } from '#kit/quantity';
import type { System } from '#kit/units';
import { anotherLength } from './conventions.ts';
import { cutText, lengthText } from './cut-text.ts';
import { EXACT, fits, MOST_CUT } from './fits.ts';
import type { Package } from './goods.ts';
import type { Line } from './lines.ts';
import { notInOffcuts, sparePieces } from './spare-pieces.ts';

/** Sticks of one length. */
export interface Sticks {
  readonly bought: Quantity<'number'>;
  readonly holds: Quantity;
}

export interface Cut {
  readonly word: string;
  /** All sticks; its working is the cut list. */
  readonly bought: Quantity<'number'>;
  /** The longest first. */
  readonly sticks: readonly Sticks[];
  /** The cut list, without what is bought for waste. */
  readonly patterns: readonly Pattern[];
  /** Length bought in base units where each length of piece is cut from the best stock for it alone. */
  readonly simple: number;
}

/** So many sticks of a length, each cut into these pieces, the longest first. */
export interface Pattern {
  readonly stock: Package;
  readonly pieces: readonly number[];
  readonly count: number;
}

/** Of a line: its pieces, and whether it is needed by number. */
type Cuttable = Pick<Line, 'pieces'> & Partial<Pick<Line, 'needed'>>;

/** Pieces by length, in base units. */
export type Pool = ReadonlyMap<number, number>;

/** `waste` is what the pieces' length, or their count where they are needed by number, is multiplied by for cuts and faults. */
export function cutting(lines: readonly Cuttable[], stock: readonly Package[], waste: number, system: System): Cut {
  const pool = poolOf(lines);
  const each = simple(pool, stock);
  const ways = [nested(pool, stock, stock), ...stock.map((one) => nested(pool, [one], stock))];
  const patterns = bestOf(
    each,
    ways.filter((way) => way !== undefined),
  );
  const counted = lines[0]?.needed?.dimension === 'number';
  const spare = counted
    ? simple(notInOffcuts(sparePieces(pool, waste), patterns), stock)
    : spareFor(lengthNeeded(lines, pool, waste), patterns);
  const word = stock[0]!.word;
  const parts = [...patterns, ...spare].map(({ stock: { holds }, pieces, count }) => ({
    holds,
    count: constant(cutText(holds.value, pieces, system), count, 'number'),
  }));
  const lengths = [...new Set([...patterns, ...spare].map(({ stock: { holds } }) => holds))].sort((a, b) => b.value - a.value);
  const sticks = lengths.map((holds) => ({
    holds,
    bought: sum(
      `pieces of ${lengthText(holds.value, system)}`,
      parts.filter((part) => part.holds === holds).map(({ count }) => count),
    ),
  }));
  return {
    word,
    sticks,
    patterns,
    simple: lengthOf(each),
    bought:
      sticks.length === 1
        ? sticks[0]!.bought
        : total(
            'bought',
            'number',
            sticks.map(({ bought }) => bought),
          ),
  };
}

/** In base units. */
export function lengthOf(patterns: readonly Pattern[]): number {
  return patterns.reduce((all, { stock, count }) => all + stock.holds.value * count, 0);
}

/** Counts are whole: where geometry gives a part of a piece, a whole one is cut. */
function poolOf(lines: readonly Pick<Line, 'pieces'>[]): Pool {
  const counts = new Map<number, number>();
  for (const { pieces } of lines)
    for (const { count, length } of pieces ?? [])
      if (length.value > 0 && count.value > 0 && Number.isFinite(length.value) && Number.isFinite(count.value))
        counts.set(length.value, (counts.get(length.value) ?? 0) + count.value);
  return new Map([...counts].map(([length, count]) => [length, roundUp(count)] as const).sort(([a], [b]) => b - a));
}

/** The least length bought, the first of equals; a way with more lengths than the first must save a share for each. */
function bestOf(first: readonly Pattern[], others: readonly (readonly Pattern[])[]): readonly Pattern[] {
  const lengths = (patterns: readonly Pattern[]): number => new Set(patterns.map(({ stock }) => stock.holds.value)).size;
  const cost = (patterns: readonly Pattern[]): number => {
    return lengthOf(patterns) * (1 + anotherLength.value * Math.max(0, lengths(patterns) - lengths(first)));
  };
  return others.reduce((best, next) => (cost(next) < cost(best) * (1 - EXACT) ? next : best), first);
}

/** As the lines say; boards that are needed by area are cut in whole rows, and waste is counted on what they cover. */
function lengthNeeded(lines: readonly Cuttable[], pool: Pool, waste: number): number {
  if (lines.length > 0 && lines.every(({ needed }) => needed?.dimension === 'length'))
    return lines.reduce((sum, { needed }) => sum + needed!.value, 0);
  let sum = 0;
  for (const [length, count] of pool) sum += length * count * waste;
  return sum;
}

/** Sticks of the length that most are of, where what is left over does not come to the waste of the goods. */
function spareFor(all: number, patterns: readonly Pattern[]): readonly Pattern[] {
  let needed = all;
  for (const { stock, count } of patterns) needed -= stock.holds.value * count;
  const [first, ...others] = patterns;
  if (first === undefined || needed <= 0) return [];
  const { stock } = others.reduce((most, next) => (next.count > most.count ? next : most), first);
  const count = roundUp(needed / stock.holds.value);
  return count > 0 ? [{ stock, pieces: [], count }] : [];
}

/** For each length of piece the one stock that leaves least over, by itself. */
function simple(pool: Pool, stock: readonly Package[]): readonly Pattern[] {
  const patterns: Pattern[] = [];
  for (const [length, count] of pool) {
    const whole = stock.filter(({ holds }) => fits(length, holds.value) > 0);
    if (whole.length === 0) {
      for (const stick of joined(length, stock)) add(patterns, { ...stick, count: count * stick.count });
      continue;
    }
    const [first, ...others] = whole;
    const left = ({ holds }: Package): number => holds.value / fits(length, holds.value) - length;
    const chosen = others.reduce((best, next) => (left(next) < left(best) - EXACT * length ? next : best), first!);
    const each = fits(length, chosen.holds.value);
    if (count >= each)
      add(patterns, { stock: chosen, pieces: new Array<number>(each).fill(length), count: Math.floor(count / each) });
    const rest = count % each;
    if (rest > 0) add(patterns, { stock: chosen, pieces: new Array<number>(rest).fill(length), count: 1 });
  }
  return patterns;
}

/**
 * Pieces of all lengths together: the longest first, with whatever shorter ones its stick still holds. Only what is longer
 * than any stick of `all` is joined; undefined where `stock` is too short for a piece.
 */
function nested(pool: Pool, stock: readonly Package[], all: readonly Package[]): readonly Pattern[] | undefined {
  const { patterns: sticks, pieces } = withoutLong(pool, all);
  const patterns = [...sticks];
  const rest = new Map(pieces);
  while (rest.size > 0) {
    const pattern = leastLeft(rest, stock);
    if (pattern === undefined) return undefined;
    add(patterns, pattern);
    for (const length of new Set(pattern.pieces)) {
      const remaining = rest.get(length)! - pattern.count * pattern.pieces.filter((each) => each === length).length;
      if (remaining > 0) rest.set(length, remaining);
      else rest.delete(length);
    }
  }
  return patterns;
}

/** What is longer than any stick is joined of whole ones; only its last part has room for other pieces beside it. */
export function cutPool(
  lines: readonly Pick<Line, 'pieces'>[],
  stock: readonly Package[],
): { readonly patterns: readonly Pattern[]; readonly pieces: Pool } {
  return withoutLong(poolOf(lines), stock);
}

function withoutLong(pool: Pool, stock: readonly Package[]): { readonly patterns: readonly Pattern[]; readonly pieces: Pool } {
  const longest = stock.reduce((most, { holds }) => Math.max(most, holds.value), 0);
  const left = new Map<number, number>();
  const patterns: Pattern[] = [];
  for (const [length, count] of pool) {
    if (fits(length, longest) > 0) {
      left.set(length, (left.get(length) ?? 0) + count);
      continue;
    }
    // Of sticks end to end the last may have room for other pieces.
    const sticks = joined(length, stock);
    const last = sticks[sticks.length - 1]!.pieces[0]!;
    for (const stick of sticks.slice(0, -1)) add(patterns, { ...stick, count: count * stick.count });
    left.set(last, (left.get(last) ?? 0) + count);
  }
  return { patterns, pieces: new Map([...left].sort(([a], [b]) => b - a)) };
}

/** For the longest piece left, the stick whose filling leaves the least share of it; as often as the pieces last. */
function leastLeft(rest: Pool, stock: readonly Package[]): Pattern | undefined {
  let best: Pattern | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const one of stock) {
    let room = one.holds.value;
    let count = Number.POSITIVE_INFINITY;
    const pieces: number[] = [];
    for (const [length, available] of rest) {
      const taken = Math.min(available, fits(length, room));
      if (pieces.length === 0 && taken === 0) break;
      if (taken === 0) continue;
      for (let nth = 0; nth < taken; nth++) pieces.push(length);
      room -= taken * length;
      count = Math.min(count, Math.floor(available / taken));
    }
    const share = room / one.holds.value;
    if (pieces.length === 0 || share >= least - EXACT) continue;
    best = { stock: one, pieces, count };
    least = share;
  }
  return best;
}

/**
 * Sticks end to end for a piece that is longer than any: the least length; of equals those of one length, then the fewest.
 * All but the last of the list are whole.
 */
function joined(length: number, stock: readonly Package[]): readonly Pattern[] {
  let best: readonly Package[] = [];
  let least = [Number.POSITIVE_INFINITY, 0, 0];
  const longest = stock.reduce((most, each) => (each.holds.value > most.holds.value ? each : most), stock[0]!);
  const fewest = Math.ceil(length / longest.holds.value - EXACT);
  if (fewest > MOST_CUT) {
    const whole = { stock: longest, pieces: [longest.holds.value] };
    return [
      { ...whole, count: fewest - 1 },
      { ...whole, count: 1 },
    ];
  }
  const consider = (sticks: readonly Package[]): void => {
    const bought = sticks.reduce((all, { holds }) => all + holds.value, 0);
    if (bought < length * (1 - EXACT)) return;
    const own = [bought, new Set(sticks).size, sticks.length];
    const at = own.findIndex((value, nth) => Math.abs(value - least[nth]!) > EXACT * length);
    if (at < 0 || own[at]! > least[at]!) return;
    best = sticks;
    least = own;
  };
  for (const one of stock) consider(new Array<Package>(Math.ceil(length / one.holds.value - EXACT)).fill(one));
  if (fewest <= MOST_JOINED)
    for (const first of stock)
      for (const last of stock)
        for (let nth = 1; nth < fewest + 1; nth++)
          consider([...new Array<Package>(fewest + 1 - nth).fill(first), ...new Array<Package>(nth).fill(last)]);
  for (const last of stock) if (fewest > 1) consider([...new Array<Package>(fewest - 1).fill(longest), last]);
  const ordered = [...new Set(best)].sort((a, b) => b.holds.value - a.holds.value);
  const bought = best.reduce((all, { holds }) => all + holds.value, 0);
  return ordered.flatMap((one, nth): readonly Pattern[] => {
    const count = best.filter((each) => each === one).length;
    const whole = { stock: one, pieces: [one.holds.value] };
    if (nth < ordered.length - 1) return [{ ...whole, count }];
    const cut = { stock: one, pieces: [one.holds.value - (bought - length)], count: 1 };
    return count === 1 ? [cut] : [{ ...whole, count: count - 1 }, cut];
  });
}

/** Pieces longer than so many sticks are joined of one length, or of the longest and one other. */
const MOST_JOINED = 6;

function add(patterns: Pattern[], pattern: Pattern): void {
  const at = patterns.findIndex(
    ({ stock, pieces }) =>
      stock === pattern.stock &&
      pieces.length === pattern.pieces.length &&
      pieces.every((piece, nth) => piece === pattern.pieces[nth]),
  );
  if (at < 0) patterns.push(pattern);
  else patterns[at] = { ...patterns[at]!, count: patterns[at]!.count + pattern.count };
}

function sum(label: string, parts: readonly Quantity<'number'>[]): Quantity<'number'> {
  return parts.length === 1 ? parts[0]! : total(label, 'number', parts);
}
