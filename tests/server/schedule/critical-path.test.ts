// Early and late dates: what each sort of link, calendar and date does; then random networks against a solver for linear
// programs (continuous time), and against a search minute by minute (working calendars).
import fc from 'fast-check';
import loadSolver from 'highs';
import { describe, expect, test } from 'vitest';
import { dayOf, isoMoment } from '#kit/dates';
import { advance, calendar, nextWork, type WorkWeek } from '#schedule/calendar';
import { criticalPath } from '#schedule/critical-path';
import { earlyDates, HELD_BY_DATE, HELD_BY_PLAN, HELD_BY_RECORD } from '#schedule/early-dates';
import { buildNetwork, type Link, type LinkKind, type Network } from '#schedule/network';
import type { Timing } from '#schedule/timing';
import type { WaitClock } from '#schedule/waits';
import { CONTINUOUS, OFFICE_WEEK, timingOf } from '#tests/support/network-table';
import { endingOnAnyDay, type RandomPlan, randomPlans } from '#tests/support/random-network';

const monday = dayOf(2027, 4, 5);
const office = calendar(OFFICE_WEEK, [], monday, monday + 60);
const plan = monday * 1440 + 480;
const day = 480;
const at = (days: number, hour: number): number => (monday + days) * 1440 + hour * 60;

function link(kind: LinkKind, lag = 0, clock: WaitClock = 0, from = 0, to = 1): Link {
  return { from, to, kind, lag, clock };
}

/** Start and finish of each step, as a person would read them. */
function datesOf(durations: readonly number[], links: readonly Link[], more: Partial<Timing> = {}): string[] {
  const path = criticalPath(buildNetwork(durations.length, links), { ...timingOf(durations, office, plan), ...more });
  return durations.map((_, task) => `${isoMoment(path.start[task]!).slice(8)} – ${isoMoment(path.finish[task]!).slice(8)}`);
}

describe('links on a week of five days, from Monday 5 April 2027', () => {
  test('a day’s work on Monday ends Monday; its successor begins Tuesday', () => {
    expect(datesOf([day, day], [link(0)])).toEqual(['05T08:00 – 05T17:00', '06T08:00 – 06T17:00']);
  });

  test('poured on Friday, two calendar days: over on Sunday night, so Monday', () => {
    expect(datesOf([5 * day, day], [link(0, 2 * 1440, 1)])[1]).toBe('12T08:00 – 12T17:00');
  });

  test('poured on Friday, two working days: Wednesday', () => {
    expect(datesOf([5 * day, day], [link(0, 2 * day, 0)])[1]).toBe('14T08:00 – 14T17:00');
  });

  test('by the clock: 24 hours after Friday 17:00 is Saturday, so Monday; after Monday noon it is Tuesday at one', () => {
    expect(datesOf([5 * day, day], [link(0, 1440, 2)])[1]).toBe('12T08:00 – 12T17:00');
    expect(datesOf([240, day], [link(0, 1440, 2)])[1]).toBe('06T13:00 – 07T12:00');
  });

  test('start with start and a working day, or a calendar day: both Tuesday', () => {
    expect(datesOf([day, day], [link(1, day)])[1]).toBe('06T08:00 – 06T17:00');
    expect(datesOf([day, day], [link(1, 1440, 1)])[1]).toBe('06T08:00 – 06T17:00');
  });

  test('finish with finish moves the work as a whole, and never before the plan begins', () => {
    expect(datesOf([3 * day, day], [link(2)])[1]).toBe('07T08:00 – 07T17:00');
    expect(datesOf([day, 3 * day], [link(2)])[1]).toBe('05T08:00 – 07T17:00');
  });

  test('a finish held into a pause keeps the moment; the work ends at the closing before', () => {
    expect(datesOf([5 * day, day, day], [link(2, 1440, 1), link(0, 0, 0, 1, 2)]).slice(1)).toEqual([
      '09T08:00 – 11T00:00',
      '12T08:00 – 12T17:00',
    ]);
  });

  test('start to finish, and leads', () => {
    expect(datesOf([day, day, 2 * day], [link(0), link(3, 0, 0, 1, 2)])[2]).toBe('05T08:00 – 06T17:00');
    expect(datesOf([5 * day, day], [link(0, -2 * day)])[1]).toBe('08T08:00 – 08T17:00');
    expect(datesOf([5 * day, day], [link(0, -2 * 1440, 1)])[1]).toBe('08T08:00 – 08T17:00');
    expect(datesOf([day, day], [link(0, -9 * day)])[1]).toBe('05T08:00 – 05T17:00');
  });

  test('a milestone keeps the moment it falls on; what follows begins when work begins', () => {
    expect(datesOf([5 * day, 0, day], [link(0), link(0, 0, 0, 1, 2)]).slice(1)).toEqual([
      '09T17:00 – 09T17:00',
      '12T08:00 – 12T17:00',
    ]);
    expect(datesOf([5 * day, 0, day], [link(0, 1440, 1), link(0, 0, 0, 1, 2)]).slice(1)).toEqual([
      '11T00:00 – 11T00:00',
      '12T08:00 – 12T17:00',
    ]);
  });
});

describe('dates, records and deadlines', () => {
  const chainOfTwo = [link(0)];

  test('not before a Saturday is Monday', () => {
    expect(datesOf([day], [], { notBefore: Float64Array.of(at(5, 0)) })).toEqual(['12T08:00 – 12T17:00']);
  });

  test('recorded dates stand, whatever the links; what follows waits for the recorded finish', () => {
    const recorded = { fixedStart: Float64Array.of(at(0, 8), Number.NaN), fixedFinish: Float64Array.of(at(3, 15), Number.NaN) };
    expect(datesOf([day, day], chainOfTwo, recorded)).toEqual(['05T08:00 – 08T15:00', '08T15:00 – 09T15:00']);
    const early = { fixedStart: Float64Array.of(Number.NaN, at(0, 9)), fixedFinish: Float64Array.of(Number.NaN, at(0, 12)) };
    expect(datesOf([day, day], chainOfTwo, early)).toEqual(['05T08:00 – 05T17:00', '05T09:00 – 05T12:00']);
  });

  test('begun work goes on with what is left from the status date', () => {
    const begun = {
      fixedStart: Float64Array.of(at(0, 8), Number.NaN),
      notBefore: Float64Array.of(at(2, 0), Number.NEGATIVE_INFINITY),
    };
    expect(datesOf([2 * day, day], chainOfTwo, begun)).toEqual(['05T08:00 – 08T17:00', '09T08:00 – 09T17:00']);
  });

  test('a recorded finish alone tells the start from the length', () => {
    expect(datesOf([2 * day], [], { fixedFinish: Float64Array.of(at(3, 12)) })).toEqual(['06T13:00 – 08T12:00']);
  });

  test('a deadline that cannot be met gives float below zero; finished work has none and is not critical', () => {
    const network = buildNetwork(3, [link(0), link(0, 0, 0, 1, 2)]);
    const timing = timingOf([day, day, day], office, plan);
    const due = criticalPath(network, { ...timing, deadline: Float64Array.of(Number.NaN, at(0, 17), Number.POSITIVE_INFINITY) });
    expect([...due.totalFloat]).toEqual([-day, -day, 0]);
    const done = criticalPath(network, { ...timing, fixedFinish: Float64Array.of(at(0, 17), Number.NaN, Number.NaN) });
    expect([...done.critical]).toEqual([0, 1, 1]);
    expect([...done.heldBy]).toEqual([HELD_BY_RECORD, 0, 1]);
  });

  test('what held each start', () => {
    const network = buildNetwork(4, [link(0), link(0, 0, 0, 0, 2)]);
    const notBefore = Float64Array.of(-Infinity, at(0, 20), at(2, 8), -Infinity);
    const { heldBy } = earlyDates(network, { ...timingOf([day, day, day, day], office, plan), notBefore });
    expect([...heldBy]).toEqual([HELD_BY_PLAN, 0, HELD_BY_DATE, HELD_BY_PLAN]);
  });

  test('late dates end at closings; a longer calendar’s float is counted in its own minutes', () => {
    const weekend: WorkWeek = { shifts: [0, 1, 2, 3, 4, 5, 6].map(() => [[480, 1080]] as const) };
    const calendars = [office, calendar(weekend, [], monday, monday + 60)];
    const timing = { ...timingOf([5 * day, 600, day], office, plan), calendars, calendarOf: Int32Array.of(0, 1, 0) };
    const path = criticalPath(buildNetwork(3, [link(0), link(0, 0, 0, 1, 2)]), timing);
    expect(isoMoment(path.finish[1]!)).toBe('2027-04-10T17:00');
    expect(isoMoment(path.lateFinish[1]!)).toBe('2027-04-11T18:00');
    expect([...path.totalFloat]).toEqual([0, 11 * 60, 0]);
  });

  test('an empty network ends where it starts', () => {
    expect(criticalPath(buildNetwork(0, []), timingOf([], office, plan)).end).toBe(plan);
  });
});

test('200 random networks of 10 to 40 steps in continuous time, against linear programs', async () => {
  const solver = await loadSolver();
  const solve = (model: string): ((column: string) => number) => {
    const solution = solver.solve(model);
    if (solution.Status !== 'Optimal') throw new Error(`the referee found the model ${solution.Status}`);
    return (column) => solution.Columns[column]!.Primal;
  };
  const shape = { fewest: 10, most: 40, longest: 20, lag: 8, clocks: [0, 2] } as const;
  fc.assert(
    fc.property(randomPlans(shape), ({ count, durations, links }) => {
      const path = criticalPath(buildNetwork(count, links), timingOf(durations, CONTINUOUS, 0));
      const constraints = links.map(({ from, to, kind, lag }) => {
        const gap = lag + (kind === 0 || kind === 2 ? durations[from]! : 0) - (kind === 2 || kind === 3 ? durations[to]! : 0);
        return ` s${to} - s${from} >= ${gap}`;
      });
      const ends = durations.map((length, task) => ` z - s${task} >= ${length}`);
      const sum = durations.map((_, task) => `s${task}`).join(' + ');
      const rows = [...constraints, ...ends].join('\n');
      const early = solve(`Minimize\n ${sum} + z\nSubject To\n${rows}\nBounds\n z >= 0\nEnd`);
      expect(early('z')).toBeCloseTo(path.end, 6);
      const late = solve(`Maximize\n ${sum}\nSubject To\n${rows}\nBounds\n z <= ${path.end}\nEnd`);
      for (let task = 0; task < count; task++) {
        expect(early(`s${task}`)).toBeCloseTo(path.start[task]!, 6);
        expect(late(`s${task}`)).toBeCloseTo(path.lateStart[task]!, 6);
        expect(path.totalFloat[task]).toBe(path.lateStart[task]! - path.start[task]!);
        expect(path.finish[task]).toBe(path.start[task]! + durations[task]!);
      }
    }),
    { seed: 7, numRuns: 200 },
  );
});

describe('random networks on random working weeks', () => {
  const shape = { fewest: 2, most: 9, longest: 700, lag: 600, clocks: [0, 1, 2] } as const;
  const shift = fc.constantFrom([480, 720], [780, 1020], [420, 930], [0, 1440], [1200, 1440], [0, 90]) as fc.Arbitrary<
    readonly [number, number]
  >;
  const week = fc
    .array(fc.array(shift, { maxLength: 2 }), { minLength: 7, maxLength: 7 })
    .map((shifts): WorkWeek => ({ shifts }));
  const cases = randomPlans(shape).chain((random) =>
    fc.record({
      random: fc.constant(random),
      weeks: fc.array(week, { minLength: 1, maxLength: 3 }),
      calendarOf: fc.array(fc.nat(2), { minLength: random.count, maxLength: random.count }),
    }),
  );
  const first = 3 * 1440;

  function setUp({ random, weeks, calendarOf }: { random: RandomPlan; weeks: WorkWeek[]; calendarOf: number[] }): {
    network: Network;
    timing: Timing;
  } {
    // A Wednesday of work in every calendar, so that all of it ends some time.
    const calendars = weeks.map(({ shifts }) =>
      calendar({ shifts: shifts.map((list, day) => (day === 2 ? [...list, [600, 900] as const] : list)) }, [], 0, 20),
    );
    const timing = timingOf(random.durations, calendars[0]!, first);
    return {
      network: buildNetwork(random.count, random.links),
      timing: { ...timing, calendars, calendarOf: Int32Array.from(calendarOf, (number) => number % calendars.length) },
    };
  }

  test('early dates are the first that keep every link, minute by minute', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing } = setUp(drawn);
        const { start, finish } = earlyDates(network, timing);
        const search = firstDates(network, timing);
        expect([...start]).toEqual(search.start);
        expect([...finish]).toEqual(search.finish);
      }),
      { numRuns: 150 },
    );
  });

  test('total float is exactly what a step can slip before the plan ends later; free float, before anything else moves', () => {
    fc.assert(
      fc.property(cases, (drawn) => {
        const { network, timing } = setUp(endingOnAnyDay(drawn));
        const path = criticalPath(network, timing);
        for (let task = 0; task < network.count; task++) {
          const own = timing.calendars[timing.calendarOf[task]!]!;
          const slipped = (minutes: number) => {
            const notBefore = timing.notBefore.slice();
            const length = timing.durations[task]!;
            const moment = advance(own, path.start[task]!, minutes);
            notBefore[task] = length === 0 ? moment : nextWork(own, moment);
            return earlyDates(network, { ...timing, notBefore });
          };
          const others = (dates: { start: Float64Array; finish: Float64Array; end: number }): number[] => [
            dates.end,
            ...[...dates.start, ...dates.finish].map((moment, index) => (index % network.count === task ? 0 : moment)),
          ];
          expect(slipped(path.totalFloat[task]!).end).toBe(path.end);
          expect(others(slipped(path.freeFloat[task]!))).toEqual(others(path));
          expect(slipped(path.totalFloat[task]! + 1).end).toBeGreaterThan(path.end);
          expect(others(slipped(path.freeFloat[task]! + 1))).not.toEqual(others(path));
          expect(path.lateStart[task]).toBeGreaterThanOrEqual(path.start[task]!);
          expect(path.lateFinish[task]).toBeGreaterThanOrEqual(path.finish[task]!);
          expect(path.freeFloat[task]).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 200 },
    );
  });

  /** For each step in order, tries every minute from the plan's start until all its links hold; counts work by walking. */
  function firstDates(network: Network, timing: Timing): { start: number[]; finish: number[] } {
    const horizon = 400 * 1440;
    const works = timing.calendars.map(({ week }) => {
      const open = new Uint8Array(7 * 1440);
      week.shifts.forEach((shifts, day) => {
        for (const [from, to] of shifts) open.fill(1, day * 1440 + from, day * 1440 + to);
      });
      // Day 0 is a Thursday.
      return (minute: number): boolean => open[(minute + 3 * 1440 + 700 * 1440) % (7 * 1440)] === 1;
    });
    const planWorks = works[timing.planCalendar]!;
    const walk = (moment: number, minutes: number): number => {
      let left = minutes;
      let now = moment;
      while (left > 0) left -= planWorks(now++) ? 1 : 0;
      while (left < 0) left += planWorks(--now) ? 1 : 0;
      return now;
    };
    const over = (moment: number, isFinish: boolean, lag: number, clock: number): number => {
      if (lag === 0) return moment;
      if (clock === 2 || (clock === 1 && !isFinish)) return moment + lag;
      if (clock === 0) return walk(moment, lag);
      return Math.ceil(moment / 1440) * 1440 + lag;
    };
    /** A day on which nobody works is nobody's last: then it is the next that is worked, to its end. */
    const worked = (own: (minute: number) => boolean, bound: number): number => {
      if (own(bound)) return bound;
      const minutes = (day: number): number[] => Array.from({ length: 1440 }, (_, at) => day * 1440 + at).filter(own);
      const due = Math.ceil(bound / 1440) - 1;
      let day = due;
      while (minutes(day).length === 0) day++;
      return day === due ? bound : minutes(day).at(-1)! + 1;
    };
    const start: number[] = [];
    const finish: number[] = [];
    for (const task of network.order) {
      const own = works[timing.calendarOf[task]!]!;
      const length = timing.durations[task]!;
      let startBound = timing.start;
      let finishBound = Number.NEGATIVE_INFINITY;
      for (let slot = network.incomingStart[task]!; slot < network.incomingStart[task + 1]!; slot++) {
        const number = network.incoming[slot]!;
        const kind = network.linkKind[number]!;
        const isFinish = kind === 0 || kind === 2;
        const from = network.linkFrom[number]!;
        const bound = over(
          isFinish ? finish[from]! : start[from]!,
          isFinish,
          network.linkLag[number]!,
          network.linkClock[number]!,
        );
        if (kind < 2) startBound = Math.max(startBound, bound);
        else if (network.linkClock[number] === 0 && length > 0) finishBound = Math.max(finishBound, worked(own, bound));
        else finishBound = Math.max(finishBound, bound);
      }
      if (length === 0) {
        start[task] = finish[task] = Math.max(startBound, finishBound);
        continue;
      }
      for (let begin = startBound; begin < horizon; begin++) {
        if (!own(begin)) continue;
        let end = begin;
        for (let left = length; left > 0; end++) left -= own(end) ? 1 : 0;
        // It may be finished any time until its calendar works again.
        let reopens = end;
        while (!own(reopens)) reopens++;
        if (finishBound > reopens) continue;
        start[task] = begin;
        finish[task] = Math.max(end, finishBound);
        break;
      }
    }
    return { start, finish };
  }
});
