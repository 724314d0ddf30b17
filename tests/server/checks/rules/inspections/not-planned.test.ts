// Visits that the work calls for. Published: Bluefield, West Virginia, Required Inspections (International Residential Code
// R109.1: footing, rough trades, frame, final); which of them a town makes is its own list's.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'inspections/not-planned';
const footing = (more = ''): ReturnType<typeof checked> =>
  checked(`
    plan p
      start 2027-05-03
    trade concrete crew of 2 at $50/h
    trade city
    task footing-forms does form-footings takes 1d by concrete
    task footings does pour-footings takes 1d by concrete after footing-forms
    ${more}
  `);
const told = (plan: ReturnType<typeof checked>): readonly string[] => plan.told.filter((line) => line.includes(CODE));

test('a note while a plan has no visits at all', () => {
  const plan = footing();
  expect(told(plan)).toEqual([`note ${CODE} footings`]);
  expect(plan.messages(CODE)).toEqual([
    'No visit is planned yet. The work here usually asks for "footing-check", and what is covered before it is passed comes open again. The town\'s own list decides: add each visit that it makes, and answer one that it does not with "not held" and why.',
  ]);
});

test('a warning once the plan has others', () => {
  expect(told(footing('inspection building-final by city, after footings'))).toEqual([`warning ${CODE} footings`]);
});

test('silent where the visit is planned, and where another visit looks at the same', () => {
  expect(told(footing('inspection footing-check by city'))).toEqual([]);
  expect(told(footing('inspection hole-visit of footing-forms before footings by city'))).toEqual([]);
});

test('one finding for all that are lacking; local visits alone are none', () => {
  const plan = checked(`
    trade us crew of 2 at $50/h
    task a does rough-drains, rough-wiring, rough-ducts takes 1d by us
    task b does hang-board takes 1d by us after a
    task c does tape-board takes 1d by us after b
  `);
  expect(told(plan)).toEqual([`note ${CODE} b`]);
  expect(plan.messages(CODE)[0]).toContain('"mechanical-rough" and "wiring-rough"');
  expect(plan.messages(CODE)[0]).toContain('Some towns also hold "board-check".');
  const local = checked(`
    trade us crew of 2 at $50/h
    task b does hang-board takes 1d by us
    task c does tape-board takes 1d by us after b
  `);
  expect(told(local)).toEqual([]);
});

test('rooms alone, or work without what covers it, stay quiet', () => {
  expect(told(checked("level main\nroom bath on main\n  size 5' x 8'\n"))).toEqual([]);
  expect(told(checked('trade us crew of 2 at $50/h\ntask a does form-footings takes 1d by us\n'))).toEqual([]);
});

test('a flood visit is asked for only where the site lies in a flood zone', () => {
  const plan = (site: string): ReturnType<typeof checked> =>
    checked(`
      site lot
        ${site}
      trade us crew of 2 at $50/h
      trade city
      task a does lay-subfloor takes 1d by us
      task b does frame-walls takes 1d by us after a
      inspection building-final by city, after b
    `);
  expect(told(plan("size 80' x 100'"))).toEqual([]);
  expect(plan('flood AE').messages(CODE)[0]).toContain('"elevation-check"');
});

describe('a town’s own list', () => {
  const town = `
inspection footing-check not held "Cedar County looks at walls alone"
inspection pit-visit "The pit, with its drain" of footing-forms before footings by city, call 3 days ahead
rule frame-check-before-roughs "Rough trades are passed before the frame"
  first frame-check
  then plumbing-rough, mechanical-rough, wiring-rough
  because "Cedar County sees the bare frame first."
`;
  const house = (more: string): ReturnType<typeof checked> =>
    checked({
      'plan.screed': `plan p
  start 2027-05-03
include "cedar-county.screed"
trade concrete crew of 2 at $50/h
trade city
task footing-forms does form-footings takes 1d by concrete
task footings does pour-footings takes 1d by concrete
${more}`,
      'cedar-county.screed': town,
    });

  test('drops a visit with a reason, adds its own, changes notice', () => {
    const plan = house('');
    expect(plan.loud).toEqual([]);
    const { steps, crews } = plan.plan.timeline;
    expect(steps.list.map(({ name }) => name)).toEqual(['footing-forms', 'footings', 'pit-visit']);
    // Three days of notice after Monday evening: the visit is on Thursday, the pour on Friday.
    const [visit, pour] = ['pit-visit', 'footings'].map((name) => Math.floor(crews.start[steps.byName.get(name)!]! / 1440));
    expect(pour! - visit!).toBe(1);
  });

  test('a dropped visit that a step waits for is told', () => {
    const plan = house('task pump takes 1d by concrete after footing-check, to the end\n');
    expect(plan.messages('inspections/nothing-to-see')).toEqual([
      '"pump" waits for "footing-check", which is not held here, so it waits for nothing. Let it wait for the work itself.',
    ]);
  });

  test('turns the order of frame and rough trades round', () => {
    const order = (first: string, then: string): readonly string[] =>
      house(`task wires does rough-wiring takes 2d by concrete
inspection ${first} by city, after wires
inspection ${then} by city, after ${first}, to the end
`).loud.filter((line) => line.includes('frame-check-before-roughs'));
    expect(order('frame-check', 'wiring-rough')).toEqual([]);
    // What the town's row does not say stands as the library has it: an approval, and an error.
    expect(order('wiring-rough', 'frame-check')).toEqual(['error sequence/frame-check-before-roughs wiring-rough']);
  });
});
