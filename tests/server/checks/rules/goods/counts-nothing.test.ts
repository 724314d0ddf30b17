// Books chosen for what they count, and for what they do not.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const told = (choice: string, more = '') => checked(`plan p\n  counts ${choice}\n${more}`).messages('goods/counts-nothing');

test('a book that counts the thing is silent, the library’s and the plan’s own', () => {
  expect(told('studs by modern-carpentry')).toEqual([]);
  expect(told('slab-concrete by navy-concrete')).toEqual([]);
  expect(told('osb by ours', 'convention ours of osb\n  waste 12% added\n')).toEqual([]);
});

test('one that does not is told with what it counts', () => {
  expect(told('studs by navy-concrete')).toEqual([
    '"Engineering Aid: concrete" says nothing of studs, so nothing is counted otherwise. It counts concrete, slab-concrete; choose a convention that counts studs, or override the row.',
  ]);
  expect(told('osb by ours', 'convention ours\n  waste 12% added\n')[0]).toContain('Say what it counts ("of")');
});
