// The built-in library, read once for all tests of a file; and the samples' texts.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { noWork } from '#kit/work';
import { libraryTexts } from '#library/library';
import { type Library, readLibrary } from '#server/pipeline';

let kept: Library | undefined;
export function builtIn(): Library {
  kept ??= readLibrary(
    libraryTexts.map(({ path, text }) => ({ path: `library/${path}`, text })),
    noWork(),
  );
  return kept;
}

/** The `.screed` files of a sample's folder, by path from the repository. */
export function sampleTexts(sample: string): Record<string, string> {
  const folder = join(import.meta.dirname, '../../samples', sample);
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.screed'))
    .sort();
  return Object.fromEntries(files.map((file) => [`samples/${sample}/${file}`, readFileSync(join(folder, file), 'utf8')]));
}
