// A schedule kept beside its plan from the command line, and today's against it in every format.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { schedule } from '#cli/tables';

const PLAN = `plan p "Cottage"
  start 2027-05-03
task walls takes 5d
task roof takes 3d after walls
`;
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kept-'));
  writeFileSync(join(folder, 'plan.screed'), PLAN);
});
afterEach(() => rmSync(folder, { recursive: true }));

const at = (name: string): string => join(folder, name);
const quiet = { quiet: true } as const;

function written(options: object): string {
  const output = at('out.txt');
  schedule(at('plan.screed'), { ...quiet, ...options, output });
  return readFileSync(output, 'utf8');
}

test('kept beside the plan, never written over; then compared', () => {
  expect(schedule(at('plan.screed'), { ...quiet, save: 'bank' })).toBe(0);
  expect(readFileSync(at('bank.screed'), 'utf8')).toContain('as-planned bank on 2027-05-03\n  walls begins 2027-05-03');
  expect(() => schedule(at('plan.screed'), { ...quiet, save: 'bank' })).toThrow('is there already');
  writeFileSync(at('plan.screed'), `${PLAN.replace('5d', '7d')}include "bank.screed"\n`);
  expect(() => schedule(at('plan.screed'), { ...quiet, save: 'bank' })).toThrow('keeps a schedule "bank" already');
  expect(written({ against: true })).toMatch(/^walls .* \+2d +\+2d +takes 2 days longer$/m);
  expect(written({ against: 'Bank', format: 'csv' })).toContain(
    'roof,kept,2027-05-10,2027-05-12,2027-05-12,2027-05-14,2,0,walls,',
  );
  const answer = JSON.parse(written({ against: 'bank', format: 'json' })) as { finish: object };
  const schema = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../../server/schemas/slippage.schema.json'), 'utf8'),
  ) as object;
  const valid = new Ajv2020().compile(schema);
  expect(valid(answer) ? [] : valid.errors).toEqual([]);
  expect(answer.finish).toEqual({ planned: '2027-05-12', now: '2027-05-14', days: 2 });
});

test('what is asked wrongly is said', () => {
  expect(() => schedule(at('plan.screed'), { ...quiet, save: 'The Bank' })).toThrow('--save takes a name');
  expect(() => schedule(at('plan.screed'), { ...quiet, against: true })).toThrow('--save NAME writes one');
  expect(() => schedule(at('plan.screed'), { ...quiet, against: true, format: 'svg' })).toThrow('no format "svg"');
  writeFileSync(at('plan.screed'), PLAN.replace('  start 2027-05-03\n', ''));
  expect(() => schedule(at('plan.screed'), { ...quiet, save: 'bank' })).toThrow('"start"');
  expect(existsSync(at('bank.screed'))).toBe(false);
});
