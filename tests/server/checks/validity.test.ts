// What stays valid only for a time: a permit that visits renew, marks on the ground that are made again. Dates of the permit are
// those of the City of Monte Sereno and the others named in the case beside: issued 10 January 2025, and 180 days are over
// with 9 July.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'sequence/permit-lapsed';
const permit = (steps: string): string => `plan p
  start 2025-01-10
trade us crew of 2
trade city
milestone permit-issued on 2025-01-10
${steps}`;
const told = (steps: string): readonly string[] => checked(permit(steps)).messages(CODE);
const dig = 'task dig does dig-foundation takes 1d by us after permit-issued';
const visit = (name: string, of: string, day: string): string =>
  `inspection ${name} of ${of} by city takes 1h not before ${day}\n`;

describe('a permit', () => {
  test('is good for 180 days, to the last of them', () => {
    expect(told(`${dig} not before 2025-07-09\n`)).toEqual([]);
    expect(told(`${dig} not before 2025-07-10\n`)).toEqual([
      '"dig" begins on 10 Jul, but "permit-issued" (10 Jan) is good for 180 days, to 9 Jul, and nothing renews it before. A lapsed permit is none, so the work is stopped and the permit is paid for again. Ask in writing for an extension before that day, or have a visit passed in between; towns give from six months to three years, so write how long yours is: good for 1 year, say.',
    ]);
  });

  test('each visit that is passed gives it 180 days more', () => {
    const first = `${dig} not before 2025-07-01\n${visit('soil-check', 'dig', '2025-07-09')}`;
    expect(
      told(`${first}task forms does form-footings takes 1d by us\n${visit('footing-check', 'forms', '2026-01-05')}`),
    ).toEqual([]);
    expect(
      told(`${first}task forms does form-footings takes 1d by us\n${visit('footing-check', 'forms', '2026-01-06')}`)[0],
    ).toContain(
      '"footing-check" begins on 6 Jan, but "permit-issued" is good for 180 days at a time, and "soil-check" on 9 Jul 2025 is the last to renew it: it lapses after 5 Jan.',
    );
  });

  test('the plan says how long its own is good for', () => {
    expect(told(`${dig} not before 2025-12-01\n`).length).toBe(1);
    expect(
      checked(permit(`${dig} not before 2025-12-01\n`).replace('on 2025-01-10', 'on 2025-01-10, good for 1 year')).messages(CODE),
    ).toEqual([]);
  });

  test('it is told once, and not of what is begun', () => {
    const late = `${dig} not before 2025-08-01\ntask pour does pour-footings takes 1d by us after dig\n`;
    expect(told(late)).toHaveLength(1);
    expect(told(`${late}progress 2025-08-01\n  dig finished 2025-08-01\n  pour started 2025-08-01\n`)).toEqual([]);
  });

  test('what begins before it is issued is for the row of that order', () => {
    const early = checked(permit('task dig does dig-foundation takes 1d by us\n').replace('on 2025-01-10', 'on 2025-03-10'));
    expect(early.messages(CODE)).toEqual([]);
    expect(early.told).toContain('error sequence/work-before-permit dig');
  });
});

test('marks are asked for again where the plan says how long they last', () => {
  const steps = (good: string, again = ''): string => `plan p
  start 2027-04-05
trade us crew of 2
task marks does call-before-dig takes 1d by us${good}
task dig does dig-foundation takes 1d by us after marks + 3d
${again}task dig-lines does trench-and-lay takes 1d by us not before 2027-05-10 also after marks + 3d
`;
  const said = (text: string): readonly string[] => checked(text).messages('sequence/marks-run-out');
  expect(said(steps(''))).toEqual([]);
  expect(said(steps(', good for 14 days'))[0]).toContain(
    'Gas and electric strike: marks fade, and lines are laid after they were made. "dig-lines" begins on 10 May, but "marks" (5 Apr) is good for 14 days, to 19 Apr, and nothing renews it before.',
  );
  expect(said(steps(', good for 14 days', 'task again does call-before-dig takes 1d by us not before 2027-05-03\n'))).toEqual([]);
});

test('a name that leads nowhere is told; inspections is no name', () => {
  const rule = (by: string): readonly string[] =>
    checked(`rule ours "Ours"\n  first permit-issued\n  then dig-foundation\n  renewed by ${by}\n`).told;
  expect(rule('inspections')).toEqual([]);
  expect(rule('nobodys-visit')).toEqual(['error names/unknown ours']);
});
