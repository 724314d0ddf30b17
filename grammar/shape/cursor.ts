// A finger moving over the items of one line while a shape is read, and the furthest it came when something did not fit.
import type { Spot } from '#kit/place';
import type { Item } from '../tree.ts';

export interface Cursor {
  readonly items: readonly Item[];
  /** The line's text after its indent: codes are cut from it. */
  readonly text: string;
  readonly path: readonly number[];
  /** What the value is called in its working: the property's word. */
  readonly label: string;
  readonly end: number;
  /** Items taken as they are spelled, whatever the lexer thought of them: codes. */
  readonly asIs: Set<Item> | undefined;
  index: number;
  /** Where the furthest failure happened and what would have fitted there. */
  stuck: { index: number; wanted: readonly string[] };
}

export function cursor(
  items: readonly Item[],
  text: string,
  path: readonly number[],
  label: string,
  from: number,
  to: number,
  asIs?: Set<Item>,
): Cursor {
  return { items, text, path, label, end: to, asIs, index: from, stuck: { index: from, wanted: [] } };
}

/** The item under the finger, or undefined at the end. */
export function peek(at: Cursor, ahead = 0): Item | undefined {
  const index = at.index + ahead;
  return index < at.end ? at.items[index] : undefined;
}

/** Notes that `wanted` would have fitted here; always undefined, so that a reader can return it. */
export function stuck(at: Cursor, wanted: string): undefined {
  if (at.index > at.stuck.index) at.stuck = { index: at.index, wanted: [wanted] };
  else if (at.index === at.stuck.index && !at.stuck.wanted.includes(wanted))
    at.stuck = { index: at.index, wanted: [...at.stuck.wanted, wanted] };
  return undefined;
}

export function wordAt(items: readonly Item[], index: number, end: number): string | undefined {
  const item = index < end ? items[index] : undefined;
  return item?.kind === 'word' ? item.word : undefined;
}

/** How many items from `index` on spell these words (',' '=' and 'x' stand for themselves); 0 where they do not. */
export function matchWords(items: readonly Item[], index: number, end: number, words: readonly string[]): number {
  let count = 0;
  for (const word of words) {
    // A comma belongs to the word before it in a phrase such as ', over'.
    const item = index + count < end ? items[index + count] : undefined;
    if (item === undefined || spelling(item) !== word.toLowerCase()) return 0;
    count += 1;
  }
  return count;
}

function spelling(item: Item): string | undefined {
  switch (item.kind) {
    case 'word':
      return item.word;
    case 'comma':
      return ',';
    case 'equals':
      return '=';
    case 'joint':
      return item.joint;
    default:
      return undefined;
  }
}

/** The stretch from one item to the one before `to`. */
export function spotOf(at: Cursor, from: number, to: number): Spot {
  const first = at.items[from] ?? at.items[at.items.length - 1];
  const last = at.items[Math.max(from, to - 1)] ?? first;
  return { path: at.path, from: first?.from ?? 0, to: last?.to ?? 0 };
}

/** The spot of a value that is all there is on a stretch: its own, so that both are one object. */
export function spotOfValue(value: unknown, stretch: Spot): Spot {
  const own = typeof value === 'object' && value !== null ? (value as { readonly spot?: Spot }).spot : undefined;
  return own !== undefined && own.path === stretch.path && own.from === stretch.from && own.to === stretch.to ? own : stretch;
}

export function itemSpot(item: Item | undefined, path: readonly number[]): Spot {
  return { path, from: item?.from ?? 0, to: item?.to ?? 0 };
}
