// Starts the language server on standard input and output. Whatever prints goes to standard error: standard output
// carries messages only.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PerformanceObserver } from 'node:perf_hooks';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { getHeapSpaceStatistics, setFlagsFromString } from 'node:v8';
import { createConnection } from 'vscode-languageserver/node';
import { nodeFiles, plainPath } from '#host/node-files';
import { serve } from './connection.ts';

export function startServer(): void {
  // The plan's results live long and each keystroke replaces few of them, so the heap may grow in small steps: half the memory.
  setFlagsFromString('--heap-growing-percent=20');
  for (const method of ['log', 'info', 'debug', 'warn', 'trace'] as const) console[method] = console.error;
  // An editor that died without a word cannot be written to.
  process.stdout.on('error', () => process.exit(1));
  const connection = createConnection(process.stdin, process.stdout);
  serve(connection, {
    files: nodeFiles(),
    libraryFolder: libraryFolder(),
    pagesFolder: pagesFolder(),
    version: version(),
    onLongWork: holdYoungSpace(),
  });
  connection.listen();
}

/** Of the space for new objects: both halves together. Twice as much made no keystroke quicker. */
const YOUNG_SPACE = 16 * 2 ** 20;

/**
 * Its size can only be given before a process starts, which is the editor's to say; but it can be kept from growing further.
 * Whoever works long without a pause asks in between: nobody is told of collections then, and it grows in each.
 */
function holdYoungSpace(): () => void {
  let held = false;
  const hold = (): void => {
    if (held) return;
    const young = getHeapSpaceStatistics().find(({ space_name: name }) => name === 'new_space');
    if (young !== undefined && young.space_size < YOUNG_SPACE) return;
    setFlagsFromString('--semi-space-growth-factor=1');
    held = true;
    observer.disconnect();
  };
  const observer = new PerformanceObserver(hold);
  observer.observe({ entryTypes: ['gc'] });
  return hold;
}

declare const SCREED_VERSION: string | undefined;

function version(): string {
  if (typeof SCREED_VERSION !== 'undefined') return SCREED_VERSION;
  const { version } = JSON.parse(readFileSync(join(here(), '../package.json'), 'utf8')) as { version: string };
  return version;
}

function here(): string {
  return dirname(fileURLToPath(import.meta.url));
}

/** The library's texts lie beside the bundle, and beside this file in the sources. */
function libraryFolder(): string {
  return plainPath(join(here(), 'library'));
}

/** So do the pages of the rule reference; in the sources they are with the rest of the reference. */
function pagesFolder(): string {
  return plainPath(join(here(), typeof SCREED_VERSION === 'undefined' ? '../grammar/rules' : 'rules'));
}

const HELP = `screed-language-server --stdio

Speaks the language server protocol on standard input and output; an editor starts it.

  --stdio                  the default, and the only way
  --clientProcessId=N      end when that process does
  --version, --help
`;

// The command line imports this file for startServer; run as a program of its own, it starts at once.
if (/(?:^|[\\/])(?:screed-language-server|server)(?:\.[cm]?js)?$/.test(process.argv[1] ?? '')) begin(process.argv.slice(2));

function begin(given: readonly string[]): void {
  if (given.includes('--version')) process.stdout.write(`${version()}\n`);
  else if (given.includes('--help') || given.includes('-h')) process.stdout.write(HELP);
  else startServer();
}
