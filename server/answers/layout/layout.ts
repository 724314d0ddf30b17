// DOOR: how what is bought is laid out and cut: concrete by pour and truck, lengths by stick, sheets, panels, rolls and tile by
// wall and floor, each beside what the simple rule would waste. Made only when somebody asks.
import type { Purchase } from '#takeoff/lines';
import type { Table } from '../table.ts';
import { countedLines, countedPurchases, isMeasuredOnly } from '../takeoff-lines.ts';
import type { View } from '../view.ts';
import { concreteTable } from './concrete.ts';
import { lengthsTable, type Proofs } from './lengths.ts';
import { panelsTable } from './panels.ts';
import { rollsTable } from './rolls.ts';
import { sheetsTable } from './sheets.ts';
import { tileTable } from './tile.ts';

export type { Proofs } from './lengths.ts';

/** One table for each sort of goods that the plan has. `proofs` by item, where they were asked for. */
export function layoutTables(view: View, proofs?: Proofs): readonly Table[] {
  const purchases = laidPurchases(view);
  const tables = [
    concreteTable(purchases, view),
    lengthsTable(purchases, view, proofs),
    sheetsTable(purchases, view, proofs),
    panelsTable(view),
    rollsTable(purchases, view),
    tileTable(purchases, view),
  ].filter((table) => table !== undefined);
  return tables.length > 0 ? tables : [NOTHING];
}

/** What of the plan's purchases is laid out or cut, or might be. */
export function laidPurchases(view: View): readonly Purchase[] {
  return countedPurchases(view, new Set(countedLines(view))).filter((purchase) => !isMeasuredOnly(purchase));
}

const NOTHING: Table = {
  heading: [],
  columns: [],
  rows: [],
  totals: [],
  remarks: ['Nothing is laid out: the plan has no concrete, lengths, sheets, panels, rolls or tile.'],
};
