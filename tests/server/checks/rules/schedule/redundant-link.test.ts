// Links that other links say already.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'schedule/redundant-link';
const chain = 'task dig takes 2d\ntask forms takes 1d after dig\n';

test('named beside a step that names it', () => {
  const found = checked(`${chain}task pour takes 1d after dig, forms\n`);
  expect(found.messages(CODE)).toEqual([
    '"pour" need not wait for "dig": "forms", which it also waits for, already does. The link changes no date: leave it out, or keep it where "forms" may go.',
  ]);
  expect(found.marks(CODE)).toEqual(['line 3: dig']);
});

test('a wait of its own, a start, a share or a lead hold more', () => {
  expect(checked(`${chain}task pour takes 1d after dig + 7 days, forms\n`).messages(CODE)).toEqual([]);
  expect(checked(`${chain}task pour takes 1d after start of dig, forms\n`).messages(CODE)).toEqual([]);
  expect(checked(`${chain}task pour takes 1d after 50% of dig, forms\n`).messages(CODE)).toEqual([]);
  expect(
    checked('task dig takes 2d\ntask forms takes 1d after dig - 1d\ntask pour after dig, forms takes 1d\n').messages(CODE),
  ).toEqual([]);
});

test('a phase is named for all its steps; the order within it does not count against it', () => {
  const phase = 'phase ground in order\n  task dig takes 1d\n  task drain takes 1d\n';
  expect(checked(`${phase}task fill takes 1d after ground\n`).messages(CODE)).toEqual([]);
});

test('only what the step itself names: a visit, the order of a phase and its own "after" may change', () => {
  const visit = `task forms takes 1d\ninspection look of forms before pour\n`;
  expect(checked(`${visit}task pour takes 1d after forms\n`).messages(CODE)).toEqual([]);
  const phase = 'task dig takes 1d\ntask drain takes 1d after dig\nphase fill after drain\n';
  expect(checked(`${phase}  task gravel takes 1d after dig\n`).messages(CODE)).toEqual([]);
});

test('a milestone may name all that it stands for', () => {
  expect(checked(`${chain}milestone ready after dig, forms\n`).messages(CODE)).toEqual([]);
});

test('what a long chain leads to may be named for itself', () => {
  expect(checked(`${chain}task steel takes 1d after forms\ntask pour takes 1d after dig, steel\n`).messages(CODE)).toEqual([]);
});
