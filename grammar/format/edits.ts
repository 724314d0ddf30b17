// The least that must change in a line: each stretch of blanks by itself where only blanks differ, so that carets and marks
// in the text stay where they are.
import type { FileTree } from '../tree.ts';

/**
 * Columns of a line, counted in UTF-16 units from its start (a byte order mark included). A `to` behind the line's last
 * letter takes its line end away too.
 */
export interface LineEdit {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The edits that make one text of a line the other. */
export function gapEdits(line: number, start: number, written: string, wanted: string): readonly LineEdit[] {
  if (written === wanted) return [];
  const edits: LineEdit[] = [];
  let a = 0;
  let b = 0;
  while (a < written.length || b < wanted.length) {
    const [nextA, nextB] = [gapEnd(written, a), gapEnd(wanted, b)];
    const [gap, wish] = [written.slice(a, nextA), wanted.slice(b, nextB)];
    if (gap !== wish) edits.push({ line, from: start + a, to: start + nextA, text: wish });
    if (written.charAt(nextA) !== wanted.charAt(nextB)) return [wholeEdit(line, start, written, wanted)];
    a = nextA + 1;
    b = nextB + 1;
  }
  return edits;
}

/** A text with edits made. */
export function withEdits({ text, starts }: FileTree, edits: readonly LineEdit[]): string {
  let made = '';
  let at = 0;
  for (const { line, from, to, text: put } of edits) {
    made += text.slice(at, starts[line]! + from) + put;
    at = starts[line]! + to;
  }
  return made + text.slice(at);
}

/** One edit from the first letter that differs to the last. */
function wholeEdit(line: number, start: number, written: string, wanted: string): LineEdit {
  const most = Math.min(written.length, wanted.length);
  let before = 0;
  while (before < most && written[before] === wanted[before]) before += 1;
  let after = 0;
  while (after < most - before && written[written.length - 1 - after] === wanted[wanted.length - 1 - after]) after += 1;
  return { line, from: start + before, to: start + written.length - after, text: wanted.slice(before, wanted.length - after) };
}

/** Where the stretch of blanks that begins at `from` ends. Blanks of other kinds are letters here: they are replaced. */
function gapEnd(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ' || text[at] === '\t') at += 1;
  return at;
}
