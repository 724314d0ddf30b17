// Every row of the built-in library says where its values come from: a publication, common practice, or memory.
// The counts are printed, so that a reader sees how much of the library rests on what.
import { expect, test } from 'vitest';
import { libraryRows, sourceOf } from './rows.ts';

const rows = libraryRows();
const bases = ['published', 'common practice', 'from memory'] as const;

test('every row names a source', () => {
  const silent = rows.filter((row) => (sourceOf(row) ?? '') === '').map((row) => `${row.place} ${row.kind} ${row.name}`);
  expect(silent).toEqual([]);
});

test('a source from memory names what is remembered', () => {
  const bare = rows.filter((row) => /from memory$/.test(sourceOf(row) ?? '') && basisOf(sourceOf(row) ?? '') === 'from memory');
  expect(bare.map((row) => `${row.place} ${row.name}`)).toEqual([]);
});

test('the bases of the rows, counted by kind', () => {
  const kinds = [...new Set(rows.map((row) => row.kind))].sort();
  const table = kinds.map((kind) => {
    const counts = bases.map((basis) => rows.filter((row) => row.kind === kind && basisOf(sourceOf(row) ?? '') === basis).length);
    return { kind, counts, partly: rows.filter((row) => row.kind === kind && isPartly(sourceOf(row) ?? '')).length };
  });
  const lines = table.map(({ kind, counts, partly }) =>
    [kind, ...counts, partly].map((cell) => String(cell).padStart(17)).join(''),
  );
  console.log([['kind', ...bases, 'partly memory'].map((cell) => cell.padStart(17)).join(''), ...lines].join('\n'));
  expect(table.flatMap(({ counts }) => counts).reduce((sum, count) => sum + count, 0)).toBe(rows.length);
});

/** By its first words: a row leads with what its main value rests on. */
function basisOf(source: string): (typeof bases)[number] {
  return source.startsWith('common practice')
    ? 'common practice'
    : source.startsWith('from memory')
      ? 'from memory'
      : 'published';
}

function isPartly(source: string): boolean {
  return basisOf(source) !== 'from memory' && source.includes('from memory');
}
