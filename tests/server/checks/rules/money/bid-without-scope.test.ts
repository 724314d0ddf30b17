// Bids that leave materials open.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'money/bid-without-scope';
const firms = 'trade plumbing crew of 2 at $78/h\nfirm ruiz does plumbing\nfirm other does plumbing\n';

test('it must say whether materials are in it', () => {
  const plan = checked(`${firms}bid a by ruiz for plumbing $17,900\n`);
  expect(plan.told).toContain('note money/bid-without-scope a');
  expect(checked(`${firms}bid a by ruiz for plumbing $17,900, labour only\n`).messages(CODE)).toEqual([]);
});

test('a bid kept on record after another was accepted is not asked', () => {
  const taken = 'bid b by other for plumbing $16,000, accepted 2027-03-02, with materials\n';
  expect(checked(`${firms}bid a by ruiz for plumbing $17,900\n${taken}`).messages(CODE)).toEqual([]);
});
