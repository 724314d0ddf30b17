// Heaps give things back in order, whatever the order they went in.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eventHeap, numberHeap, popEvent, popNumber, pushEvent, pushNumber } from '#kit/heaps';

test('numbers come out smallest first, also between others going in', () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.integer({ min: 0, max: 50 }), { nil: undefined })), (steps) => {
      const heap = numberHeap();
      const held: number[] = [];
      for (const step of steps) {
        if (step !== undefined) {
          pushNumber(heap, step);
          held.push(step);
        } else if (held.length > 0) {
          held.sort((a, b) => a - b);
          expect(popNumber(heap)).toBe(held.shift());
        }
      }
      expect(heap.items.length).toBe(held.length);
    }),
  );
});

test('events come out by moment, each once', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 20 })), (moments) => {
      const heap = eventHeap();
      moments.forEach((moment, event) => {
        pushEvent(heap, moment, event);
      });
      const out: number[] = [];
      while (heap.moments.length > 0) {
        const moment = heap.moments[0]!;
        const event = popEvent(heap);
        expect(moments[event]).toBe(moment);
        out.push(event);
      }
      expect(out.map((event) => moments[event])).toEqual([...moments].sort((a, b) => a - b));
      expect(new Set(out).size).toBe(moments.length);
    }),
  );
});
