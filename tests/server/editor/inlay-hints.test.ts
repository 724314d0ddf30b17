// Hints: what was computed, at the end of the line it belongs to.
import { expect, test } from 'vitest';
import type { InlayHint } from 'vscode-languageserver-types';
import { inlayHints } from '#editor/inlay-hints';
import { editing } from './editing.ts';

const ALL = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };

/** The text with its hints behind a bar. */
function hinted(source: string, range = ALL): string {
  const { ask, textOf } = editing(source);
  const hints = ask<readonly InlayHint[]>(inlayHints, { range });
  return textOf('plan.screed')
    .split('\n')
    .map((line, at) => {
      const hint = hints.find(({ position }) => position.line === at);
      if (hint !== undefined) expect(hint.position.character).toBe(line.length);
      return hint === undefined ? line : `${line} | ${hint.label}`;
    })
    .join('\n');
}

test('rooms, levels, openings, sums', () => {
  expect(
    hinted(`
      level main
        footprint 28' x 32'
      window w-3050 3'-0" x 5'-0"
      room bath on main
        size 8' x 5'
        windows 2 w-3050 in south
      let half = bath.floor-area / 2
      let plain = 8'
    `),
  ).toBe(`level main | 896 sf floor
  footprint 28' x 32'
window w-3050 3'-0" x 5'-0" | 2 in the plan
room bath on main | 40 sf floor
  size 8' x 5'
  windows 2 w-3050 in south
let half = bath.floor-area / 2 | = 20 sf
let plain = 8'
`);
});

test('steps, phases, trades, the plan', () => {
  expect(
    hinted(`
      plan a "House"
        start 2027-04-05
        target 2027-04-30
      trade crew "Us" crew of 2 at $50/h
      phase work in order
        task dig takes 2d by crew
        task pour takes 1d by crew
      task sign takes 4h by crew costs $500
      milestone done after pour, sign
    `),
  ).toBe(`plan a "House" | done Thu 8 Apr 2027, 16 working days before its target of 30 Apr · $2,900
  start 2027-04-05
  target 2027-04-30
trade crew "Us" crew of 2 at $50/h | 56 h in 3 tasks · $2,900
phase work in order | Mon 5 Apr – Wed 7 Apr · $2,400
  task dig takes 2d by crew | Mon 5 Apr – Tue 6 Apr · 2d · no days to spare · $1,600
  task pour takes 1d by crew | Wed 7 Apr · 1d · no days to spare · $800
task sign takes 4h by crew costs $500 | Thu 8 Apr · 4 h · no days to spare · $500
milestone done after pour, sign | Thu 8 Apr · no days to spare
`);
});

test('without a first day, days are counted', () => {
  expect(hinted('task dig takes 2d\ntask pour takes 1d after dig\n')).toBe(
    'task dig takes 2d | day 1 – day 2 · 2d · no days to spare\ntask pour takes 1d after dig | day 3 · 1d · no days to spare\n',
  );
});

test('only for the lines asked for, and none for a line with a mistake in it', () => {
  const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } };
  expect(hinted('task a takes 1d\ntask b takes 1d\ntask c takes 1d\n', range)).toMatch(
    /^task a takes 1d\ntask b takes 1d \| .*\ntask c takes 1d\n$/,
  );
  expect(hinted("task a takes 1d after 8' -\n")).not.toContain('|');
});

test('a range beyond the text', () => {
  const { ask } = editing('task a takes 1d');
  expect(
    ask<readonly InlayHint[]>(inlayHints, { range: { start: { line: 900, character: 0 }, end: { line: 999, character: 0 } } }),
  ).toEqual([]);
  expect(ask<readonly InlayHint[]>(inlayHints, { range: ALL })).toHaveLength(1);
});

test('a quantity that a book of the plan’s choice counts names the book', () => {
  expect(
    hinted(`plan p
  counts slab-concrete by navy-concrete
foundation base
  slab 4", 810 sf
`),
  ).toContain('foundation base | 10 cy concrete · by Engineering Aid: concrete');
});
