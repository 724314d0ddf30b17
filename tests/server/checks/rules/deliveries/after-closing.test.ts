// hometips.gregvan.com, "Concrete contractor mistake": trucks from three in the afternoon, and the plant had closed when the last of
// them ran out two yards short.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const pour = (open: string, trucks: string) =>
  checked(`supplier plant${open}
trade concrete crew of 3
delivery mixers brings slab-concrete from plant
${trucks}task pour takes 1d by concrete after mixers
`).messages('deliveries/after-closing');

test('the last truck at closing time or after it', () => {
  expect(pour(' open 6:00-16:30', '  trucks 15:00-17:00\n')).toEqual([
    'The last truck of "mixers" comes at 17:00, and "plant" closes at 16:30: if it runs short then, nobody sends the rest, and a pour stops at a cold joint or goes on from bags by night. Begin earlier, or agree that somebody stays until the last truck is placed.',
  ]);
  expect(pour(' open 6:00-16:30', '  trucks 15:00-16:30\n').length).toBe(1);
});

test('nothing where there is time, or where nobody tells the hours', () => {
  expect(pour(' open 6:00-16:30', '  trucks 7:00-9:00\n')).toEqual([]);
  expect(pour('', '  trucks 15:00-17:00\n')).toEqual([]);
  expect(pour(' open 6:00-16:30', '')).toEqual([]);
});
