// Steps that nothing waits for.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'schedule/loose-end';
const steps = (more: string): string =>
  `task floor takes 2d\ntask stove takes 1d after floor\ntask clean takes 1d after floor\n${more}`;

test('the last milestone is the end of the plan; all else is loose', () => {
  const plan = checked(steps('milestone done after clean\n'));
  expect(plan.told.filter((line) => line.includes(CODE))).toEqual(['note schedule/loose-end stove']);
});

test('without a milestone it is the step that ends last', () => {
  expect(checked('task floor takes 2d\ntask stove takes 1d after floor\ntask clean takes 3d after floor\n').marks(CODE)).toEqual([
    'line 2: stove',
  ]);
});

test('"to the end" says that it is meant', () => {
  expect(
    checked(steps('milestone done after clean\n').replace('stove takes 1d', 'stove takes 1d, to the end')).messages(CODE),
  ).toEqual([]);
});

test('a visit that holds nothing lets work go on over it', () => {
  expect(checked(`${steps('milestone done after clean, stove\n')}inspection look of floor\n`).messages(CODE)[0]).toMatch(
    /^Nothing waits for "look", so if it comes late work goes on over it\./,
  );
});

test('what is done can come late no more, and a list of tasks without links is a list', () => {
  expect(
    checked(`${steps('milestone done after clean\n')}progress 2027-04-09\n  stove finished 2027-04-08\n`).messages(CODE),
  ).toEqual([]);
  expect(checked('task floor takes 2d\ntask stove takes 1d\n').messages(CODE)).toEqual([]);
});

test('many are told as one', () => {
  const loose = Array.from({ length: 6 }, (_, at) => `task t${at} takes 1d after floor\n`).join('');
  const plan = checked(`task floor takes 2d\n${loose}milestone done after t0\n`);
  expect(plan.messages(CODE)).toHaveLength(1);
  expect(plan.messages(CODE)[0]).toMatch(/^Nothing waits for "t1", .* The same of "t2", "t3", "t4" and "t5"\.$/);
});

test('only its start is waited for: a longer step would show nowhere', () => {
  const plan = (more: string): string =>
    `task drains takes 3d\ntask ducts takes 1d with drains + 1d\nmilestone end after ducts${more}\n`;
  expect(checked(plan('')).messages('schedule/loose-end')).toEqual([
    '"ducts" waits for the start of "drains" alone: if "drains" takes longer, no date shows it. Let a later step wait for its end, or write "to the end".',
  ]);
  expect(checked(plan(', drains')).messages('schedule/loose-end')).toEqual([]);
});

test('only its end is tied: nothing says what it begins after', () => {
  const plan = (more: string): string =>
    `task start takes 1d\ntask tape takes 3d after start\ntask paint takes 1d done with tape + 1d${more}\nmilestone end after paint\n`;
  expect(checked(plan('')).messages('schedule/loose-end')).toEqual([
    '"paint" is only tied to the end of its own work, by "tape": nothing says what must be done before it begins. Say it with "after".',
  ]);
  expect(checked(plan(', after start')).messages('schedule/loose-end')).toEqual([]);
});

test('what stands from one step to another needs nobody to wait for it', () => {
  const plan =
    'task lap takes 2d\ntask paint takes 1d after lap\ntask scaffold stands from lap to paint\nmilestone end after paint\n';
  expect(checked(plan).messages('schedule/loose-end')).toEqual([]);
});

test('what stands with a step does not wait for it', () => {
  const plan = 'task lap takes 2d\ntask paint takes 1d\ntask scaffold stands from lap to paint\nmilestone end after paint\n';
  expect(checked(plan).messages('schedule/loose-end')).toEqual([
    'Nothing waits for "lap", so if it comes late no date shows it. Let the step that needs it wait for it, or write "to the end".',
  ]);
});
