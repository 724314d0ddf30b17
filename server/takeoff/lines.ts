// The words of the take-off: what geometry counts (a portion), and what becomes of it with the library's rows (a line).
import type { Literal } from '#grammar/tree';
import type { Measure } from '#grammar/vocabulary/measures';
import type { Dimension } from '#kit/dimension';
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { GoodsRow, WorkKind } from '#model/model';

/** Where a portion is: the thing measured, which part of it, and the room and level it belongs to. */
export interface Where {
  readonly element: Slot;
  /** 'walls', 'ceiling', 'north' … */
  readonly part?: string;
  readonly room?: Slot;
  readonly level?: Slot;
}

/** What geometry says of one element, before any goods, waste or work: net, and what a convention may deduct otherwise. */
export interface Portion {
  readonly measure: Measure;
  readonly where: Where;
  /** Net of openings. */
  readonly quantity: Quantity;
  /** Before openings, and each opening: for goods whose convention leaves small openings in. */
  readonly gross?: Quantity;
  readonly openings?: readonly Quantity[];
  /** The goods, where the plan names them (a layer, a finish); else the work's row says. */
  readonly goods?: NamedGoods;
  /** Sizes for goods that the work's row names: the #4 of a footing. */
  readonly sizes?: readonly Literal[];
  /** Coats to go on, where the plan says. */
  readonly coats?: number;
}

export interface NamedGoods {
  readonly name: string;
  readonly of: GoodsRow | undefined;
  readonly sizes: readonly Literal[];
}

/** A line of the take-off: goods installed by a kind of work at one place, or labour alone. */
export interface Line {
  /** `item@scope`, unique in the plan: what `explain` accepts. */
  readonly id: string;
  /** 'drywall 1/2"': goods and size; for labour alone the measure's words. */
  readonly item: string;
  readonly label: string;
  readonly goods: NamedGoods | undefined;
  readonly measure: Measure;
  readonly where: Where;
  /** Undefined where no kind of work of the library installs it. */
  readonly work: WorkKind | undefined;
  /** Geometry alone. */
  readonly net: Quantity;
  /** Net with laps and waste, deductions by the goods' convention, coverage and coats: in what the goods are sold by. */
  readonly needed: Quantity | undefined;
  /** Person-hours; undefined where the work gives no rate for it. */
  readonly hours: Quantity<'time'> | undefined;
  readonly coats: number;
}

/** Goods of one item over the whole plan, rounded up once into packages. */
export interface Purchase {
  readonly item: string;
  readonly label: string;
  readonly goods: NamedGoods;
  readonly net: Quantity;
  readonly needed: Quantity;
  /** Whole packages, or the quantity in its rounding step. */
  readonly bought: Quantity;
  /** 'sheet', 'bag', 'cy'. */
  readonly package: string;
  readonly lines: readonly Line[];
}

export type { Dimension };
