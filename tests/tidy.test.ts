// The house rules that a machine can guard: which room may import which, headers, sizes, no hidden clock or dice in the
// phases, no path of a developer's machine, nothing left open. The tables come first; they are the rules.
// biome-ignore-all lint/suspicious/noTemplateCurlyInString: some of the made-up sources hold templates.
import { readdirSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, posix, relative, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { blankOut, importsOf, lineOf } from '#tests/support/source';

interface Room {
  /** Rooms it may import, beside itself. Type imports count: a type is knowledge. */
  readonly may: readonly string[];
  /** Rooms of which it may import types only. */
  readonly types?: readonly string[];
  /** Packages; `node:` stands for everything of Node's own. */
  readonly packages: readonly string[];
}

/** Every arrow between rooms, from the bottom up: a row names only rows above it. A name with an ending is a room of one file. */
const ROOMS: { readonly [room: string]: Room } = {
  'server/kit': { may: [], packages: [] },
  grammar: { may: ['server/kit'], packages: ['chevrotain'] },
  'grammar/textmate/build.ts': { may: ['grammar', 'server/kit'], packages: ['node:'] },
  'server/model': { may: ['grammar', 'server/kit'], packages: [] },
  'server/library': { may: [], packages: [] },
  'server/takeoff': { may: ['server/model', 'server/kit'], packages: [] },
  'server/schedule': { may: ['server/takeoff', 'server/model', 'server/kit'], packages: [] },
  'server/money': { may: ['server/schedule', 'server/takeoff', 'server/model', 'server/kit'], packages: [] },
  'server/checks': {
    may: ['server/money', 'server/schedule', 'server/takeoff', 'server/model', 'grammar', 'server/kit'],
    packages: [],
  },
  'server/pipeline.ts': {
    may: ['grammar', 'server/model', 'server/takeoff', 'server/schedule', 'server/money', 'server/checks', 'server/kit'],
    packages: [],
  },
  'server/answers': {
    may: ['server/checks', 'server/money', 'server/schedule', 'server/takeoff', 'server/model', 'server/kit'],
    types: ['server/pipeline.ts'],
    packages: [],
  },
  'server/report': { may: ['server/answers', 'server/kit'], types: ['server/pipeline.ts'], packages: ['ical-generator'] },
  'server/host': { may: [], packages: [] },
  'server/host/node-files.ts': { may: ['server/host'], packages: ['node:'] },
  'server/workspace.ts': {
    may: ['server/pipeline.ts', 'server/library', 'grammar', 'server/host', 'server/kit'],
    packages: ['vscode-languageserver-textdocument'],
  },
  'server/editor': {
    may: [
      'server/answers',
      'server/report',
      'server/pipeline.ts',
      'server/money',
      'server/schedule',
      'server/takeoff',
      'server/model',
      'grammar',
      'server/kit',
    ],
    types: ['server/checks'],
    packages: ['vscode-languageserver-types'],
  },
  'server/connection.ts': {
    may: ['server/editor', 'server/workspace.ts', 'server/host', 'server/kit'],
    packages: ['vscode-languageserver', 'vscode-uri'],
  },
  'server/main.ts': {
    may: ['server/connection.ts', 'server/host', 'server/host/node-files.ts'],
    packages: ['vscode-languageserver', 'node:'],
  },
  'server/main-browser.ts': { may: ['server/connection.ts', 'server/host'], packages: ['vscode-languageserver'] },
  'server/cli/server.ts': { may: ['server/main.ts'], packages: ['node:', 'commander'] },
  'server/cli': {
    may: [
      'server/answers',
      'server/report',
      'server/workspace.ts',
      'server/pipeline.ts',
      'server/schedule',
      'grammar',
      'server/kit',
      'server/host',
      'server/host/node-files.ts',
      'server/cli/server.ts',
    ],
    packages: ['highs', 'node:', 'commander', 'write-excel-file', 'fflate', 'ical-generator'],
  },
  'server/bundle.mjs': { may: [], packages: ['esbuild', 'node:'] },
  client: { may: [], types: ['server/editor'], packages: ['vscode', 'vscode-languageclient', 'node:'] },
};

/** Files of one folder that must not import each other, whatever their room may. */
const STRANGERS = ['server/checks/rules'];

/** Rooms that may look at the clock, the machine and its language. Everything else must give the same bytes everywhere. */
const WORLDLY = [
  'server/host',
  'server/host/node-files.ts',
  'server/cli',
  'server/cli/server.ts',
  'server/connection.ts',
  'server/main.ts',
  'server/main-browser.ts',
  'server/bundle.mjs',
  'grammar/textmate/build.ts',
  'client',
];

/** What the rest must not use, and why. Looked for in code, not in comments or quoted text. */
const BANNED: readonly { readonly what: RegExp; readonly why: string }[] = [
  { what: /\bnew\s+Date\b|\bDate\s*[.(]/g, why: 'reads the clock or a time zone; days are numbers, "today" is an input' },
  { what: /\bperformance\b|\bset(?:Timeout|Interval|Immediate)\b/g, why: 'depends on time' },
  { what: /\bMath\s*\.\s*random\b|\bcrypto\b/g, why: 'rolls dice; a seed is an input' },
  { what: /(?<![\w$.'-])process\s*[.[]|\bglobalThis\b/g, why: 'depends on the machine' },
  { what: /\bfetch\s*\(|\bXMLHttpRequest\b|\bWebSocket\b/g, why: 'asks the network' },
  { what: /\beval\s*\(|\bnew\s+Function\b/g, why: 'runs text as code' },
  { what: /\bIntl\b|\.\s*toLocale\w*|\.\s*localeCompare\b/g, why: 'depends on the language of the machine' },
  {
    // What is left is exact, or fixed to the last bit by IEEE 754, in every engine.
    what: /\bMath\s*\.\s*(?!(?:sqrt|min|max|floor|ceil|round|abs|trunc|sign|imul|clz32|PI|random)\b)\w+|\bMath\s*\[|=\s*Math\b(?!\s*\.)|\*\*/g,
    why: 'may differ in the last digit from engine to engine',
  },
];

const MOST_LINES = 500;
/** A header is one to five lines; anything shorter than this says nothing. */
const LEAST_HEADER = 30;
/** Split, so that this file does not find itself. */
const LEFT_OPEN = new RegExp(
  `(?<![A-Za-z])(?:${['TO', 'FIX', 'XX', 'HA'].map((word, index) => word + ['DO', 'ME', 'X', 'CK'][index]).join('|')})(?![A-Za-z])`,
);

const CODE = /\.(?:ts|mjs)$/;
const TEXTS = /\.(?:ts|mjs|json|md|screed|txt|lua|el|toml|html|yml|yaml|css|sh)$|^\.ci\/run$/;
/** Folders that hold nothing of ours; hidden ones never do, but for one. */
const NOT_OURS = /^(?:node_modules|dist|coverage|\.(?!ci$).*)$/;

const root = join(import.meta.dirname, '..');
const files = walk('');
const code = files.filter((file) => CODE.test(file));

test('the table of rooms has no loop: a row names only rows above it', () => {
  const order = Object.keys(ROOMS);
  const wrong = Object.entries(ROOMS).flatMap(([room, { may, types = [] }]) =>
    [...may, ...types]
      .filter((other) => !order.slice(0, order.indexOf(room)).includes(other))
      .map((other) => `${room} → ${other}`),
  );
  expect(wrong).toEqual([]);
});

test('every file of the program stands in a room', () => {
  expect(code.filter((file) => !file.startsWith('tests/') && roomOf(file) === undefined)).toEqual([]);
});

test('imports follow the arrows of the table', () => {
  expect(code.flatMap((file) => importFaults(file, read(file)))).toEqual([]);
});

test('every file opens with a comment that says what it is for', () => {
  expect(code.flatMap((file) => headerFaults(file, read(file)))).toEqual([]);
});

test(`no file is longer than ${MOST_LINES} lines`, () => {
  expect(code.filter((file) => read(file).split('\n').length > MOST_LINES + 1)).toEqual([]);
});

test('no clock, dice, network or language of the machine outside host, command line and connection', () => {
  expect(code.flatMap((file) => purityFaults(file, read(file)))).toEqual([]);
});

test('no path of a developer’s machine, nothing left open', () => {
  expect(
    files
      .filter((file) => TEXTS.test(file) && !file.endsWith('package-lock.json'))
      .flatMap((file) => leftovers(file, read(file))),
  ).toEqual([]);
});

describe('the guards themselves', () => {
  test.each([
    ['server/takeoff/a.ts', `import { price } from '#money/price';`, 'server/takeoff may not import server/money'],
    ['server/takeoff/a.ts', `import type { Price } from '../money/price.ts';`, 'server/takeoff may not import server/money'],
    ['server/takeoff/a.ts', `export { Price } from '../money/price.ts';`, 'server/takeoff may not import server/money'],
    ['server/takeoff/a.ts', `const x = await import('#money/price');`, 'server/takeoff may not import server/money'],
    ['server/takeoff/a.ts', `import '#grammar/parse';`, 'server/takeoff may not import grammar'],
    ['server/takeoff/a.ts', `import {\n  a,\n  b,\n} from 'node:fs';`, 'server/takeoff may not use the package node:fs'],
    ['server/takeoff/a.ts', 'const x = import(name);', 'imports something computed'],
    ['server/takeoff/a.ts', `import { x } from '#tests/support/check';`, 'nobody imports tests'],
    [
      'server/report/a.ts',
      `import { run } from '#server/pipeline';`,
      'server/report may import only types of server/pipeline.ts',
    ],
    ['server/host/files.ts', `import { readFileSync } from 'node:fs';`, 'server/host may not use the package node:fs'],
    ['server/checks/rules/a/b.ts', `import { other } from '../c/d.ts';`, 'files of server/checks/rules do not import each other'],
    ['grammar/parse.ts', `import { x } from 'chevrotain-allstar';`, 'grammar may not use the package chevrotain-allstar'],
  ])('%s: %s', (file, text, fault) => {
    expect(importFaults(file, text)).toEqual([`${file}:1 ${fault}`]);
  });

  test.each([
    ['server/report/a.ts', `import type { Plan } from '#server/pipeline';`],
    [
      'server/takeoff/a.ts',
      `// import { price } from '#money/price';\nconst text = "import x from 'y'"; /* import('#money/x') */`,
    ],
    [
      'server/takeoff/a.ts',
      `import { a } from './b.ts';\nimport type { Model } from '#model/model';\nimport { x } from '#kit/shapes/outline';`,
    ],
    ['server/main.ts', `import { createConnection } from 'vscode-languageserver/node';`],
    ['server/cli/server.ts', `import { start } from '#server/main';`],
    ['server/takeoff/a.ts', "export const important = from;\nconst s = `import ${a} from '#money/x'`;"],
    ['tests/x.test.ts', `import { anything } from '#money/price';`],
  ])('fine in %s: %s', (file, text) => {
    expect(importFaults(file, text)).toEqual([]);
  });

  test.each([
    'const now = Date.now();',
    'const now = new Date(2027, 1, 1);',
    'const now = Date();',
    'if (process.env.DEBUG) go();',
    'const roll = Math.random();',
    'const far = Math.hypot(3, 4);',
    'const far = Math . pow(3, 4);',
    'const { sin } = Math;',
    'const square = side ** 2;',
    'names.sort((a, b) => a.localeCompare(b));',
    'total.toLocaleString();',
    'new Intl.NumberFormat();',
    'setTimeout(go, 5);',
    'const text = `${Date.now()}`;',
    "fetch('https://example.org');",
  ])('found: %s', (text) => {
    expect(purityFaults('server/schedule/a.ts', text)).toHaveLength(1);
    expect(purityFaults('server/cli/a.ts', text)).toEqual([]);
  });

  test.each([
    '// Date.now() is not allowed, nor is Math.sin',
    "const text = 'the process. Math.sin(x) new Date()';",
    'const x = Math.sqrt(Math.abs(a)) * Math.PI;',
    'interface Row { readonly process: string; date: Dated }',
    'const found = row.process.length;',
    'const expression = /Date.now|[/"]Math.sin/; const b = a / 2; // new Date',
    'const nested = `a ${b ? `c ${d} Date.now()` : "e"} new Date`;',
    'import { dayOf } from "#kit/dates";',
  ])('fine: %s', (text) => {
    expect(purityFaults('server/schedule/a.ts', text)).toEqual([]);
  });

  test('headers', () => {
    expect(headerFaults('a.ts', 'import x from "y";\n')).toHaveLength(1);
    expect(headerFaults('a.ts', '// Short.\n')).toHaveLength(1);
    expect(headerFaults('a.ts', `${'// This says at length what it is for.\n'.repeat(9)}`)).toHaveLength(1);
    expect(headerFaults('a.ts', '// This says at length what it is for.\ncode();\n')).toEqual([]);
    expect(headerFaults('a.mjs', '#!/usr/bin/env node\n/* This says at length\n what it is for. */\n')).toEqual([]);
  });

  test('leftovers', () => {
    expect(leftovers('a.md', 'see /home/me/screed/README.md', ['/home/me/screed/'])).toHaveLength(1);
    expect(leftovers('a.md', ['one', `TO${'DO'}: two`, 'three'].join('\n'))).toEqual([`a.md:2 left open: TO${'DO'}: two`]);
    expect(leftovers('a.md', `mastoTO${'DO'}n`)).toEqual([]);
  });
});

/** The narrowest room that holds a file. */
function roomOf(file: string): string | undefined {
  return Object.keys(ROOMS)
    .filter((room) => file === room || file.startsWith(`${room}/`))
    .sort((a, b) => b.length - a.length)[0];
}

function importFaults(file: string, text: string): readonly string[] {
  const room = roomOf(file);
  if (room === undefined) return [];
  return importsOf(text).flatMap(({ specifier, line, typeOnly }) => {
    const fault = importFault(file, room, specifier, typeOnly);
    return fault === undefined ? [] : [`${file}:${line} ${fault}`];
  });
}

function importFault(file: string, room: string, specifier: string, typeOnly: boolean): string | undefined {
  const { may, types = [], packages } = ROOMS[room]!;
  if (specifier === '?') return 'imports something computed';
  const target = targetOf(file, specifier);
  if (target === undefined) {
    const known = packages.some((name) => specifier === name || specifier.startsWith(name.endsWith(':') ? name : `${name}/`));
    return known ? undefined : `${room} may not use the package ${specifier}`;
  }
  if (target.startsWith('tests/')) return 'nobody imports tests';
  const strangers = STRANGERS.find((folder) => file.startsWith(`${folder}/`) && target.startsWith(`${folder}/`));
  if (strangers !== undefined) return `files of ${strangers} do not import each other`;
  const other = roomOf(target);
  if (other === undefined) return `${target} stands in no room`;
  if (other === room || may.includes(other) || (typeOnly && types.includes(other))) return undefined;
  return types.includes(other) ? `${room} may import only types of ${other}` : `${room} may not import ${other}`;
}

/** The file an import points at, or undefined for a package. Aliases are those of package.json. */
function targetOf(file: string, specifier: string): string | undefined {
  if (specifier.startsWith('.')) return posix.join(posix.dirname(file), specifier);
  if (!specifier.startsWith('#')) return undefined;
  const { imports } = JSON.parse(read('package.json')) as { readonly imports: { readonly [alias: string]: string } };
  for (const [alias, path] of Object.entries(imports)) {
    const start = alias.slice(0, alias.indexOf('*'));
    if (specifier.startsWith(start)) return posix.normalize(path.replace('*', specifier.slice(start.length)));
  }
  return specifier;
}

function headerFaults(file: string, text: string): readonly string[] {
  const body = text.replace(/^#!.*\n/, '');
  const header = /^(?:\/\/.*\n?)+|^\/\*[\s\S]*?\*\//.exec(body)?.[0] ?? '';
  if (header.length < LEAST_HEADER) return [`${file} does not open with what it is for`];
  return header.trimEnd().split('\n').length > 8
    ? [`${file}: a header of more than eight lines; say less, or say it where it belongs`]
    : [];
}

function purityFaults(file: string, text: string): readonly string[] {
  const room = roomOf(file);
  if (room === undefined || WORLDLY.includes(room)) return [];
  const bare = blankOut(text, 'comments and text');
  return BANNED.flatMap(({ what, why }) =>
    [...bare.matchAll(what)].map((match) => `${file}:${lineOf(text, match.index)} ${match[0].trim()} ${why}`),
  );
}

function leftovers(file: string, text: string, machine = machinePaths()): readonly string[] {
  return text.split('\n').flatMap((line, index) => {
    if (machine.some((path) => line.includes(path))) return [`${file}:${index + 1} a path of this machine: ${line.trim()}`];
    return LEFT_OPEN.test(line) ? [`${file}:${index + 1} left open: ${line.trim()}`] : [];
  });
}

/** Where this copy lies, and the home of whoever runs the tests; but not '/' or '/app', which say nothing. */
function machinePaths(): readonly string[] {
  return [root, homedir()].filter((path) => path.split(sep).length > 2 || path === '/root').map((path) => `${path}/`);
}

function read(file: string): string {
  return readFileSync(join(root, file), 'utf8');
}

function walk(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .filter((entry) => !entry.isDirectory() || !NOT_OURS.test(entry.name))
    .flatMap((entry) => {
      const path = relative(root, join(root, folder, entry.name))
        .split(sep)
        .join('/');
      return entry.isDirectory() ? walk(path) : [path];
    })
    .sort();
}
