// Names where several kinds of things may be meant.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'names/unknown';
const plan = (line: string): string => `
trade framing crew of 3 at $52/h
trench water-line 62' long, 42" deep, 12" wide
firm ruiz does framing
task walls does frame-walls takes 2d by framing
${line}
`;

test.each([
  [
    'inspection look of wals',
    'No step or kind of work is named "wals", so whatever depends on it is not counted. Did you mean "walls"?',
  ],
  ['inspection look of walls before rof', 'No step or kind of work is named "rof"'],
  [
    'task dig does trench-and-lay of water-lin takes 1d by framing',
    'No thing of the house is named "water-lin", so whatever depends on it is not counted. Did you mean "water-line"?',
  ],
  ['delivery here brings drywal', 'Did you mean "drywall"?'],
  ['bid b by ruiz for framing $100, labour only\n  includes frame-wals', 'Did you mean "frame-walls"?'],
  ['rule mine "Mine"\n  first frame-wall\n  then hang-board', 'Did you mean "frame-walls"?'],
  ['allowance lights $1,400 for lihgt', 'Did you mean "light"?'],
])('%s', (line, sentence) => {
  expect(checked(plan(line)).messages(CODE)[0]).toContain(sentence);
});

test.each([
  'inspection look of walls, sheathe-walls',
  'task dig does trench-and-lay of water-line takes 1d by framing',
  'delivery here brings plasterboard, osb',
  'milestone dry after walls, except water-line',
])('fine: %s', (line) => {
  expect(checked(plan(line)).messages(CODE)).toEqual([]);
});

test('a near miss can be put right', () => {
  const found = checked(plan('inspection look of wals')).plan.findings.find(({ code }) => code === CODE);
  expect(found?.fixes).toMatchObject([{ kind: 'replace', text: 'walls' }]);
});

test('what only the library names is not held against the plan', () => {
  expect(checked(plan('inspection footing-check by framing')).messages(CODE)).toEqual([]);
});
