// How the examples of codes are written down: mostly a line that is wrong and what to write instead, under the same lines.
import type { Example } from '#checks/row-examples';

export type Shown = Readonly<Record<string, Example | undefined>>;

/** Indented below the lines above where those declare a thing in their last line and the line says more of it. */
export function instead(above: string, wrong: string, right: string): Example {
  return { wrong: under(above, wrong), right: under(above, right) };
}

/** A line that begins a thing stands in the first column; the rest belongs to the thing above. */
function under(above: string, lines: string): string {
  const said = above === '' ? '' : `${above}\n`;
  const indent = above === '' || BEGINS.test(lines) ? '' : '  ';
  return `${said}${lines
    .split('\n')
    .map((line) => `${indent}${line}`)
    .join('\n')}\n`;
}

const BEGINS = /^(?:let|task|room|trade|milestone|window|accept|plan|level|inspection|include|measure|door)\b/;
