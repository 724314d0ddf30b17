// Holidays of a country or region whose days nobody wrote down.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'dates/no-holidays';
const plan = (code: string, more = ''): string => `plan p\n  holidays ${code}\n${more}`;

test('a country that no row knows', () => {
  const unknown = checked(plan('UK'));
  expect(unknown.messages(CODE)).toEqual([
    'No holidays of "UK" are known, so all of them are worked. Write the country, and the region after a hyphen, by their codes (US, CA-ON), or write the days under "closed".',
  ]);
  expect(unknown.marks(CODE)).toEqual(['line 2: UK']);
});

test('a region that no row knows, of a country whose regions have days of their own', () => {
  expect(checked(plan('CA-XX')).messages(CODE)).toEqual([
    'No holidays of "CA-XX" itself are known, only those of "CA" as a whole. Check the region’s code, or write its own days under "closed".',
  ]);
  for (const code of ['CA', 'ca-on', 'GB-SCT', 'DE-BY', 'SE', 'US', 'US-MA'])
    expect(checked(plan(code)).messages(CODE)).toEqual([]);
});

test('a plan may write its own', () => {
  expect(checked(plan('XX', 'holiday own-day in XX\n  on may 2\n')).messages(CODE)).toEqual([]);
});
