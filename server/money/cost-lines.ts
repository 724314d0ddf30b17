// The words of money: one cost a line, in whole cents, with what it is for and which rung of the ladder it stands on.
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Line } from '#takeoff/lines';
import type { Goods } from './material-costs.ts';

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

/** Lines of the take-off whose goods cost nothing more. */
export interface PaidFor {
  readonly lines: readonly Line[];
  /** Number of the step that they are paid for with. */
  readonly step?: number;
  /** The accepted bid that holds the step. */
  readonly bid?: Slot;
  /** Money kept for goods that are not yet chosen. */
  readonly allowance?: Slot;
}

export interface Budget {
  /** Every cost with whose it is: made when first asked for, since the totals do not need it. */
  readonly lines: readonly CostLine[];
  /** Of `lines` those of a step, without making the others. */
  readonly linesOfStep: (step: number) => readonly CostLine[];
  /** Their sum, in whole cents. */
  readonly centsOfStep: (step: number) => number;
  /** Whole cents of `lines` that belong to a room, a level or an element. */
  readonly centsAt: (slot: Slot) => number;
  /** Before tax and contingency. */
  readonly net: number;
  readonly tax: number;
  readonly contingency: number;
  readonly total: number;
  readonly missing: readonly Missing[];
  /** What is bought and not paid for otherwise; goods of which a part is paid for are rounded up for the rest alone. */
  readonly goods: readonly Goods[];
  /** What is paid for otherwise, by step and allowance; made when first asked for. */
  readonly paidFor: readonly PaidFor[];
  /** Whether the plan speaks of money at all. */
  readonly priced: boolean;
}
