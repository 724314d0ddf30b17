// What is seen from above of several bodies, against heights looked up point by point on a grid: an independent way to the
// same surface.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexArea } from '#kit/shapes/convex';
import { area, contains } from '#kit/shapes/outline';
import { type Body, facesOf, heightAt, linesOf } from '#kit/shapes/upper-envelope';
import { outlineFromWalk } from '#kit/shapes/walk';
import { roofBodies } from '#takeoff/measure/roof-bodies';
import { randomOutline } from './random-outline.ts';

const square = (west: number, south: number, size: number, top = 0): Body => ({
  over: { west, south, east: west + size, north: south + size },
  planes: [
    { a: 1, b: 0, c: top - west },
    { a: -1, b: 0, c: top + west + size },
    { a: 0, b: 1, c: top - south },
    { a: 0, b: -1, c: top + south + size },
  ],
});

test('a pyramid has four faces, four crests and four edges', () => {
  const faces = facesOf([square(0, 0, 1000)]);
  expect(faces.map(({ pieces }) => pieces.reduce((sum, piece) => sum + convexArea(piece), 0))).toEqual([
    250_000, 250_000, 250_000, 250_000,
  ]);
  const lines = linesOf(faces);
  expect(lines.filter(({ kind }) => kind === 'crest')).toHaveLength(4);
  expect(lines.filter(({ kind }) => kind === 'edge')).toHaveLength(4);
  expect(lines).toHaveLength(8);
});

test('a body that stands higher all over hides the other, and one beside another is told by its step', () => {
  expect(facesOf([square(0, 0, 1000), square(200, 200, 200, 5000)]).filter(({ body }) => body === 1)).toHaveLength(4);
  const steps = linesOf(facesOf([square(0, 0, 1000), square(200, 200, 200, 5000)])).filter(({ kind }) => kind === 'above');
  const around = steps.reduce((sum, { edge }) => sum + Math.abs(edge.to.x - edge.from.x) + Math.abs(edge.to.y - edge.from.y), 0);
  expect(around).toBeCloseTo(800, 6);
});

describe('hip roofs over random outlines', () => {
  test('the faces cover the outline once, and each point is as high as the half side of the largest square about it', () => {
    fc.assert(
      fc.property(randomOutline, fc.nat(1000), fc.nat(1000), (small, x, y) => {
        const outline = small.map((point) => ({ x: point.x * 1000, y: point.y * 1000 }));
        const bodies = roofBodies(outline, 'hip', undefined, 0, 0);
        const faces = facesOf(bodies);
        const covered = faces.reduce((sum, { pieces }) => sum + pieces.reduce((so, piece) => so + convexArea(piece), 0), 0);
        expect(covered / area(outline)).toBeCloseTo(1, 6);
        const [west, east] = [Math.min(...outline.map((p) => p.x)), Math.max(...outline.map((p) => p.x))];
        const [south, north] = [Math.min(...outline.map((p) => p.y)), Math.max(...outline.map((p) => p.y))];
        const point = { x: west + ((east - west) * x) / 1001 + 0.37, y: south + ((north - south) * y) / 1001 + 0.53 };
        if (!contains(outline, point)) return;
        const seen = faces.flatMap(({ slope, pieces }) =>
          pieces.some((piece) => holds(piece, point)) ? [heightAt(slope, point)] : [],
        );
        expect(seen.length).toBeGreaterThan(0);
        for (const height of seen) expect(height / halfSquare(outline, point)).toBeCloseTo(1, 5);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  });
});

function holds(piece: readonly { x: number; y: number }[], { x, y }: { x: number; y: number }): boolean {
  return piece.every((from, index) => {
    const to = piece[(index + 1) % piece.length]!;
    return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) >= -1e-3;
  });
}

/** The least greater distance, across or along, to any side: by its definition, without any rectangle. */
function halfSquare(outline: readonly { x: number; y: number }[], { x, y }: { x: number; y: number }): number {
  let least = Number.POSITIVE_INFINITY;
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    const dx = Math.max(Math.min(from.x, to.x) - x, x - Math.max(from.x, to.x), 0);
    const dy = Math.max(Math.min(from.y, to.y) - y, y - Math.max(from.y, to.y), 0);
    least = Math.min(least, Math.max(dx, dy));
  });
  return least;
}

test('an L is seen as five slopes under a hip, and as walked either way round', () => {
  const steps = [
    { direction: 'east', length: 40_000 },
    { direction: 'north', length: 16_000 },
    { direction: 'west', length: 20_000 },
    { direction: 'north', length: 14_000 },
    { direction: 'west', length: 20_000 },
    { direction: 'south', length: 30_000 },
  ] as const;
  const faces = facesOf(roofBodies(outlineFromWalk(steps)!, 'hip', undefined, 0, 0));
  expect(new Set(faces.map(({ slope }) => `${slope.a} ${slope.b} ${slope.c}`)).size).toBe(6);
});
