// The cheapest steps to take a day off so that every chain to the end is a day shorter: a least cut through the chains that
// have little to spare (less than a day, where calendars swallow none), hand-overs of crews among them.
import { type Arc, leastCut, UNLIMITED } from '#kit/least-cut';
import { nextWork, workBetween } from './calendar.ts';
import { withHandOvers } from './hand-overs.ts';
import { linkBound, worksUntil } from './link-bounds.ts';
import { FINISH_FINISH, FINISH_START, type Network, START_START } from './network.ts';
import type { StepDates } from './step-dates.ts';
import { hasFinished, hasStarted, type Timing } from './timing.ts';

/** What a day less of a step costs, minutes by which it can still be shorter, and by which it is already. */
export interface Price {
  readonly price: number;
  readonly left: number;
  readonly taken: number;
}

export interface CheapestSet {
  readonly shorter: readonly number[];
  /** Steps that may take a day longer again, as the others lie on their chains twice. */
  readonly longer: readonly number[];
}

/** Undefined where a chain to the end has nothing that can be shorter. `spare`: working minutes, below which a chain counts. */
export function cheapestSet(
  network: Network,
  timing: Timing,
  dates: StepDates,
  spare: number,
  priceOf: (step: number) => Price | undefined,
): CheapestSet | undefined {
  const { crews } = dates;
  const floats = dates.floats();
  const all = withHandOvers(network, crews);
  const isTight = (step: number): boolean => !hasFinished(timing, step) && floats.totalFloat[step]! < spare;
  const arcs: Arc[] = [];
  const [source, sink] = [network.count * 2, network.count * 2 + 1];
  const [begin, finish] = [(step: number) => step * 2, (step: number) => step * 2 + 1];
  for (let step = 0; step < network.count; step++) {
    if (!isTight(step)) continue;
    const price = priceOf(step);
    const most = price === undefined || price.left <= 0 ? UNLIMITED : price.price;
    const least = price === undefined || price.taken <= 0 ? 0 : price.price;
    arcs.push({ from: begin(step), to: finish(step), most, least });
    let startsBy = false;
    let finishesBy = false;
    for (let slot = all.incomingStart[step]!; slot < all.incomingStart[step + 1]!; slot++) {
      const link = all.incoming[slot]!;
      const from = all.linkFrom[link]!;
      if (!isTight(from) || !isTightLink(all, timing, dates, link, spare)) continue;
      const kind = all.linkKind[link]!;
      const toStart = kind === FINISH_START || kind === START_START;
      const fromFinish = kind === FINISH_START || kind === FINISH_FINISH;
      arcs.push({
        from: fromFinish ? finish(from) : begin(from),
        to: toStart ? begin(step) : finish(step),
        most: UNLIMITED,
        least: 0,
      });
      startsBy ||= toStart;
      finishesBy ||= !toStart;
    }
    // What no link holds is held by its own date, or by the plan's first day.
    if (!startsBy && !finishesBy) arcs.push({ from: source, to: begin(step), most: UNLIMITED, least: 0 });
    if (workBetween(timing.calendars[timing.planCalendar]!, crews.finish[step]!, crews.end) < spare)
      arcs.push({ from: finish(step), to: sink, most: UNLIMITED, least: 0 });
  }
  const nodes = network.count * 2 + 2;
  const side =
    leastCut(nodes, source, sink, arcs) ??
    leastCut(
      nodes,
      source,
      sink,
      arcs.map((arc) => ({ ...arc, least: 0 })),
    );
  if (side === undefined) return undefined;
  const shorter: number[] = [];
  const longer: number[] = [];
  for (let step = 0; step < network.count; step++) {
    if (!isTight(step) || side[begin(step)] === side[finish(step)]) continue;
    if (side[begin(step)] === 1) shorter.push(step);
    else if ((priceOf(step)?.taken ?? 0) > 0) longer.push(step);
  }
  return shorter.length === 0 ? undefined : { shorter, longer };
}

/** Whether a step can begin, or be done, so much sooner only if what a link comes from is sooner, too. */
function isTightLink(all: Network, timing: Timing, { crews }: StepDates, link: number, spare: number): boolean {
  const [to, kind] = [all.linkTo[link]!, all.linkKind[link]!];
  const own = timing.calendars[timing.calendarOf[to]!]!;
  const toStart = kind === FINISH_START || kind === START_START;
  if (toStart ? hasStarted(timing, to) : hasFinished(timing, to)) return false;
  const bound = linkBound(all, timing, link, crews);
  const moment = toStart ? crews.start[to]! : crews.finish[to]!;
  const until = toStart ? nextWork(own, bound) : worksUntil(all, timing, link, bound);
  return workBetween(own, until, moment) < spare;
}
