// A better order of work for a plan: by hand on a barn, then on random small plans with crews and calendars against the
// solver HiGHS, which is asked with a model of its own.
import fc from 'fast-check';
import loadSolver from 'highs';
import { describe, expect, test } from 'vitest';
import { prove } from '#cli/prove';
import { advance, type Calendar, calendar, canBegin, type WorkWeek } from '#schedule/calendar';
import type { Crews } from '#schedule/crews';
import { criticalPath } from '#schedule/critical-path';
import { buildNetwork, type Link } from '#schedule/network';
import { type PlanParts, placeForward } from '#schedule/search/calendar-pass';
import { planBound } from '#schedule/search/plan-bound';
import { proofModel } from '#schedule/search/proof-model';
import { endWith, improve, proposalOf } from '#schedule/search/proposal';
import { search } from '#schedule/search/search';
import { searchedPlan } from '#schedule/search/searched-plan';
import type { Timing } from '#schedule/timing';
import { checked } from '#tests/support/checked';

const BARN = `plan barn "A barn and its sheds"
  start     2027-04-05
  workweek  mon-fri 8h

trade mason "Mason"
trade framer "Framer"
trade roofer "Roofer"

phase barn "Barn"
  task posts   takes 1d by mason
  task frame   takes 4d by framer after posts
  task cover   takes 6d by roofer after frame
  task sheds   takes 4d by framer
`;

describe('a barn whose framer had better wait for a day', () => {
  const timelineOf = (text: string) => checked(text).plan.timeline;
  const best = (text: string) => improve(timelineOf(text), { schedules: 100, seed: 1 });

  test('11 days instead of 14, which nothing is shorter than, by one link', () => {
    const timeline = timelineOf(BARN);
    const { before, end, lowerBound, links } = best(BARN);
    expect([before, end, lowerBound].map((moment) => Math.floor(moment / 1440) - timeline.start)).toEqual([17, 14, 14]);
    expect(links!.map(({ from, to }) => [timeline.steps.list[from]!.name, timeline.steps.list[to]!.name])).toEqual([
      ['frame', 'sheds'],
    ]);
    expect(endWith(timeline, links!)).toBe(end);
  });

  test('with that link written down, the plan has the dates, and nothing is left to find', () => {
    const { before, end, links } = best(
      BARN.replace('sheds   takes 4d by framer', 'sheds   takes 4d by framer also after frame'),
    );
    expect(end).toBe(before);
    expect(links).toEqual([]);
  });

  test('with two crews of framers there is nothing to gain', () => {
    const { before, end, lowerBound } = best(BARN.replace('trade framer "Framer"', 'trade framer "Framer"\n  crews 2'));
    expect([end, lowerBound]).toEqual([before, before]);
  });

  test('what has begun stays where it was recorded', () => {
    const text = `${BARN}\nprogress 2027-04-05\n  sheds started 2027-04-05\n`;
    const { timeline } = checked(text).plan;
    const { start } = improve(timeline, { schedules: 100, seed: 1 });
    const sheds = timeline.steps.byName.get('sheds')!;
    expect(start[sheds]).toBe(timeline.crews.start[sheds]);
  });
});

describe('three tasks of two days for two crews', () => {
  const text = `plan three
  start     2027-04-05
  workweek  mon-fri 8h
trade us "Us"
  crews 2
phase all "All"
  task one   takes 2d by us
  task two   takes 2d by us
  task three takes 2d by us
`;

  test('the bound is three days, four are needed, and the solver says so', async () => {
    const { timeline } = checked(text).plan;
    const proposal = improve(timeline, { schedules: 50, seed: 1 });
    const days = (moment: number): number => Math.floor(moment / 1440) - timeline.start + 1;
    expect([proposal.lowerBound, proposal.end].map(days)).toEqual([3, 4]);
    const [proven, proof] = await prove(timeline, proposal);
    expect([proof, days(proven.end)]).toEqual([{ kind: 'solver' }, 4]);
  });

  test('a worse schedule is made better by the solver', async () => {
    const { timeline } = checked(BARN).plan;
    const { crews } = timeline;
    const worse = {
      seed: 1,
      schedules: 1,
      end: crews.end,
      lowerBound: timeline.byLinks.end - 1,
      start: crews.start,
      finish: crews.finish,
    };
    const [proven, proof] = await prove(timeline, proposalOf(timeline, worse));
    expect([proof.kind, proven.end]).toEqual(['solver', improve(timeline, { schedules: 100, seed: 1 }).end]);
    expect(proven.links).toHaveLength(1);
  });
});

interface Random {
  readonly lengths: readonly number[];
  readonly links: readonly Link[];
  readonly crewOf: readonly number[];
  readonly calendarOf: readonly number[];
}

const HOUR = 60;
const weeks: readonly WorkWeek[] = [
  {
    shifts: [0, 1, 2, 3, 4, 5, 6].map((day) =>
      day > 4 ? [] : [[8 * HOUR, 12 * HOUR] as const, [13 * HOUR, 17 * HOUR] as const],
    ),
  },
  { shifts: [0, 1, 2, 3, 4, 5, 6].map((day) => (day % 2 === 0 ? [[6 * HOUR, 14 * HOUR] as const] : [])) },
];
const calendars: readonly Calendar[] = weeks.map((week) => calendar(week, [[3, 3]], 0, 60));

const randoms: fc.Arbitrary<Random> = fc.integer({ min: 4, max: 7 }).chain((count) =>
  fc.record({
    lengths: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: count, maxLength: count }),
    links: fc
      .array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1), fc.constantFrom(0, 0, 1), fc.constantFrom(0, 0, 0, 240)), {
        maxLength: count - 2,
      })
      .map((pairs) =>
        pairs
          .filter(([a, b]) => a !== b)
          .map(([a, b, kind, lag]): Link => ({ from: Math.min(a, b), to: Math.max(a, b), kind: kind as 0 | 1, lag, clock: 0 })),
      ),
    crewOf: fc.array(fc.nat(1), { minLength: count, maxLength: count }),
    calendarOf: fc.array(fc.nat(1), { minLength: count, maxLength: count }),
  }),
);

/** Lengths are in half shifts of four hours; each of two trades has one crew. */
function partsOf({ lengths, links, crewOf, calendarOf }: Random): PlanParts {
  const count = lengths.length;
  const crews: Crews = {
    count: 2,
    capacity: Int32Array.of(1, 1),
    taskStart: Int32Array.from({ length: count + 1 }, (_, at) => at),
    crew: Int32Array.from(crewOf),
    units: new Int32Array(count).fill(1),
  };
  const timing: Timing = {
    durations: Int32Array.from(lengths, (length) => length * 4 * HOUR),
    calendarOf: Int32Array.from(calendarOf),
    calendars,
    planCalendar: 0,
    start: 0,
    notBefore: new Float64Array(count).fill(Number.NEGATIVE_INFINITY),
  };
  return { network: buildNetwork(count, links), timing, crews };
}

test('30 small plans with crews and two calendars: nothing is sooner than what the search finds', async () => {
  const solver = await loadSolver();
  fc.assert(
    fc.property(randoms, (random) => {
      const parts = partsOf(random);
      const { end, lowerBound, starts } = search(searchedPlan(parts), { schedules: 1500, seed: 2 });
      expect(lowerBound).toBeLessThanOrEqual(end);
      expect(planBound(parts, end)).toBeLessThanOrEqual(end);
      kept(random, parts, starts);
      const sooner = referee(random, parts, end);
      if (sooner !== undefined) expect(solver.solve(sooner, { presolve: 'off' }).Status).toBe('Infeasible');
      const own = proofModel(parts, end);
      if (typeof own === 'object') expect(solver.solve(own.text).Status).toBe('Infeasible');
      // Asked for no better than it is, the model has a schedule, and that is one.
      const known = proofModel(parts, end + 1);
      if (typeof known !== 'object') throw new Error('no model');
      const { Status, Columns } = solver.solve(known.text);
      expect(Status).toBe('Optimal');
      expect(known.endOf((name) => (Columns[name] as { Primal?: number } | undefined)?.Primal ?? 0).end).toBe(end);
    }),
    { seed: 21, numRuns: 30 },
  );
});

test('the pass in any order keeps links and crews, and never ends before the bound', () => {
  fc.assert(
    fc.property(randoms, (random) => {
      const parts = partsOf(random);
      const { order, count } = parts.network;
      const placed = { start: new Float64Array(count), finish: new Float64Array(count), heldBy: new Int32Array(count) };
      const end = placeForward(parts, order, placed);
      kept(random, parts, placed.start);
      expect(planBound(parts, end)).toBeLessThanOrEqual(end);
      expect(end).toBeGreaterThanOrEqual(criticalPath(parts.network, parts.timing).end);
    }),
    { seed: 22, numRuns: 200 },
  );
});

/** Every link holds, and no crew is in two places. */
function kept({ links, crewOf }: Random, { timing, network }: PlanParts, starts: ArrayLike<number>): void {
  const ends = Array.from({ length: network.count }, (_, step) =>
    advance(calendars[timing.calendarOf[step]!]!, starts[step]!, timing.durations[step]!),
  );
  for (const { from, to, kind, lag } of links) {
    expect(starts[to]).toBeGreaterThanOrEqual(advance(calendars[0]!, kind === 0 ? ends[from]! : starts[from]!, lag));
  }
  for (let one = 0; one < network.count; one++) {
    for (let other = 0; other < one; other++) {
      if (crewOf[one] === crewOf[other]) expect(ends[one]! <= starts[other]! || ends[other]! <= starts[one]!).toBe(true);
    }
  }
}

/** Pairs of starts that cannot both be, one by one: the plainest model there is. Undefined where a step has no start at all. */
function referee({ links, crewOf }: Random, { timing, network }: PlanParts, end: number): string | undefined {
  const count = network.count;
  const starts = Array.from({ length: count }, (_, step) => {
    const own = calendars[timing.calendarOf[step]!]!;
    const all = Array.from({ length: Math.ceil(end / HOUR) }, (_, hour) => hour * HOUR);
    return all.filter((at) => canBegin(own, at) && advance(own, at, timing.durations[step]!) < end);
  });
  if (starts.some(({ length }) => length === 0)) return undefined;
  const until = (step: number, at: number): number => advance(calendars[timing.calendarOf[step]!]!, at, timing.durations[step]!);
  const rows = starts.map((own, step) => ` ${own.map((_, at) => `x${step}_${at}`).join(' + ')} = 1`);
  const forbid = (one: number, other: number, clash: (a: number, b: number) => boolean): void => {
    starts[one]!.forEach((a, at) => {
      const against = starts[other]!.flatMap((b, bt) => (clash(a, b) ? [`x${other}_${bt}`] : []));
      if (against.length > 0) rows.push(` x${one}_${at} + ${against.join(' + ')} <= 1`);
    });
  };
  for (const { from, to, kind, lag } of links) {
    forbid(from, to, (a, b) => b < advance(calendars[0]!, kind === 0 ? until(from, a) : a, lag));
  }
  for (let one = 0; one < count; one++) {
    for (let other = 0; other < one; other++) {
      if (crewOf[one] === crewOf[other]) forbid(one, other, (a, b) => a < until(other, b) && b < until(one, a));
    }
  }
  const names = starts.flatMap((own, step) => own.map((_, at) => ` x${step}_${at}`));
  return ['Minimize', ` ${names[0]!.trim()}`, 'Subject To', ...rows, 'Binary', ...names, 'End', '']
    .join('\n')
    .replaceAll(' + ', '\n + ');
}
