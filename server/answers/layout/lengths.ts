// The cut list: which sticks of goods are cut to which pieces, with the waste beside that of each length cut by itself, and
// of the proven least where that was asked for.
import { packagesIn } from '#takeoff/bought';
import { lengthText, piecesText } from '#takeoff/cut-text';
import { type Cut, cutting, lengthOf, type Pattern } from '#takeoff/cutting';
import { sticksOf } from '#takeoff/goods';
import type { Proof } from '#takeoff/least-length';
import type { Purchase } from '#takeoff/lines';
import { wasteFactor } from '#takeoff/needed';
import { left, right, type Table } from '../table.ts';
import { buyText } from '../takeoff-table.ts';
import type { View } from '../view.ts';
import { shareText } from './words.ts';

/** What a solver found, by item. */
export type Proofs = ReadonlyMap<string, Proof>;

/** Undefined for what is not cut from sticks. */
export function cutOf({ goods, lines }: Purchase, view: View): Cut | undefined {
  const { system } = view.style;
  const stock = goods.of?.kind === 'material' ? sticksOf(goods, system) : [];
  if (goods.of?.kind !== 'material' || stock.length === 0 || lines.some(({ pieces }) => pieces === undefined)) return undefined;
  return cutting(lines, stock, wasteFactor(goods.of), system);
}

/** Goods that come in lengths, of which no place tells its pieces: they are bought by their whole length. */
export function byLengthOf(purchases: readonly Purchase[]): readonly Purchase[] {
  return purchases.filter(
    ({ goods, needed, lines, package: word }) =>
      goods.of?.kind === 'material' &&
      needed.dimension === 'length' &&
      word === 'piece' &&
      lines.some(({ pieces }) => pieces === undefined),
  );
}

export function lengthsTable(purchases: readonly Purchase[], view: View, proofs: Proofs | undefined): Table | undefined {
  const rows = purchases.flatMap((purchase): Table['rows'] => {
    const cut = cutOf(purchase, view);
    if (cut === undefined || cut.patterns.length === 0) return [];
    const pieces = piecesLength(cut);
    const waste = [
      `waste ${shareText(lengthOf(cut.patterns) - pieces, pieces)}`,
      `each length by itself ${shareText(cut.simple - pieces, pieces)}`,
      ...proofText(proofs?.get(purchase.item), pieces, view),
    ];
    return [
      `${purchase.label}: ${buyText(purchase, view)}; ${waste.join(', ')}`,
      ...longestFirst(cut.patterns).map(({ stock, pieces: own, count }) => patternRow(count, stock.holds.value, own, view)),
    ];
  });
  const alone = rowsByLength(purchases, view);
  if (rows.length === 0 && alone.length === 0) return undefined;
  return {
    heading: [
      'Lengths as they are cut. Waste is what is left of the sticks that are cut, as a share of the pieces.',
      ...(proofs === undefined ? [] : ['The least is what an exact solver finds for the same pieces.']),
    ],
    columns: [right('Sticks'), right('Of'), left('Cut to'), right('Left of each')],
    rows: [...rows, ...alone],
    totals: [],
    remarks: [],
  };
}

/** A heading and a row for each length of each item. */
function rowsByLength(purchases: readonly Purchase[], view: View): Table['rows'] {
  const rows = byLengthOf(purchases).flatMap((purchase) =>
    packagesIn(purchase).map(({ bought, holds }): readonly string[] => [
      `${bought.value}`,
      holds === undefined ? '' : lengthText(holds.value, view.style.system),
      purchase.label,
      '',
    ]),
  );
  return rows.length === 0 ? [] : ['By their whole length, since nothing tells their pieces', ...rows];
}

/** As whoever cuts them takes them from the pile. */
export function longestFirst(patterns: readonly Pattern[]): readonly Pattern[] {
  return [...patterns].sort((a, b) => b.stock.holds.value - a.stock.holds.value);
}

/** All pieces that are cut, in base units. */
export function piecesLength({ patterns }: Cut): number {
  return patterns.reduce((sum, { pieces, count }) => sum + count * pieces.reduce((all, each) => all + each, 0), 0);
}

/** Of a proof: the least waste over `net`, and how sure it is. `each` is what a unit of length counts for: of sheets their width. */
export function proofText(proof: Proof | undefined, net: number, { style: { system } }: View, each = 1): readonly string[] {
  if (proof === undefined) return [];
  if (proof.kind === 'none') return ['no least found in the time'];
  const sticks = proof.sticks.map(({ holds, count }) => `${count} of ${lengthText(holds, system)}`).join(', ');
  const waste = (length: number): string => shareText(length * each - net, net);
  if (proof.kind === 'proven') return [`proven least ${waste(proof.length)} (${sticks})`];
  return [`least found ${waste(proof.length)} (${sticks}), not proven: not below ${waste(proof.bound)}`];
}

export function patternRow(
  count: number,
  holds: number,
  pieces: readonly number[],
  { style: { system } }: View,
): readonly string[] {
  const rest = holds - pieces.reduce((sum, each) => sum + each, 0);
  return [`${count}`, lengthText(holds, system), piecesText(pieces, system), rest > 1 ? lengthText(rest, system) : ''];
}
