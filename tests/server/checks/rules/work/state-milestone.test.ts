// Milestones that promise a state of the house.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/state-milestone';
const plan = (milestone: string): string => `
trade framing crew of 3 at $52/h
task felt does lay-underlayment takes 1d by framing
task windows does set-windows takes 2d by framing after felt
task doors does set-outside-doors takes 1d by framing after felt
${milestone}
`;

test('what it does not wait for is named, and can be added', () => {
  const lacking = checked(plan('milestone dry after windows'));
  expect(lacking.told).toContain('warning work/state-milestone dry');
  expect(lacking.messages(CODE)[0]).toMatch(
    /^"dry" means: Dry: roof covered, windows and outside doors in\. But it does not wait for "doors"/,
  );
  const fix = lacking.plan.findings.find(({ code }) => code === CODE)?.fixes?.[0];
  expect(fix).toMatchObject({ kind: 'insert-after', text: ', doors' });
});

test('waiting through others counts', () => {
  expect(checked(plan('task look takes 1d by framing after windows, doors\nmilestone dry after look')).messages(CODE)).toEqual(
    [],
  );
});

test('what it leaves out on purpose is not asked for', () => {
  expect(checked(plan('milestone dry after windows, except doors')).messages(CODE)).toEqual([]);
  expect(checked(plan('milestone dry after windows, except set-outside-doors')).messages(CODE)).toEqual([]);
  expect(checked(plan('milestone dry after windows, without doors')).messages(CODE)).toEqual([]);
});

test('a milestone of another name promises nothing', () => {
  expect(checked(plan('milestone closed-for-now after windows')).messages(CODE)).toEqual([]);
});
