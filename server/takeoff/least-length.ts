// The least length of stock that pieces can be cut from, found by a solver that whoever asks brings along: every way to cut a
// stick is a column, and as many of each are bought as give all pieces. Formula: Gilmore and Gomory, A linear programming
// approach to the cutting-stock problem, Operations Research 9 (1961).

import type { Pool } from './cutting.ts';
import type { Package } from './goods.ts';

/** Solves a model in the LP file format within some seconds; undefined where nothing was found. */
export type Solve = (model: string, seconds: number) => Solved | undefined;
export interface Solved {
  readonly optimal: boolean;
  readonly value: number;
  readonly values: ReadonlyMap<string, number>;
  /** Of the rows, where the model has no whole numbers. */
  readonly duals: ReadonlyMap<string, number>;
}

export type Proof =
  | { readonly kind: 'proven'; readonly length: number; readonly sticks: readonly SticksOf[] }
  | { readonly kind: 'unproven'; readonly length: number; readonly sticks: readonly SticksOf[]; readonly bound: number }
  | { readonly kind: 'none' };

/** Lengths in base units. */
export interface SticksOf {
  readonly holds: number;
  readonly count: number;
}

interface Column {
  readonly holds: number;
  readonly counts: readonly number[];
}

/** More ways to cut than this are not written down: they are found one by one, as prices ask for them. */
const MOST_COLUMNS = 4_000;
const MOST_ROUNDS = 300;

/** `pieces` all fit into a stick; `fixed` is bought beside them. */
export function leastLength(
  pieces: Pool,
  stock: readonly Package[],
  fixed: readonly SticksOf[],
  solve: Solve,
  seconds: number,
): Proof {
  const beside = fixed.reduce((sum, { holds, count }) => sum + holds * count, 0);
  const lengths = [...pieces.keys()];
  if (lengths.length === 0) return { kind: 'proven', length: beside, sticks: added(fixed) };
  const job: Job = {
    lengths,
    wanted: [...pieces.values()],
    stock: [...new Set(stock.map(({ holds }) => holds.value))].sort((a, b) => a - b),
  };
  const every = everyColumn(job);
  const priced = every === undefined ? pricedColumns(job, solve, seconds) : undefined;
  const columns = every ?? priced?.columns;
  if (columns === undefined) return { kind: 'none' };
  const found = solve(modelText(columns, job, true), seconds);
  if (found === undefined) return { kind: 'none' };
  const bought = columns.flatMap(({ holds }, at) => {
    const count = Math.round(found.values.get(`x${at}`) ?? 0);
    return count === 0 ? [] : [{ holds, count }];
  });
  const sticks = added([...fixed, ...bought]);
  const length = sticks.reduce((sum, { holds, count }) => sum + holds * count, 0);
  if (every !== undefined && found.optimal) return { kind: 'proven', length, sticks };
  const least = priced?.bound ?? (solve(modelText(columns, job, false), seconds)?.value ?? 0) * unitOf(job);
  const bound = beside + upToStep(least, job);
  return length <= bound * (1 + EXACT) ? { kind: 'proven', length, sticks } : { kind: 'unproven', length, sticks, bound };
}

interface Job {
  readonly lengths: readonly number[];
  readonly wanted: readonly number[];
  /** The shortest first. */
  readonly stock: readonly number[];
}

/** Costs are told in the shortest stick, so that numbers stay small. */
const unitOf = ({ stock }: Job): number => stock[0]!;

/** Whatever is bought is a sum of sticks, so a multiple of what divides them all. */
function upToStep(length: number, { stock }: Job): number {
  const step = stock.reduce((a, b) => divisor(a, b), 0);
  return step > 1 ? Math.ceil(length / step - 1e-6) * step : length;
}

function divisor(a: number, b: number): number {
  return b < 0.5 ? a : divisor(b, a % b);
}

function added(list: readonly SticksOf[]): readonly SticksOf[] {
  const counts = new Map<number, number>();
  for (const { holds, count } of list) counts.set(holds, (counts.get(holds) ?? 0) + count);
  return [...counts].map(([holds, count]) => ({ holds, count })).sort((a, b) => b.holds - a.holds);
}

/** Every way to cut a stick; a shorter stick that holds the same stands for a longer one. Undefined where there are too many. */
function everyColumn({ lengths, wanted, stock }: Job): readonly Column[] | undefined {
  const columns = new Map<string, Column>();
  for (const holds of stock) {
    const counts = new Array<number>(lengths.length).fill(0);
    const fill = (at: number, room: number): void => {
      if (columns.size > MOST_COLUMNS) return;
      if (at === lengths.length) {
        const key = counts.join(' ');
        if (counts.some((count) => count > 0) && !columns.has(key)) columns.set(key, { holds, counts: [...counts] });
        return;
      }
      const most = Math.min(wanted[at]!, Math.floor(room / lengths[at]! + EXACT));
      // The last length fills what is left; others may leave room for it.
      for (let count = most; count >= (at === lengths.length - 1 ? most : 0); count--) {
        counts[at] = count;
        fill(at + 1, room - count * lengths[at]!);
      }
      counts[at] = 0;
    };
    fill(0, holds);
    if (columns.size > MOST_COLUMNS) return undefined;
  }
  return [...columns.values()];
}

/** Ways to cut that pay at the prices of pieces, until none does: then the relaxed least is a bound for all ways. */
function pricedColumns(
  job: Job,
  solve: Solve,
  seconds: number,
): { readonly columns: readonly Column[]; readonly bound: number | undefined } | undefined {
  const { lengths, wanted, stock } = job;
  const columns: Column[] = lengths.flatMap((length, at) =>
    stock.flatMap((holds) => {
      const count = Math.min(wanted[at]!, Math.floor(holds / length + EXACT));
      return count > 0 ? [{ holds, counts: lengths.map((_, other) => (other === at ? count : 0)) }] : [];
    }),
  );
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const relaxed = solve(modelText(columns, job, false), seconds);
    if (relaxed === undefined || !relaxed.optimal) return round === 0 ? undefined : { columns, bound: undefined };
    const prices = lengths.map((_, at) => relaxed.duals.get(`c${at}`) ?? 0);
    let found = false;
    for (const holds of stock) {
      const best = dearest(prices, job, holds);
      if (best.worth <= holds / unitOf(job) + 1e-7) continue;
      columns.push({ holds, counts: best.counts });
      found = true;
    }
    if (!found) return { columns, bound: relaxed.value * unitOf(job) };
  }
  return { columns, bound: undefined };
}

/** The pieces of a stick that are worth most together: dearest for their length first, giving up where no rest can do better. */
function dearest(
  prices: readonly number[],
  { lengths, wanted }: Job,
  holds: number,
): { readonly worth: number; readonly counts: readonly number[] } {
  const order = lengths.map((_, at) => at).filter((at) => prices[at]! > 1e-12);
  order.sort((a, b) => prices[b]! / lengths[b]! - prices[a]! / lengths[a]!);
  const counts = new Array<number>(lengths.length).fill(0);
  let best = { worth: 0, counts: [...counts] };
  const fill = (nth: number, room: number, worth: number): void => {
    if (worth > best.worth + 1e-12) best = { worth, counts: [...counts] };
    const at = order[nth];
    if (at === undefined || worth + (room * prices[at]!) / lengths[at]! <= best.worth + 1e-12) return;
    for (let count = Math.min(wanted[at]!, Math.floor(room / lengths[at]! + EXACT)); count >= 0; count--) {
      counts[at] = count;
      fill(nth + 1, room - count * lengths[at]!, worth + count * prices[at]!);
    }
    counts[at] = 0;
  };
  fill(0, holds, 0);
  return best;
}

function modelText(columns: readonly Column[], job: Job, whole: boolean): string {
  const sum = (of: (column: Column) => number): string =>
    columns
      .flatMap((column, at) => (of(column) === 0 ? [] : [`+ ${of(column)} x${at}`]))
      // A line of the format has a limit.
      .join('\n ');
  const rows = job.wanted.map((count, at) => ` c${at}: ${sum(({ counts }) => counts[at]!)} >= ${count}`);
  const general = whole ? `General\n ${columns.map((_, at) => `x${at}`).join('\n ')}\n` : '';
  return `Minimize\n obj: ${sum(({ holds }) => holds / unitOf(job))}\nSubject To\n${rows.join('\n')}\n${general}End\n`;
}

const EXACT = 1e-9;
