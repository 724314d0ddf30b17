// Every code that a finding can have has a page.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ABOUT } from '#answers/rule-about';
import { isInReference, ruleCodes, ruleHelp, rulePage } from '#answers/rule-page';
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
  return [...new Set(codes)].filter((code) => !/^(?:sequence|minimum|missing|safety)\//.test(code));
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
  expect(page).toContain('\n\nWet board comes out again. Start board after dry-in, or accept with a reason.\n\n');
  expect(page).toMatch(/^First: dry \(Dry: .*\)\nThen: {2}hang-board \(Hang drywall\)/m);
  expect(page).toMatch(/^Source: .+/m);
});

test('a least value: fact, limit, where it stands, source', () => {
  const page = rulePage('minimum/escape-sill', view)!;
  expect(page).toMatch(/^minimum\/escape-sill\n\nHighest sill of an escape opening\n\nFire: /);
  expect(page).toContain('Looked at:  escape-sill of each room\nModel code: at most 44"\nOnly when:  room.use is sleeping\n');
  expect(page).toContain(
    'Section:  R310.2 (irc-2018), R310.2 (irc-2021)\nSeverity: error in irc-2018, irc-2021; note in any other edition.',
  );
});

test('other tools are told the same: a title, what it is about, the page as text and as Markdown', () => {
  expect(ruleHelp('sequence/board-before-dry', view)).toMatchObject({
    title: 'Board goes up before the house is dry',
    about: 'Wet board comes out again. Start board after dry-in, or accept with a reason.',
    text: rulePage('sequence/board-before-dry', view),
    path: 'sequence/board-before-dry.md',
  });
  const { markdown } = ruleHelp('sequence/board-before-dry', view)!;
  expect(markdown).toMatch(/^# Board goes up before the house is dry\n\n`sequence\/board-before-dry`\n\n/);
  expect(markdown).toContain('- **First**: `dry` (Dry: ');
  expect(markdown).toContain('```screed\n');
});

test('the reference has pages for the built-in codes, none for a plan’s own', () => {
  const own = viewText('rule mine "Mine first"\n  first a\n  then b\n');
  for (const code of ruleCodes(view)) expect(isInReference(code, own.plan.model), code).toBe(true);
  expect(ruleHelp('sequence/mine', own)).toBeDefined();
  expect(isInReference('sequence/mine', own.plan.model)).toBe(false);
  expect(isInReference('constructor', own.plan.model)).toBe(false);
});

test('a rule says where it stands in each edition that it knows, and no other', () => {
  const page = rulePage('sequence/pour-before-footing-check', view)!;
  expect(page).toContain('Section:  R109.1.1 (irc-2018), R109.1.1 (irc-2021)');
  expect(page).not.toContain('irc-2024');
  expect(rulePage('sequence/lawn-before-scaffold', view)).not.toContain('Section:');
});

test('a need: what calls for it, what answers it, when', () => {
  const page = rulePage('missing/tile-membrane', view)!;
  expect(page).toContain('Called for by: set-tile (Set tile)');
  expect(page).toContain('Answered by:   lay-membrane (Lay tile membrane)');
  expect(page).toContain('Looked at:     each room');
  expect(page).toContain('Only when:     room.use is bathing');
});

test('a hazard: what carries it, when, what sees to it, source', () => {
  const page = rulePage('safety/trench-too-steep', view)!;
  expect(page).toContain('Lies in:    each trench');
  expect(page).toContain('Only when:  trench.depth at least 60"');
  expect(page).toContain('Not when:   trench has protection');
  expect(page).toContain('Seen to by: shore-trench (');
  expect(page).toContain('29 CFR 1926.652(b)');
  expect(rulePage('safety/lift', view)).toContain('Carried by: set-trusses (');
});

test('no page for what is no code', () => {
  expect(rulePage('sequence/nonsense', view)).toBeUndefined();
  expect(rulePage('constructor', view)).toBeUndefined();
  expect(rulePage('', view)).toBeUndefined();
});
