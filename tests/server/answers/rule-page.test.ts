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

/** Codes that the sources declare, but for those of rules of order and of least values: the library's rows bring their own. */
function declaredCodes(): readonly string[] {
  const files = ['grammar', 'server'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path) => join(root, folder, path)),
  );
  const codes = files.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/\bcode: '([a-z]+\/[a-z0-9-]+)'/g)].map((match) => match[1]!),
  );
  return [...new Set(codes)].filter((code) => !/^(?:sequence|minimum|missing)\//.test(code));
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

test('a rule says where it stands in each edition that it knows, and no other', () => {
  const page = rulePage('sequence/pour-before-footing-check', view)!;
  expect(page).toContain('In the model code: irc-2018 R109.1.1, irc-2021 R109.1.1.');
  expect(page).not.toContain('irc-2024');
  expect(rulePage('sequence/lawn-before-scaffold', view)).not.toContain('In the model code');
});

test('a need: what calls for it, what answers it, when', () => {
  const page = rulePage('missing/tile-membrane', view)!;
  expect(page).toContain('Called for by: set-tile');
  expect(page).toContain('Answered by:   lay-membrane');
  expect(page).toContain('Looked at for each room.');
  expect(page).toContain('Only when room.use is bathing.');
});

test('no page for what is no code', () => {
  expect(rulePage('sequence/nonsense', view)).toBeUndefined();
  expect(rulePage('constructor', view)).toBeUndefined();
  expect(rulePage('', view)).toBeUndefined();
});
