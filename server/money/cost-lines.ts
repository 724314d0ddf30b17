// The words of money: one cost a line, in whole cents, with what it is for and which rung of the ladder it stands on.
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Line } from '#takeoff/lines';

/** Paid or invoiced money counts first, then an accepted bid, a given cost, a unit price, then hours and priced material. */
export type Rung = 'paid' | 'bid' | 'given' | 'unit-price' | 'rate';
export type CostKind = 'material' | 'labour' | 'work' | 'fee' | 'hire' | 'tax' | 'contingency' | 'allowance';

export interface CostLine {
  readonly kind: CostKind;
  readonly rung: Rung;
  readonly label: string;
  readonly cents: number;
  /** Number of the step it belongs to. */
  readonly step?: number;
  readonly trade?: Slot;
  readonly room?: Slot;
  readonly level?: Slot;
  readonly element?: Slot;
  readonly line?: Line;
  /** The working, made when somebody asks. */
  readonly working?: () => Quantity;
}

/** What no money stands for yet. */
export interface Missing {
  readonly kind: 'price' | 'rate';
  readonly what: string;
  /** The line or step it was met at first. */
  readonly line?: Line;
  readonly step?: number;
  readonly trade?: Slot;
}

export interface Budget {
  /** Every cost with whose it is: made when first asked for, since the totals do not need it. */
  readonly lines: readonly CostLine[];
  /** Those that are not of goods. */
  readonly others: readonly CostLine[];
  /** Whole cents by number of the step: the sums of `lines`, without making them. */
  readonly byStep: () => Float64Array;
  /** Those of `lines` that are of one step, in their order, without making the others. */
  readonly ofStep: (step: number) => readonly CostLine[];
  /** Costs of goods that lines of the take-off need, whoever takes them. */
  readonly ofLines: (lines: readonly Line[]) => readonly CostLine[];
  /** Before tax and contingency. */
  readonly net: number;
  readonly tax: number;
  readonly contingency: number;
  readonly total: number;
  readonly missing: readonly Missing[];
  /** Whether the plan speaks of money at all. */
  readonly priced: boolean;
}
