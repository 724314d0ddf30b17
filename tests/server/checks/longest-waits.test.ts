// The longest that may pass between two steps: too late by the dates, in time only by luck, or in time with nothing else to
// keep it back. The rule is the test's own; 2027-04-05 is a Monday, and a day runs from 8:00 to 16:00.
import { describe, expect, test } from 'vitest';
import { explain } from '#answers/explain';
import { treeLines } from '#answers/listed-reason';
import { messageOf } from '#kit/finding';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';
import { checked } from '#tests/support/checked';
import { viewText } from '../answers/plans.ts';

const own = (within: string, steps: string): string => `plan p
  start 2027-04-05
trade crew crew of 2
trade others crew of 2
work glue "Glue"
work clamp "Clamp"
rule clamp-soon "Glue sets before it is clamped"
  first glue
  then clamp
  within ${within}
  severity warning
  because "It sets."
  remedy "Clamp sooner."
${steps}`;
const CODE = 'sequence/clamp-soon';

const says = (within: string, steps: string): readonly string[] => checked(own(within, steps)).messages(CODE);
const told = (within: string, steps: string): readonly string[] =>
  checked(own(within, steps)).told.filter((line) => line.includes(CODE));

describe('too late', () => {
  test('by the day, with what keeps it back', () => {
    expect(
      says('1d', 'task a does glue takes 1d by crew\ntask b does clamp takes 1d by others after a, not before 2027-04-08\n'),
    ).toEqual([
      '"b" begins on 8 Apr, but "a" is done on 5 Apr, and no more than 1d may pass: it is not to begin sooner. It sets. Clamp sooner.',
    ]);
    expect(
      says(
        '1d',
        'task a does glue takes 1d by crew\ntask c takes 3d by others\ntask b does clamp takes 1d by crew after a, c\n',
      )[0],
    ).toContain('"b" begins on 8 Apr, but "a" is done on 5 Apr, and no more than 1d may pass: it waits for "c".');
    expect(
      says(
        '1d',
        'task a does glue takes 1d by crew\ntask c takes 3d by others\ntask b does clamp takes 1d by others after a\n',
      )[0],
    ).toContain(': its crew ("others") is not free sooner.');
    expect(says('1d', 'task a does glue takes 1d by crew\ntask b does clamp takes 1d by others after a + 2d\n')[0]).toContain(
      ': its own link asks for more.',
    );
  });

  test('by the hour, over a weekend', () => {
    // Done on Friday at 16:00, and begun on Monday at 8:00.
    expect(
      says('18h', 'task a does glue takes 1d by crew, not before 2027-04-09\ntask b does clamp takes 1d by others after a\n'),
    ).toEqual([
      '"b" begins on 12 Apr, 64h after "a" is done on 9 Apr, and no more than 18h may pass: nobody works in between. It sets. Clamp sooner.',
    ]);
    expect(
      says('18h', 'task a does glue takes 1d by crew, not before 2027-04-08\ntask b does clamp takes 1d by others after a\n'),
    ).toEqual([]);
  });

  test('a working day runs over a weekend, a day does not', () => {
    const steps = 'task a does glue takes 1d by crew, not before 2027-04-09\ntask b does clamp takes 1d by others after a\n';
    expect(told('1d', steps)).toEqual([]);
    expect(told('1 day', steps)).toEqual([`warning ${CODE} b`]);
    expect(told('3 days', steps)).toEqual([]);
  });

  test('though nothing links the two; their order is not asked for', () => {
    const far = 'task a does glue takes 1d by crew\ntask b does clamp takes 1d by others, not before 2027-04-12\n';
    expect(told('1d', far)).toEqual([`warning ${CODE} b`]);
    expect(told('1d', 'task a does glue takes 3d by crew\ntask b does clamp takes 1d by others\n')).toEqual([]);
    expect(told('1d', far.replace('2027-04-12', '2027-04-06'))).toEqual([]);
  });

  test('what is begun is not told', () => {
    const steps = 'task a does glue takes 1d by crew\ntask b does clamp takes 1d by others after a\n';
    const diary = (b: string): string => `progress 2027-04-15\n  a finished 2027-04-05\n${b}`;
    expect(told('1d', steps + diary(''))).toEqual([`warning ${CODE} b`]);
    expect(told('1d', steps + diary('  b started 2027-04-14\n'))).toEqual([]);
  });

  test('a second coat may come when it likes', () => {
    const steps = `task a does glue takes 1d by crew
task b does clamp 50% takes 1d by others after a
task c does clamp 50% takes 1d by others after b, not before 2027-04-19
`;
    expect(told('1d', steps)).toEqual([]);
    expect(
      told('1d', steps.replace('after b, not', 'after a, not').replace('after a\n', 'after a, not before 2027-04-12\n')),
    ).toEqual([`warning ${CODE} b`]);
  });
});

test('a visit that sees the first, and holds the second, gives the time from its pass', () => {
  const steps = (seen: string): string => `task a does glue takes 1d by crew
task other takes 1d by others
inspection look of ${seen} by crew, not before 2027-04-12
task b does clamp takes 1d by others after a, look
`;
  expect(told('1d', steps('a'))).toEqual([]);
  expect(says('1d', steps('other'))[0]).toContain('"a" is done on 5 Apr, and no more than 1d may pass: it waits for "look".');
  expect(says('1d', steps('a').replace('after a, look', 'after a, look + 2d'))[0]).toContain(
    '"b" begins on 15 Apr, but "a" is passed by "look" on 12 Apr, and no more than 1d may pass: its own link asks for more.',
  );
});

describe('in time', () => {
  const steps = (b: string): string => `task a does glue takes 1d by crew
delivery truck not before 2027-04-06
task b does clamp takes 1d by others after ${b}
`;

  test('by luck, where something else that it waits for is done later: a note', () => {
    const plan = checked(own('2d', steps('a, truck')));
    expect(plan.told).toContain(`note ${CODE} b`);
    expect(plan.messages(CODE)).toEqual([
      '"b" begins on 6 Apr, within 2d of "a" (done on 5 Apr), only by luck: it waits for "truck" as well, and more than 2 working days of slip there makes it too late. It sets. Let "a" wait for "truck".',
    ]);
  });

  test('held, where all that it waits for comes before the first, or between', () => {
    expect(told('2d', steps('a'))).toEqual([]);
    expect(told('2d', steps('a, truck').replace('by crew\n', 'by crew after truck\n'))).toEqual([]);
  });

  test('by much is no luck', () => {
    expect(told('4 weeks', steps('a, truck'))).toEqual([]);
  });
});

test('what explain says of each', () => {
  const orders = (within: string, steps: string): readonly string[] => {
    const [found] = explain('b', viewText(own(within, steps))).found;
    return (found?.reasons ?? []).filter(({ label }) => label === 'rules of order').flatMap((reason) => treeLines(reason));
  };
  const a = 'task a does glue takes 1d by crew\n';
  expect(orders('1d', `${a}task b does clamp takes 1d by others after a\n`)).toEqual([
    'rules of order  1 of 1 held by links',
    '  sequence/clamp-soon  in time: within 1d of "a", and nothing else keeps it back',
  ]);
  expect(orders('1d', `${a}task c takes 1h by others\ntask b does clamp takes 1d by others after a, c\n`)[1]).toBe(
    '  sequence/clamp-soon  in time by luck: within 1d of "a", but "c" may keep it back as well',
  );
  expect(orders('1d', `${a}task b does clamp takes 1d by others, not before 2027-04-06\n`)[1]).toBe(
    '  sequence/clamp-soon  in time by its date alone: no chain leads here from "a"',
  );
  expect(orders('1d', `${a}task b does clamp takes 1d by others after a + 3d\n`)[1]).toBe(
    '  sequence/clamp-soon  too late: no more than 1d may pass after "a"',
  );
});

test('after any edit what is told is what a fresh look tells', () => {
  const library = builtIn();
  const said = (text: string, memory = emptyMemory()): readonly string[] =>
    analyse({ root: 'p.screed', texts: { 'p.screed': text }, library }, memory).findings.map(
      (found) => `${found.severity} ${found.code} ${messageOf(found)} ${JSON.stringify([found.related, found.fixes])}`,
    );
  const memory = emptyMemory();
  const text = own(
    '1d',
    `task a does glue takes 1d by crew
delivery truck not before 2027-04-06
task c takes 4h by others
task b does clamp takes 1d by others after a, truck
`,
  );
  const edits: readonly (readonly [from: string, to: string])[] = [
    ['not before 2027-04-06', 'not before 2027-04-16'],
    ['after a, truck', 'after a'],
    ['task c takes 4h', 'task c takes 4d'],
    ['within 1d', 'within 1h'],
    ['a does glue takes 1d', 'a does glue takes 3d'],
    ['by others after a, truck', 'by crew after a, truck'],
    ['does glue', 'does clamp'],
    ['2027-04-05', '2027-04-09'],
    ['delivery truck', 'task first takes 1d by others\ndelivery truck'],
  ];
  for (const [from, to] of edits) {
    const edited = text.replace(from, to);
    expect(said(edited, memory), to).toEqual(said(edited));
    expect(said(text, memory), `${to}, taken back`).toEqual(said(text));
  }
});
