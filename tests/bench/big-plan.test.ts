// The made-up plan for measuring is what the benchmark takes it for.
import { describe, expect, test } from 'vitest';
import { EDITS } from './edits.ts';
import { figures } from './figures.ts';
import { bigPlan } from './plan/big-plan.ts';

describe('the big plan', () => {
  test.each([1000, 2500, 10_000])('has exactly %i lines, the same every time', (lines) => {
    const text = bigPlan(lines);
    expect(text.split('\n')).toHaveLength(lines + 1);
    expect(bigPlan(lines)).toBe(text);
    expect(bigPlan(lines, 2)).not.toBe(text);
  });

  test('in a cottage’s proportions: about 1,500 tasks and 400 rooms to 10,000 lines, four tasks in ten in rooms', () => {
    const count = (what: RegExp) => bigPlan(10_000).match(what)!.length;
    expect(Math.abs(count(/^ +task /gm) - 1500)).toBeLessThan(50);
    expect(Math.abs(count(/^room /gm) - 400)).toBeLessThan(20);
    expect(Math.abs(count(/^ +task .* in c\d/gm) / count(/^ +task /gm) - 0.4)).toBeLessThan(0.06);
  });

  test('names every step once', () => {
    const names = [...bigPlan(2500).matchAll(/^ *(?:task|inspection|milestone|delivery|phase) +([\w-]+)/gm)].map(
      (match) => match[1],
    );
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(EDITS)('$kind: stands in it once, at both lengths', ({ there, back }) => {
    for (const lines of [1000, 10_000]) {
      const text = bigPlan(lines);
      expect(text.split(there)).toHaveLength(2);
      // An addition holds what it is added to.
      if (!back.includes(there)) expect(text).not.toContain(back);
    }
  });
});

test('the middle, the slow and the slowest', () => {
  expect(figures(Array.from({ length: 100 }, (_, index) => 100 - index))).toEqual({ p50: 50, p95: 95, max: 100, count: 100 });
  expect(figures([3])).toEqual({ p50: 3, p95: 3, max: 3, count: 1 });
});
