// Rough openings that are no larger than the unit. The two windows are those that builders tell of: an eight-foot unit before
// a seven-foot opening (theblisteredpalm.com), and one of 36 1/4 inches before a hole of exactly 36 (riggingdoctor.com).
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'openings/rough-too-small';

test('narrower than the unit', () => {
  const found = checked('window w-8060 8\'-0" x 6\'-0", rough 7\'-0 1/2" x 6\'-0 1/2"\n');
  expect(found.messages(CODE)[0]).toMatch(
    /^The rough opening of "w-8060" is 7'-0 1\/2" wide, and the unit itself 8'-0": it does not/,
  );
  expect(checked('window w 36 1/4" x 40", rough 36" x 40 1/2"\n').messages(CODE)).toHaveLength(1);
});

test('a door, by its height', () => {
  expect(checked('door d-2868 2\'-8" x 6\'-8", rough 2\'-10" x 6\'-8"\n').messages(CODE)[0]).toMatch(
    /is 6'-8" high, and the unit itself 6'-8"/,
  );
});

test('exactly as large is too small; a hair more is not', () => {
  expect(checked('window w 36" x 40", rough 36" x 41"\n').messages(CODE)).toHaveLength(1);
  expect(checked('window w 36" x 40", rough 36 1/64" x 41"\n').messages(CODE)).toEqual([]);
});

test('without a rough size there is nothing to say', () => {
  expect(checked('window w 36" x 40"\n').messages(CODE)).toEqual([]);
});
