// Blank lines: none at the start of a file or its end, never more than two together; one line end behind the last letter.
import type { FileTree } from '../tree.ts';

const MOST_TOGETHER = 2;

/** Which lines go, by number. A text of blank lines only loses all but the last, which then is empty. */
export function surplusLines({ text, lines }: FileTree): ReadonlySet<number> {
  const gone = new Set<number>();
  if (hasBareReturn(text)) return gone;
  const first = lines.find(({ statement }) => statement.text !== '');
  // Moved to the start of the text, this letter would no longer be one.
  let together = first?.statement.text.startsWith('\ufeff') === true ? 0 : MOST_TOGETHER;
  let lastFilled = -1;
  lines.forEach(({ statement }, line) => {
    if (statement.text !== '') {
      together = 0;
      lastFilled = line;
    } else if ((together += 1) > MOST_TOGETHER) gone.add(line);
  });
  // What ends the text after its last line end is no line to take away.
  for (let line = lastFilled + 1; line < lines.length - 1; line += 1) gone.add(line);
  gone.delete(lines.length - 1);
  return gone;
}

/** Whether a line ends with a bare CR. Take away what stands behind one, and it may become half of a CR LF. */
export function hasBareReturn(text: string): boolean {
  return BARE_RETURN.test(text);
}

/** The line end that most lines of a text have: what a new one is written as. */
export function usualLineEnd(text: string): string {
  const pairs = text.match(/\r\n/g)?.length ?? 0;
  const feeds = (text.match(/\n/g)?.length ?? 0) - pairs;
  const returns = (text.match(/\r/g)?.length ?? 0) - pairs;
  if (pairs > feeds && pairs >= returns) return '\r\n';
  return returns > feeds ? '\r' : '\n';
}

const BARE_RETURN = /\r(?!\n)/;
