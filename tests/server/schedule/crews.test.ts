// Dates with crews as limits: small cases by hand, then random plans against a plain walk through time, and the promises
// that hold for any plan: no crew in two places, no link broken, the same answer twice.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayOf, isoMoment } from '#kit/dates';
import { advance, calendar, canBegin, nextWork, type WorkWeek } from '#schedule/calendar';
import { type CrewDates, type Crews, crewPass } from '#schedule/crews';
import { criticalPath } from '#schedule/critical-path';
import { earlyDates, placeEarly, unplaced } from '#schedule/early-dates';
import { crewFloats, withHandOvers } from '#schedule/hand-overs';
import { buildNetwork, type Link, type Network } from '#schedule/network';
import type { Timing } from '#schedule/timing';
import { OFFICE_WEEK, timingOf } from '#tests/support/network-table';
import { endingOnAnyDay, randomPlans } from '#tests/support/random-network';

const monday = dayOf(2027, 4, 5);
const office = calendar(OFFICE_WEEK, [], monday, monday + 60);
const plan = monday * 1440 + 480;
const day = 480;

/** What each step takes: crew and units. */
function crewsOf(capacity: readonly number[], needs: readonly (readonly (readonly [crew: number, units: number])[])[]): Crews {
  const taskStart = new Int32Array(needs.length + 1);
  needs.forEach((list, task) => {
    taskStart[task + 1] = taskStart[task]! + list.length;
  });
  return {
    count: capacity.length,
    capacity: Int32Array.from(capacity),
    taskStart,
    crew: Int32Array.from(needs.flatMap((list) => list.map(([crew]) => crew))),
    units: Int32Array.from(needs.flatMap((list) => list.map(([, units]) => units))),
  };
}

function placeOf(network: Network, timing: Timing, crews: Crews): CrewDates {
  return crewPass(network, timing, crews, criticalPath(network, timing).lateFinish);
}

const days = (dates: { start: Float64Array }): string[] => [...dates.start].map((moment) => isoMoment(moment).slice(8, 10));

describe('one crew in two places', () => {
  const fs = (from: number, to: number, lag = 0): Link => ({ from, to, kind: 0, lag, clock: 0 });

  test('the step with the earlier latest finish goes first; the other waits and knows for whom', () => {
    // 1 is followed by three more days of work, 0 by nothing.
    const network = buildNetwork(3, [fs(1, 2)]);
    const timing = timingOf([2 * day, day, 3 * day], office, plan);
    const dates = placeOf(network, timing, crewsOf([1], [[[0, 1]], [[0, 1]], []]));
    expect(days(dates)).toEqual(['06', '05', '06']);
    expect([...dates.heldByTask]).toEqual([1, -1, -1]);
    expect([[...dates.handOverFrom], [...dates.handOverTo]]).toEqual([[1], [0]]);
    expect([...dates.ready].map((moment) => isoMoment(moment).slice(8, 10))).toEqual(['05', '05', '06']);
  });

  test('two crews of a trade work side by side', () => {
    const network = buildNetwork(3, []);
    const dates = placeOf(network, timingOf([day, day, day], office, plan), crewsOf([2], [[[0, 1]], [[0, 1]], [[0, 1]]]));
    expect(days(dates)).toEqual(['05', '05', '06']);
  });

  test('float is counted with the hand-over in the network', () => {
    const network = buildNetwork(3, [fs(1, 2)]);
    const timing = timingOf([2 * day, day, 3 * day], office, plan);
    const crews = crewsOf([1], [[[0, 1]], [[0, 1]], []]);
    expect([...criticalPath(network, timing).totalFloat]).toEqual([2 * day, 0, 0]);
    const floats = crewFloats(network, timing, placeOf(network, timing, crews));
    expect([...floats.totalFloat]).toEqual([day, 0, 0]);
    expect([...floats.heldBy]).toEqual([1, -1, 0]);
  });

  test('a step asking for more than there is has the whole crew; a crew of nobody limits nothing', () => {
    const network = buildNetwork(3, []);
    const dates = placeOf(network, timingOf([day, day, day], office, plan), crewsOf([2, 0], [[[0, 5]], [[0, 1]], [[1, 1]]]));
    expect(days(dates)).toEqual(['05', '06', '05']);
  });

  test('recorded work has its crew at its recorded dates', () => {
    const network = buildNetwork(2, []);
    const fixedStart = Float64Array.of(plan + 1440, Number.NaN);
    const timing = { ...timingOf([2 * day, 2 * day], office, plan), fixedStart };
    const dates = placeOf(network, timing, crewsOf([1], [[[0, 1]], [[0, 1]]]));
    expect(days(dates)).toEqual(['06', '08']);
    const floats = crewFloats(network, timing, dates);
    expect([...floats.start]).toEqual([...dates.start]);
  });

  test('a long step finished with a short one begins before it, where its crew is idle', () => {
    // Paint (five days) may only be done with trim (one day, after four others): it begins early all the same.
    const links: Link[] = [fs(0, 1), { from: 1, to: 2, kind: 2, lag: 0, clock: 0 }];
    const network = buildNetwork(3, links);
    const timing = timingOf([9 * day, day, 5 * day], office, plan);
    const dates = placeOf(network, timing, crewsOf([1, 1, 1], [[[0, 1]], [[1, 1]], [[2, 1]]]));
    expect([...dates.start]).toEqual([...earlyDates(network, timing).start]);
    expect(days(dates)).toEqual(['05', '16', '12']);
  });
});

const shape = { fewest: 2, most: 14, longest: 700, lag: 600, clocks: [0, 1, 2] } as const;
const week: fc.Arbitrary<WorkWeek> = fc
  .array(
    fc.array(fc.constantFrom([480, 720], [780, 1020], [420, 930], [0, 1440]) as fc.Arbitrary<readonly [number, number]>, {
      maxLength: 2,
    }),
    {
      minLength: 7,
      maxLength: 7,
    },
  )
  .map((shifts) => ({ shifts: shifts.map((list, number) => (number === 2 ? [...list, [600, 900] as const] : list)) }));

const cases = randomPlans(shape).chain((random) =>
  fc.record({
    random: fc.constant(random),
    weeks: fc.array(week, { minLength: 1, maxLength: 2 }),
    calendarOf: fc.array(fc.nat(1), { minLength: random.count, maxLength: random.count }),
    capacity: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 3 }),
    needs: fc.array(
      fc.uniqueArray(fc.tuple(fc.nat(2), fc.integer({ min: 1, max: 2 })), { maxLength: 2, selector: ([crew]) => crew }),
      {
        minLength: random.count,
        maxLength: random.count,
      },
    ),
    recorded: fc.array(fc.option(fc.integer({ min: 0, max: 6 * 1440 }), { freq: 8, nil: Number.NaN }), {
      minLength: random.count,
      maxLength: random.count,
    }),
  }),
);
type Case = typeof cases extends fc.Arbitrary<infer C> ? C : never;

const first = 4 * 1440 + 480;

function setUp(drawn: Case, plainLinks = false): { network: Network; timing: Timing; crews: Crews } {
  const calendars = drawn.weeks.map((shifts) => calendar(shifts, [], 0, 20));
  const links = plainLinks
    ? drawn.random.links.map((link): Link => ({ ...link, kind: 0, lag: Math.max(0, link.lag) }))
    : drawn.random.links;
  const needs = drawn.needs.map((list) => list.filter(([crew]) => crew < drawn.capacity.length));
  return {
    network: buildNetwork(drawn.random.count, links),
    timing: {
      ...timingOf(drawn.random.durations, calendars[0]!, first),
      calendars,
      calendarOf: Int32Array.from(drawn.calendarOf, (number) => number % calendars.length),
    },
    crews: crewsOf(drawn.capacity, needs),
  };
}

/** The most units of each crew at work at once, over what there is. */
function overload(crews: Crews, dates: CrewDates): number {
  let most = 0;
  for (let crew = 0; crew < crews.count; crew++) {
    for (const moment of dates.start) {
      let used = 0;
      for (let task = 0; task < dates.start.length; task++) {
        if (dates.start[task]! > moment || dates.finish[task]! <= moment) continue;
        for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
          if (crews.crew[slot] === crew) used += Math.min(crews.units[slot]!, crews.capacity[crew]!);
        }
      }
      most = Math.max(most, used - crews.capacity[crew]!);
    }
  }
  return most;
}

describe('random plans', () => {
  test('no crew is in two places, no link is broken, and the answer is the same twice', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing, crews } = setUp(drawn);
        const dates = placeOf(network, timing, crews);
        expect(overload(crews, dates)).toBeLessThanOrEqual(0);
        // Told to begin no earlier, the forward pass finds nothing to move: every link is kept.
        const again = earlyDates(network, { ...timing, notBefore: dates.start });
        expect([...again.start]).toEqual([...dates.start]);
        expect([...again.finish]).toEqual([...dates.finish]);
        expect(placeOf(network, timing, crews)).toEqual(dates);
        expect([...dates.sequence].sort((a, b) => a - b)).toEqual([...network.order].sort((a, b) => a - b));
      }),
      { numRuns: 300 },
    );
  });

  test('with crews for everybody the dates are those of the links', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing, crews } = setUp(drawn);
        const many = { ...crews, capacity: crews.capacity.map(() => 1000) };
        const dates = placeOf(network, timing, many);
        const early = earlyDates(network, timing);
        expect([...dates.start]).toEqual([...early.start]);
        expect([...dates.finish]).toEqual([...early.finish]);
        expect(dates.handOverFrom.length).toBe(0);
      }),
      { numRuns: 200 },
    );
  });

  test('float on the network with hand-overs keeps the dates; a crew slips no further than it says', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing, crews } = setUp(endingOnAnyDay(drawn));
        const dates = placeOf(network, timing, crews);
        const floats = crewFloats(network, timing, dates);
        expect([...floats.start]).toEqual([...dates.start]);
        expect([...floats.finish]).toEqual([...dates.finish]);
        expect(floats.end).toBe(dates.end);
        const extended = withHandOvers(network, dates);
        for (let at = 0; at < dates.handOverFrom.length; at++) {
          expect(dates.finish[dates.handOverFrom[at]!]).toBeLessThanOrEqual(dates.start[dates.handOverTo[at]!]!);
        }
        for (let task = 0; task < network.count; task++) {
          expect(floats.totalFloat[task]).toBeGreaterThanOrEqual(0);
          expect(floats.totalFloat[task]).toBeLessThanOrEqual(
            criticalPath(network, { ...timing, notBefore: dates.start }).totalFloat[task]!,
          );
          // Slipped by its whole float, the plan still ends when it did, with every crew in one place.
          const own = timing.calendars[timing.calendarOf[task]!]!;
          const notBefore = dates.start.slice();
          const moment = advance(own, dates.start[task]!, floats.totalFloat[task]!);
          notBefore[task] = timing.durations[task] === 0 ? moment : nextWork(own, moment);
          const slipped = earlyDates(extended, { ...timing, notBefore });
          expect(slipped.end).toBe(dates.end);
          if (extended.incoming.length === network.incoming.length + dates.handOverFrom.length) {
            expect(overload(crews, { ...dates, ...slipped })).toBeLessThanOrEqual(0);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test('finish-to-start plans come out as in a plain walk through time', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing, crews } = setUp(drawn, true);
        const priority = criticalPath(network, timing).lateFinish;
        expect([...crewPass(network, timing, crews, priority).start]).toEqual(walk(network, timing, crews, priority));
      }),
      { numRuns: 200 },
    );
  });

  test('whoever waits for a crew is told which step it came from, and that step ended before', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing, crews } = setUp(drawn);
        const dates = placeOf(network, timing, crews);
        for (let task = 0; task < network.count; task++) {
          const giver = dates.heldByTask[task]!;
          expect(giver >= 0).toBe(dates.start[task]! > dates.ready[task]!);
          if (giver >= 0) expect(dates.finish[giver]).toBeLessThanOrEqual(dates.start[task]!);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('recorded work stands where it was, and the rest keeps out of its way', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing: plain, crews } = setUp(drawn);
        const timing = { ...plain, fixedStart: Float64Array.from(drawn.recorded, (offset) => first + offset) };
        const dates = placeOf(network, timing, crews);
        for (let task = 0; task < network.count; task++) {
          if (!Number.isNaN(drawn.recorded[task])) expect(dates.start[task]).toBe(first + drawn.recorded[task]!);
        }
        const floats = crewFloats(network, timing, dates);
        expect([...floats.start]).toEqual([...dates.start]);
        // Where the recorded work alone does not overload a crew, nothing else does.
        const isRecorded = (task: number): boolean => !Number.isNaN(drawn.recorded[task]);
        const workEnd = dates.finish.map((finish, task) => {
          if (!isRecorded(task)) return finish;
          const own = timing.calendars[timing.calendarOf[task]!]!;
          return timing.durations[task]! > 0 ? advance(own, dates.start[task]!, timing.durations[task]!) : dates.start[task]!;
        });
        const recordedOnly = workEnd.map((finish, task) => (isRecorded(task) ? finish : dates.start[task]!));
        if (overload(crews, { ...dates, finish: recordedOnly }) <= 0)
          expect(overload(crews, { ...dates, finish: workEnd })).toBeLessThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
  });

  /** Minute by minute: whatever may begin and finds its crews begins, in order of priority. */
  function walk(network: Network, timing: Timing, crews: Crews, priority: Float64Array): number[] {
    const { count } = network;
    const placed = unplaced(count);
    const known = new Uint8Array(count);
    const needs = (task: number) =>
      Array.from({ length: crews.taskStart[task + 1]! - crews.taskStart[task]! }, (_, at) => crews.taskStart[task]! + at).map(
        (slot) => [crews.crew[slot]!, Math.min(crews.units[slot]!, crews.capacity[crews.crew[slot]!]!)] as const,
      );
    const used = (crew: number, moment: number): number => {
      let sum = 0;
      for (let task = 0; task < count; task++) {
        if (known[task] === 0 || placed.start[task]! > moment || placed.finish[task]! <= moment) continue;
        for (const [own, units] of needs(task)) if (own === crew) sum += units;
      }
      return sum;
    };
    const byPriority = [...network.order].sort((a, b) => priority[a]! - priority[b]! || a - b);
    const isFree = (task: number): boolean => {
      for (let slot = network.incomingStart[task]!; slot < network.incomingStart[task + 1]!; slot++) {
        if (known[network.linkFrom[network.incoming[slot]!]!] === 0) return false;
      }
      return true;
    };
    let left = count;
    for (let now = timing.start; left > 0; now++) {
      for (let changed = true; changed; ) {
        changed = false;
        for (const task of byPriority) {
          if (known[task] === 1 || !isFree(task)) continue;
          placeEarly(network, timing, task, placed);
          const own = timing.calendars[timing.calendarOf[task]!]!;
          const length = timing.durations[task]!;
          if (length > 0 && needs(task).length > 0) {
            if (placed.start[task]! > now || !canBegin(own, now)) continue;
            if (needs(task).some(([crew, units]) => used(crew, now) + units > crews.capacity[crew]!)) continue;
            placed.start[task] = now;
            placed.finish[task] = advance(own, now, length);
          }
          known[task] = 1;
          left--;
          changed = true;
          break;
        }
      }
    }
    return [...placed.start];
  }
});
