// The rules of order that govern a step: held by which links, by luck, broken. The rules are those of the library; what they
// say is tested beside them.
import { expect, test } from 'vitest';
import { explain } from '#answers/explain';
import { treeLines } from '#answers/listed-reason';
import { GLUE_FIRST } from '#tests/support/glue-first';
import { viewText } from './plans.ts';

/** What is told of the order of a step. */
function orders(text: string, step: string): readonly string[] {
  const [found] = explain(step, viewText(text)).found;
  return (found?.reasons ?? []).filter(({ label }) => label === 'rules of order').flatMap((reason) => treeLines(reason));
}

test('held: each link with its words and its wait', () => {
  const steps = `task a does glue takes 1d by crew
inspection look of a before b by crew
task m takes 1d by crew after look + 2 days
phase end in order
  task n takes 1d by crew after m
  task b does clamp takes 1d by others
`;
  expect(orders(GLUE_FIRST + steps, 'b')).toEqual([
    'rules of order  1 of 1 held by links',
    '  sequence/glue-first  held: a → look (looks at) → b (holds)',
  ]);
  expect(orders((GLUE_FIRST + steps).replace(' before b', ''), 'b')).toEqual([
    'rules of order  1 of 1 held by links',
    '  sequence/glue-first  held: a → look (looks at) → m (after, + 2 days) → n (after) → b (in order)',
  ]);
});

test('of several that come first, the chain of the last to be done', () => {
  const steps = `task a does glue 50% takes 1d by crew
task c does glue 50% takes 4d by others
task b does clamp takes 1d by others after a, c
`;
  expect(orders(GLUE_FIRST + steps, 'b')[1]).toBe('  sequence/glue-first  held: c → b (after), and so is another step');
});

test('not held: by luck, or broken', () => {
  const steps = (when: string): string => `task a does glue takes 3d by crew
task b does clamp takes 1d by others${when}
`;
  expect(orders(GLUE_FIRST + steps(', not before 2027-04-12'), 'b')).toEqual([
    'rules of order  0 of 1 held by links',
    '  sequence/glue-first  by luck: no chain leads here from "a"',
  ]);
  expect(orders(GLUE_FIRST + steps(''), 'b')[1]).toBe('  sequence/glue-first  broken: "a" must be done before');
});

test('nothing is told of a step that no rule governs', () => {
  expect(orders(`${GLUE_FIRST}task a does glue takes 1d by crew\n`, 'a')).toEqual([]);
});

test('what is wrong comes first, then what can hurt', () => {
  const steps = `rule first-of-all
  first glue
  then clamp
  because "Crushing: it drops."
  severity error
task a does glue takes 1d by crew
task b does clamp takes 1d by others after a
`;
  expect(orders(GLUE_FIRST + steps, 'b').map((line) => line.trim().split(' ')[0])).toEqual([
    'rules',
    'sequence/first-of-all',
    'sequence/glue-first',
  ]);
});
