// The least length of stock for each item that is cut, by a solver that whoever asks brings along.
import { cutPool } from '#takeoff/cutting';
import { type Package, sticksOf } from '#takeoff/goods';
import { leastLength, type Proof, type Solve } from '#takeoff/least-length';
import type { Pieces } from '#takeoff/lines';
import { countedLines, countedPurchases } from '../takeoff-lines.ts';
import type { View } from '../view.ts';
import { cutOf, type Proofs } from './lengths.ts';
import { laidOf } from './sheets.ts';

export type { Solve } from '#takeoff/least-length';

/** `seconds` for each item. Sheets are proven for the way they are laid. */
export function proofsOf(view: View, solve: Solve, seconds: number): Proofs {
  const proofs = new Map<string, Proof>();
  for (const purchase of countedPurchases(view, new Set(countedLines(view)))) {
    const laid = laidOf(purchase, view);
    if (laid !== undefined) proofs.set(purchase.item, proofOf(laid.pieces, laid.stock, solve, seconds));
    else if (cutOf(purchase, view) !== undefined)
      proofs.set(
        purchase.item,
        proofOf(
          purchase.lines.flatMap(({ pieces }) => pieces ?? []),
          sticksOf(purchase.goods, view.style.system),
          solve,
          seconds,
        ),
      );
  }
  return proofs;
}

/** What is longer than any stick is joined as the quick rule joins it. */
function proofOf(pieces: readonly Pieces[], stock: readonly Package[], solve: Solve, seconds: number): Proof {
  const pool = cutPool([{ pieces }], stock);
  const fixed = pool.patterns.map(({ stock: { holds }, count }) => ({ holds: holds.value, count }));
  return leastLength(pool.pieces, stock, fixed, solve, seconds);
}
