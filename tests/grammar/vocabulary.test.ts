// Every row of the vocabulary: its examples are read with nothing to say, its words can be told from each other, and each is
// used somewhere in the samples or the library.
import { describe, expect, test } from 'vitest';
import { parse } from '#grammar/parse';
import type { Kind, Properties, Property } from '#grammar/vocabulary/types';
import { joiningWords, kindSpellings, kindsOf, propertiesOf, spaces, vocabulary } from '#grammar/vocabulary/vocabulary';
import { corpus } from '#tests/support/corpus';
import { declarationsOf, remarksOf } from '#tests/support/remarks';

const kinds: readonly Kind[] = Object.values(vocabulary);
const named = kinds.map((kind) => [kind.word, kind] as const);

/** A header that gives as little as may be. */
function bareHeader(kind: Kind): string {
  const takes = kind.takes === undefined ? undefined : declarationsOf(kind.example)[0]?.takes;
  if (takes !== undefined) return kind.example.slice(0, takes.spot.to);
  return kind.name === 'none' ? kind.word : `${kind.word} some-name`;
}

/** Texts in which a property's example stands, in every place that it may. */
function placesOf(kind: Kind, row: Property): readonly string[] {
  const header = bareHeader(kind);
  const below = `${header}\n  ${row.example}\n`;
  if (row.inHeader !== true) return [below];
  if (kind.takes !== undefined) return [below, `${header}, ${row.example}\n`];
  return [below, `${header} ${row.trailing === true ? '' : '"Label" '}${row.example}\n`];
}

describe.each(named)('%s', (_, kind) => {
  test('its example is read with nothing to say', () => {
    expect(remarksOf(`${kind.example}\n`)).toEqual([]);
    expect(parse(kind.example).nodes).toHaveLength(1);
  });

  const rows = Object.entries(propertiesOf(kind));
  test.each(rows)('%s: its example is read with nothing to say, below and in the header', (word, row) => {
    for (const text of placesOf(kind, row)) {
      expect(remarksOf(text), text).toEqual([]);
      const given = declarationsOf(text)[0]?.given[word];
      expect(given, `${text} gives ${word}`).toBeDefined();
    }
  });

  const withDeeper = rows.filter(([, row]) => row.deeper !== undefined);
  const deeper = [...withDeeper, ...(kind.entries?.deeper === undefined ? [] : [['', kind.entries] as const])].flatMap(
    ([word, row]) => Object.entries(row.deeper ?? {}).map(([clause, deep]) => [word, clause, row, deep] as const),
  );
  if (deeper.length > 0)
    test.each(deeper)('%s %s: its example is read on a line of its own', (word, _clause, row, deep) => {
      const text = `${bareHeader(kind)}\n  ${firstPart(kind, word, row)}\n    ${deep.example}\n`;
      expect(remarksOf(text), text).toEqual([]);
    });
});

/** An example up to where its value ends: without clauses that would be given twice. */
function firstPart(kind: Kind, word: string, { example }: Property): string {
  const [read] = declarationsOf(`${bareHeader(kind)}\n  ${example}\n`);
  const given = word === '' ? read?.entries : read?.given[word];
  const [first] = given === undefined ? [] : 'deeper' in given ? [given] : given;
  return example.slice(0, first?.spot.to ?? example.length);
}

test('help is a sentence, and every word is in lower case', () => {
  const check = (word: string, help: string): void => {
    expect(help, word).toMatch(/^[A-Z“"].*[.!?…]$/);
    // As the label of a window has them.
    if (word !== 'U' && word !== 'SHGC') expect(word).toBe(word.toLowerCase());
  };
  const all = (rows: Properties): void => {
    for (const [word, row] of Object.entries(rows)) {
      check(word, row.help);
      all(row.deeper ?? {});
    }
  };
  for (const kind of kinds) {
    check(kind.word, kind.help);
    all(propertiesOf(kind));
  }
});

test('no kind and no fact is a joining word; a second spelling is no kind of its own', () => {
  for (const kind of kinds) {
    expect(joiningWords.has(kind.word), kind.word).toBe(false);
    for (const fact of Object.keys(kind.facts)) expect(joiningWords.has(fact), fact).toBe(false);
  }
  for (const word of Object.keys(kindSpellings)) expect(Object.hasOwn(vocabulary, word)).toBe(false);
});

test('a kind that shares a space of names stands in the list of that space', () => {
  for (const kind of kinds)
    if (kind.space !== undefined && kind.space in spaces) expect(kindsOf(kind.space)).toContain(kind.word);
});

describe('samples and library', () => {
  const whole = corpus().filter(({ name }) => !name.includes('/broken/'));

  test('are read with nothing to say', () => {
    for (const { name, text } of whole) expect(remarksOf(text).map((found) => `${name}: ${found}`)).toEqual([]);
  });

  test('use every kind', () => {
    const used = new Set(corpus().flatMap(({ text }) => declarationsOf(text).map(({ kind }) => kind.word)));
    expect(kinds.map(({ word }) => word).filter((word) => !used.has(word))).toEqual([]);
  });
});
