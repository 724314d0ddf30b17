// Every code that a finding can have has a page.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ABOUT } from '#answers/rule-about';
import { ruleCodes, rulePage } from '#answers/rule-page';
import { checks } from '#checks/rules';
import { viewSample, viewText } from './plans.ts';

const root = join(import.meta.dirname, '../../..');
const view = viewText('');

/** Codes that the sources declare, but for those of rules of order, of least values and of hazards: the library's rows bring their own. */
function declaredCodes(): readonly string[] {
  const files = ['grammar', 'server'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path) => join(root, folder, path)),
  );
  const codes = files.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/\bcode: '([a-z]+\/[a-z0-9-]+)'/g)].map((match) => match[1]!),
  );
  return [...new Set(codes)].filter((code) => !/^(?:sequence|minimum|safety)\//.test(code));
}

test('every code of the sources is explained, and nothing else is', () => {
  const known = new Set([...Object.keys(ABOUT), ...checks.map(({ code }) => code)]);
  const declared = declaredCodes();
  expect(declared.filter((code) => !known.has(code))).toEqual([]);
  expect(Object.keys(ABOUT).filter((code) => !declared.includes(code))).toEqual([]);
});

test('every code has a page that ends with a full stop', () => {
  for (const code of ruleCodes(view)) {
    const page = rulePage(code, view);
    expect(page, code).toMatch(/^[a-z]+\/[a-z0-9-]+\n\n[^\n]/);
    expect(page, code).not.toMatch(/undefined|\[object/);
    expect(page!.endsWith('.\n'), code).toBe(true);
  }
});

test('every finding of the samples has one', () => {
  for (const { code } of viewSample('cottage').plan.findings) expect(rulePage(code, view), code).toBeDefined();
});

test('a rule of order: who before whom, why, what to do, source', () => {
  const page = rulePage('sequence/board-before-dry', view)!;
  expect(page).toMatch(/^First: {2}dry\nThen: {3}hang-board/m);
  expect(page).toContain('Why: ');
  expect(page).toContain('What to do: ');
  expect(page).toContain('Source: ');
});

test('a least value: fact, limit, where it stands, source', () => {
  const page = rulePage('minimum/escape-sill', view)!;
  expect(page).toContain('Highest sill of an escape opening: escape-sill at most 44".');
  expect(page).toContain('Only when room.use is sleeping.');
  expect(page).toContain('irc-2021 R310.2; a note in any other.');
});

test('a hazard: what carries it, when, what sees to it, source', () => {
  const page = rulePage('safety/trench-too-steep', view)!;
  expect(page).toContain('Lies in: each trench.');
  expect(page).toContain('Only when trench.depth at least 60".');
  expect(page).toContain('Not when trench has protection.');
  expect(page).toContain('Seen to by: shore-trench.');
  expect(page).toContain('Source: 29 CFR 1926.652(b)');
  expect(rulePage('safety/lift', view)).toContain('Carried by: set-trusses, set-floor-panels');
});

test('no page for what is no code', () => {
  expect(rulePage('sequence/nonsense', view)).toBeUndefined();
  expect(rulePage('constructor', view)).toBeUndefined();
  expect(rulePage('', view)).toBeUndefined();
});
