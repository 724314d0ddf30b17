// Random networks for tests, the same for the same seed.
import fc from 'fast-check';
import type { Link, LinkKind } from '#schedule/network';
import type { WaitClock } from '#schedule/waits';

export interface RandomPlan {
  readonly count: number;
  readonly durations: readonly number[];
  readonly links: readonly Link[];
}

export interface PlanShape {
  readonly fewest: number;
  readonly most: number;
  /** Longest step, in minutes. */
  readonly longest: number;
  /** Longest lag and lead, in minutes of the link's clock. */
  readonly lag: number;
  readonly clocks: readonly WaitClock[];
}

/** Links run from lower to higher numbers, so there are no loops; every tenth step is a milestone. */
export function randomPlans(shape: PlanShape): fc.Arbitrary<RandomPlan> {
  return fc.integer({ min: shape.fewest, max: shape.most }).chain((count) =>
    fc.record({
      count: fc.constant(count),
      durations: fc.array(
        fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 9, arbitrary: fc.integer({ min: 1, max: shape.longest }) }),
        { minLength: count, maxLength: count },
      ),
      links: fc.array(randomLink(count, shape), { maxLength: 3 * count }),
    }),
  );
}

function randomLink(count: number, shape: PlanShape): fc.Arbitrary<Link> {
  return fc
    .record({
      one: fc.integer({ min: 0, max: count - 1 }),
      other: fc.integer({ min: 0, max: count - 2 }),
      kind: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: fc.integer({ min: 1, max: 3 }) }),
      lag: fc.oneof(
        { weight: 2, arbitrary: fc.constant(0) },
        { weight: 1, arbitrary: fc.integer({ min: -shape.lag, max: shape.lag }) },
      ),
      clock: fc.constantFrom(...shape.clocks),
    })
    .map(({ one, other, kind, lag, clock }): Link => {
      const second = other >= one ? other + 1 : other;
      // Waits in days are whole days.
      const minutes = clock === 1 ? Math.round((lag / shape.lag) * 3) * 1440 : lag;
      return { from: Math.min(one, second), to: Math.max(one, second), kind: kind as LinkKind, lag: minutes, clock };
    });
}

/**
 * Links to a finish by the clock, where they were in working time. Work that may not end on a day off ends with the next day,
 * but on that day itself at the moment it may: so a greater slip may cost less than a small one, and float is not exact there.
 */
export function endingOnAnyDay<Drawn extends { readonly random: RandomPlan }>(drawn: Drawn): Drawn {
  const links = drawn.random.links.map((link): Link => (link.kind >= 2 && link.clock === 0 ? { ...link, clock: 2 } : link));
  return { ...drawn, random: { ...drawn.random, links } };
}
