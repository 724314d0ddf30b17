// When a step could begin if one of the things it waits for were there: all else done, and a crew of those who do it free.
import type { PlanLink } from '#schedule/links';
import { FINISH_START } from '#schedule/network';
import type { Timeline } from '#schedule/timeline';
import { afterFinish } from '#schedule/waits';
import { keptWhile } from './kept.ts';

/** What each step waits for that waits for a delivery, kept with the links: dates move far more often. */
export const waitsBesideDeliveries = keptWhile(
  (links: readonly PlanLink[], steps: Timeline['steps']): readonly [object, ...unknown[]] => [links, steps],
  (links: readonly PlanLink[], { list }: Timeline['steps']): ReadonlyMap<number, readonly PlanLink[]> => {
    const waits = new Map<number, PlanLink[]>();
    for (const { from, to } of links) if (list[from]!.kind === 'delivery') waits.set(to, []);
    for (const link of links) if (link.kind === FINISH_START) waits.get(link.to)?.push(link);
    return waits;
  },
);

/** When everything that a step waits for is done, but for one. */
export function readyWithout(without: number, step: number, links: readonly PlanLink[], { timing, crews }: Timeline): number {
  const calendar = timing.calendars[timing.planCalendar]!;
  let ready = Math.max(timing.start, timing.notBefore[step]!);
  for (const link of links)
    if (link.from !== without) ready = Math.max(ready, afterFinish(calendar, crews.finish[link.from]!, link.lag, link.clock));
  return ready;
}

/**
 * When a crew of whoever does a step has done what they begin before it, and stays free until then: earlier nobody waits for
 * goods. Of several crews one that is free is enough.
 */
export function crewFree(step: number, ready: number, { trades, crews }: Timeline): number {
  const trade = trades[step];
  if (trade === undefined) return ready;
  const most = Math.max(1, trade.given.crews?.value ?? 1);
  const begins = crews.start[step]!;
  const changes: { readonly at: number; readonly by: 1 | -1 }[] = [];
  for (let other = 0; other < trades.length; other++) {
    if (other === step || trades[other] !== trade || crews.start[other]! >= begins) continue;
    const end = Math.min(crews.finish[other]!, begins);
    if (end > crews.start[other]!) changes.push({ at: crews.start[other]!, by: 1 }, { at: end, by: -1 });
  }
  // Whoever is done at a moment is free for what begins at it.
  changes.sort((a, b) => a.at - b.at || a.by - b.by);
  let [busy, free] = [0, ready];
  for (const { at, by } of changes) {
    if (by < 0 && busy >= most) free = Math.max(free, at);
    busy += by;
  }
  return free;
}
