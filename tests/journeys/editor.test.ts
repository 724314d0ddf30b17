// Sessions with the language server over its standard streams, as editors have them: what is told, when, and to whom; and
// that nothing an editor sends ends it.
import { mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Diagnostic, InlayHint, Location } from 'vscode-languageserver-types';
import { type LanguageClient, startLanguageServer } from '#tests/support/language-client';
import { able, eglot, neovim, pulling } from './clients.ts';

const root = join(import.meta.dirname, '../..');
const folder = join(root, 'node_modules/.cache/screed/editor-journey');
const server = join(folder, 'screed-language-server.mjs');

beforeAll(async () => {
  mkdirSync(folder, { recursive: true });
  rmSync(join(folder, 'library'), { force: true });
  symlinkSync(join(root, 'server/library'), join(folder, 'library'), 'dir');
  await build({
    absWorkingDir: root,
    entryPoints: ['server/main.ts'],
    outfile: `${server}.new`,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    mainFields: ['module', 'main'],
    loader: { '.screed': 'text' },
    define: { SCREED_VERSION: '"0.0.0"' },
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
    logLevel: 'warning',
  });
  renameSync(`${server}.new`, server);
});

let clients: LanguageClient[] = [];
let folders: string[] = [];
afterEach(() => {
  for (const client of clients) client.kill();
  for (const each of folders) rmSync(each, { recursive: true, force: true });
  clients = [];
  folders = [];
});

async function session(params: { readonly [name: string]: unknown } = able) {
  const client = startLanguageServer(process.execPath, [server, '--stdio'], { patience: 15_000 });
  clients.push(client);
  const answer = await client.initialize<{ capabilities: { [name: string]: unknown }; serverInfo: unknown }>(params);
  return { client, answer };
}

function onDisk(files: { readonly [path: string]: string }): { readonly path: string; readonly uri: (file: string) => string } {
  const path = mkdtempSync(join(tmpdir(), 'screed-journey-'));
  folders.push(path);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(join(path, file, '..'), { recursive: true });
    writeFileSync(join(path, file), text);
  }
  return { path, uri: (file) => pathToFileURL(join(path, file)).href };
}

const ALL = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
const codes = (diagnostics: readonly Diagnostic[]): readonly unknown[] => diagnostics.map(({ code }) => code);

/** A request that answers only when all before it has been worked out. */
async function settled(client: LanguageClient): Promise<void> {
  await new Promise((done) => setTimeout(done, 50));
  await client.request('screed/work');
  await new Promise((done) => setTimeout(done, 50));
}

/** Long enough for what waits until nobody types. */
async function quiet(client: LanguageClient): Promise<void> {
  await settled(client);
  await new Promise((done) => setTimeout(done, 400));
}

const HOUSE = `plan larkspur "Larkspur"
  start 2027-04-05
trade drywall "Drywall" crew of 1 at $50/h
price drywall 1/2" $15/sheet
level main "Main floor"
  footprint 28' x 32'
  height 8'
  walls ext-2x6
  partitions int-2x4
room bath "Bath" on main
  size 8' x 10'
  walls paint
  ceiling paint
task hang "Hang the board" does hang-board in bath by drywall
task tidy "Tidy up" takes 1d by drywall after hang
`;

test('a room’s size reaches board, length, last day and cost', async () => {
  const { client } = await session();
  const uri = 'file:///larkspur.screed';
  client.open(uri, HOUSE);
  await client.waitForDiagnostics(uri);
  const hints = async (): Promise<{ [word: string]: string }> => {
    const found = await client.request<readonly InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range: ALL });
    const lines = client.textOf(uri).split('\n');
    return Object.fromEntries(
      found.map(({ position, label }) => [lines[position.line]!.split(' ').slice(0, 2).join(' '), label as string]),
    );
  };
  const before = await hints();
  expect(before['room bath']).toMatch(/^80 sf floor · \d+ sf board$/);
  expect(before['task hang']).toMatch(/^Mon 5 Apr.* · .*(?:h|d) · .* · \$\d/);
  expect(before['plan larkspur']).toMatch(/^done .* 2027.* · \$\d/);
  client.replace(uri, "8' x 10'", "24' x 30'");
  await client.request('screed/work');
  const after = await hints();
  for (const word of ['room bath', 'task hang', 'task tidy', 'plan larkspur', 'trade drywall'])
    expect(after[word]).not.toBe(before[word]);
  expect(after['room bath']).toMatch(/^720 sf floor/);
  const work = await client.request<{ [counter: string]: number }>('screed/work');
  expect(work).toMatchObject({ linesParsed: 1, recordsChecked: 1, networkBuilt: 0 });
  expect(await client.end()).toBe(0);
  expect(client.standardError()).toBe('');
});

describe('findings are told', () => {
  test('at once, and cleared when they are mended', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, "room bath\n  siez 8' x 5'\n");
    const first = await client.waitForDiagnostics(uri);
    expect(first.version).toBe(1);
    expect(codes(first.diagnostics)).toContain('words/unknown-property');
    client.replace(uri, 'siez', 'size');
    const mended = await client.waitForDiagnostics(uri, (list) => !codes(list).includes('words/unknown-property'));
    expect(mended.version).toBe(2);
  });

  test('a burst of changes ends with what the last one says', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, 'room a\n');
    await client.waitForDiagnostics(uri);
    for (let at = 0; at < 50; at++) {
      const from = { line: 0, character: 5 };
      client.change(uri, {
        range: { start: from, end: { line: 0, character: at === 0 ? 6 : 4 + at + 1 } },
        text: `${'b'.repeat(at + 1)}`,
      });
    }
    client.replace(uri, 'room', 'rooom');
    const last = await client.waitForDiagnostics(uri, (list) => codes(list).includes('words/unknown-kind'));
    expect(last.version).toBe(52);
    await settled(client);
    const versions = client.received.flatMap(({ method, params }) =>
      method === 'textDocument/publishDiagnostics' ? [(params as { version: number }).version] : [],
    );
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });

  test('not again while they are the same; only for files where they changed', async () => {
    const { client } = await session();
    const [a, b] = ['file:///a.screed', 'file:///b.screed'];
    client.open(a, 'rooom a\n');
    client.open(b, 'rooom b\n');
    await client.waitForDiagnostics(a);
    await client.waitForDiagnostics(b);
    const before = client.received.length;
    client.change(a, { range: { start: { line: 0, character: 7 }, end: { line: 0, character: 7 } }, text: ' ' });
    await settled(client);
    expect(client.received.slice(before).map(({ method }) => method)).toEqual([]);
    client.replace(a, 'rooom', 'roooom');
    await client.waitForDiagnostics(a, (list) => list.length > 0);
    await settled(client);
    expect(client.received.slice(before).map(({ params }) => (params as { uri: string }).uri)).toEqual([a]);
  });

  test('of an open file within its plan; unsaved text of another file counts', async () => {
    const { uri, path } = onDisk({ 'plan.screed': 'plan a\ninclude "b.screed"\nroom x on main\n', 'b.screed': 'level main\n' });
    const { client } = await session({ ...able, rootUri: pathToFileURL(path).href });
    client.open(uri('plan.screed'), 'plan a\ninclude "b.screed"\nroom x on main\n');
    await client.waitForDiagnostics(uri('plan.screed'), (list) => !codes(list).includes('names/unknown'));
    client.open(uri('b.screed'), 'level attic\n');
    await client.waitForDiagnostics(uri('plan.screed'), (list) => codes(list).includes('names/unknown'));
    client.close(uri('b.screed'));
    await client.next(
      'textDocument/publishDiagnostics',
      ({ uri: told, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) =>
        told === uri('plan.screed') && !codes(diagnostics).includes('names/unknown'),
    );
  });

  test('changes on disk are seen, by watching or by saving', async () => {
    for (const params of [able, neovim]) {
      const { uri, path } = onDisk({ 'plan.screed': 'plan a\ninclude "b.screed"\nroom x on main\n', 'b.screed': 'level main\n' });
      const { client } = await session({ ...params, rootUri: pathToFileURL(path).href });
      const plan = uri('plan.screed');
      client.open(plan, 'plan a\ninclude "b.screed"\nroom x on main\n');
      await client.waitForDiagnostics(plan);
      writeFileSync(join(path, 'b.screed'), 'level attic\n');
      const told = client.next('textDocument/publishDiagnostics', ({ diagnostics }: { diagnostics: Diagnostic[] }) =>
        codes(diagnostics).includes('names/unknown'),
      );
      if (params === able) client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('b.screed'), type: 2 }] });
      else client.notify('textDocument/didSave', { textDocument: { uri: plan } });
      await told;
    }
  });

  test('and taken back when a file is closed', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, 'rooom a\n');
    await client.waitForDiagnostics(uri);
    const cleared = client.next<{ uri: string; diagnostics: unknown[] }>(
      'textDocument/publishDiagnostics',
      (params) => params.uri === uri,
    );
    client.close(uri);
    expect((await cleared).diagnostics).toEqual([]);
  });
});

describe('an editor that asks for findings', () => {
  test('is told nothing unasked, and that nothing changed', async () => {
    const { client, answer } = await session(pulling);
    expect(answer.capabilities.diagnosticProvider).toBeDefined();
    const uri = 'file:///a.screed';
    client.open(uri, 'rooom a\n');
    const ask = (previousResultId?: string) =>
      client.request<{ kind: string; resultId: string; items?: readonly Diagnostic[] }>('textDocument/diagnostic', {
        textDocument: { uri },
        ...(previousResultId === undefined ? {} : { previousResultId }),
      });
    const first = await ask();
    expect(codes(first.items!)).toContain('words/unknown-kind');
    expect(await ask(first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
    client.replace(uri, 'rooom', 'room');
    const mended = await ask(first.resultId);
    expect(mended.kind).toBe('full');
    expect(codes(mended.items!)).not.toContain('words/unknown-kind');
    await settled(client);
    expect(client.received.filter(({ method }) => method === 'textDocument/publishDiagnostics')).toEqual([]);
  });

  test('is asked to ask again when another file changed', async () => {
    const { uri, path } = onDisk({});
    const { client } = await session({ ...pulling, rootUri: pathToFileURL(path).href });
    client.open(uri('plan.screed'), 'plan a\ninclude "b.screed"\nroom x on main\n');
    client.open(uri('b.screed'), 'level main\n');
    await client.request('textDocument/diagnostic', { textDocument: { uri: uri('plan.screed') } });
    await settled(client);
    client.replace(uri('b.screed'), 'main', 'attic');
    await settled(client);
    expect(client.received.map(({ method }) => method)).toContain('workspace/diagnostic/refresh');
  });
});

test('hints are asked for again when they changed elsewhere, and only then', async () => {
  const { uri, path } = onDisk({});
  const { client } = await session({ ...able, rootUri: pathToFileURL(path).href });
  const [plan, work] = [uri('plan.screed'), uri('work.screed')];
  client.open(plan, 'plan a\n  start 2027-04-05\ninclude "work.screed"\n');
  client.open(work, 'task dig takes 1d\n');
  await client.request('textDocument/inlayHint', { textDocument: { uri: plan }, range: ALL });
  await quiet(client);
  const refreshes = (): number => client.received.filter(({ method }) => method === 'workspace/inlayHint/refresh').length;
  client.replace(work, 'dig', 'dag');
  await quiet(client);
  expect(refreshes()).toBe(0);
  client.replace(work, '1d', '3d');
  await quiet(client);
  expect(refreshes()).toBe(1);
});

describe('editors as they are', () => {
  const SENT_BY_RIGHT: ReadonlySet<string> = new Set(['textDocument/publishDiagnostics', 'window/logMessage']);

  test.each([
    ['Neovim 0.7.2', neovim, []],
    ['Emacs with eglot 1.9', eglot, ['client/registerCapability', 'workspace/configuration']],
    ['one that offers nothing', { capabilities: {} }, []],
    ['one that says nothing', {}, []],
  ] as const)('%s gets nothing it did not offer to take', async (_, params, more) => {
    const { uri, path } = onDisk({ 'plan.screed': HOUSE });
    const { client, answer } = await session({ ...params, rootUri: pathToFileURL(path).href });
    expect(answer.capabilities.positionEncoding).toBe('utf-16');
    expect(answer.capabilities.diagnosticProvider).toBeUndefined();
    client.open(uri('plan.screed'), HOUSE);
    await client.waitForDiagnostics(uri('plan.screed'));
    client.notify('workspace/didChangeConfiguration', { settings: null });
    client.notify('workspace/didChangeConfiguration', { settings: {} });
    client.notify('workspace/didChangeConfiguration', { settings: { screed: null } });
    client.replace(uri('plan.screed'), "8' x 10'", "9' x 10'");
    await settled(client);
    const unasked = new Set(client.received.map(({ method }) => method!).filter((method) => !SENT_BY_RIGHT.has(method)));
    expect([...unasked]).toEqual(more);
    expect(await client.end()).toBe(0);
  });

  test('what is offered is answered', async () => {
    const { client, answer } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, HOUSE);
    const textDocument = { uri };
    const position = { line: 9, character: 6 };
    const requests: readonly (readonly [string, string, object])[] = [
      ['hoverProvider', 'textDocument/hover', { position }],
      ['completionProvider', 'textDocument/completion', { position }],
      ['definitionProvider', 'textDocument/definition', { position }],
      ['referencesProvider', 'textDocument/references', { position, context: { includeDeclaration: true } }],
      ['documentHighlightProvider', 'textDocument/documentHighlight', { position }],
      ['renameProvider', 'textDocument/prepareRename', { position }],
      ['renameProvider', 'textDocument/rename', { position, newName: 'spa' }],
      ['documentSymbolProvider', 'textDocument/documentSymbol', {}],
      ['foldingRangeProvider', 'textDocument/foldingRange', {}],
      ['selectionRangeProvider', 'textDocument/selectionRange', { positions: [position] }],
      ['semanticTokensProvider', 'textDocument/semanticTokens/full', {}],
      ['semanticTokensProvider', 'textDocument/semanticTokens/range', { range: ALL }],
      ['semanticTokensProvider', 'textDocument/semanticTokens/full/delta', { previousResultId: '0' }],
      ['codeActionProvider', 'textDocument/codeAction', { range: ALL, context: { diagnostics: [] } }],
      ['inlayHintProvider', 'textDocument/inlayHint', { range: ALL }],
      ['documentLinkProvider', 'textDocument/documentLink', {}],
      ['documentFormattingProvider', 'textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } }],
      ['documentRangeFormattingProvider', 'textDocument/rangeFormatting', { range: ALL, options: {} }],
      ['signatureHelpProvider', 'textDocument/signatureHelp', { position: { line: 10, character: 7 } }],
      ['callHierarchyProvider', 'textDocument/prepareCallHierarchy', { position: { line: 13, character: 6 } }],
      ['callHierarchyProvider', 'callHierarchy/incomingCalls', { item: { name: 'hang', uri } }],
      ['callHierarchyProvider', 'callHierarchy/outgoingCalls', { item: { name: 'tidy', uri } }],
      ['inlayHintProvider', 'inlayHint/resolve', { position: { line: 9, character: 0 }, label: 'x', data: { uri } }],
      ['workspaceSymbolProvider', 'workspace/symbol', { query: 'bath' }],
    ];
    const offered = Object.keys(answer.capabilities).filter((name) => name.endsWith('Provider'));
    expect(new Set(requests.map(([name]) => name))).toEqual(new Set(offered));
    for (const [, method, params] of requests) {
      const result = await client.request(method, { textDocument, ...params });
      expect(result, method).not.toBeNull();
    }
  });

  test('a library row is opened from where it lies', async () => {
    const { client } = await session({ capabilities: {} });
    const uri = 'file:///a.screed';
    client.open(uri, HOUSE);
    const line = HOUSE.split('\n').findIndex((each) => each.includes('hang-board'));
    const character = HOUSE.split('\n')[line]!.indexOf('hang-board') + 2;
    const [found] = await client.request<readonly Location[]>('textDocument/definition', {
      textDocument: { uri },
      position: { line, character },
    });
    expect(found!.uri).toMatch(/^file:\/\/\/.*library\/work\/.*\.screed$/);
  });
});

describe('whatever is sent', () => {
  const everywhere = ['hover', 'completion', 'definition', 'references', 'documentHighlight', 'prepareRename'];

  test('places beyond the text are answered with nothing', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, "room a\n  size 8' x 5'");
    for (const method of everywhere)
      for (const position of [
        { line: 1000, character: 1000 },
        { line: 1, character: 1000 },
        { line: 2, character: 0 },
      ])
        expect(
          await client.request(`textDocument/${method}`, { textDocument: { uri }, position, context: {} }),
          method,
        ).toSatisfy((result) => result === null || (Array.isArray(result) && result.length === 0));
    const far = { start: { line: 900, character: 0 }, end: { line: 901, character: 9 } };
    for (const method of ['inlayHint', 'codeAction', 'rangeFormatting'])
      expect(
        await client.request(`textDocument/${method}`, { textDocument: { uri }, range: far, context: { diagnostics: [] } }),
      ).toEqual([]);
  });

  test('files that are not open are answered with nothing', async () => {
    const { client } = await session();
    for (const method of everywhere)
      expect(
        await client.request(`textDocument/${method}`, {
          textDocument: { uri: 'file:///nowhere.screed' },
          position: { line: 0, character: 0 },
          context: {},
        }),
      ).toBeNull();
  });

  test.each([
    ['empty', ''],
    ['zero bytes', '\0\0\x01room\0\n'],
    ['line ends of Windows', HOUSE.replaceAll('\n', '\r\n')],
    ['a mark of byte order', `\ufeff${HOUSE}`],
    ['half a pair', 'room \ud83d "\ude00"\n'],
    ['a megabyte in one line', `room ${'a'.repeat(1_000_000)}`],
  ])('a text of %s', async (_, text) => {
    const { client } = await session();
    const uri = 'untitled:Untitled-1';
    client.open(uri, text);
    await client.waitForDiagnostics(uri);
    await client.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 3 } });
    await client.request('textDocument/semanticTokens/full', { textDocument: { uri } });
    await client.request('textDocument/formatting', { textDocument: { uri }, options: {} });
    expect(await client.end()).toBe(0);
  });

  test.each([
    'file:///%ZZ',
    'untitled:Untitled-1',
    'git:/a/b.screed?x#y',
    'vscode-vfs://github/a/b.screed',
    'file:///c%3A/x.screed',
    'file://server/share/x.screed',
    'file:///sp%20ace%231%20%C3%A9.screed',
    'no address',
  ])('the address %s', async (uri) => {
    const { client } = await session();
    client.open(uri, 'rooom a\n');
    const { diagnostics } = await client.waitForDiagnostics(uri);
    expect(codes(diagnostics)).toContain('words/unknown-kind');
  });

  test('one file under two names of a link is one, told under the name it was opened by', async () => {
    const { path } = onDisk({ 'real/plan.screed': 'plan a\ninclude "b.screed"\n', 'real/b.screed': 'rooom b\n' });
    symlinkSync(join(path, 'real'), join(path, 'link'), 'dir');
    const uri = pathToFileURL(join(path, 'link/b.screed')).href;
    const { client } = await session({ ...able, rootUri: pathToFileURL(join(path, 'link')).href });
    client.open(uri, 'rooom b\n');
    const told = await client.waitForDiagnostics(uri);
    expect(codes(told.diagnostics)).toEqual(['words/unknown-kind']);
  });

  test('a change of a file that is not open is not the end', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.notify('textDocument/didChange', { textDocument: { uri, version: 3 }, contentChanges: [{ text: 'x' }] });
    client.notify('textDocument/didClose', { textDocument: { uri } });
    client.open(uri, 'rooom a\n');
    await client.waitForDiagnostics(uri, (list) => list.length > 0);
    client.notify('textDocument/didChange', {
      textDocument: { uri, version: 0 },
      contentChanges: [
        { range: { start: { line: 0, character: 1 }, end: { line: 0, character: 2 } }, rangeLength: 999, text: '' },
        { text: 'room a\n' },
        { range: { start: { line: 70, character: 0 }, end: { line: 80, character: 0 } }, text: 'rooom b\n' },
      ],
    });
    const { diagnostics } = await client.waitForDiagnostics(uri, (list) => list.some(({ range }) => range.start.line === 1));
    expect(codes(diagnostics)).toContain('words/unknown-kind');
  });

  test('a name that cannot be is refused with a reason', async () => {
    const { client } = await session();
    const uri = 'file:///a.screed';
    client.open(uri, 'room a\n');
    const rename = (newName: string) =>
      client.request('textDocument/rename', { textDocument: { uri }, position: { line: 0, character: 5 }, newName });
    await expect(rename('two words')).rejects.toThrow('is no name');
    expect(await rename('a')).toEqual({ documentChanges: [] });
  });
});

describe('the end', () => {
  test('after shutdown it is 0, without it 1', async () => {
    const { client } = await session();
    expect(await client.end()).toBe(0);
    const { client: other } = await session();
    other.notify('exit');
    expect(await other.exited).toBe(1);
  });

  test('comes when the editor is gone: its stream, or its process', async () => {
    const script = `
      const { spawn } = require('node:child_process');
      const server = spawn(process.execPath, [${JSON.stringify(server)}, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
      server.on('exit', (status) => { console.log('ended', status); process.exit(); });
      server.stdin.end();
    `;
    const { spawnSync } = await import('node:child_process');
    expect(spawnSync(process.execPath, ['-e', script], { encoding: 'utf8', timeout: 10_000 }).stdout.trim()).toBe('ended 1');
  });

  test('--version and --help', async () => {
    const { spawnSync } = await import('node:child_process');
    const run = (flag: string) => spawnSync(process.execPath, [server, flag], { encoding: 'utf8', timeout: 10_000 });
    expect(run('--version')).toMatchObject({ status: 0, stdout: '0.0.0\n', stderr: '' });
    expect(run('--help').stdout).toContain('--stdio');
  });
});
