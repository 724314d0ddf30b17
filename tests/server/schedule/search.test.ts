// The search over plain numbers: it breaks nothing, only gets better, gives the same for the same seed, and finds what a
// general solver proves to be the best on small random projects.
import fc from 'fast-check';
import loadSolver from 'highs';
import { describe, expect, test } from 'vitest';
import { lowerBound } from '#schedule/search/lower-bounds';
import { mirrorOf, type Project } from '#schedule/search/project';
import { type Found, type Progress, search } from '#schedule/search/search';
import { searchedProject } from '#schedule/search/searched-project';
import { type Instance, numericProject, violations } from '#tests/support/psplib';

/** Activities with links from lower to higher numbers, some of them lags between starts, and one to five resources. */
function instances(fewest: number, most: number): fc.Arbitrary<Instance> {
  return fc
    .record({ count: fc.integer({ min: fewest, max: most }), resources: fc.integer({ min: 1, max: 5 }) })
    .chain(({ count, resources }) =>
      fc
        .record({
          durations: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: count, maxLength: count }),
          pairs: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1), fc.integer({ min: -2, max: 8 }), fc.boolean()), {
            maxLength: count,
          }),
          capacity: fc.array(fc.integer({ min: 3, max: 9 }), { minLength: resources, maxLength: resources }),
          shares: fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: resources, maxLength: resources }), {
            minLength: count,
            maxLength: count,
          }),
        })
        .map(({ durations, pairs, capacity, shares }) => ({
          name: 'random',
          durations,
          arcs: pairs
            .filter(([a, b]) => a !== b)
            .map(([a, b, lag, plain]) => {
              const from = Math.min(a, b);
              return { from, to: Math.max(a, b), wait: plain ? durations[from]! : lag };
            }),
          capacity,
          needs: shares.map((row) => row.map((share, each) => Math.ceil((share * capacity[each]!) / 3))),
        })),
    );
}

function found(instance: Instance, schedules: number, seed: number, report?: (progress: Progress) => undefined): Found {
  return search(searchedProject(numericProject(instance)!), { schedules, seed, ...(report === undefined ? {} : { report }) });
}

test('no link is broken, nothing is taken twice, no end is below the lower bound, whatever the project', () => {
  fc.assert(
    fc.property(instances(1, 25), fc.nat(1000), (instance, seed) => {
      const { starts, end, lowerBound: bound } = found(instance, 300, seed);
      expect(violations(instance, starts)).toBe(0);
      expect(end).toBe(instance.durations.reduce((last, length, each) => Math.max(last, starts[each]! + length), 0));
      expect(end).toBeGreaterThanOrEqual(bound);
    }),
    { seed: 11, numRuns: 150 },
  );
});

test('it only ever gets better, counts its passes, and the same seed finds the same', () => {
  fc.assert(
    fc.property(instances(15, 25), (instance) => {
      const told: Progress[] = [];
      const once = found(instance, 500, 3, (progress) => {
        told.push(progress);
      });
      expect(once.schedules).toBeLessThanOrEqual(500);
      told.forEach(({ end, schedules }, at) => {
        if (at === 0) return;
        expect(end).toBeLessThan(told[at - 1]!.end);
        expect(schedules).toBeGreaterThan(told[at - 1]!.schedules);
      });
      expect(told.at(-1)!.end).toBe(once.end);
      expect(found(instance, 500, 3)).toEqual(once);
    }),
    { seed: 12, numRuns: 30 },
  );
});

test('a mirror of a mirror is the project again', () => {
  fc.assert(
    fc.property(instances(2, 12), (instance) => {
      const project = numericProject(instance)!;
      const twice = mirrorOf(mirrorOf(project));
      const parts = ({ beforeWait, afterWait, order, head, tail }: Project): unknown => ({
        beforeWait,
        afterWait,
        order,
        head,
        tail,
      });
      expect(parts(twice)).toEqual(parts(project));
    }),
    { seed: 13, numRuns: 50 },
  );
});

test('links that run in a loop, and needs beyond what there is, make no project', () => {
  const loop = [
    { from: 0, to: 1, wait: 1 },
    { from: 1, to: 0, wait: 1 },
  ];
  const plain = { name: 'two', durations: [1, 1], arcs: [], capacity: [1], needs: [[1], [1]] };
  expect(numericProject({ ...plain, arcs: loop })).toBeUndefined();
  expect(numericProject({ ...plain, needs: [[1], [2]] })).toBeUndefined();
  expect(found(plain, 3, 1)).toMatchObject({ end: 2, lowerBound: 2, optimal: true });
});

describe('against the solver HiGHS', () => {
  test('25 small random projects: the search finds the best, and no bound is above it', async () => {
    const solver = await loadSolver();
    fc.assert(
      fc.property(instances(4, 7), (instance) => {
        const { end, lowerBound: bound } = found(instance, 2000, 5);
        // Where something is as long as the whole, nobody need be asked.
        const isLeast = instance.durations.some((length) => length === end);
        if (!isLeast) expect(solver.solve(endsBefore(instance, end)).Status).toBe('Infeasible');
        const best = solver.solve(endsBefore(instance, end + 1));
        expect(best.Status).toBe('Optimal');
        expect(bound).toBeLessThanOrEqual(end);
        expect(lowerBound(numericProject(instance)!)).toBeLessThanOrEqual(end);
      }),
      { seed: 14, numRuns: 25 },
    );
  });
});

/** A time-indexed model with one variable for each start (Pritsker, Watters & Wolfe 1969): is there an end before `end`? */
function endsBefore({ durations, arcs, capacity, needs }: Instance, end: number): string {
  const rows: string[] = [];
  const names: string[] = [];
  const moments = (each: number): number[] => Array.from({ length: end - durations[each]! }, (_, at) => at);
  durations.forEach((_, each) => {
    const own = moments(each).map((at) => `x${each}_${at}`);
    names.push(...own);
    rows.push(` ${own.join(' + ')} = 1`);
  });
  for (const { from, to, wait } of arcs) {
    for (const at of moments(from)) {
      const against = moments(to).filter((other) => other < at + wait);
      if (against.length > 0) rows.push(` x${from}_${at} + ${against.map((other) => `x${to}_${other}`).join(' + ')} <= 1`);
    }
  }
  capacity.forEach((limit, resource) => {
    for (let now = 0; now < end; now++) {
      const terms = durations.flatMap((length, each) =>
        moments(each)
          .filter((at) => at <= now && now < at + length && needs[each]![resource]! > 0)
          .map((at) => `${needs[each]![resource]} x${each}_${at}`),
      );
      if (terms.length > 0) rows.push(` ${terms.join(' + ')} <= ${limit}`);
    }
  });
  return ['Minimize', ` ${names[0]}`, 'Subject To', ...rows, 'Binary', ...names.map((name) => ` ${name}`), 'End', '']
    .join('\n')
    .replaceAll(' + ', '\n + ');
}
