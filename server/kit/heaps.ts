// Two small heaps over whole numbers: the least number first, and the earliest event first.

export interface NumberHeap {
  readonly items: number[];
}

export function numberHeap(): NumberHeap {
  return { items: [] };
}

export function pushNumber(heap: NumberHeap, number: number): void {
  const { items } = heap;
  let at = items.length;
  items.push(number);
  for (let parent = (at - 1) >> 1; at > 0 && items[parent]! > number; at = parent, parent = (at - 1) >> 1)
    items[at] = items[parent]!;
  items[at] = number;
}

/** Takes the least number out; ask only a heap that holds one. */
export function popNumber(heap: NumberHeap): number {
  const { items } = heap;
  const top = items[0]!;
  const last = items.pop()!;
  const size = items.length;
  if (size === 0) return top;
  let at = 0;
  for (let child = 1; child < size; child = 2 * at + 1) {
    if (child + 1 < size && items[child + 1]! < items[child]!) child++;
    if (items[child]! >= last) break;
    items[at] = items[child]!;
    at = child;
  }
  items[at] = last;
  return top;
}

/** Events by moment; of one moment in any order. */
export interface EventHeap {
  readonly moments: number[];
  readonly events: number[];
}

export function eventHeap(): EventHeap {
  return { moments: [], events: [] };
}

export function pushEvent(heap: EventHeap, moment: number, event: number): void {
  const { moments, events } = heap;
  let at = moments.length;
  moments.push(moment);
  events.push(event);
  for (let parent = (at - 1) >> 1; at > 0 && moments[parent]! > moment; at = parent, parent = (at - 1) >> 1) {
    moments[at] = moments[parent]!;
    events[at] = events[parent]!;
  }
  moments[at] = moment;
  events[at] = event;
}

/** Takes the earliest event out; its moment is `heap.moments[0]` before. */
export function popEvent(heap: EventHeap): number {
  const { moments, events } = heap;
  const top = events[0]!;
  const moment = moments.pop()!;
  const event = events.pop()!;
  const size = moments.length;
  if (size === 0) return top;
  let at = 0;
  for (let child = 1; child < size; child = 2 * at + 1) {
    if (child + 1 < size && moments[child + 1]! < moments[child]!) child++;
    if (moments[child]! >= moment) break;
    moments[at] = moments[child]!;
    events[at] = events[child]!;
    at = child;
  }
  moments[at] = moment;
  events[at] = event;
  return top;
}
