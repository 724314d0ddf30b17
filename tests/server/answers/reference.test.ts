// The rule reference: its pages are what the codes' own words give (`npm run reference` writes them anew), none is left over,
// every link leads to a page, and every plan on them reads in the usual layout.
import { existsSync, readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { expect, test } from 'vitest';
import { referencePages, ruleAreas, ruleList } from '#answers/rule-index';
import { ruleCodes } from '#answers/rule-page';
import { viewText } from './plans.ts';

const folder = join(import.meta.dirname, '../../../grammar/rules');
const view = viewText('');
const pages = referencePages(view);

test('the pages are what the words give', async () => {
  for (const { path, text } of pages) await expect(text, path).toMatchFileSnapshot(join(folder, path));
});

test('no page is left over: delete it, or give its code back', () => {
  const there = (existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [])
    .filter((path) => path.endsWith('.md'))
    .map((path) => path.split(sep).join('/'));
  const made = new Set(pages.map(({ path }) => path));
  expect(there.filter((path) => !made.has(path))).toEqual([]);
});

test('every code is in the index once, and each link leads to a page', () => {
  const links = [...pages[0]!.text.matchAll(/\]\(([^)]+)\)/g)].map(([, path]) => path!);
  expect(links.slice().sort()).toEqual(
    ruleCodes(view)
      .map((code) => `${code}.md`)
      .sort(),
  );
  for (const path of links)
    expect(
      pages.some((page) => page.path === path),
      path,
    ).toBe(true);
});

test('a page has one title, its code, and no word that promises what only others can decide', () => {
  for (const { text, path } of pages.slice(1)) {
    expect(text.match(/^# .+$/gm), path).toHaveLength(1);
    expect(text, path).toContain(`\`${path.replace(/\.md$/, '')}\``);
    expect(text, path).not.toMatch(/compl(?:y|ies|iant|iance)|guarantee|undefined|\[object/i);
    if (/^(?:sequence|minimum)\//.test(path)) expect(text.trimEnd(), path).toMatch(/decide\.$/);
  }
});

test('the list for a terminal has every code once, under its area', () => {
  const list = ruleList(ruleAreas(view));
  for (const code of ruleCodes(view)) expect(list.split(`    ${code} `), code).toHaveLength(2);
  expect(list).toMatch(/^What comes before what\n\n {2}[A-Z].*\n {4}sequence\//);
});
