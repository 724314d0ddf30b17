// The formatter: cases in files, then what must hold of it for any text: nothing is lost, nothing is touched that was not
// understood, the tree stays, and formatting twice is formatting once.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { format } from '#grammar/format';
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import type { FileTree, Node } from '#grammar/tree';
import { lineEnd } from '#kit/text';
import { corpus, corpusLines } from '#tests/support/corpus';

const folder = join(import.meta.dirname, 'format');
const formatted = (text: string): string => format(parse(text)).text;

/** A case's text: · is a blank at a line's end, → a tab. */
const spelled = (text: string): string => text.replaceAll('·', ' ').replaceAll('→', '\t');

describe('cases', () => {
  test.each(readdirSync(folder).sort())('%s', (name) => {
    const [written, wanted] = readFileSync(join(folder, name), 'utf8').split('[expect]\n') as [string, string];
    expect(formatted(spelled(written))).toBe(spelled(wanted));
    expect(formatted(spelled(wanted))).toBe(spelled(wanted));
  });
});

describe('line ends and marks', () => {
  test('each line keeps its own line end; a new one is as most are', () => {
    expect(formatted("plan  a\r\n  start  2027-04-05\nlet b =  1'\r\nlet c =  2'")).toBe(
      "plan a\r\n  start      2027-04-05\nlet b = 1'\r\nlet c = 2'\r\n",
    );
    expect(formatted("plan  a\rlet  b = 1'\r")).toBe("plan a\rlet b = 1'\r");
  });

  test('a byte order mark stays and is no column', () => {
    expect(formatted('\uFEFF\n\nplan  a\n  start   2027-04-05\n  units feet')).toBe(
      '\uFEFFplan a\n  start      2027-04-05\n  units      feet\n',
    );
    expect(format(parse('\uFEFFplan  a\n')).edits).toEqual([{ line: 0, from: 5, to: 7, text: ' ' }]);
  });

  test('an empty text stays empty, and one of blanks becomes so', () => {
    expect(format(parse('')).edits).toEqual([]);
    expect(formatted('\n \n\t\n')).toBe('');
  });

  test('a line that is not understood is not even ended', () => {
    expect(format(parse('chimney  x  ')).edits).toEqual([]);
  });

  test('what version control left is not touched', () => {
    const text = 'plan a\n<<<<<<< HEAD\n  units feet\n=======\n  units mm  \n>>>>>>> theirs\n';
    expect(formatted(text)).toContain('\n<<<<<<< HEAD\n');
  });
});

describe('edits', () => {
  test('only the blanks that differ are replaced', () => {
    const text = 'room bath  "Bath" on   main\n  size  8\' x 5\'\n';
    expect(format(parse(text)).edits).toEqual([
      { line: 0, from: 9, to: 11, text: ' ' },
      { line: 0, from: 20, to: 23, text: ' ' },
      { line: 1, from: 6, to: 8, text: '       ' },
    ]);
  });

  test('a blank line that goes is taken with its line end', () => {
    expect(format(parse('\nplan a\n')).edits).toEqual([{ line: 0, from: 0, to: 1, text: '' }]);
  });
});

test('samples and library are in canonical form', () => {
  for (const { name, text } of corpus()) expect(formatted(text), name).toBe(text);
});

// ---- for any text ----

const SOUP = [
  ...['"', "'", '½', ' ', '  ', '\t', '\n', '\r\n', '\r', ',', '=', 'x', '3d', '#', '# c', '(', ')', '+', '-', '@', '\u00a0'],
  ...[
    '\u2028',
    '“',
    '”',
    'figure ',
    '<<<<<<< a',
    '=======',
    '\ufeff',
    '\ud800',
    '2x6',
    '24"oc',
    '12ft 6in',
    '..',
    ' also after ',
  ],
  ...['1 1/2"', '€', '3/0 x 6/8', '6/12', 'sill 24"', ' task ', 'phase a in order', '\n  ', '\n    ', '#4 ', '185,000'],
];
const lines = corpusLines();

/** Some lines of the corpus that stand together, with a few things done to them. */
const spoiled = fc
  .record({
    start: fc.nat(lines.length - 1),
    count: fc.integer({ min: 1, max: 14 }),
    end: fc.constantFrom('\n', '\n', '\r\n', '\r'),
    strokes: fc.array(fc.record({ at: fc.nat(1500), cut: fc.nat(3), put: fc.constantFrom('', ...SOUP) }), { maxLength: 5 }),
    gaps: fc.array(fc.nat(8), { minLength: 1, maxLength: 30 }),
  })
  .map(({ start, count, end, strokes, gaps }) => {
    let text = lines.slice(start, start + count).join(end);
    for (const { at, cut, put } of strokes) {
      const place = at % (text.length + 1);
      text = text.slice(0, place) + put + text.slice(place + cut);
    }
    let gap = 0;
    return text.replace(/ +/g, (blanks) => (gaps[(gap += 1) % gaps.length]! > 6 ? `${blanks} ` : blanks));
  });
const soup = fc.array(fc.constantFrom(...SOUP, 'plan a', '  units feet', 'room b'), { maxLength: 30 }).map((all) => all.join(''));
const anyText = fc.oneof({ weight: 4, arbitrary: spoiled }, { weight: 1, arbitrary: soup });
const RUNS = { numRuns: 2000, interruptAfterTimeLimit: 15_000 };

const BLANKS = /[ \t\v\f\r\n\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]+/g;
const letters = (text: string): string => text.replace(BLANKS, '');

/** The tree by what its lines say. */
function outline(tree: FileTree): string {
  const said = (node: Node): unknown => [
    node.line.statement.items.map((item) => (item.kind === 'word' ? usual(item.word) : item.kind === 'text' ? item : item.kind)),
    node.children.map(said),
  ];
  return JSON.stringify(tree.nodes.map(said), (key, value) => (key === 'from' || key === 'to' ? undefined : value));
}
const usual = (word: string): string => (word === 'figure' ? 'let' : word);

test('formatting twice is formatting once, and what is formatted needs no edit', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const once = formatted(text);
      expect(format(parse(once))).toEqual({ edits: [], text: once });
    }),
    RUNS,
  );
});

test('no letter is lost or added; without spellings to rewrite, none changes', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const tree = parse(text);
      const rewrites = tree.lines.some(({ statement }) => statement.rewrites.length > 0 || /^figure\b/i.test(statement.text));
      fc.pre(!rewrites);
      expect(letters(formatted(text))).toBe(letters(text));
    }),
    RUNS,
  );
});

test('the tree says the same before and after', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(outline(parse(formatted(text)))).toBe(outline(parse(text)));
    }),
    RUNS,
  );
});

test('edits lie inside the text, in order, apart, and make the text that is given', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const tree = parse(text);
      const { edits, text: made } = format(tree);
      let done = '';
      let at = 0;
      for (const { line, from, to, text: put } of edits) {
        const start = tree.starts[line]!;
        expect(start + from).toBeGreaterThanOrEqual(at);
        expect(start + to).toBeLessThanOrEqual(tree.starts[line + 1] ?? text.length);
        done += text.slice(at, start + from) + put;
        at = start + to;
      }
      expect(done + text.slice(at)).toBe(made);
    }),
    RUNS,
  );
});

test('no edit touches a line with a problem or a remark', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const tree = parse(text);
      const bad = linesWithSomethingToSay(tree);
      for (const { line, text: put } of format(tree).edits) {
        const shown = text.slice(tree.starts[line], lineEnd(text, tree.starts, line));
        expect(bad.has(line), `${JSON.stringify(shown)} → ${JSON.stringify(put)}`).toBe(false);
      }
    }),
    RUNS,
  );
});

function linesWithSomethingToSay(tree: FileTree): ReadonlySet<number> {
  const bad = new Set(tree.problems.map(({ line }) => line));
  const visit = (node: Node, line: number, asIs: ReadonlySet<unknown>): void => {
    const declaration = readDeclaration(node);
    const { items, problems } = node.line.statement;
    const own = new Set([...asIs, ...(declaration?.asIs ?? [])]);
    if (problems.length > 0 || items.some((item) => item.kind === 'wrong' && !own.has(item))) bad.add(line);
    for (const { spot } of line === root || isStep(node) ? (declaration?.remarks ?? []) : [])
      bad.add(lineOf(node, line, spot.path));
    for (const [index, child] of node.children.entries()) visit(child, line + node.offsets[index]!, own);
  };
  let root = -1;
  for (const [index, node] of tree.nodes.entries()) {
    root = tree.nodeLines[index]!;
    if (readDeclaration(node) === undefined) bad.add(root);
    visit(node, root, new Set());
  }
  return bad;
}

/** Declarations that stand below a phase; elsewhere such a word may be a property's. */
function isStep(node: Node): boolean {
  const [first] = node.line.statement.items;
  return first?.kind === 'word' && ['task', 'inspection', 'milestone', 'delivery'].includes(first.word);
}

function lineOf(node: Node, line: number, path: readonly number[]): number {
  const [first, ...rest] = path;
  return first === undefined ? line : lineOf(node.children[first]!, line + node.offsets[first]!, rest);
}
