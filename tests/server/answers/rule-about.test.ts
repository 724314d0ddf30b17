// What is said of codes without a check or row of their own is shown, too: the wrong plan is found, the right one is not.
import { describe, expect, test } from 'vitest';
import { ABOUT } from '#answers/rule-about';
import { ABOUT_EXAMPLES } from '#answers/rule-about-examples';
import { checked } from '#tests/support/checked';

/** Nothing that can be seen in a few lines of a plan, and why. */
const IN_WORDS: Readonly<Record<string, string>> = {
  'syntax/hidden-character': 'it cannot be seen',
  'syntax/line-too-long': 'more than 10,000 characters',
  'syntax/too-deep': 'more than 64 parentheses',
  'syntax/nested-too-deep': 'more than 128 blanks',
  'work/two-houses': 'two plans at once',
  'screed/more': 'more than 200 findings, in an editor only',
};

test('every code has an example, or is told in words for a reason', () => {
  expect(Object.keys(ABOUT).filter((code) => ABOUT_EXAMPLES[code] === undefined && IN_WORDS[code] === undefined)).toEqual([]);
  expect(Object.keys(ABOUT_EXAMPLES).filter((code) => ABOUT[code] === undefined)).toEqual([]);
});

describe.each(Object.entries(ABOUT_EXAMPLES))('%s', (code, example) => {
  const { wrong, right } = example!;
  test('is found in the wrong plan', () => expect(checked({ 'plan.screed': wrong }).messages(code), wrong).not.toEqual([]));
  test('is not found in the right one, and nothing else is an error there', () => {
    expect(
      checked({ 'plan.screed': right }).told.filter((line) => line.startsWith('error ') || line.includes(` ${code} `)),
      right,
    ).toEqual([]);
  });
});
