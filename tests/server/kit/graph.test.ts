// Orders and loops of random graphs, checked against what the words mean; and that tangles take no longer than they should.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LOOP_LIMIT, orderNodes } from '#kit/graph';

const graphs = fc.integer({ min: 1, max: 25 }).chain((count) =>
  fc.record({
    count: fc.constant(count),
    edges: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 60 }),
  }),
);

function orderOf(count: number, edges: readonly (readonly [number, number])[]) {
  return orderNodes(
    count,
    Int32Array.from(edges, ([from]) => from),
    Int32Array.from(edges, ([, to]) => to),
  );
}

describe('random graphs', () => {
  test('every node once, after all it depends on; of those free to come next, the first written', () => {
    fc.assert(
      fc.property(graphs, ({ count, edges }) => {
        const { order, dropped } = orderOf(count, edges);
        const kept = edges.filter((_, edge) => dropped[edge] === 0);
        const placed = new Set<number>();
        for (const node of order) {
          const free = (other: number): boolean =>
            !placed.has(other) && kept.every(([from, to]) => to !== other || placed.has(from));
          expect(free(node)).toBe(true);
          for (let other = 0; other < node; other++) expect(free(other)).toBe(false);
          placed.add(node);
        }
        expect(placed.size).toBe(count);
      }),
    );
  });

  test('an edge is left out only where it closes a loop that is told; a graph without loops keeps all', () => {
    fc.assert(
      fc.property(graphs, ({ count, edges }) => {
        const { loops, dropped } = orderOf(count, edges);
        for (const loop of loops) {
          expect(Math.min(...loop)).toBe(loop[0]);
          expect(new Set(loop).size).toBe(loop.length);
          loop.forEach((node, at) => {
            const next = loop[(at + 1) % loop.length]!;
            expect(edges.some(([from, to]) => from === node && to === next)).toBe(true);
          });
        }
        expect(new Set(loops.map((loop) => loop.join())).size).toBe(loops.length);
        expect(loops.length <= LOOP_LIMIT).toBe(true);
        if (loops.length === LOOP_LIMIT) return;
        edges.forEach(([from, to], edge) => {
          const closes = loops.some((loop) => loop[0] === to && loop.at(-1) === from);
          expect(dropped[edge] === 1).toBe(closes);
        });
      }),
    );
  });

  test('loops do not depend on the order in which edges are given', () => {
    fc.assert(
      fc.property(graphs, ({ count, edges }) => {
        const [one, other] = [orderOf(count, edges), orderOf(count, [...edges].reverse())];
        expect([...other.order]).toEqual([...one.order]);
        expect(other.loops.map((loop) => loop[0])).toEqual(one.loops.map((loop) => loop[0]));
        expect(other.loops.map((loop) => loop.length)).toEqual(one.loops.map((loop) => loop.length));
      }),
    );
  });
});

test('tangles of 60,000 nodes are ordered in linear time', () => {
  const count = 60_000;
  const pairs = Array.from({ length: count - 1 }, (_, node) => [[node, node + 1] as const, [node + 1, node] as const]).flat();
  const back = orderOf(count, pairs);
  expect([back.order.length, back.loops.length]).toEqual([count, LOOP_LIMIT]);
  const ring = orderOf(
    count,
    Array.from({ length: count }, (_, node) => [node, (node + 1) % count] as const),
  );
  expect([ring.order.length, ring.loops.length, ring.loops[0]!.length]).toEqual([count, 1, count]);
});
