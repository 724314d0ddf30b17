// The words of the take-off: what geometry counts (a portion), and what becomes of it with the library's rows (a line).
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { Outline } from '#kit/shapes/outline';
import type { Goods, GoodsRow, WorkKind } from '#model/model';

/** A size as written: 1/2", 2x6, #4. */
export type Literal = Goods['sizes'][number];
/** What is counted: the words that `installs … by` and `labour … by` name. */
export type Measure = WorkKind['given']['installs'][number]['value']['by'][number]['value'];

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
  /** The surfaces it is made of, where the plan tells them one by one and nothing is taken off them. */
  readonly surfaces?: readonly Quantity[];
  /** The rectangles that it is made of, for what is laid out on them: made when asked for. */
  readonly faces?: Faces;
  /** The goods, where the plan names them (a layer, a finish); else the work's row says. */
  readonly goods?: NamedGoods;
  /** Sizes for goods that the work's row names: the #4 of a footing. */
  readonly sizes?: readonly Literal[];
  /** What the rooms are for that a door closes off: by which its latch is chosen. */
  readonly closes?: readonly string[];
  /** Coats to go on, where the plan says. */
  readonly coats?: number;
  /** What else the goods may be counted by: a sheet in a wall is sheathing, insulation or cladding as its work says. */
  readonly otherwise?: readonly Measure[];
  /** The lengths that it is cut into, where each must come out of one stick. */
  readonly pieces?: readonly Pieces[];
  /** The part of a course or board that shows. */
  readonly face?: Quantity<'length'>;
  /** How deep loose goods are laid. */
  readonly depth?: Quantity<'length'>;
  /** How often the goods lie beside each other along the quantity: the plies of a beam. */
  readonly times?: Quantity<'number'>;
  /** Nothing in the plan asks for it; see the line. */
  readonly onlyIfDone?: true;
}

/** A surface to be covered, or the rectangle round it: a wall by its length and height, a floor by its extent to the east and to the north. */
export interface Face {
  /** 'north', 'ceiling 2'. */
  readonly label: string;
  readonly length: Quantity<'length'>;
  readonly height: Quantity<'length'>;
  readonly openings: readonly FaceOpening[];
  /** Where it is no rectangle: the shapes that it is made of, within its length and height. */
  readonly shapes?: readonly Outline[];
}
export type Faces = () => readonly Face[];
export interface FaceOpening {
  readonly label: string;
  readonly width: Quantity<'length'>;
  readonly height: Quantity<'length'>;
  /** Undefined for what reaches the floor. */
  readonly sill: Quantity<'length'> | undefined;
  /** From the left end of the wall seen from inside, where the plan says. */
  readonly at: Quantity<'length'> | undefined;
}

/** Pieces of one length. */
export interface Pieces {
  readonly count: Quantity<'number'>;
  readonly length: Quantity<'length'>;
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
  /** Nothing in the plan asks for it: it counts only where a task does this work. */
  readonly onlyIfDone?: true;
  readonly pieces?: readonly Pieces[];
  /** Of goods that are laid out on them. */
  readonly faces?: Faces;
}

/** Goods of one item over the whole plan, rounded up once into packages, or into sticks that pieces are cut from. */
export interface Purchase {
  readonly item: string;
  readonly label: string;
  readonly goods: NamedGoods;
  readonly net: Quantity;
  readonly needed: Quantity;
  /** Whole packages, or the quantity in its rounding step. */
  readonly bought: Quantity;
  /**
   * What one package holds, in the dimension of `needed`; absent where it is bought by the quantity (then `bought` is one),
   * and where sticks of several lengths are bought.
   */
  readonly holds?: Quantity;
  /** Sticks of several lengths, the longest first; `bought` is all of them. */
  readonly sticks?: readonly { readonly bought: Quantity<'number'>; readonly holds: Quantity }[];
  /** 'sheet', 'bag', 'cy'. */
  readonly package: string;
  /** A package that so many units of what is bought by the unit come in: a bucket of five gallons. */
  readonly larger?: { readonly word: string; readonly holds: Quantity };
  /** It comes by the truck: what one carries, the least that comes without a charge, the step it is ordered in. */
  readonly truck?: {
    readonly load: Quantity<'volume'>;
    readonly least: Quantity<'volume'> | undefined;
    readonly step: Quantity<'volume'> | undefined;
  };
  /** Of what comes by the truck: what it is poured for, and on which days, with the share of each; none where no step does. */
  readonly pour?: { readonly label: string; readonly days: readonly { readonly label: string; readonly share: number }[] };
  readonly lines: readonly Line[];
}
