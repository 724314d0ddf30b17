// Which rows of the library belong to an element of UNIFORMAT II: every work that installs or uses something says its element,
// unless all of its goods say theirs.
import { expect, test } from 'vitest';
import { libraryRows, type Row, valuesOf } from './rows.ts';

const rows = libraryRows();
const ofKind = (kind: string): readonly Row[] => rows.filter((row) => row.kind === kind);
const codes = new Set(ofKind('element').map(({ name }) => name.toUpperCase()));
const says = (row: Row): boolean => valuesOf(row, 'element').length > 0;
const classified = new Set([...ofKind('material'), ...ofKind('item'), ...ofKind('fixture')].filter(says).map(({ name }) => name));

test('codes are those of level 3: a letter from A to G and four digits', () => {
  expect(codes.size).toBeGreaterThanOrEqual(50);
  for (const code of codes) expect(code).toMatch(/^[A-G]\d{3}0$/);
});

test('work that installs or uses goods says its element, or its goods do', () => {
  const silent = ofKind('work').filter((work) => {
    const goods = [
      ...valuesOf(work, 'installs').flatMap((value) => value.replace(/ by .*$/, '').split(/, */)),
      ...valuesOf(work, 'uses').map((value) => value.split(' ')[0] ?? ''),
    ];
    return goods.length > 0 && !says(work) && !goods.every((name) => classified.has(name));
  });
  expect(silent.map(({ name }) => name)).toEqual([]);
});

test('every fixture says its element', () =>
  expect(
    ofKind('fixture')
      .filter((row) => !says(row))
      .map(({ name }) => name),
  ).toEqual([]));

test('the work of no element installs nothing, and there is little of it', () => {
  const none = ofKind('work').filter((row) => !says(row));
  console.log(`Work of no element: ${none.map(({ name }) => name).join(', ')}`);
  expect(none.length).toBeLessThanOrEqual(60);
});
