// Where a step works: its rooms and the things it builds, so that a rule looks only at pairs that meet.
import type { Slot } from '#kit/place';
import type { Timeline } from '#schedule/timeline';

export interface Scopes {
  /** By step; undefined where the step works in the whole house or nobody can tell. */
  readonly rooms: readonly (ReadonlySet<Slot> | undefined)[];
  readonly elements: readonly (ReadonlySet<Slot> | undefined)[];
}

const kept = new WeakMap<Timeline['claims'], Scopes>();

export function scopesOf(timeline: Timeline): Scopes {
  let scopes = kept.get(timeline.claims);
  if (scopes !== undefined) return scopes;
  const rooms: (ReadonlySet<Slot> | undefined)[] = [];
  const elements: (ReadonlySet<Slot> | undefined)[] = [];
  timeline.steps.list.forEach((step, number) => {
    const claims = step.kind === 'task' ? (timeline.claims.byTask.get(step) ?? []) : [];
    const inRooms = new Set<Slot>();
    const of = new Set<Slot>();
    let everywhere = claims.length === 0;
    for (const { line } of claims) {
      const { room, element, level } = line.where;
      if (room === undefined) everywhere = true;
      else inRooms.add(room);
      of.add(element);
      if (level !== undefined) of.add(level);
    }
    // What a step says itself counts even where nothing is taken off there.
    if (step.kind === 'task' && step.given.in !== undefined && claims.length === 0) {
      everywhere = false;
      for (const { value } of step.given.in.value) inRooms.add(value);
    }
    rooms[number] = everywhere ? undefined : inRooms;
    elements[number] = of.size === 0 ? undefined : of;
  });
  scopes = { rooms, elements };
  kept.set(timeline.claims, scopes);
  return scopes;
}

/** Whether two steps meet where a rule asks: in a room, on a thing, or anywhere in the house. */
export function meets(scopes: Scopes, scope: 'same room' | 'same element' | 'house', a: number, b: number): boolean {
  if (scope === 'house') return true;
  const of = scope === 'same room' ? scopes.rooms : scopes.elements;
  const [first, second] = [of[a], of[b]];
  if (first === undefined || second === undefined) return true;
  const [few, many] = first.size < second.size ? [first, second] : [second, first];
  for (const slot of few) if (many.has(slot)) return true;
  return false;
}
