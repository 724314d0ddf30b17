// Concrete that is called off before the visit its pour waits for. The order of the two is a county's sheet on building
// inspections: concrete is ordered after the inspection has passed.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/before-inspection';
const plan = (delivery: string, more = ''): string => `
plan p
  start 2027-05-03
trade concrete crew of 3
trade city
supplier plant
task forms does form-footings takes 2d by concrete
inspection footing-check of forms by city
delivery mixer brings ${delivery}
task pour does pour-footings takes 1d by concrete after mixer
task walls does pour-stem-walls takes 1d by concrete after pour
${more}`;

test('a call-off that waits for the forms alone', () => {
  const found = checked(plan('concrete from plant, lead 1 day, after forms'));
  expect(found.messages(CODE)).toEqual([
    '"mixer" brings concrete for "pour", which waits for "footing-check", but the delivery does not: when the inspector comes a day late or fails the work, a full mixer stands there and is paid for. Let "mixer" wait for "footing-check".',
  ]);
  expect(found.marks(CODE)).toEqual(['line 8: mixer']);
});

test('behind the visit, by whatever chain, it is right', () => {
  expect(checked(plan('concrete from plant, after footing-check')).messages(CODE)).toEqual([]);
  expect(
    checked(plan('concrete from plant, after ready', 'task ready takes 1h by concrete after footing-check')).messages(CODE),
  ).toEqual([]);
  expect(checked(plan('concrete from plant\n  arrives    0 days before pour')).messages(CODE)).toEqual([]);
});

test('what keeps may lie on site before anybody looks', () => {
  expect(checked(plan('rebar from plant, after forms')).messages(CODE)).toEqual([]);
});

test('a visit that has passed holds nothing any more', () => {
  const diary = 'progress 2027-05-07\n  forms finished 2027-05-04\n  footing-check passed 2027-05-06\n';
  expect(checked(plan('concrete from plant, after forms', diary)).messages(CODE)).toEqual([]);
});
