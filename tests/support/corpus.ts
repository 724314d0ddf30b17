// Every plan that stands in the repository, as material for tests that must hold of any text: samples and built-in library.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** The files in the order of their names. */
export function corpus(): readonly { readonly name: string; readonly text: string }[] {
  return ['samples', 'server/library']
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((path) => join(folder, path)))
    .filter((path) => path.endsWith('.screed'))
    .map((path) => path.replaceAll('\\', '/'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, name), 'utf8') }));
}

export function corpusLines(): readonly string[] {
  return corpus().flatMap(({ text }) => text.split('\n'));
}
