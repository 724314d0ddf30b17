// infoforbuilding.com, "Installing attic and underfloor insulation": about R-3 an inch, and so 12 in for R-36, "of either fibre".
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const fills = (glass: string, paper: string) =>
  checked(`material glass-fill "Loose glass fibre" laid loose
  insulates ${glass} per inch
material paper-fill "Loose cellulose" laid loose
  insulates ${paper} per inch
`);

test('one value for two fibres is told at the second', () => {
  const { messages, marks } = fills('R-3', 'R-3');
  expect(messages('goods/one-r').join()).toContain('Loose cellulose insulates R-3 an inch, just as Loose glass fibre does:');
  expect(marks('goods/one-r')).toEqual(['line 4: R-3 per inch']);
});

test('values of their own are right, and so are the rows of the library', () => {
  expect(fills('R-2.5', 'R-3.6').messages('goods/one-r')).toEqual([]);
  expect(checked('material blown-cellulose\n  insulates R-3 per inch\n').messages('goods/one-r')).toEqual([]);
});
