// A real editor: Neovim, with the set-up that we ship, opens the broken samples, shows the findings that their marks
// announce, and shows them gone once the plan is repaired. Skipped where Neovim or the built server is missing.
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
  readonly repaired?: true;
}

/** What is wrong in a sample, and what a person would write instead; of the others the line becomes a comment. */
const REPAIRS: { readonly [name: string]: readonly [wrong: string, right: string] } = {
  'before-start.screed': ['2026-04-12', '2027-04-12'],
  'board-too-early.screed': ['by drywall after felt', 'by drywall after felt, windows, doors'],
  'decimal-comma.screed': ['3,60 m', '3.60 m'],
  'does-not-close.screed': ['+ 5 1/2" = 28\'', '+ 5" = 28\''],
  'done-twice.screed': ['wrap-by-siders  does wrap-walls 60%', 'wrap-by-siders  does wrap-walls 40%'],
  'feet-minus-inches.screed': ['28\' - 11"', '28\'-11"'],
  'loop.screed': ['takes 1d by crew after floor', 'takes 1d by crew'],
  'loose-end.screed': ['after clean', 'after clean, stove'],
  'mixed-units.screed': ["8' + 4 sf", "8' + 4'"],
  'no-trade.screed': ['takes 1d after frame', 'takes 1d by crew after frame'],
  'past-target.screed': ['2027-04-30', '2027-06-30'],
  'right-by-luck.screed': ['by drywall, not', 'by drywall after felt, windows, doors, not'],
  'room-outside.screed': ['20\'-0" x 23\'-1"', '19\'-1" x 23\'-1"'],
  'rooms-overlap.screed': ['12\'-0" x 24\'-0"', '11\'-6" x 24\'-0"'],
  'state-lacks.screed': ['after felt, windows, to', 'after felt, windows, doors, to'],
  'two-of-a-name.screed': ['bed "Bedroom by the road"', 'bed-2 "Bedroom by the road"'],
  'unknown-name.screed': ['framng', 'framing'],
  'unknown-word.screed': ['flor ', 'floor '],
  'wall-gap.screed': ['10\'-8 3/4"', '10\'-9"'],
  'window-too-wide.screed': ['5\'-0" x 8\'-0"', '9\'-0" x 8\'-0"'],
};

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
    results.forEach(({ before, after, repaired }, index) => {
      const name = files[index]!;
      const text = readFileSync(join(broken, name), 'utf8');
      for (const mark of readMarks(name, text))
        expect(before, name).toContainEqual(expect.objectContaining(inNeovim(text, mark)));
      if (!(name in REPAIRS)) return;
      expect(repaired, name).toBe(true);
      const left = after?.map(({ code }) => code);
      for (const { code } of readMarks(name, text)) expect(left, name).not.toContain(code);
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
    // With the code of the finding that each repair answers.
    repairs: Object.fromEntries(
      Object.entries(REPAIRS).map(([name, repair]) => [
        name,
        [...repair, readMarks(name, readFileSync(join(broken, name), 'utf8'))[0]!.code],
      ]),
    ),
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
