// Builds what is shipped: the command line, the language server, both as one file each, and the two files of the VS Code
// extension. Beside them go the library's texts and the pages of the rule reference (an editor opens both), and the licences
// of the packages built in.
import { chmodSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, sep } from 'node:path';
import process from 'node:process';
import { build } from 'esbuild';

const root = join(import.meta.dirname, '..');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** What every bundle has in common. Names stay readable, so that a fault report names real functions. */
const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  minifyWhitespace: true,
  minifySyntax: true,
  legalComments: 'none',
  // A source of bytes takes half the memory of one with wider characters.
  charset: 'ascii',
  loader: { '.screed': 'text' },
  // Packages that offer both are taken as modules: only those can be trimmed to what is used.
  mainFields: ['module', 'main'],
  // Loaded where it is installed, when a proof is asked for; never built in.
  external: ['highs'],
  metafile: true,
  logLevel: 'warning',
};

/**
 * An editor opens pages that were made beforehand, so the examples of the library's rows need not be kept in memory for it.
 * Empty lines stand in their place: everything else keeps its line.
 */
const withoutExamples = {
  name: 'library rows without their examples',
  setup: ({ onLoad }) => {
    onLoad({ filter: /[\\/]server[\\/]library[\\/].*\.screed$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8').replaceAll(/^ +(?:example|wrong|right) .*$/gm, ''),
      loader: 'text',
    }));
  },
};

/** A module, run by Node itself. Packages in the older form still ask for `require`. */
const asModule = {
  format: 'esm',
  banner: {
    js: [
      '#!/usr/bin/env node',
      "import { createRequire as createRequireOfNode } from 'node:module';",
      'const require = createRequireOfNode(import.meta.url);',
    ].join('\n'),
  },
  define: defined({}),
};

/** In the older form, for an editor's own Node. */
const asCommon = {
  format: 'cjs',
  banner: { js: "const moduleAddress = require('node:url').pathToFileURL(__filename).href;" },
  define: defined({
    'import.meta.url': 'moduleAddress',
    'import.meta.dirname': '__dirname',
    'import.meta.filename': '__filename',
  }),
};

const bundles = [
  { entry: 'server/cli/main.ts', out: 'dist/screed.js', ...asModule, executable: true },
  { entry: 'server/main.ts', out: 'dist/screed-language-server.js', ...asModule, plugins: [withoutExamples], executable: true },
  { entry: 'server/main.ts', out: 'client/vscode/dist/server.js', ...asCommon, plugins: [withoutExamples] },
  { entry: 'client/vscode/extension.ts', out: 'client/vscode/dist/extension.js', ...asCommon, external: ['vscode', 'highs'] },
];

const inputs = new Set();
for (const { entry, out, executable = false, ...settings } of bundles) {
  rmSync(join(root, out), { force: true });
  const missing = missingFor(entry);
  if (missing !== undefined) {
    process.stderr.write(`${out} is left out: ${missing}\n`);
    continue;
  }
  const { metafile } = await build({ ...shared, ...settings, entryPoints: [entry], outfile: out });
  for (const input of Object.keys(metafile.inputs)) inputs.add(input);
  if (executable) chmodSync(join(root, out), 0o755);
  process.stderr.write(`${out}  ${Math.ceil(statSync(join(root, out)).size / 1024)} KB\n`);
}
for (const folder of ['dist', 'client/vscode/dist']) {
  mkdirSync(join(root, folder), { recursive: true });
  copyTexts('server/library', '.screed', join(root, folder, 'library'));
  copyTexts('grammar/rules', '.md', join(root, folder, 'rules'));
  writeFileSync(join(root, folder, 'LICENSES.txt'), licences());
}
for (const file of ['grammar/textmate/screed.tmLanguage.json', 'LICENSE']) {
  if (existsSync(join(root, file))) cpSync(join(root, file), join(root, 'client/vscode/dist', basename(file)));
  else process.stderr.write(`${file} is left out of the extension: it does not exist\n`);
}

/** Constants that the sources may ask for with `typeof`: they exist in bundles only. */
function defined(more) {
  return { SCREED_VERSION: JSON.stringify(version), SCREED_BUNDLED: 'true', ...more };
}

/** Why an entry cannot be built, if it cannot. */
function missingFor(entry) {
  if (!existsSync(join(root, entry))) return `${entry} does not exist`;
  const extension = entry.startsWith('client/vscode/');
  return extension && !existsSync(join(root, 'client/vscode/node_modules')) ? 'run `npm ci` in client/vscode first' : undefined;
}

function copyTexts(from, ending, target) {
  const source = join(root, from);
  rmSync(target, { recursive: true, force: true });
  for (const path of readdirSync(source, { recursive: true, encoding: 'utf8' })) {
    if (path.endsWith(ending)) cpSync(join(source, path), join(target, path), { recursive: true });
  }
}

/** The licence texts of all packages that went into a bundle, by name. */
function licences() {
  const folders = new Set([...inputs].map(packageFolder).filter((folder) => folder !== undefined));
  const texts = [...folders].sort().map((folder) => {
    const { name, version: number, license } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    const file = readdirSync(join(root, folder)).find((each) => /^licen[cs]e/i.test(each));
    const text = file === undefined ? `Licence: ${license}` : readFileSync(join(root, folder, file), 'utf8').trim();
    return `${name} ${number} (${license})\n\n${text.replaceAll('\r\n', '\n')}\n`;
  });
  return ['Packages by others that are built into the files here, and their licences.\n', ...texts].join(
    `\n${'-'.repeat(80)}\n\n`,
  );
}

/** 'node_modules/a/node_modules/@b/c' for a file of the package @b/c. */
function packageFolder(input) {
  const parts = input.split('/');
  const at = parts.lastIndexOf('node_modules');
  if (at < 0) return undefined;
  const length = parts[at + 1].startsWith('@') ? 3 : 2;
  return relative(root, join(root, dirname(parts.slice(0, at + length).join('/')), parts[at + length - 1]))
    .split(sep)
    .join('/');
}
