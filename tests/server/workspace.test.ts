// Which plans there are while files are opened, changed and closed, and that they are those of a fresh look.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Files } from '#host/files';
import { memoryFiles } from '#host/memory-files';
import { messageOf } from '#kit/finding';
import { type TextChange, workspace } from '#server/workspace';

function opened(texts: { [path: string]: string | undefined }, folder = 'street') {
  const places = workspace(memoryFiles(texts), 'library');
  places.setFolders([folder]);
  const open = (path: string, text = texts[path] ?? ''): void => places.open(path, 1, text);
  const roots = (): readonly string[] => places.plans().map(({ root }) => root);
  const codes = (path: string): readonly string[] =>
    places
      .plansOf(path)
      .flatMap(({ findings }) => findings.filter(({ place }) => place.slot.file === path).map(({ code }) => code));
  return { places, open, roots, codes, texts };
}

describe('roots', () => {
  const STREET = {
    'street/one/plan.screed': 'plan one\ninclude "rooms.screed"\ninclude "../prices.screed"\n',
    'street/one/rooms.screed': 'room a\n',
    'street/two.screed': 'plan two\ninclude "prices.screed"\n',
    'street/prices.screed': 'supplier yard\n',
    'street/alone.screed': 'room b\n',
    'street/node_modules/x/plan.screed': 'plan x\ninclude "../../prices.screed"\n',
  };

  test('a plan is one with all it includes', () => {
    const { open, roots, places } = opened({ ...STREET });
    open('street/one/plan.screed');
    expect(roots()).toEqual(['street/one/plan.screed']);
    expect(places.plans()[0]!.model.files.map(({ path }) => path)).toEqual([
      'street/one/plan.screed',
      'street/one/rooms.screed',
      'street/prices.screed',
    ]);
  });

  test('an included file is shown within every plan that includes it, however it lies', () => {
    const { open, roots, places } = opened({ ...STREET });
    open('street/prices.screed');
    expect([...roots()].sort()).toEqual(['street/one/plan.screed', 'street/two.screed']);
    expect(places.plansOf('street/prices.screed')).toHaveLength(2);
  });

  test('a file that nothing includes is a plan of its own', () => {
    const { open, roots } = opened({ ...STREET });
    open('street/alone.screed');
    expect(roots()).toEqual(['street/alone.screed']);
  });

  test('a new include takes a lone file in; without it, it is alone again', () => {
    const { open, roots, places } = opened({ ...STREET });
    open('street/alone.screed');
    open('street/two.screed');
    expect(roots()).toEqual(['street/two.screed', 'street/alone.screed']);
    const at = { line: 1, character: 0 };
    places.change('street/two.screed', 2, [{ range: { start: at, end: at }, text: 'include "alone.screed"\n' }]);
    expect(roots()).toEqual(['street/two.screed']);
    places.change('street/two.screed', 3, [{ range: { start: at, end: { line: 2, character: 0 } }, text: '' }]);
    expect(roots()).toEqual(['street/two.screed', 'street/alone.screed']);
  });

  test('without folders, the folder under version control is looked through, else the file’s own', () => {
    const places = workspace(memoryFiles({ ...STREET, 'street/.git/HEAD': '' }), 'library');
    places.open('street/one/rooms.screed', 1, 'room a\n');
    expect(places.plans().map(({ root }) => root)).toEqual(['street/one/plan.screed']);
  });
});

describe('texts', () => {
  test('an open file counts as it is open, a closed one as it is on disk', () => {
    const texts: { [path: string]: string } = {
      'street/a.screed': 'plan a\ninclude "b.screed"\nroom x on main\n',
      'street/b.screed': 'level main\n',
    };
    const { open, codes, places } = opened(texts);
    open('street/a.screed');
    expect(codes('street/a.screed')).not.toContain('names/unknown');
    open('street/b.screed', 'level other\n');
    expect(codes('street/a.screed')).toContain('names/unknown');
    places.close('street/b.screed');
    expect(codes('street/a.screed')).not.toContain('names/unknown');
    texts['street/b.screed'] = 'level attic\n';
    places.diskChanged();
    expect(codes('street/a.screed')).toContain('names/unknown');
  });

  test('what lies outside the folder is not read, nor what a link leads to there', () => {
    const texts = {
      'street/a.screed': 'plan a\ninclude "../secret.screed"\ninclude "link.screed"\n',
      'secret.screed': 'room s\n',
      'street/link.screed': 'room s\n',
    };
    const files: Files = { ...memoryFiles(texts), real: (path) => (path === 'street/link.screed' ? 'secret.screed' : path) };
    const places = workspace(files, 'library');
    places.setFolders(['street']);
    places.open('street/a.screed', 1, texts['street/a.screed']);
    const [plan] = places.plans();
    expect(plan!.model.files).toHaveLength(1);
    expect(plan!.findings.filter(({ code }) => code === 'names/include-missing')).toHaveLength(2);
  });

  test('changes before opening, closing twice, versions that skip', () => {
    const { open, places, codes } = opened({});
    expect(places.change('street/a.screed', 1, [{ text: 'x' }])).toBe(false);
    open('street/a.screed', 'rooom a\n');
    places.change('street/a.screed', 17, [{ text: 'room a\n' }]);
    expect(places.versionOf('street/a.screed')).toBe(17);
    expect(codes('street/a.screed')).not.toContain('words/unknown-kind');
    places.close('street/a.screed');
    places.close('street/a.screed');
    expect(places.plans()).toEqual([]);
  });

  test('a range beyond the text is moved to its end; changes apply in order', () => {
    const { open, places } = opened({});
    open('street/a.screed', 'room a\n');
    places.change('street/a.screed', 2, [
      { range: { start: { line: 90, character: 0 }, end: { line: 99, character: 9 } }, text: 'room b\n' },
      { range: { start: { line: 1, character: 5 }, end: { line: 1, character: 6 } }, text: 'c' },
    ]);
    expect(places.textOf('street/a.screed')).toBe('room a\nroom c\n');
  });
});

test('after any edits the findings are those of a fresh look', () => {
  const base = [
    'plan a',
    '  start 2027-04-05',
    'level main',
    "  footprint 20' x 20'",
    'room a on main',
    "  size 8' x 5'",
    'task b takes 1d',
    'include "b.screed"',
    '',
  ];
  const line = fc.constantFrom(
    ...base,
    'room a on main',
    'task c takes 2d after b',
    '  note "x"',
    'rooom',
    "  size 8' x",
    '\t',
    'plan z',
  );
  const edit = fc.record({
    from: fc.nat(10),
    to: fc.nat(10),
    text: fc.array(line, { maxLength: 3 }).map((lines) => lines.map((each) => `${each}\n`).join('')),
  });
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
      const texts = { 'street/b.screed': 'room other\n' };
      const one = opened(texts);
      one.open('street/a.screed', base.join('\n'));
      one.places.plans();
      edits.forEach(({ from, to, text }, at) => {
        const [low, high] = [Math.min(from, to), Math.max(from, to)];
        const change: TextChange = { range: { start: { line: low, character: 0 }, end: { line: high, character: 0 } }, text };
        one.places.change('street/a.screed', at + 2, [change]);
        one.places.plans();
      });
      const fresh = opened(texts);
      fresh.open('street/a.screed', one.places.textOf('street/a.screed'));
      const told = (each: typeof one) =>
        each.places.plans().map(({ root, findings }) => [root, findings.map((found) => `${found.code} ${messageOf(found)}`)]);
      expect(told(one)).toEqual(told(fresh));
    }),
    { numRuns: 60 },
  );
});
