// Each sample, the whole way: what the commands print, against files in tests/golden, and what they give to programs, against
// the published schemas. After a change that is meant, UPDATE_GOLDEN=1 writes the files anew; read the difference.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { check } from '#cli/check';
import { explain } from '#cli/explain';
import { improved } from '#cli/improve';
import { printLookAhead } from '#cli/look-ahead';
import { risk } from '#cli/risk';
import { buy, cost, layout, schedule, takeoff } from '#cli/tables';

const root = join(import.meta.dirname, '..');
const SAMPLES = ['cottage', 'shed', 'panel-cabin'] as const;
const ajv = new Ajv2020({ strict: true, allErrors: true });

let folder = '';
let before = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'screed-samples-'));
  before = process.cwd();
  process.chdir(root);
});
afterAll(() => {
  process.chdir(before);
  rmSync(folder, { recursive: true, force: true });
});

/** What a command writes. */
function written(command: (options: { output: string }) => number | Promise<number>): string {
  const output = join(folder, 'out');
  command({ output });
  return readFileSync(output, 'utf8');
}

function expectGolden(name: string, text: string): void {
  const path = join(root, 'tests/golden', name);
  if (process.env.UPDATE_GOLDEN === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(existsSync(path), `${name} is missing: UPDATE_GOLDEN=1 writes it`).toBe(true);
  expect(text).toBe(readFileSync(path, 'utf8'));
}

/** Reads JSON and holds it against a published schema. */
function expectSchema(name: string, text: string): unknown {
  const value = JSON.parse(text) as unknown;
  const valid = ajv.getSchema(`urn:screed:schema:${name}:1`) ?? ajv.compile(readSchema(name));
  expect(valid(value) ? [] : valid.errors?.slice(0, 3)).toEqual([]);
  return value;
}

function readSchema(name: string): object {
  return JSON.parse(readFileSync(join(root, `server/schemas/${name}.schema.json`), 'utf8')) as object;
}

describe.each(SAMPLES)('%s', (sample) => {
  const path = `samples/${sample}`;

  test.each([
    ['check', (options: { output: string }) => check([path], options)],
    ['takeoff', (options: { output: string }) => takeoff(path, options)],
    ['takeoff-by-room', (options: { output: string }) => takeoff(path, { ...options, by: 'room' })],
    ['takeoff-by-element', (options: { output: string }) => takeoff(path, { ...options, by: 'element' })],
    ['buy', (options: { output: string }) => buy(path, options)],
    ['layout', (options: { output: string }) => layout(path, options)],
    ['schedule', (options: { output: string }) => schedule(path, options)],
    ['look-ahead', (options: { output: string }) => printLookAhead(path, options)],
    ['look-ahead-messages', (options: { output: string }) => printLookAhead(path, { ...options, format: 'text' })],
    ['risk', (options: { output: string }) => risk(path, { ...options, runs: '500' })],
    ['cost', (options: { output: string }) => cost(path, options)],
    ['cost-by-element', (options: { output: string }) => cost(path, { ...options, by: 'element' })],
    ['cost-by-part', (options: { output: string }) => cost(path, { ...options, by: 'part' })],
  ])('%s as text', (command, run) => {
    expectGolden(`${sample}/${command}.txt`, written(run));
  });

  test('JSON of every command keeps to its schema', () => {
    const json = { format: 'json' };
    expectSchema(
      'check',
      written((options) => check([path], { ...options, ...json })),
    );
    expectSchema(
      'takeoff',
      written((options) => takeoff(path, { ...options, ...json })),
    );
    expectSchema(
      'buy',
      written((options) => buy(path, { ...options, ...json })),
    );
    expectSchema(
      'layout',
      written((options) => layout(path, { ...options, ...json })),
    );
    expectSchema(
      'schedule',
      written((options) => schedule(path, { ...options, ...json })),
    );
    expectSchema(
      'look-ahead',
      written((options) => printLookAhead(path, { ...options, ...json, weeks: '30' })),
    );
    expectSchema(
      'risk',
      written((options) => risk(path, { ...options, ...json, runs: '100' })),
    );
    expectSchema(
      'cost',
      written((options) => cost(path, { ...options, ...json })),
    );
    expectSchema(
      'explain',
      written((options) => explain(path, 'plan', { ...options, ...json })),
    );
  });

  test('a better order keeps to its schema, and is never worse', async () => {
    const output = join(folder, 'improve');
    await improved(path, { improve: '20', format: 'json', quiet: true, output });
    const answer = expectSchema('improve', readFileSync(output, 'utf8')) as { sooner: number };
    expect(answer.sooner).toBeGreaterThanOrEqual(0);
  });

  test('costs close: the lines add up to net, and with tax and contingency to the total', () => {
    const answer = expectSchema(
      'cost',
      written((options) => cost(path, { ...options, format: 'json' })),
    ) as { lines: { cents: number }[]; net: number; tax: number; contingency: number; total: number };
    expect(answer.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(answer.net);
    expect(answer.net + answer.tax + answer.contingency).toBe(answer.total);
  });

  test('every line of the take-off can be explained by its id', () => {
    const { lines } = JSON.parse(written((options) => takeoff(path, { ...options, format: 'json' }))) as {
      lines: { id: string }[];
    };
    expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
    const { id } = lines[Math.floor(lines.length / 2)]!;
    expect(written((options) => explain(path, id, options))).toContain(`line ${id}`);
  });

  test('the same text gives the same bytes', () => {
    const once = written((options) => check([path], { ...options, format: 'json' }));
    expect(written((options) => check([path], { ...options, format: 'json' }))).toBe(once);
  });
});

test('one of each common mistake: what check says of it', () => {
  expectGolden(
    'broken/check.txt',
    written((options) => check(['samples/broken'], options)),
  );
});

test('every schema is one of its dialect', () => {
  for (const name of ['check', 'takeoff', 'buy', 'layout', 'schedule', 'look-ahead', 'risk', 'cost', 'explain'])
    expect(ajv.validateSchema(readSchema(name)), name).toBe(true);
});
