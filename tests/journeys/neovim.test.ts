// A real editor: Neovim, with the set-up that we ship, opens the broken samples, shows the findings that their marks
// announce, and shows them gone once the line is a comment. Skipped where Neovim or the built server is missing.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Mark, readMarks } from '#tests/support/fixture';
import { broken, builtServer, copyOfBroken, markedFiles, root, whatIsLacking } from './editors.ts';

interface Seen {
  readonly line: number;
  readonly from: number;
  readonly severity: number;
  readonly code?: string;
  readonly message: string;
}

interface Result {
  readonly file: string;
  readonly filetype: string;
  readonly came: boolean;
  readonly went?: boolean;
  readonly before: readonly Seen[];
  readonly after?: readonly Seen[];
}

const lacking = whatIsLacking('nvim');
if (lacking !== undefined) process.stderr.write(`journeys/neovim is skipped: ${lacking}\n`);

test.skipIf(lacking !== undefined)(
  'Neovim shows the findings of the broken samples, and shows them gone',
  { timeout: 120_000 },
  () => {
    using copy = copyOfBroken('screed neovim é-');
    const files = markedFiles();
    const results = run(copy.folder, files);
    expect(results.map(({ file, filetype, came, went }) => ({ file, filetype, came, went }))).toEqual(
      files.map((name) => ({ file: join(copy.folder, name), filetype: 'screed', came: true, went: true })),
    );
    results.forEach(({ before }, index) => {
      const name = files[index]!;
      const text = readFileSync(join(broken, name), 'utf8');
      for (const mark of readMarks(name, text))
        expect(before, name).toContainEqual(expect.objectContaining(inNeovim(text, mark)));
    });
  },
);

const SEVERITIES = { error: 1, warning: 2, note: 3 };

/** Neovim counts columns in bytes. */
function inNeovim(text: string, { line, from, severity, code }: Mark): Partial<Seen> {
  const before = text.split('\n')[line]!.slice(0, from);
  return {
    line,
    from: Buffer.byteLength(before),
    ...(code === undefined ? {} : { code }),
    ...(severity === undefined ? {} : { severity: SEVERITIES[severity] }),
  };
}

function run(folder: string, files: readonly string[]): readonly Result[] {
  const journey = join(folder, 'journey.json');
  const results = join(folder, 'results.json');
  const given = {
    plugin: join(root, 'client/neovim/screed.lua'),
    command: [process.execPath, builtServer, '--stdio'],
    files: files.map((name) => join(folder, name)),
    patience: 8000,
    results,
  };
  writeFileSync(journey, JSON.stringify(given));
  const script = join(import.meta.dirname, 'neovim.lua').replaceAll(' ', '\\ ');
  execFileSync('nvim', ['--headless', '--clean', '-n', `+luafile ${script}`], {
    env: { ...process.env, SCREED_JOURNEY: journey, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, XDG_DATA_HOME: folder },
    timeout: 110_000,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return JSON.parse(readFileSync(results, 'utf8')) as readonly Result[];
}
