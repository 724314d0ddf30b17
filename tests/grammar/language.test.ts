// The language reference: its tables are what the vocabulary gives (`npm run reference` writes them anew), and every example
// on the page is read with nothing to say and stands in the usual layout.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { format } from '#grammar/format';
import { parse } from '#grammar/parse';
import { CHAPTERS, withTables } from '#grammar/reference';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { remarksOf } from '#tests/support/remarks';

const FILE = join(import.meta.dirname, '../../grammar/language.md');
const page = readFileSync(FILE, 'utf8');

test('the tables of the page are what the vocabulary gives', async () => {
  await expect(withTables(page)).toMatchFileSnapshot(FILE);
});

test('every kind stands in one chapter', () => {
  expect(CHAPTERS.flatMap(([, kinds]) => kinds).sort()).toEqual(Object.keys(vocabulary).sort());
});

test('every mark on the page has its table', () => {
  expect([...page.matchAll(/<!-- generated: (\w+) -->/g)].map(([, name]) => name).sort()).toEqual([
    'always',
    'joining',
    'kinds',
    'measures',
    'units',
  ]);
  expect(withTables(withTables(page))).toBe(withTables(page));
});

const examples = [...page.matchAll(/^```\n([\s\S]*?)^```$/gm)].map(([, text]) => text!);

test.each(examples)('example %#', (text) => {
  expect(remarksOf(text)).toEqual([]);
  expect(format(parse(text)).text).toBe(text);
});

/** Values shown in the table of sorts, and whatever stands between code marks in its second column. */
test('every value in the table of sorts can be read', () => {
  const table = page.slice(page.indexOf('| Sort | Written |'), page.indexOf('An inch mark is'));
  const shown = table
    .split('\n')
    .slice(2)
    .flatMap((line) => [...(line.split(' | ')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, value]) => value!));
  expect(shown.length).toBeGreaterThan(40);
  for (const value of shown) {
    const [statement] = parse(value).lines.map((line) => line.statement);
    expect(
      statement!.items.filter(({ kind }) => kind === 'wrong'),
      value,
    ).toEqual([]);
    expect(statement!.problems, value).toEqual([]);
  }
});
