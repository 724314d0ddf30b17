// Real runs of the program, as a shell starts it: exit statuses, where results and remarks go, paths, standard input.
import { execFile, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startLanguageServer } from '#tests/support/language-client';

const root = join(import.meta.dirname, '../..');
let folder = '';
let program = '';
let work = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'screed-command-'));
  program = join(folder, 'screed.js');
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  await build({
    absWorkingDir: root,
    entryPoints: ['server/cli/main.ts'],
    outfile: program,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    external: ['highs'],
    loader: { '.screed': 'text' },
    mainFields: ['module', 'main'],
    logLevel: 'error',
    define: { SCREED_VERSION: '"9.8.7"', SCREED_BUNDLED: 'true' },
    banner: {
      js: "import { createRequire as createRequireOfNode } from 'node:module';\nconst require = createRequireOfNode(import.meta.url);",
    },
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  work = mkdtempSync(join(folder, 'work-'));
});

interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly remarks: string;
}

function run(
  given: readonly string[],
  { input = '', cwd = work, env = {} }: { input?: string; cwd?: string; env?: Record<string, string> } = {},
): Ran {
  const { NO_COLOR: _, FORCE_COLOR: __, ...inherited } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...given], {
    cwd,
    input,
    encoding: 'utf8',
    env: { ...inherited, ...env },
  });
  return { status, out: stdout, remarks: stderr };
}

function file(name: string, text: string): void {
  mkdirSync(join(work, name, '..'), { recursive: true });
  writeFileSync(join(work, name), text);
}

const FINE = 'plan p "Plan"\n  start 2027-04-05\ntrade me\ntask dig takes 2d by me, to the end\n';
const WRONG = 'plan q "Other"\nroom bath on nowhere\n  size 5\' x 8\'\n';
const RISKY = 'plan r "Late"\n  start 2027-04-05\n  target 2027-04-05\ntrade me\ntask dig takes 2d by me, to the end\n';

describe('exit status', () => {
  test('0: fine', () => {
    file('plan.screed', FINE);
    expect(run(['check', 'plan.screed'])).toEqual({
      status: 0,
      out: 'Plan: done Tue 6 Apr 2027. No errors, no warnings and no notes in 1 file.\n',
      remarks: '',
    });
  });

  test('1: an error, told by file, line and column', () => {
    file('plan.screed', WRONG);
    const { status, out, remarks } = run(['check', 'plan.screed']);
    expect(status).toBe(1);
    expect(out).toMatch(/^plan\.screed:2:14: error: No level is named "nowhere".* \[names\/unknown\]$/m);
    expect(remarks).toBe('');
  });

  test('warnings pass, unless there are more than allowed', () => {
    file('plan.screed', RISKY);
    expect(run(['check']).status).toBe(0);
    expect(run(['check', '--max-warnings', '1']).status).toBe(0);
    expect(run(['check', '--max-warnings', '0']).status).toBe(1);
  });

  test('--only and --skip take codes and areas, and count', () => {
    file('plan.screed', WRONG);
    expect(run(['check', '--skip', 'names']).status).toBe(0);
    expect(
      run(['check', '--only', 'names/unknown'])
        .out.split('\n')
        .filter((line) => line.includes('[')).length,
    ).toBe(1);
    expect(run(['check', '--only', 'sequence']).status).toBe(0);
  });

  test.each([
    [['check', 'nothing-here.screed'], 'there is nothing at nothing-here.screed'],
    [['check', '.'], 'there is no .screed file in .'],
    [['check', 'a.screed', '--format', 'xml'], 'there is no format "xml"'],
    [['check', 'a.screed', '--max-warnings', 'few'], '--max-warnings takes a whole number'],
    [['check', 'a.screed', '--as-of', 'monday'], '--as-of takes a date'],
    [['takeoff', 'a.screed', '--by', 'colour'], '--by takes item, room, trade, element, part'],
    [['cost'], 'missing required argument'],
    [['nonsense'], "unknown command 'nonsense'"],
    [['check', '--nonsense'], "unknown option '--nonsense'"],
    [['rule', 'no/such-code'], 'no finding has the code "no/such-code"; "screed rule" lists all.'],
    [['rule', 'sequence/bord-before-dry'], 'perhaps sequence/board-before-dry is meant.'],
    [['rule', 'bord-before-dry'], 'perhaps sequence/board-before-dry is meant.'],
    [['rule', 'sequense'], 'perhaps sequence is meant.'],
    [
      ['rule', 'gutters'],
      'perhaps sequence/floor-before-gutters, sequence/gutters-before-roofing or sequence/grade-before-gutters',
    ],
    [['check', 'a.screed', '-o', 'no/such/folder/out.txt'], 'cannot be written'],
  ])('2: %j', (given, says) => {
    if (given.includes('a.screed')) file('a.screed', FINE);
    const { status, out, remarks } = run(given);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(remarks).toContain(says);
    expect(remarks).not.toContain('    at ');
  });

  test('2: a folder of several plans, where one is wanted', () => {
    file('a.screed', FINE);
    file('b.screed', RISKY);
    const { status, remarks } = run(['cost', '.']);
    expect(status).toBe(2);
    expect(remarks).toContain('name one of them: a.screed, b.screed');
  });

  test('2: a name that is not in the plan, with a near miss', () => {
    file('a.screed', FINE);
    expect(run(['explain', 'a.screed', 'dgi'])).toMatchObject({
      status: 2,
      out: '',
      remarks: expect.stringContaining('there is "dig"'),
    });
  });

  test.skipIf(process.getuid?.() === 0)('2: a file that cannot be read', () => {
    file('a.screed', FINE);
    spawnSync('chmod', ['000', join(work, 'a.screed')]);
    expect(run(['check', 'a.screed']).status).toBe(2);
  });
});

describe('noise', () => {
  test('a baseline: written, then only what is new is told; what is no longer found is remarked on', () => {
    file('plan.screed', WRONG);
    const written = run(['check', 'plan.screed', '--write-baseline', '.screed-baseline.json']);
    expect(written).toMatchObject({
      status: 0,
      out: 'No errors, no warnings and no notes in 1 file; 1 known.\n',
      remarks: '1 finding written to .screed-baseline.json; from now on only what is new is told.\n',
    });
    expect(run(['check']).status).toBe(0);
    expect(run(['check', '--no-baseline']).status).toBe(1);
    expect(run(['check', 'plan.screed'], { cwd: work }).out).toContain('; 1 known.');
    file('plan.screed', WRONG.replace('nowhere', 'elsewhere'));
    expect(run(['check'])).toMatchObject({
      status: 1,
      out: expect.stringContaining('No level is named "elsewhere"'),
      remarks: expect.stringContaining('1 entry is no longer found'),
    });
  });

  test('a baseline of another name is given; one that is none, or not there, is misuse', () => {
    file('plan.screed', WRONG);
    run(['check', 'plan.screed', '--write-baseline', 'old.json']);
    expect(run(['check', 'plan.screed']).status).toBe(1);
    expect(run(['check', 'plan.screed', '--baseline', 'old.json']).status).toBe(0);
    expect(run(['check', 'plan.screed', '--baseline', 'new.json'])).toMatchObject({ status: 2, out: '' });
    file('.screed-baseline.json', '{');
    expect(run(['check', 'plan.screed'])).toMatchObject({
      status: 2,
      out: '',
      remarks: expect.stringContaining('is no baseline'),
    });
  });

  test('a profile hushes notes and says how many; no other word is one', () => {
    file('plan.screed', `${FINE}let spare = 3\n`);
    expect(run(['check']).out).toContain('names/unused');
    const { out } = run(['check', '--profile', 'ci']);
    expect(out).not.toContain('names/unused');
    expect(out).toContain('; 1 note not shown (profile ci).');
    expect(run(['check', '--profile', 'boss'])).toMatchObject({
      status: 2,
      remarks: expect.stringContaining('owner, builder, ci'),
    });
  });

  test('what is accepted is counted', () => {
    file('plan.screed', `${FINE}let spare = 3\naccept names/unused for spare "Kept"\n`);
    expect(run(['check']).out).toContain('no notes in 1 file; 1 accepted.');
    const { accepted, summary } = JSON.parse(run(['check', '--format', 'json']).out) as {
      accepted: unknown[];
      summary: { accepted: number };
    };
    expect(accepted).toMatchObject([{ code: 'names/unused', reason: 'Kept', thing: 'let spare' }]);
    expect(summary.accepted).toBe(1);
  });

  test.each(['text', 'json', 'sarif', 'github', 'junit'])('%s: the exit status is the same', (format) => {
    file('plan.screed', WRONG);
    expect(run(['check', '--format', format]).status).toBe(1);
    file('plan.screed', RISKY);
    expect(run(['check', '--format', format]).status).toBe(0);
    expect(run(['check', '--format', format, '--max-warnings', '0']).status).toBe(1);
    file('plan.screed', FINE);
    expect(run(['check', '--format', format])).toMatchObject({ status: 0, remarks: '' });
  });
});

describe('what is read', () => {
  test('a folder: every plan, and on its own every file that no plan includes', () => {
    file('one/plan.screed', 'plan p\ninclude "part.screed"\n');
    file('one/part.screed', 'trade me\n');
    file('two/alone.screed', 'trad me\n');
    file('node_modules/x/plan.screed', 'nonsense\n');
    file('.hidden/plan.screed', 'nonsense\n');
    const { out } = run(['check', '.', '--format', 'json']);
    const { files, plans, findings } = JSON.parse(out) as {
      files: string[];
      plans: { file: string }[];
      findings: { file: string }[];
    };
    expect(files).toEqual(['one/part.screed', 'one/plan.screed', 'two/alone.screed']);
    expect(plans.map((plan) => plan.file)).toEqual(['one/plan.screed', 'two/alone.screed']);
    expect(findings.map((found) => found.file)).toEqual(['one/part.screed', 'two/alone.screed']);
  });

  test('an included file: its own findings, seen within its plan', () => {
    file('.git/config', '');
    file('plan.screed', 'plan p\ninclude "part.screed"\ntrade me\ntrad you\n');
    file('part.screed', 'task dig takes 1d by me, to the end\nrooom bath\n');
    const { out, status } = run(['check', 'part.screed']);
    expect(status).toBe(1);
    expect(out.split('\n').filter((line) => line.includes(': error: '))).toEqual([
      expect.stringMatching(/^part\.screed:2:1: error: "rooom"/),
    ]);
  });

  test('an include stays inside the folder given, also by a link', () => {
    file('outside/secret.screed', 'trade secret\n');
    file(
      'inside/plan.screed',
      'plan p\ninclude "../outside/secret.screed"\ninclude "link.screed"\ntask dig takes 1d by secret\n',
    );
    symlinkSync(join(work, 'outside/secret.screed'), join(work, 'inside/link.screed'));
    const { out } = run(['check', 'inside']);
    expect(out.match(/names\/include-missing/g)).toHaveLength(2);
  });

  test('standard input', () => {
    const { status, out } = run(['check', '-'], { input: WRONG });
    expect(status).toBe(1);
    expect(out).toMatch(/^-:2:14: error: /);
    expect(run(['schedule', '-', '--quiet'], { input: FINE }).out).toContain('dig');
  });

  test('paths are told from the working folder, with slashes', () => {
    file('sub/plan.screed', WRONG);
    expect(run(['check', join(work, 'sub')]).out).toMatch(/^sub\/plan\.screed:2:14: /);
    mkdirSync(join(work, 'here'));
    expect(run(['check', '../sub'], { cwd: join(work, 'here') }).out).toMatch(/^\.\.\/sub\/plan\.screed:2:14: /);
  });

  test('a byte order mark and carriage returns move no column', () => {
    file('plan.screed', `\ufeff${WRONG.replaceAll('\n', '\r\n')}`);
    expect(run(['check']).out).toMatch(/^plan\.screed:2:14: error: /m);
  });

  test('an empty file, and one that is no text', () => {
    file('plan.screed', '');
    expect(run(['check']).status).toBe(0);
    writeFileSync(join(work, 'plan.screed'), Buffer.from([0, 255, 254, 1, 2, 3, 10, 200]));
    expect(run(['check']).status).toBe(1);
  });

  test('the day to look from', () => {
    file('plan.screed', `${FINE}progress 2027-04-05\n  dig started 2027-04-05\nprogress 2027-04-08\n  dig finished 2027-04-08\n`);
    expect(run(['check']).out).toContain('done Thu 8 Apr 2027');
    expect(run(['check', '--as-of', '2027-04-05']).out).toContain('done Tue 6 Apr 2027');
    expect(JSON.parse(run(['schedule', '.', '--as-of', '2027-04-05', '--format', 'json']).out)).toMatchObject({
      asOf: '2027-04-05',
    });
  });
});

describe('what is written', () => {
  test('to a file, nothing else', () => {
    file('plan.screed', WRONG);
    expect(run(['check', '-o', 'out.txt', '--color'])).toEqual({ status: 1, out: '', remarks: '' });
    expect(readFileSync(join(work, 'out.txt'), 'utf8')).not.toContain('\u001b');
  });

  test('colour only where asked for', () => {
    file('plan.screed', WRONG);
    expect(run(['check']).out).not.toContain('\u001b');
    expect(run(['check', '--color']).out).toContain('\u001b[31merror');
    expect(run(['check'], { env: { FORCE_COLOR: '1' } }).out).toContain('\u001b[31merror');
  });

  test('quiet: the findings alone', () => {
    file('plan.screed', FINE);
    expect(run(['check', '--quiet'])).toEqual({ status: 0, out: '', remarks: '' });
  });

  test('comma-separated values of every table', () => {
    copyFileSync(join(root, 'samples/shed/shed.screed'), join(work, 'shed.screed'));
    for (const command of ['takeoff', 'buy', 'schedule', 'cost']) {
      const { status, out } = run([command, 'shed.screed', '--format', 'csv']);
      expect(status).toBe(0);
      const [heading, ...rows] = out.trimEnd().split('\r\n');
      expect(rows.length).toBeGreaterThan(5);
      expect(heading).toMatch(/^[a-z ,]+$/);
    }
  });

  test('whoever stops reading is no fault', async () => {
    const { stdout, stderr } = await promisify(execFile)('sh', [
      '-c',
      `"${process.execPath}" "${program}" takeoff "${join(root, 'samples/cottage')}" --format json | head -c 100`,
    ]);
    expect(stdout).toHaveLength(100);
    expect(stderr).toBe('');
  });

  test('format: rewrites, says which, and with --check only says which would change', () => {
    const rough = "plan p\nroom bath\n    size   5' x   8'\n";
    file('plan.screed', rough);
    const checked = run(['format', '--check', '.']);
    expect(checked).toMatchObject({ status: 1, out: 'plan.screed\n', remarks: '1 of 1 file would change.\n' });
    expect(readFileSync(join(work, 'plan.screed'), 'utf8')).toBe(rough);
    expect(run(['format', 'plan.screed'])).toMatchObject({ status: 0, out: 'plan.screed\n' });
    expect(run(['format', '--check', '.'])).toMatchObject({ status: 0, out: '' });
    expect(run(['format', '-'], { input: rough }).out).toBe(readFileSync(join(work, 'plan.screed'), 'utf8'));
  });

  test('help and version', () => {
    expect(run(['--version'])).toEqual({ status: 0, out: '9.8.7\n', remarks: '' });
    const { status, out } = run(['--help']);
    expect(status).toBe(0);
    for (const command of ['check', 'takeoff', 'buy', 'schedule', 'cost', 'explain', 'rule', 'format', 'server'])
      expect(out).toContain(command);
    expect(run(['help', 'takeoff']).out).toContain('--by');
    expect(run([])).toMatchObject({ status: 2, out: '', remarks: expect.stringContaining('Usage: screed') });
  });

  test('rule: a page', () => {
    const { status, out } = run(['rule', 'sequence/board-before-dry']);
    expect(status).toBe(0);
    expect(out).toMatch(/^sequence\/board-before-dry\n\nBoard goes up before the house is dry\n\nWet board comes out again\./);
    expect(run(['rule', 'BOARD-before-dry']).out).toBe(out);
  });

  test('rule: all codes by area, or those of one', () => {
    const all = run(['rule']);
    expect(all.status).toBe(0);
    expect(all.out).toMatch(/^What comes before what\n/);
    expect(all.out).toMatch(/^ {4}sequence\/board-before-dry {2,}Board goes up before the house is dry$/m);
    expect(all.out).toMatch(/^Money\n\n {4}money\//m);
    const money = run(['rule', 'money']).out;
    expect(
      money
        .split('\n')
        .filter((line) => line.startsWith('    '))
        .every((line) => line.startsWith('    money/')),
    ).toBe(true);
    expect(all.out).toContain(money);
  });
});

test('server --stdio answers an editor, and ends when it says so', async () => {
  const client = startLanguageServer(process.execPath, [program, 'server', '--stdio'], { folder: work });
  const answer = await client.initialize<{ capabilities: { hoverProvider?: unknown } }>();
  expect(answer.capabilities.hoverProvider).toBeTruthy();
  expect(await client.end()).toBe(0);
});

test('server: the code of each finding leads to its page, a file beside the program', async () => {
  symlinkSync(join(root, 'grammar/rules'), join(folder, 'rules'), 'dir');
  const client = startLanguageServer(process.execPath, [program, 'server', '--stdio'], { folder: work });
  await client.initialize({ capabilities: { textDocument: { publishDiagnostics: { codeDescriptionSupport: true } } } });
  client.open('file:///a.screed', 'task paint does paint-walls takes 2d\ntask prime does prime takes 2d\n');
  const { diagnostics } = await client.waitForDiagnostics('file:///a.screed');
  expect(diagnostics.map(({ code }) => code)).toContain('sequence/paint-before-primer');
  for (const { code, codeDescription } of diagnostics) {
    const page = fileURLToPath(codeDescription!.href);
    expect(page.startsWith(`${realpathSync(folder)}${sep}rules${sep}`), page).toBe(true);
    expect(readFileSync(page, 'utf8')).toContain(`\`${code}\``);
  }
  await client.end();
});

test('the README’s first plan does what it says', () => {
  const [, text] = /```\n(plan shed[\s\S]*?)```/.exec(readFileSync(join(root, 'README.md'), 'utf8'))!;
  file('shed.screed', text!);
  expect(run(['check', 'shed.screed'])).toMatchObject({
    status: 0,
    out: expect.stringContaining('No errors, no warnings and no notes'),
  });
  expect(run(['takeoff', 'shed.screed']).out).toContain('Stud 2x4');
  expect(run(['schedule', 'shed.screed']).out).toContain('boards-on');
  expect(run(['explain', 'shed.screed', 'walls-up']).out).toContain('person-hours');
});

test('the README names every command, and nothing it names is missing', () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const named = [...readme.matchAll(/^\| `screed ([\w-]+)/gm)].map((match) => match[1]!);
  const listed = [...run(['--help']).out.matchAll(/^ {2}([\w-]+) /gm)]
    .map((match) => match[1]!)
    .filter((word) => word !== 'help');
  expect(named.sort()).toEqual(listed.sort());
  for (const [path] of readme.matchAll(/(?<=`)(?:samples|grammar|client|server)\/[\w./-]+(?=`)/g))
    expect(existsSync(join(root, path)), path).toBe(true);
});
