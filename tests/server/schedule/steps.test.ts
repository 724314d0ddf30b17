// Which steps there are and where they stand: after an edit as after a fresh look.
import { expect, test } from 'vitest';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

const library = builtIn();

function starts(text: string, memory = emptyMemory()): readonly (readonly [string, number])[] {
  const { timeline } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library }, memory);
  return timeline.steps.list.map((step, at) => [step.name, timeline.crews.start[at]!]);
}

const plan = `plan p start 2027-04-05
phase one in order
  task a takes 2d
  inspection b
  task c takes 2d
room bath
`;

test.each([
  ['a step moved out of its phase', plan.replace('  task c', 'task c')],
  ['steps that change places', plan.replace('  task a takes 2d\n  inspection b', '  inspection b\n  task a takes 2d')],
  ['a step renamed', plan.replace('task a', 'task d')],
  ['a step that goes', plan.replace('  task a takes 2d\n', '')],
  ['goods that take the name of a step', plan.replace('phase one', 'goods c\nphase one')],
  ['a room renamed', plan.replace('room bath', 'room den')],
])('%s', (_, edited) => {
  const memory = emptyMemory();
  const before = starts(plan, memory);
  expect(starts(edited, memory)).toEqual(starts(edited));
  expect(starts(plan, memory)).toEqual(before);
});

test('a lead in working weeks is counted in working days, one in weeks by the calendar', () => {
  const arrivals = starts(
    'plan p\n  start 2027-04-05\ndelivery a lead 2w\ndelivery b lead 2 weeks\ndelivery c lead 1d, ordered 2027-04-09\n',
  );
  const moment = (day: string, hour: number): number => Date.parse(`${day}T00:00Z`) / 60_000 + hour * 60;
  expect(arrivals).toEqual([
    ['a', moment('2027-04-16', 16)],
    ['b', moment('2027-04-19', 0)],
    ['c', moment('2027-04-09', 16)],
  ]);
});
