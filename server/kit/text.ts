// Offsets in a text to line and character and back. Nobody else does this. Lines end with LF, CR or CRLF, as the
// language server protocol says; positions that lie outside are moved to the nearest one inside, never into a
// surrogate pair and never into a line end.

/** Both count from 0; `character` in the units of the encoding. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** What a character is counted in: bytes, UTF-16 units, or whole characters (code points). */
export type Encoding = 'utf-8' | 'utf-16' | 'utf-32';

/** The offset at which each line begins: one entry for an empty text, one more for each line end. */
export function lineStarts(text: string): Int32Array {
  let starts = new Int32Array(Math.max(16, Math.ceil(text.length / 16)));
  let count = 1;
  for (let offset = 0; offset < text.length; offset++) {
    const code = text.charCodeAt(offset);
    if (code !== LINE_FEED && code !== RETURN) continue;
    if (code === RETURN && text.charCodeAt(offset + 1) === LINE_FEED) offset++;
    if (count === starts.length) {
      const longer = new Int32Array(count * 2);
      longer.set(starts);
      starts = longer;
    }
    starts[count++] = offset + 1;
  }
  return starts.slice(0, count);
}

/** The line that holds an offset. */
export function lineAt(starts: Int32Array, offset: number): number {
  let low = 0;
  let high = starts.length;
  // starts[low] ≤ offset < starts[high], with starts[length] taken as beyond the end.
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return low;
}

/** The offset just after the last character of a line, before its line end. */
export function lineEnd(text: string, starts: Int32Array, line: number): number {
  if (line + 1 >= starts.length) return text.length;
  const next = starts[line + 1]!;
  const before = next - 1;
  return text.charCodeAt(before) === LINE_FEED && before > starts[line]! && text.charCodeAt(before - 1) === RETURN
    ? before - 1
    : before;
}

/** Where an offset (in UTF-16 units, as strings count) stands. */
export function positionAt(text: string, starts: Int32Array, offset: number, encoding: Encoding = 'utf-16'): Position {
  const inside = wholeCharacter(text, clamp(offset, 0, text.length));
  const line = lineAt(starts, inside);
  const start = starts[line]!;
  const stop = Math.min(inside, lineEnd(text, starts, line));
  return { line, character: encoding === 'utf-16' ? stop - start : unitsBetween(text, start, stop, encoding) };
}

/** The offset of a position. A line beyond the last gives the end of the text, a character beyond the line its end. */
export function offsetAt(text: string, starts: Int32Array, position: Position, encoding: Encoding = 'utf-16'): number {
  if (position.line >= starts.length) return text.length;
  if (!(position.line >= 0)) return 0;
  const line = Math.trunc(position.line);
  const start = starts[line]!;
  const end = lineEnd(text, starts, line);
  const character = Math.max(0, Math.trunc(position.character) || 0);
  if (encoding !== 'utf-16') return advance(text, start, end, character, encoding);
  const offset = wholeCharacter(text, Math.min(start + character, end));
  return Math.max(offset, start);
}

const LINE_FEED = 10;
const RETURN = 13;

function clamp(value: number, low: number, high: number): number {
  return value > low ? Math.min(Math.trunc(value), high) : low;
}

/** The same offset, or the one before where it would cut a pair in two. */
function wholeCharacter(text: string, offset: number): number {
  return offset > 0 && isLow(text.charCodeAt(offset)) && isHigh(text.charCodeAt(offset - 1)) ? offset - 1 : offset;
}

function isHigh(code: number): boolean {
  return code >= 0xd800 && code <= 0xdbff;
}

function isLow(code: number): boolean {
  return code >= 0xdc00 && code <= 0xdfff;
}

/** How many UTF-16 units the character at an offset takes: 2 for a pair, else 1 (a lone half counts as a character). */
function widthAt(text: string, offset: number): 1 | 2 {
  return isHigh(text.charCodeAt(offset)) && isLow(text.charCodeAt(offset + 1)) ? 2 : 1;
}

function unitsAt(text: string, offset: number, encoding: Encoding): number {
  if (encoding === 'utf-32') return 1;
  const code = text.charCodeAt(offset);
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  // A lone half is written as the three bytes of the replacement character.
  return widthAt(text, offset) === 2 ? 4 : 3;
}

function unitsBetween(text: string, from: number, to: number, encoding: Encoding): number {
  let units = 0;
  for (let offset = from; offset < to; offset += widthAt(text, offset)) units += unitsAt(text, offset, encoding);
  return units;
}

function advance(text: string, from: number, end: number, character: number, encoding: Encoding): number {
  let offset = from;
  let left = character;
  while (offset < end) {
    left -= unitsAt(text, offset, encoding);
    if (left < 0) break;
    offset += widthAt(text, offset);
  }
  return Math.min(offset, end);
}
