// Hover says in one sentence how late a step, or the plan, is against the schedule that was kept, and through which chain.
import { expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-types';
import { hover } from '#editor/hover';
import { editing } from './editing.ts';

function hovered(source: string): string {
  const found = editing(source).ask<Hover | undefined>(hover);
  return (found?.contents as MarkupContent | undefined)?.value ?? '';
}

const PLAN = `plan p "Shed"
  start 2027-05-03
task walls takes 7d
task roof takes 3d after walls
as-planned bank "The bank" on 2027-04-30
  walls begins 2027-05-03, done 2027-05-07, costs $500
  roof  begins 2027-05-10, done 2027-05-12, costs $300
`;

test('a step', () => {
  expect(hovered(PLAN.replace('task roof', 'task ro<|>of'))).toContain(
    'against the plan  It is done 2 working days later than as planned on Fri 30 Apr 2027 (14 May instead of 12 May): "walls" takes 2 days longer, through roof.',
  );
});

test('the plan, and what is earned by the diary', () => {
  // Of seven days 2.8 are left: walls are done on Wednesday 12 May, the roof on Monday 17 May.
  const text = hovered(`${PLAN}progress 2027-05-07\n  walls started 2027-05-03, 60% done\n`.replace('plan p', 'plan <|>p'));
  expect(text).toContain('against the plan  The end is 3 working days later than as planned');
  expect(text).toContain('earned-value  $300.00 (what is done, at its planned cost)');
  expect(text).not.toContain('estimate-at-completion');
});

test('a step in the kept schedule leads to the step', () => {
  expect(hovered(PLAN.replace('  walls begins', '  wal<|>ls begins'))).toContain('task walls');
});
