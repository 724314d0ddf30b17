// Lines, the tree over them, and what stays the same object while a text changes.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, statementCache } from '#grammar/parse';
import type { FileTree, Node } from '#grammar/tree';

const SAMPLE = `# A cottage.
plan larkspur "Larkspur cottage"
  start 2027-04-05

  # Working hours.
  workweek mon-fri 8h

room bath "Bath" on main
  size 8' x 5'
  walls tile over membrane
    to 7'-0"
  floor tile
room hall on main
`;

/** The tree as indented first words, with heights. */
function outline(tree: FileTree): string {
  const lines: string[] = [];
  const write = (node: Node, line: number, depth: number): void => {
    const first = node.line.statement.items[0];
    lines.push(`${'  '.repeat(depth)}${line} ${first?.kind === 'word' ? first.word : '?'} ${node.height}`);
    for (const [index, child] of node.children.entries()) write(child, line + node.offsets[index]!, depth + 1);
  };
  for (const [index, node] of tree.nodes.entries()) write(node, tree.nodeLines[index]!, 0);
  return lines.join('\n');
}

function codes(text: string): readonly (readonly [number, string])[] {
  return parse(text).problems.map(({ line, problem }) => [line, problem.code.replace('syntax/', '')]);
}

test('blank and comment lines are not nodes and open or close no block', () => {
  expect(outline(parse(SAMPLE))).toBe(
    [
      '1 plan 5',
      '  2 start 1',
      '  5 workweek 1',
      '7 room 5',
      '  8 size 1',
      '  9 walls 2',
      '    10 to 1',
      '  11 floor 1',
      '12 room 1',
    ].join('\n'),
  );
  expect(codes(SAMPLE)).toEqual([]);
});

test('columns count from the first letter; offsets of lines from the start of the text', () => {
  const tree = parse('a\r\n  b c\rd\n');
  expect([...tree.starts]).toEqual([0, 3, 9, 11]);
  expect(tree.lines.map((line) => [line.indent, line.statement.text])).toEqual([
    [0, 'a'],
    [2, 'b c'],
    [0, 'd'],
    [0, ''],
  ]);
  expect(tree.lines[1]?.statement.items.map(({ from, to }) => [from, to])).toEqual([
    [0, 1],
    [2, 3],
  ]);
});

test('a comment ends the items; its end and the end of the items are kept', () => {
  const { statement } = parse('  drain 4" in 12" gravel   # sloped  ').lines[0]!;
  expect(statement.end).toBe(22);
  expect(statement.comment).toEqual({ from: 25, to: 33 });
});

test('a byte order mark is part of the first indent and no level', () => {
  const tree = parse('\uFEFFplan a\n  start 2027-04-05\n');
  expect(tree.lines[0]?.indent).toBe(1);
  expect(tree.starts[0]).toBe(0);
  expect(outline(tree)).toBe('0 plan 2\n  1 start 1');
  expect(tree.problems).toEqual([]);
});

test('indentation that fits nothing is said, and read as the nearest level', () => {
  expect(codes('room a\n    size 1\n  walls b\n')).toEqual([[2, 'odd-outdent']]);
  expect(outline(parse('room a\n    size 1\n  walls b\n'))).toBe('0 room 3\n  1 size 1\n  2 walls 1');
  expect(codes('  size 1\nroom a\n')).toEqual([[0, 'indented-start']]);
  expect(codes(`a\n${' '.repeat(200)}b\n`)).toEqual([[1, 'nested-too-deep']]);
});

test('tabs alone are fine; tabs and blanks in one block are not', () => {
  expect(codes('room a\n\tsize 1\n\tfloor b\n\t\tto 7\n')).toEqual([]);
  expect(codes('room a\n  size 1\n\tfloor b\n')).toEqual([[2, 'mixed-indent']]);
  expect(codes('room a\n \tsize 1\n')).toEqual([[1, 'mixed-indent']]);
  expect(codes('room a\n  size 1\nroom b\n\tsize 1\n')).toEqual([]);
  expect(parse('room a\n  size 1\n\tfloor b\n').problems[0]?.problem).toMatchObject({ from: -1, to: 0, rewrite: '  ' });
});

test('what version control left of a conflict is said, and is no statement', () => {
  const text = 'room a\n<<<<<<< HEAD\n  size 1\n=======\n  size 2\n>>>>>>> theirs\n';
  expect(codes(text)).toEqual([
    [1, 'conflict-marker'],
    [3, 'conflict-marker'],
    [5, 'conflict-marker'],
  ]);
  expect(outline(parse(text))).toBe('0 room 5\n  2 size 1\n  4 size 1');
});

test('one keystroke reads one line and makes one node a level', () => {
  const cache = statementCache();
  const previous = parse(SAMPLE, { cache });
  const work = { linesParsed: 0 };
  const tree = parse(SAMPLE.replace(`to 7'-0"`, `to 7'-1"`), { previous, cache, work });
  expect(work.linesParsed).toBe(1);
  expect(tree.lines.filter((line, index) => line !== previous.lines[index])).toHaveLength(1);
  expect(tree.nodes[0]).toBe(previous.nodes[0]);
  expect(tree.nodes[2]).toBe(previous.nodes[2]);
  expect(tree.nodes[1]).not.toBe(previous.nodes[1]);
  expect(tree.nodes[1]?.children.map((child, index) => child === previous.nodes[1]?.children[index])).toEqual([
    true,
    false,
    true,
  ]);
});

test('a comment put between children keeps the children and changes the offsets', () => {
  const previous = parse(SAMPLE);
  const tree = parse(SAMPLE.replace(`  walls`, '  # All round.\n  walls'), { previous });
  expect(tree.nodes[1]).not.toBe(previous.nodes[1]);
  expect(tree.nodes[1]?.children.every((child, index) => child === previous.nodes[1]?.children[index])).toBe(true);
  expect(tree.nodes[1]?.offsets).toEqual([1, 3, 5]);
});

test('a line typed above everything moves blocks without touching them', () => {
  const previous = parse(SAMPLE);
  const tree = parse(`\n${SAMPLE}`, { previous });
  expect(tree.nodes.every((node, index) => node === previous.nodes[index])).toBe(true);
  expect([...tree.nodeLines]).toEqual([...previous.nodeLines].map((line) => line + 1));
});

test('the cache forgets what was not asked for lately', () => {
  const cache = statementCache(3);
  for (let turn = 0; turn < 20; turn += 1) parse(`task a${turn}\n`, { cache });
  expect(cache.recent.size + cache.older.size).toBeLessThanOrEqual(6);
});

const PIECES = [
  'room a',
  "  size 8' x 5'",
  "    to 7'",
  '\n',
  '\n',
  '\r\n',
  '\r',
  '# note',
  '  ',
  '\t',
  'walls tile',
  '"',
  ' ',
  'x',
  '3d',
  '<<<<<<< a',
  '=======',
  '\uFEFF',
  '\u0000',
  '\ud800',
  '½',
  '(',
  ')',
  '..',
  ' - ',
  '12-6',
  ',',
  '\u00a0',
  '$',
  'R-21',
  '10/5/26',
];
const piece = fc.constantFrom(...PIECES);
const text = fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join(''));
const splice = fc.record({
  at: fc.nat(200),
  drop: fc.nat(12),
  add: fc.array(piece, { maxLength: 3 }).map((pieces) => pieces.join('')),
});

test('after any changes the tree is the one a fresh reading gives', () => {
  fc.assert(
    fc.property(text, fc.array(splice, { maxLength: 12 }), (start, splices) => {
      const cache = statementCache(20);
      let now = start;
      let tree = parse(now, { cache });
      for (const { at, drop, add } of splices) {
        const from = Math.min(at, now.length);
        now = now.slice(0, from) + add + now.slice(from + drop);
        tree = parse(now, { cache, previous: tree });
        expect(tree).toEqual(parse(now));
      }
    }),
    { numRuns: 400 },
  );
});

test('whatever stands in a line, its items keep their order inside it', () => {
  fc.assert(
    fc.property(fc.oneof(text, fc.string({ unit: 'binary', maxLength: 40 })), (written) => {
      for (const { statement } of parse(written).lines) {
        let at = 0;
        for (const item of statement.items) {
          expect(item.from).toBeGreaterThanOrEqual(at);
          expect(item.to).toBeGreaterThan(item.from);
          at = item.to;
        }
        expect(at).toBeLessThanOrEqual(statement.end);
        expect(statement.end).toBeLessThanOrEqual(statement.text.length);
      }
    }),
    { numRuns: 1000 },
  );
});
