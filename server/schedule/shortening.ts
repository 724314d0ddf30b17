// Which steps to shorten for an earlier end, at the least price. Each round looks for the cheapest set of steps that lies on
// every chain to the end (Kelley 1961; Phillips & Dessouky 1977), takes a day off each, and gives a day back where the set
// makes one superfluous; then all dates are worked out anew, calendars and crews with them, so that what counts is what the
// end gains and not what the set promises. By links alone, day by day, that is the least price for each end. Where few steps
// can be shorter, every combination is tried instead, which is the least whatever holds the dates.
import { noWork } from '#kit/work';
import { workBetween } from './calendar.ts';
import { cheapestSet } from './cheapest-set.ts';
import type { Network } from './network.ts';
import { type StepDates, stepDates } from './step-dates.ts';
import type { Timeline } from './timeline.ts';
import { hasFinished, type Timing } from './timing.ts';

export interface Option {
  readonly step: number;
  /** Working minutes by which it can be shorter. */
  readonly most: number;
  /** In the smallest unit of money: for each day, or for all of it at once. */
  readonly price: number;
  readonly each: boolean;
}

/** Minutes taken off, by option. */
export type Taken = readonly number[];

export interface Tried {
  readonly taken: Taken;
  readonly price: number;
  readonly end: number;
  /** Working days of the plan by which it ends sooner than it does now. */
  readonly gains: number;
}

export interface Shortening {
  readonly options: readonly Option[];
  readonly end: number;
  /** For each option what it gains taken alone, by the amount with the least price for a day; undefined where nothing gains. */
  readonly alone: readonly (Tried | undefined)[];
  /** One for each end that can be reached, the latest first, each at the least price that was found. */
  readonly ends: readonly Tried[];
  /** Every combination was tried, so there is none cheaper. */
  readonly isLeast: boolean;
}

/** More all-or-nothing options than this are not tried in every combination. */
const MOST_COMBINED = 6;
/** A day that a weekend or a wait swallows may come out later: so many rounds go on without a gain. */
const PATIENCE = 7;
const MOST_ROUNDS = 400;
const MOST_SEEN = 64;
const MOST_LEAPS = 2000;
const MOST_TRIED = 200_000;

/** `mostTried`: so many steps are dated at most to try every combination; 0 to look for sets of steps even where few can be shorter. */
export function shortening(timeline: Timeline, options: readonly Option[], mostTried = MOST_TRIED): Shortening {
  const site: Site = {
    timeline,
    options,
    day: timeline.minutesPerDay,
    now: timeline.crews.end,
    seen: new Map(),
    leaps: MOST_LEAPS,
  };
  const alone = options.map((_, option) => bestAlone(option, site));
  const every = everyCombination(site, mostTried / Math.max(1, timeline.network.count));
  const found = every?.map((taken) => glance(taken, site)) ?? wholeSets(alone, site).flatMap((start) => frontier(start, site));
  return { options, end: site.now, alone, ends: outline(found.filter(({ gains }) => gains > 0)), isLeast: every !== undefined };
}

/** All amounts of all options together; undefined where there are more than so many. */
function everyCombination({ options, day }: Site, most: number): readonly Taken[] | undefined {
  let lists: readonly Taken[] = [[]];
  for (const option of options) {
    const amounts = [0];
    for (
      let minutes = option.each ? Math.min(day, option.most) : option.most;
      minutes > 0;
      minutes = nextAmount(minutes, option.most, day)
    )
      amounts.push(minutes);
    if (lists.length * amounts.length > most) return undefined;
    lists = lists.flatMap((list) => amounts.map((minutes) => [...list, minutes]));
  }
  return lists;
}

/** What it comes to, without the dates. */
function glance(taken: Taken, site: Site): Tried {
  const { price, end, gains } = workedOut(taken, site);
  return { taken, price, end, gains };
}

interface Site {
  readonly timeline: Timeline;
  readonly options: readonly Option[];
  /** Working minutes. */
  readonly day: number;
  readonly now: number;
  readonly seen: Map<string, Looked>;
  /** How many more leaps are tried. */
  leaps: number;
}

interface Looked extends Tried {
  readonly dates: StepDates;
  readonly network: Network;
  readonly timing: Timing;
}

/** The dates with so much taken off. */
function look(taken: Taken, site: Site): Looked {
  const key = taken.join(' ');
  let known = site.seen.get(key);
  if (known !== undefined) return known;
  // Neighbours are asked for again and again; all that was ever tried would fill the memory.
  if (site.seen.size >= MOST_SEEN) site.seen.clear();
  site.seen.set(key, (known = workedOut(taken, site)));
  return known;
}

function workedOut(taken: Taken, { timeline, options, now, day }: Site): Looked {
  const durations = timeline.timing.durations.slice();
  taken.forEach((minutes, at) => {
    const { step } = options[at]!;
    durations[step] = Math.max(0, durations[step]! - minutes);
  });
  const timing: Timing = { ...timeline.timing, durations };
  const { network } = timeline;
  const dates = stepDates(network, timing, timeline.taken, undefined, noWork());
  const { end } = dates.crews;
  const calendar = timing.calendars[timing.planCalendar]!;
  const gained = end <= now ? workBetween(calendar, end, now) : -workBetween(calendar, now, end);
  return { taken, price: priceOf(taken, options, day), end, gains: gained / day, dates, network, timing };
}

export function priceOf(taken: Taken, options: readonly Option[], day: number): number {
  return taken.reduce((sum, minutes, at) => {
    const { price, each } = options[at]!;
    return sum + (minutes === 0 ? 0 : each ? Math.round((price * minutes) / day) : price);
  }, 0);
}

function none({ options }: Site): number[] {
  return options.map(() => 0);
}

function bestAlone(option: number, site: Site): Tried | undefined {
  const { most, each } = site.options[option]!;
  let best: Tried | undefined;
  for (let minutes = each ? Math.min(site.day, most) : most; minutes > 0; minutes = nextAmount(minutes, most, site.day)) {
    const taken = none(site);
    taken[option] = minutes;
    const tried = look(taken, site);
    // Of amounts at one price for a day, the greatest.
    if (tried.gains > 0 && (best === undefined || tried.price * best.gains <= best.price * tried.gains)) best = tried;
  }
  return best;
}

/** The next day's worth; 0 after the last. */
function nextAmount(minutes: number, most: number, day: number): number {
  return minutes >= most ? 0 : Math.min(most, minutes + day);
}

/** What to begin with: every combination of what is bought all at once; of many, the best added one by one. */
function wholeSets(alone: readonly (Tried | undefined)[], site: Site): readonly Taken[] {
  const { options } = site;
  const whole = options.map((_, at) => at).filter((at) => !options[at]!.each);
  const taking = (those: readonly number[]): Taken => options.map(({ most }, at) => (those.includes(at) ? most : 0));
  if (whole.length <= MOST_COMBINED)
    return Array.from({ length: 1 << whole.length }, (_, bits) => taking(whole.filter((_, nth) => (bits >> nth) & 1)));
  const worth = (at: number): number => (alone[at] === undefined ? Number.POSITIVE_INFINITY : alone[at].price / alone[at].gains);
  const sorted = whole.sort((a, b) => worth(a) - worth(b) || a - b);
  return [0, ...sorted.map((_, nth) => nth + 1)].map((count) => taking(sorted.slice(0, count)));
}

/** From a beginning on, day by day as far as it goes. */
function frontier(start: Taken, site: Site): readonly Tried[] {
  const found: Tried[] = [];
  let at = look(start, site);
  let idle = 0;
  found.push(at);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const last = found[found.length - 1]!;
    // A day that calendars swallow leaves more to spare behind it, so chains are looked for a day wider each time.
    const next = idle <= PATIENCE ? stepOn(at, site, site.day * (1 + idle)) : leap(last, site);
    if (next === undefined && idle > PATIENCE) break;
    if (next !== undefined && next.end < last.end) {
      at = givenBack(next, site);
      found.push(at);
      idle = 0;
    } else {
      idle++;
      at = idle > PATIENCE ? look(last.taken, site) : (next ?? at);
    }
  }
  return found;
}

/**
 * Where no set of single days gains, because a calendar or a wait swallows each: the one step of which several days at once
 * gain, at the least price for a day.
 */
function leap(from: Tried, site: Site): Looked | undefined {
  const { options, day } = site;
  let best: Looked | undefined;
  const worth = (tried: Tried): number => (tried.price - from.price) / (tried.gains - from.gains);
  options.forEach(({ each, most }, option) => {
    for (let minutes = from.taken[option]! + day; each && minutes < most + day && site.leaps > 0; minutes += day) {
      site.leaps--;
      const tried = look(
        from.taken.map((own, at) => (at === option ? Math.min(most, minutes) : own)),
        site,
      );
      if (tried.end < from.end && (best === undefined || worth(tried) < worth(best))) best = tried;
    }
  });
  return best;
}

/** A day off the cheapest set of those with less to spare than so many minutes; undefined where no set is left. */
function stepOn(at: Looked, site: Site, spare: number): Looked | undefined {
  const { options, day, timeline } = site;
  const own = new Map<number, number>();
  options.forEach(({ step, each }, option) => {
    if (each && !hasFinished(timeline.timing, step)) own.set(step, option);
  });
  const set = cheapestSet(at.network, at.timing, at.dates, spare, (step) => {
    const option = own.get(step);
    if (option === undefined) return undefined;
    return { price: options[option]!.price, left: options[option]!.most - at.taken[option]!, taken: at.taken[option]! };
  });
  if (set === undefined) return undefined;
  const taken = [...at.taken];
  for (const step of set.shorter) {
    const option = own.get(step)!;
    taken[option] = Math.min(options[option]!.most, taken[option]! + day);
  }
  for (const step of set.longer) {
    const option = own.get(step)!;
    taken[option] = Math.max(0, taken[option]! - day);
  }
  return look(taken, site);
}

/** Days that gain nothing (any more), the dearest first. */
function givenBack(at: Looked, site: Site): Looked {
  const { options, day } = site;
  const dearest = options
    .map((_, option) => option)
    .filter((option) => options[option]!.each && at.taken[option]! > 0)
    .sort((a, b) => options[b]!.price - options[a]!.price || a - b);
  let best = at;
  for (const option of dearest) {
    while (best.taken[option]! > 0) {
      const taken = [...best.taken];
      // What is taken stands in whole days, but for the last.
      const last = taken[option]! % day;
      taken[option]! -= last === 0 ? day : last;
      const less = look(taken, site);
      if (less.end > best.end) break;
      best = less;
    }
  }
  return best;
}

/** The cheapest for each end, and none that another beats in both. */
function outline(found: readonly Tried[]): readonly Tried[] {
  const sorted = [...found].sort((a, b) => a.price - b.price || a.end - b.end);
  const best: Tried[] = [];
  for (const each of sorted) if (best.length === 0 || each.end < best[best.length - 1]!.end) best.push(each);
  return best;
}
