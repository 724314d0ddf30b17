// Two trades in one room at once, where the plan names the room for both and says nothing of how many it has room for.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Room } from '#model/model';
import type { Steps } from '#schedule/steps';
import type { Check, Results } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { isDone } from '../../outcomes.ts';
import { startText } from '../../show.ts';

export const stacked = findingSort<[room: string, one: string, other: string, day: string, trades: readonly [string, string]]>({
  code: 'schedule/stacked-trades',
  severity: 'warning',
  say: (room, one, other, day, [trade, second]) =>
    `"${one}" (${trade}) and "${other}" (${second}) are both in "${room}" from ${day}: they stand in each other’s way, and who comes second waits or goes home. Let one wait for the other, or write in the room how many crews it has room for: "crews 1" keeps them apart, "crews 2" lets both in.`,
});

export const stackedTrades: Check = {
  code: 'schedule/stacked-trades',
  gathers: true,
  about:
    'Two trades whose steps name the same room ("in bath") should not be in it at once. A room that says how many crews it has room for is a limit of the dates, and is not told: "crews 1" keeps trades apart, "crews 2" lets two in.',
  wrong: `room bath
trade tile crew of 2
trade plumbing crew of 2
task tile-bath takes 2d by tile in bath
task tub takes 1d by plumbing in bath
`,
  right: `room bath
  crews 1
trade tile crew of 2
trade plumbing crew of 2
task tile-bath takes 2d by tile in bath
task tub takes 1d by plumbing in bath
`,
  reads: ({ model, timeline }) => {
    const { steps, trades, crews, timing } = timeline;
    const shared = sharedRooms(steps);
    if (shared.length === 0) return [steps];
    return [steps, trades, crews, timing.fixedFinish, ...shared.map(({ room }) => model.element(room))];
  },
  run: (results) => {
    const { timeline, model } = results;
    return sharedRooms(timeline.steps).flatMap(({ room, steps }) => {
      const element = model.element(room);
      return element?.kind === 'room' && element.given.crews === undefined ? together(element, steps, results) : [];
    });
  },
};

/** Whether any two of them are there at once, asked of every room with each change of dates: nothing is made for it. */
function meet(steps: readonly number[], { trades, crews: { start, finish } }: Results['timeline']): boolean {
  for (let nth = 1; nth < steps.length; nth++) {
    const later = steps[nth]!;
    for (let before = 0; before < nth; before++) {
      const earlier = steps[before]!;
      if (start[later]! < finish[earlier]! && start[earlier]! < finish[later]! && trades[earlier] !== trades[later]) return true;
    }
  }
  return false;
}

function together(room: Room, steps: readonly number[], { timeline }: Results): readonly Finding[] {
  if (!meet(steps, timeline)) return [];
  const { start, finish } = timeline.crews;
  const findings: Finding[] = [];
  const open = steps.filter((at) => !isDone(at, timeline)).sort((a, b) => start[a]! - start[b]! || a - b);
  open.forEach((later, nth) => {
    const trade = timeline.trades[later];
    const earlier = open.slice(0, nth).find((at) => {
      const other = timeline.trades[at];
      return (
        other !== undefined &&
        trade !== undefined &&
        other !== trade &&
        finish[at]! > start[later]! &&
        finish[later]! > start[later]!
      );
    });
    if (earlier === undefined || trade === undefined) return;
    const [one, other] = [timeline.steps.list[earlier]!, timeline.steps.list[later]!];
    const labels = [timeline.trades[earlier]!.label, trade.label] as const;
    const made = finding(stacked, other.place, room.name, one.name, other.name, startText(start[later]!, timeline), labels);
    findings.push({ ...made, related: [{ place: one.place, note: `"${one.name}" is there too` }] });
  });
  return findings;
}

interface Shared {
  readonly room: Slot;
  readonly steps: readonly number[];
}

/** Rooms that two tasks or more name. */
const sharedRooms = keptFor(({ list }: Steps): readonly Shared[] => {
  const byRoom = new Map<Slot, number[]>();
  list.forEach((step, at) => {
    if (step.kind !== 'task' || step.given.stands !== undefined) return;
    for (const { value } of step.given.in?.value ?? []) {
      const known = byRoom.get(value);
      if (known === undefined) byRoom.set(value, [at]);
      else known.push(at);
    }
  });
  return [...byRoom].filter(([, steps]) => steps.length > 1).map(([room, steps]) => ({ room, steps }));
});
