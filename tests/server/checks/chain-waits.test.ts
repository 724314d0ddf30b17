// How long a chain keeps two steps apart: waits alone as the plain search along links finds them; with work, never more than
// what really passes between the two.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainWaits, leastWork } from '#checks/chain-waits';
import { orderOf, reaches, waitOnChain } from '#checks/order';
import { calendar } from '#schedule/calendar';
import { criticalPath } from '#schedule/critical-path';
import { buildNetwork, type Link, type LinkKind } from '#schedule/network';
import type { WaitClock } from '#schedule/waits';
import { checked } from '#tests/support/checked';

const plans = fc.integer({ min: 2, max: 9 }).chain((count) =>
  fc.record({
    count: fc.constant(count),
    links: fc.array(
      fc
        .record({
          ends: fc.tuple(fc.integer({ min: 0, max: count - 1 }), fc.integer({ min: 0, max: count - 1 })),
          kind: fc.constantFrom<LinkKind>(0, 0, 0, 1, 2),
          lag: fc.constantFrom(0, 0, 480, 1440, 2880),
          clock: fc.constantFrom<WaitClock>(0, 1, 2),
        })
        .filter(({ ends: [a, b] }) => a !== b)
        .map(({ ends: [a, b], kind, lag, clock }): Link => ({ from: Math.min(a, b), to: Math.max(a, b), kind, lag, clock })),
      { maxLength: 14 },
    ),
    days: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: count, maxLength: count }),
  }),
);

describe('any chain', () => {
  test('its waits are those of the search along links', () => {
    fc.assert(
      fc.property(plans, ({ count, links }) => {
        const network = buildNetwork(count, links);
        const order = orderOf(network);
        for (let a = 0; a < count; a++)
          for (let b = 0; b < count; b++) {
            if (a === b) continue;
            const { workingWait, calendarWait } = chainWaits(order, a, b, undefined, 1440);
            expect({ working: workingWait, calendar: calendarWait }).toEqual(waitOnChain(network, order, a, b));
          }
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('what surely passes does pass', () => {
    const week = { shifts: [0, 1, 2, 3, 4, 5, 6].map((day) => (day < 5 ? [[480, 960] as const] : [])) };
    const start = 20_913;
    const working = calendar(week, () => false, start, start + 400);
    fc.assert(
      fc.property(plans, ({ count, links, days }) => {
        const network = buildNetwork(count, links);
        const order = orderOf(network);
        const durations = Int32Array.from(days, (each) => each * 240);
        const { start: begins, finish } = criticalPath(network, {
          durations,
          calendarOf: new Int32Array(count),
          calendars: [working],
          planCalendar: 0,
          start: start * 1440,
          notBefore: new Float64Array(count).fill(Number.NEGATIVE_INFINITY),
        });
        for (let a = 0; a < count; a++)
          for (let b = 0; b < count; b++) {
            if (!reaches(order, a, b)) continue;
            const { plain, days: nights } = chainWaits(order, a, b, durations, 480);
            expect(begins[b]! - finish[a]!).toBeGreaterThanOrEqual(Math.max(plain, nights - (1440 - 480)));
          }
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});

test('four days of work of eight hours span three nights', () => {
  const network = buildNetwork(3, [
    { from: 0, to: 1, kind: 0, lag: 0, clock: 0 },
    { from: 1, to: 2, kind: 0, lag: 0, clock: 0 },
  ]);
  const { working, plain, days } = chainWaits(orderOf(network), 0, 2, Int32Array.from([480, 4 * 480, 480]), 480);
  expect({ working, plain, days: days - (1440 - 480) }).toEqual({ working: 1920, plain: 1920, days: 3 * 1440 + 480 });
});

describe('what a wait by the clock surely holds of working time', () => {
  // Monday to Friday, eight hours; nobody comes on Monday 31 May 2027.
  const week = { shifts: [0, 1, 2, 3, 4, 5, 6].map((day) => (day < 5 ? [[420, 900] as const] : [])) };
  const [first, holiday] = [20_941, 20_969];
  const plain = calendar(week, () => false, first, first + 100);
  const kept = calendar(week, (day) => day === holiday, first, first + 100);

  test.each([
    // From a Friday's closing on: two days are a weekend; three have its Monday; a week has five days.
    [2, 0, 0],
    [3, 1, 0],
    [4, 2, 1],
    [7, 5, 4],
    [20, 14, 13],
  ])('%d calendar days: %d working days, %d about a holiday', (days, work, about) => {
    expect(leastWork(plain, days * 1440)).toBe(work * 480);
    expect(leastWork(kept, days * 1440)).toBe(about * 480);
  });

  test('it counts along a chain with the work between', () => {
    const network = buildNetwork(3, [
      { from: 0, to: 1, kind: 0, lag: 7 * 1440, clock: 1 },
      { from: 1, to: 2, kind: 0, lag: 480, clock: 0 },
    ]);
    const holds = (lag: number): number => leastWork(kept, lag);
    expect(chainWaits(orderOf(network), 0, 2, Int32Array.from([480, 480, 480]), 480, holds).working).toBe((4 + 1 + 1) * 480);
  });
});

describe('marks of lines in the ground: two working days', () => {
  const plan = (wait: string): string => `plan p
  start 2027-05-03
  workweek mon-fri 7:00-15:30, lunch 30 min
  holidays US
trade ex crew of 1
milestone permit-issued on 2027-05-03
task marks does call-before-dig takes 1d by ex, good for 30 days
task dig does dig-foundation takes 2d by ex after marks + ${wait}, permit-issued
milestone end to the end after dig
`;
  const told = (wait: string): number => checked(plan(wait)).messages('sequence/dig-before-marks').length;
  test.each(['2d', '20 days', '1 week', '168h'])('%s always hold them', (wait) => expect(told(wait)).toBe(0));
  // Over a weekend they hold one.
  test.each(['1d', '3 days', '72h'])('%s do not in every week', (wait) => expect(told(wait)).toBe(1));
});
