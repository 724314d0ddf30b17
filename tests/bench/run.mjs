// Runs a TypeScript file of this folder under plain Node: bundles it into the packages' cache folder, then imports it.
// `node tests/bench/run.mjs print-plan 10000`
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = join(import.meta.dirname, '../..');
const [name = 'bench', ...rest] = process.argv.slice(2);
const folder = join(root, 'node_modules/.cache/screed');
const outfile = join(folder, `${name}.mjs`);
mkdirSync(folder, { recursive: true });
await build({
  absWorkingDir: root,
  entryPoints: [join(import.meta.dirname, `${name}.ts`)],
  outfile,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  logLevel: 'warning',
});
process.argv.splice(2, process.argv.length - 2, ...rest);
process.chdir(root);
await import(pathToFileURL(outfile).href);
