// Another real editor: Emacs with eglot and the mode that we ship. It gathers changes into one message and only takes
// what is pushed to it. Skipped where Emacs, eglot or the built server is missing.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readMarks } from '#tests/support/fixture';
import { broken, builtServer, copyOfBroken, markedFiles, root, whatIsLacking } from './editors.ts';

interface Result {
  readonly mode: string;
  readonly before: readonly { readonly line: number; readonly message: string }[];
  readonly after: readonly { readonly line: number; readonly message: string }[];
}

const lacking = whatIsLacking('emacs') ?? (hasEglot() ? undefined : 'eglot is not installed');
if (lacking !== undefined) process.stderr.write(`journeys/emacs is skipped: ${lacking}\n`);

test.skipIf(lacking !== undefined)(
  'Emacs shows the findings of a broken sample, and shows the first one gone',
  { timeout: 60_000 },
  () => {
    using copy = copyOfBroken('screed-emacs-');
    const name = markedFiles()[0]!;
    const { mode, before, after } = run(copy.folder, name);
    expect(mode).toBe('screed-mode');
    for (const { line, code } of readMarks(name, readFileSync(join(broken, name), 'utf8'))) {
      expect(before.some((each) => each.line === line && each.message.includes(code ?? ''))).toBe(true);
    }
    expect(after).not.toContainEqual(before[0]);
  },
);

function run(folder: string, name: string): Result {
  const journey = join(folder, 'journey.json');
  const results = join(folder, 'results.json');
  const given = {
    mode: join(root, 'client/emacs/screed-mode.el'),
    command: [process.execPath, builtServer, '--stdio'],
    file: join(folder, name),
    patience: 10,
    results,
  };
  writeFileSync(journey, JSON.stringify(given));
  execFileSync('emacs', ['--batch', '-l', join(import.meta.dirname, 'emacs.el')], {
    env: { ...process.env, SCREED_JOURNEY: journey },
    timeout: 50_000,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return JSON.parse(readFileSync(results, 'utf8')) as Result;
}

function hasEglot(): boolean {
  try {
    execFileSync('emacs', ['--batch', '--eval', "(progn (package-initialize) (require 'eglot))"], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
