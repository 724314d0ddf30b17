// `screed format`: rewrites files in the usual spacing and spelling, or with --check says which would change.
import { readFileSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { counted } from '#answers/table';
import { format as formatted } from '#grammar/format';
import { parse } from '#grammar/parse';
import { misuse } from './faults.ts';
import { planFiles, STANDARD_INPUT, textFromInput } from './input.ts';
import { type Common, remark } from './output.ts';

export interface FormatOptions extends Common {
  readonly check?: true;
}

/** Gives the exit status: with --check 1 where something would change. */
export function format(paths: readonly string[], options: FormatOptions): number {
  const files = planFiles(paths.filter((path) => path !== STANDARD_INPUT));
  let changed = 0;
  if (paths.includes(STANDARD_INPUT)) {
    const text = textFromInput();
    const { text: usual } = formatted(parse(text));
    if (usual !== text) changed += 1;
    if (options.check === undefined) process.stdout.write(usual);
    else if (usual !== text) process.stdout.write('-\n');
  }
  for (const { path, shown } of files) {
    const text = readText(path, shown);
    const { text: usual } = formatted(parse(text));
    if (usual === text) continue;
    changed += 1;
    process.stdout.write(`${shown}\n`);
    if (options.check === undefined) writeText(path, shown, usual);
  }
  const total = files.length + (paths.includes(STANDARD_INPUT) ? 1 : 0);
  const would = options.check === undefined ? 'changed' : 'would change';
  remark(`${changed} of ${counted(total, 'file')} ${would}.`, options);
  return options.check !== undefined && changed > 0 ? 1 : 0;
}

/** As it is on the disk, a byte order mark included: it stays where it is. */
function readText(path: string, shown: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw misuse(`${shown} cannot be read`);
  }
}

function writeText(path: string, shown: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw misuse(`${shown} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}
