// What the journeys through real editors share: where the server and the broken samples are, and a copy to spoil.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readMarks } from '#tests/support/fixture';

export const root = join(import.meta.dirname, '../..');
export const builtServer = join(root, 'dist/screed-language-server.js');
export const broken = join(root, 'samples/broken');

/** Why a journey cannot be made, if it cannot. */
export function whatIsLacking(editor: string): string | undefined {
  if (!existsSync(builtServer)) return 'the server is not built';
  if (markedFiles().length === 0) return 'there are no broken samples';
  try {
    execFileSync(editor, ['--version'], { stdio: 'ignore' });
    return undefined;
  } catch {
    return `${editor} is not installed`;
  }
}

/** The broken samples that say what is wrong with them, by name. */
export function markedFiles(): readonly string[] {
  if (!existsSync(broken)) return [];
  const marked = (name: string) => readMarks(name, readFileSync(join(broken, name), 'utf8')).length > 0;
  return readdirSync(broken)
    .filter((name) => name.endsWith('.screed') && marked(name))
    .sort();
}

/** A folder of its own with the broken samples in it, under version control as far as an editor can tell. */
export function copyOfBroken(name: string): { readonly folder: string } & Disposable {
  const folder = mkdtempSync(join(tmpdir(), name));
  cpSync(broken, folder, { recursive: true });
  mkdirSync(join(folder, '.git'));
  return { folder, [Symbol.dispose]: () => rmSync(folder, { recursive: true, force: true }) };
}
