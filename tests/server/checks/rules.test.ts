// Every check, with the plans of its own page: the wrong one is found, the right one is not; and the list is whole.
import { readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checks } from '#checks/rules';
import { checked } from '#tests/support/checked';

const folder = join(import.meta.dirname, '../../../server/checks/rules');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => file.replace(/\.ts$/, '').split(sep).join('/'));

test('each check is a file below rules/, by its code, and each file is a check', () => {
  expect(checks.map(({ code }) => code).sort()).toEqual(files.sort());
});

test('each file has a test of its name', () => {
  const own = join(import.meta.dirname, 'rules');
  const tests = readdirSync(own, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.test.ts'))
    .map((file) =>
      file
        .replace(/\.test\.ts$/, '')
        .split(sep)
        .join('/'),
    );
  expect(tests.sort()).toEqual(files.sort());
});

describe.each(checks.map((check) => [check.code, check] as const))('%s', (code, { about, wrong, right }) => {
  test('says what it is for', () => expect(about).toMatch(/^[A-Z].*\.$/s));

  test('speaks up about the wrong plan', () => expect(checked(wrong).messages(code)).not.toEqual([]));

  test('is silent about the right one', () => expect(checked(right).messages(code)).toEqual([]));

  test('says it in whole sentences', () => {
    for (const message of checked(wrong).messages(code)) {
      expect(message).toMatch(/[.?]$/);
      expect(message).not.toMatch(/undefined|NaN|\[object|!/);
    }
  });
});
