// Layers against the thickness drawn: dressed sizes of PS 20, American Softwood Lumber Standard, and plain arithmetic.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'walls/thickness';
const wall = (thick: string, layer = '') => `assembly inside "Inside wall" for partition
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
${layer}  layer drywall 1/2"
  thick ${thick}
`;

test('a 2x4 is 3 1/2 inches, and two boards make it 4 1/2', () => {
  expect(checked(wall('4 1/2"')).messages(CODE)).toEqual([]);
  expect(checked(wall('4 3/4"')).messages(CODE)[0]).toMatch(
    /^The layers of "Inside wall" add up to 4 1\/2", and it is drawn 4 3\/4" thick: jambs/,
  );
});

test('a sixty-fourth too much is told, and where', () => {
  expect(checked(wall('4 31/64"')).marks(CODE)).toEqual(['line 5: 4 31/64"']);
});

test('where a layer does not tell its thickness, the rest may be less but not more', () => {
  const unknown = '  layer mystery\n';
  expect(checked(wall('5"', unknown)).messages(CODE)).toEqual([]);
  expect(checked(wall('4"', unknown)).messages(CODE)[0]).toContain('with "mystery" not known');
});

test('membranes and coats add nothing; without a thickness drawn there is nothing to say', () => {
  expect(checked(wall('4 1/2"', '  layer housewrap\n')).messages(CODE)).toEqual([]);
  expect(checked(wall('4 1/2"').replace(/ {2}thick.*\n/, '')).messages(CODE)).toEqual([]);
});
