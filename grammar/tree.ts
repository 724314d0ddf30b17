// What reading a file gives: lines, each one statement of items, and the tree that their indentation makes.
// Columns count UTF-16 units from a line's first letter; nothing here knows its line number or offset except FileTree,
// so a line or a node stays the same object for as long as its own text and its children do.
import type { Dimension } from '#kit/dimension';

export type Literal =
  /**
   * A number with its unit. `value` is in base units (see kit/dimension); `unit` is the canonical unit word: 'ft-in',
   * 'in', 'ft', 'mm', 'm', 'sf', '$', '%', 'h', 'd', 'days' …, '' for a bare number, '$/sf' for a rate.
   */
  | { readonly kind: 'quantity'; readonly dimension: Dimension | 'bare'; readonly value: number; readonly unit: string }
  /** 2x6 is [2, 6]; 5/4x6 is [1.25, 6]; 2x10x14 is [2, 10] with 14 feet; 2400x1200x10mm has the unit 'mm'. */
  | { readonly kind: 'nominal'; readonly across: readonly number[]; readonly feet?: number; readonly unit?: string }
  /** Reinforcing bar: #4, T12 (metric). */
  | { readonly kind: 'bar'; readonly number: number; readonly metric?: true }
  /** 6:12, 1:50, 1.5:1. */
  | { readonly kind: 'ratio'; readonly terms: readonly number[] }
  /** Days since 1970-01-01. */
  | { readonly kind: 'date'; readonly day: number }
  /** Minutes after midnight: 7:00. */
  | { readonly kind: 'clock'; readonly minutes: number }
  /** 0 is Monday: mon-fri. */
  | { readonly kind: 'weekdays'; readonly days: readonly number[] }
  /** 3/0 x 6/8: width and height as lengths in base units. */
  | { readonly kind: 'door'; readonly width: number; readonly height: number };

interface Stretch {
  readonly from: number;
  readonly to: number;
}

export type Operator = '+' | '-' | '*' | '/';
export type FunctionName = 'min' | 'max' | 'roundup';

export type Expression = Stretch &
  (
    | { readonly kind: 'literal'; readonly literal: Literal }
    /** Lower case, may be dotted: 'kitchen.floor-area'. */
    | { readonly kind: 'name'; readonly name: string }
    | { readonly kind: 'operation'; readonly operator: Operator; readonly left: Expression; readonly right: Expression }
    | { readonly kind: 'call'; readonly name: FunctionName; readonly inputs: readonly Expression[] }
    /** 3d..6d, 2027-07-02..2027-07-06, 7:00-15:30; in 3..6d the unit spreads to the left. */
    | { readonly kind: 'range'; readonly low: Expression; readonly high: Expression }
  );

export type Item = Stretch &
  /** Any bare word, or dotted name, standing alone. Lower case. */
  (
    | { readonly kind: 'word'; readonly word: string }
    /** The letters between quotes, with "" undoubled. */
    | { readonly kind: 'text'; readonly text: string }
    | { readonly kind: 'comma' }
    | { readonly kind: 'equals' }
    /** The x of 16'-0" x 27'-1", spaced or glued between two quantities. */
    | { readonly kind: 'joint'; readonly joint: 'x' }
    /** Never a lone name. */
    | { readonly kind: 'value'; readonly expression: Expression }
    /** A piece that could not be read. */
    | { readonly kind: 'wrong'; readonly problem: Problem }
  );

export interface Problem extends Stretch {
  /** 'syntax/…' */
  readonly code: string;
  readonly details: readonly unknown[];
  /** Text proposed in place of from..to. */
  readonly rewrite?: string;
}

/** An accepted spelling that the formatter writes the usual way: ½, curly quotes, 12ft 6in. */
export interface Rewrite extends Stretch {
  readonly text: string;
}

export interface Statement {
  /** The line after its indent, without its line end. */
  readonly text: string;
  readonly items: readonly Item[];
  /** Column where the items end, the comment and the blanks before it excluded. */
  readonly end: number;
  readonly comment?: Stretch;
  /** Those inside 'wrong' items excluded. */
  readonly problems: readonly Problem[];
  readonly rewrites: readonly Rewrite[];
}

export interface Line {
  /** Characters before the first letter; a tab counts as one. */
  readonly indent: number;
  /** Blank and comment-only lines have no items. */
  readonly statement: Statement;
}

export interface Node {
  readonly line: Line;
  readonly children: readonly Node[];
  /** offsets[i]: lines from this node's line to that of children[i]. */
  readonly offsets: readonly number[];
  /** Lines from this node's line to the end of its last child; 1 for a node without children. */
  readonly height: number;
}

export interface FileTree {
  readonly text: string;
  /** Offset of each line. */
  readonly starts: Int32Array;
  readonly lines: readonly Line[];
  /** Column-0 lines that hold a statement. */
  readonly nodes: readonly Node[];
  /** Line number of each node. */
  readonly nodeLines: Int32Array;
  /** What no line alone can know: tabs mixed, outdent that fits nothing, a line too long, a conflict marker. */
  readonly problems: readonly { readonly line: number; readonly problem: Problem }[];
}
