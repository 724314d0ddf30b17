// Cases that builders, owners and inspectors have told of in public, each as a small plan: the page is named at its top, with
// the right answer in our own words. What is marked is found, exactly there; what is not marked is not said above a note, and
// what a plan promises to be silent about is not said at all.
import { describe, expect, test } from 'vitest';
import { cameOut, expectedIn } from './support/expected-values.ts';
import { foundIn, plansIn, saysMark } from './support/plans-on-disk.ts';

const plans = plansIn('tests/cases');

/** Right answers that are not given yet: what they wait for, and what is told today. When that changes, look at it. */
const EXPECTED_LATER: { readonly [name: string]: { readonly waits: string; readonly today: readonly string[] } } = {};

/** What is said of an excerpt for what it leaves out: a case holds the steps that it is about, and no others. */
const LEFT_OUT = /^(?:inspections\/not-planned|work\/nobody-does-it|missing\/.*)$/;

const nameOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.screed$/, '');

describe.each(plans.filter(({ path }) => !(nameOf(path) in EXPECTED_LATER)).map((plan) => [nameOf(plan.path), plan] as const))(
  '%s',
  (_, plan) => {
    const { found, checked } = foundIn(plan);

    test('what is marked is found there, and nothing else above a note', () => {
      const codes = new Set(plan.marks.map(({ code }) => code));
      const heard = found.filter(({ severity, code }) => codes.has(code) || (severity !== 'note' && !LEFT_OUT.test(code)));
      expect(
        heard.map(({ says }) => says).sort(),
        checked.plan.findings.length === 0 ? 'silent' : checked.told.join('\n'),
      ).toEqual(plan.marks.map(saysMark).sort());
    });

    const expected = expectedIn(plan.text);
    if (expected.length > 0)
      test('the values are right', () => {
        expect(expected.map((each) => cameOut(each, checked.plan))).toEqual(expected);
      });

    test('silent about what it says', () => {
      expect(found.map(({ code }) => code).filter((code) => plan.silent.includes(code))).toEqual([]);
    });
  },
);

describe.each(Object.entries(EXPECTED_LATER))('later: %s', (name, { waits, today }) => {
  test(waits, () => {
    const plan = plans.find(({ path }) => nameOf(path) === name)!;
    const { checked } = foundIn(plan);
    expect(
      checked.told,
      `${name} is told something else now: if that is the right answer, mark it and take it off the list`,
    ).toEqual(today);
    const found = new Set(checked.told.map((line) => line.split(' ', 2).join(' ')));
    expect(plan.marks.filter(({ severity, code }) => !found.has(`${severity} ${code}`)).length).toBeGreaterThan(0);
  });
});

describe.each(plansIn('tests/cases/ordinary').map((plan) => [nameOf(plan.path), plan] as const))('ordinary: %s', (_, plan) => {
  const { checked } = foundIn(plan);

  test('nothing above a note, and few notes', () => {
    expect(checked.loud).toEqual([]);
    expect(checked.told.length).toBeLessThanOrEqual(9);
  });

  test('is a whole plan, and has an end', () => {
    const { steps, crews } = checked.plan.timeline;
    expect(steps.list.filter(({ kind }) => kind === 'task').length).toBeGreaterThanOrEqual(20);
    expect(crews.finish.every((finish) => finish > 0)).toBe(true);
  });
});

test('each case names its page, and says what it expects', () => {
  for (const { path, text, marks, silent } of plans) {
    expect(text.split('\n')[0], path).toMatch(/^# /);
    expect(text, path).toMatch(/Right:/);
    expect(marks.length + silent.length > 0 || /[Ss]ilent/.test(text), `${path} expects nothing`).toBe(true);
  }
});
