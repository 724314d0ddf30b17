// Columns: values of a block below each other, clauses of lines that stand together below each other, comments at the ends
// of lines below each other. Only blanks before pieces are set here.
import type { Piece } from './pieces.ts';
import type { Cut, Form, Understanding } from './understood.ts';

/** Letters a property's word is given room for, so that most blocks have their values in one column. */
export const WORD_ROOM = 10;
/** A part longer than this asks for no column: what follows it comes after one blank. */
const LONGEST_WORD = 16;
const LONGEST_NAME = 24;
const LONGEST_PART = 28;

/** Clauses that say more of the one before them and open no column: `does set-tile in bath`. */
const CONTINUED: { readonly [kind: string]: ReadonlySet<string> } = {
  task: new Set(['in', 'on', 'of', 'except', 'coat', 'crew of']),
};

/** A line as it is being laid out: what is known of it, and its pieces. */
export interface Draft {
  readonly form: Form;
  readonly pieces: readonly Piece[];
}

/** Sets the blanks before the pieces of all lines that share columns. */
export function alignColumns({ runs, rows, blocks }: Understanding, drafts: readonly (Draft | undefined)[]): void {
  const found = (lines: readonly number[]): readonly Draft[] =>
    lines.map((line) => drafts[line]).filter((draft): draft is Draft => draft !== undefined);
  for (const { lines, named } of blocks) alignValues(found(lines), named ? LONGEST_NAME : LONGEST_WORD);
  // Declarations with much below them are blocks, not rows of a table.
  for (const { lines, below } of runs) if (below <= lines.length) alignParts(found(lines).map(partsOf));
  for (const lines of rows) {
    const parted = found(lines).map(partsOf);
    if (parted.every(([, second]) => second?.apart === false)) alignParts(parted);
  }
}

/** Values of a block in one column. */
function alignValues(block: readonly Draft[], longest: number): void {
  const words = block.map((draft) => ({ width: partsOf(draft)[0]!.width, value: pieceAt(draft, draft.form.cuts[1]!) }));
  const room = Math.max(WORD_ROOM, ...words.map(({ width }) => (width <= longest ? width : 0)));
  for (const { width, value } of words) if (value !== undefined) value.blanks = Math.max(1, room - width + 1);
}

interface Part {
  readonly key: string;
  readonly first: Piece;
  readonly width: number;
  /** A comma ends the part before it: what follows is a list of its own kind, in no column. */
  readonly apart: boolean;
}

/** The parts of a line between its cuts. */
function partsOf({ form, pieces }: Draft): readonly Part[] {
  const parts: { key: string; pieces: Piece[]; apart: boolean }[] = [];
  const kind = pieces[0]?.text ?? '';
  const continued = Object.hasOwn(CONTINUED, kind) ? CONTINUED[kind] : undefined;
  const cuts = form.cuts.filter(({ key }) => continued?.has(key) !== true);
  for (const [index, piece] of pieces.entries()) {
    let cut = cuts[0];
    while (cut !== undefined && cut.at < piece.from) {
      cuts.shift();
      cut = cuts[0];
    }
    if (index === 0) parts.push({ key: cut?.at === piece.from ? cut.key : '', pieces: [piece], apart: false });
    else if (cut?.at === piece.from) parts.push({ key: cut.key, pieces: [piece], apart: pieces[index - 1]!.text === ',' });
    else parts[parts.length - 1]!.pieces.push(piece);
  }
  return parts.map(({ key, pieces: own, apart }) => ({ key, first: own[0]!, width: widthOf(own), apart }));
}

/** Lines with the same parts in the same order share columns, as far as that goes; a line may end earlier. */
function alignParts(lines: readonly (readonly Part[])[]): void {
  let open = lines.map((parts) => ({ parts, end: parts[0]!.width, late: false }));
  for (let index = 1; ; index += 1) {
    open = open.filter(({ parts }) => parts[index] !== undefined && !parts[index]!.apart);
    if (open.length < 2) return;
    const counted = open.filter(({ parts, late }) => !late && parts[index - 1]!.width <= LONGEST_PART);
    if (counted.length * 4 < open.length * 3) return;
    const column = Math.max(0, ...counted.map(({ end }) => end + 1));
    for (const line of open) {
      const { first, width } = line.parts[index]!;
      first.blanks = Math.max(1, column - line.end);
      line.late = line.end + 1 > column;
      line.end += first.blanks + width;
    }
    const usual = mostCommon(open.map(({ parts }) => parts[index]!.key));
    open = open.filter(({ parts }) => parts[index]!.key === usual);
  }
}

/** Of equally many the first. */
function mostCommon(keys: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return keys.find((key) => counts.get(key) === most);
}

function pieceAt({ pieces }: Draft, { at }: Cut): Piece | undefined {
  return pieces.find(({ from }) => from === at);
}

function widthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { text, blanks }, index) => sum + lengthOf(text) + (index === 0 ? 0 : blanks), 0);
}

/** Letters as a person counts them, nearly: a character beyond the first plane is one. */
export function lengthOf(text: string): number {
  let length = 0;
  for (const _ of text) length += 1;
  return length;
}
