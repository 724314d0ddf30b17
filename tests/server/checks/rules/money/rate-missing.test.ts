// Hours of trades that nobody is told to pay.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'money/rate-missing';
const plan = (trade: string): string =>
  `trade roofing crew of 2 at $55/h\ntask a takes 1d by roofing\n${trade}\ntask b takes 2d by framing after a\n`;

test('a crew without a rate is a note, once for the trade', () => {
  const found = checked(`${plan('trade framing crew of 3')}task c takes 2d by framing after b\n`);
  expect(found.told.filter((line) => line.includes(CODE))).toEqual(['note money/rate-missing framing']);
});

test('those without a crew are paid by fees', () => {
  expect(checked(plan('trade framing')).messages(CODE)).toEqual([]);
});

test('a given cost pays, too', () => {
  expect(checked(plan('trade framing crew of 3').replace('takes 2d by', 'takes 2d costs $900 by')).messages(CODE)).toEqual([]);
});
