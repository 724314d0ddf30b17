// Chains of links, against a plain search from event to event over random networks.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chain, type Order, orderOf, reaches, waitOnChain } from '#checks/order';
import {
  buildNetwork,
  FINISH_FINISH,
  FINISH_START,
  type Link,
  type LinkKind,
  type Network,
  START_START,
} from '#schedule/network';
import type { WaitClock } from '#schedule/waits';
import { readNetworkTable } from '#tests/support/network-table';

function orderOfTable(text: string): {
  names: readonly string[];
  network: Network;
  order: Order;
  held: (a: string, b: string) => boolean;
} {
  const { names, links } = readNetworkTable(text);
  const network = buildNetwork(names.length, links);
  const order = orderOf(network);
  return { names, network, order, held: (a, b) => reaches(order, names.indexOf(a), names.indexOf(b)) };
}

describe('what holds and what does not', () => {
  test('a finish holds a start through any number of finish-to-start links, never backward, never itself', () => {
    const { held } = orderOfTable(`
      a 1 |
      b 1 | a
      c 1 | b
      d 1 | b`);
    expect([held('a', 'c'), held('c', 'a'), held('c', 'd'), held('a', 'a')]).toEqual([true, false, false, false]);
  });

  test('start-to-start does not hold the start after the finish, however long the lag', () => {
    const { held } = orderOfTable(`
      a 1 |
      b 1 | a SS+9
      c 1 | b SS`);
    expect([held('a', 'b'), held('a', 'c')]).toEqual([false, false]);
  });

  test('what came before goes through start-to-start and finish-to-finish', () => {
    const { held } = orderOfTable(`
      z 1 |
      a 1 | z
      b 1 | a SS
      c 1 | b FF
      d 1 | c`);
    expect([held('z', 'b'), held('z', 'c'), held('b', 'd'), held('z', 'd'), held('a', 'd'), held('b', 'c')]).toEqual([
      true,
      false,
      true,
      true,
      false,
      false,
    ]);
  });

  test('a lead holds nothing', () => {
    const { held } = orderOfTable(`
      a 1 |
      b 1 | a FS-1
      c 1 | b`);
    expect([held('a', 'b'), held('a', 'c'), held('b', 'c')]).toEqual([false, false, true]);
  });

  test('a milestone’s start and finish are one', () => {
    const { names, links } = readNetworkTable(`
      a 1 |
      m 0 | a FF
      b 1 | m SS`);
    const network = buildNetwork(names.length, links);
    expect(reaches(orderOf(network), 0, 2)).toBe(false);
    const order = orderOf(network, Uint8Array.of(0, 1, 0));
    expect([reaches(order, 0, 2), reaches(order, 1, 2), reaches(order, 0, 1)]).toEqual([true, true, true]);
    expect(chain(network, order, 0, 2)).toEqual([0, 1]);
  });

  test('waits add up along a chain, each sort of time for itself', () => {
    const links: Link[] = [
      { from: 0, to: 1, kind: 0, lag: 480, clock: 0 },
      { from: 1, to: 2, kind: 0, lag: 1440, clock: 1 },
      { from: 2, to: 3, kind: 0, lag: 60, clock: 2 },
      { from: 0, to: 3, kind: 0, lag: 960, clock: 0 },
    ];
    const network = buildNetwork(4, links);
    const order = orderOf(network);
    expect(waitOnChain(network, order, 0, 3)).toEqual({ working: 960, calendar: 1500 });
    expect(waitOnChain(network, order, 0, 1)).toEqual({ working: 480, calendar: 0 });
    expect(waitOnChain(network, order, 3, 0)).toEqual({ working: 0, calendar: 0 });
    expect(chain(network, order, 0, 3)).toEqual([3]);
    expect(chain(network, order, 0, 2)).toEqual([0, 1]);
    expect(chain(network, order, 2, 0)).toBeUndefined();
  });
});

describe('random networks against a plain search', () => {
  const link = (count: number): fc.Arbitrary<Link> =>
    fc.record({
      from: fc.integer({ min: 0, max: count - 1 }),
      to: fc.integer({ min: 0, max: count - 1 }),
      kind: fc.integer({ min: 0, max: 3 }) as fc.Arbitrary<LinkKind>,
      lag: fc.oneof(fc.constant(0), fc.integer({ min: -3, max: 9 })),
      clock: fc.integer({ min: 0, max: 2 }) as fc.Arbitrary<WaitClock>,
    });
  const plans = fc.integer({ min: 2, max: 40 }).chain((count) =>
    fc.record({
      count: fc.constant(count),
      links: fc.array(link(count), { maxLength: 3 * count }),
      instant: fc.uint8Array({ minLength: count, maxLength: count, max: 1 }),
    }),
  );

  test('every pair, its chain and its longest waits', () => {
    fc.assert(
      fc.property(plans, ({ count, links, instant }) => {
        const network = buildNetwork(count, links);
        const order = orderOf(network, instant);
        const usable = [...network.incoming].filter((number) => links[number]!.lag >= 0);
        for (let a = 0; a < count; a++) {
          const { met, waits } = search(links, usable, instant, a, count);
          for (let b = 0; b < count; b++) {
            const expected = a !== b && met.has(2 * b);
            expect(reaches(order, a, b)).toBe(expected);
            const found = chain(network, order, a, b);
            expect(found !== undefined).toBe(expected);
            if (found !== undefined) checkChain(links, instant, found, a, b);
            expect(waitOnChain(network, order, a, b)).toEqual(expected ? waits(b) : { working: 0, calendar: 0 });
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  /** Events met from a's finish, and the longest waits by relaxing every edge as often as there are events. */
  function search(links: readonly Link[], usable: readonly number[], instant: Uint8Array, a: number, count: number) {
    const edges: [from: number, to: number, working: number, calendar: number][] = [];
    for (let task = 0; task < count; task++) {
      edges.push([2 * task, 2 * task + 1, 0, 0]);
      if (instant[task] === 1) edges.push([2 * task + 1, 2 * task, 0, 0]);
    }
    for (const number of usable) {
      const { from, to, kind, lag, clock } = links[number]!;
      const [source, target] = [2 * from + (kind === 0 || kind === 2 ? 1 : 0), 2 * to + (kind === 0 || kind === 1 ? 0 : 1)];
      edges.push([source, target, clock === 0 ? lag : 0, clock === 0 ? 0 : lag]);
    }
    const working = new Map([[2 * a + 1, 0]]);
    const calendar = new Map([[2 * a + 1, 0]]);
    for (let changed = true; changed; ) {
      changed = false;
      for (const [from, to, byWork, byCalendar] of edges) {
        for (const [best, wait] of [
          [working, byWork],
          [calendar, byCalendar],
        ] as const) {
          const sofar = best.get(from);
          if (sofar === undefined || (best.get(to) ?? -1) >= sofar + wait) continue;
          best.set(to, sofar + wait);
          changed = true;
        }
      }
    }
    return {
      met: new Set(working.keys()),
      waits: (b: number) => ({ working: working.get(2 * b)!, calendar: calendar.get(2 * b)! }),
    };
  }

  function checkChain(links: readonly Link[], instant: Uint8Array, found: readonly number[], a: number, b: number): void {
    let task = a;
    let atFinish = true;
    for (const number of found) {
      const next = links[number]!;
      expect(next.from).toBe(task);
      const fromFinish = next.kind === FINISH_START || next.kind === FINISH_FINISH;
      if (fromFinish !== atFinish) expect(fromFinish || instant[task] === 1).toBe(true);
      task = next.to;
      atFinish = !(next.kind === FINISH_START || next.kind === START_START);
    }
    expect(task).toBe(b);
    expect(!atFinish || instant[b] === 1).toBe(true);
  }
});

test('a group too wide for rows is searched link by link', () => {
  const count = 13_000;
  const links = Array.from({ length: count - 1 }, (_, from): Link => ({ from, to: from + 1, kind: 0, lag: 0, clock: 0 }));
  const order = orderOf(buildNetwork(count, links));
  expect(order.bits.length).toBe(0);
  expect([reaches(order, 0, count - 1), reaches(order, count - 1, 0)]).toEqual([true, false]);
});
