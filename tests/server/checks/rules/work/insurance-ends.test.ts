// Firms whose papers run out before their work is done.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'work/insurance-ends';
const plan = (papers: string, more = ''): string => `plan p
  start 2027-04-05
trade plumbing crew of 2
firm ruiz "Ruiz Plumbing" does plumbing
  ${papers}
task drains takes 3d by plumbing
task water takes 3d by plumbing after drains
${more}`;

test('the first step that is done after that day', () => {
  const ends = checked(plan('insured until 2027-04-08'));
  expect(ends.messages(CODE)).toEqual([
    '"Ruiz Plumbing" is insured until Thu 8 Apr 2027, and "water" is done on Mon 12 Apr 2027: damage and injury after that day may fall on the owner. Ask for the next certificate before that day, and write its date.',
  ]);
  expect(ends.marks(CODE)).toEqual(['line 5: until 2027-04-08']);
  expect(checked(plan('insured until 2027-04-12')).messages(CODE)).toEqual([]);
});

test('a licence', () => {
  expect(checked(plan('licensed until 2027-04-07')).messages(CODE)[0]).toContain(
    'The licence of "Ruiz Plumbing" runs to Wed 7 Apr 2027',
  );
});

test('what is done needs it no more; nor does a firm that was not chosen', () => {
  const done = 'progress 2027-04-13\n  drains finished 2027-04-07\n  water finished 2027-04-12\n';
  expect(checked(plan('insured until 2027-04-08', done)).messages(CODE)).toEqual([]);
  const other = 'firm clear does plumbing\nbid b by clear for plumbing $4,000 on 2027-02-01, accepted 2027-02-15, labour only\n';
  expect(checked(plan('insured until 2027-04-08', other)).messages(CODE)).toEqual([]);
  expect(checked(plan('insured until 2027-04-08', other.replace('by clear', 'by ruiz'))).messages(CODE)).toHaveLength(1);
});
