// What there is only so much of, and what each step takes of it: the crews of a trade (one unless it says more), a machine, a
// firm that says how many crews it has for all its trades, a room that says how many crews it has room for. Visits, moments
// and deliveries take nothing.
import { sameList } from '#kit/differing';
import type { Slot } from '#kit/place';
import type { ElementOf, Room, Trade } from '#model/model';
import type { Model } from '#model/resolve';
import type { Crews } from './crews.ts';
import { type Firm, firmsByTrade, readsOfFirms } from './firms.ts';
import { sameNumbers } from './same-numbers.ts';
import type { Steps } from './steps.ts';

/** Something that a step takes one of from its start to its end. */
export type Limit = Trade | Firm | Room | ElementOf<'machine'>;

export interface Limits {
  readonly from: readonly unknown[];
  /** By the number they have in `crews`. */
  readonly list: readonly Limit[];
  readonly crews: Crews;
}

/** The same crews while nobody takes others, and there are as many of each. */
export function limitsOf(steps: Steps, trades: readonly (Trade | undefined)[], model: Model, before: Limits | undefined): Limits {
  const rooms = limiting(model.list('room'));
  const firms = limiting(model.list('firm'));
  const from = [steps, trades, model.list('machine'), ...rooms, ...firms, ...(firms.length === 0 ? [] : readsOfFirms(model))];
  if (before !== undefined && sameList(from, before.from)) return before;
  const { list, crews } = takenBy(steps, trades, model, rooms, firms.length === 0 ? NO_FIRMS : firmsByTrade(model));
  return { from, list, crews: before !== undefined && sameCrews(crews, before.crews) ? before.crews : crews };
}

const kept = new WeakMap<object, unknown>();
/** Those of a list that say how many crews there are, or are let in. */
function limiting<E extends Room | Firm>(all: readonly E[]): readonly E[] {
  let known = kept.get(all) as readonly E[] | undefined;
  if (known === undefined) kept.set(all, (known = all.filter((each) => each.given.crews !== undefined)));
  return known;
}

function takenBy(
  steps: Steps,
  trades: readonly (Trade | undefined)[],
  model: Model,
  rooms: readonly Room[],
  firms: ReadonlyMap<Slot, Firm>,
): { readonly list: readonly Limit[]; readonly crews: Crews } {
  const numbers = new Map<Limit, number>();
  const list: Limit[] = [];
  const taskStart = new Int32Array(steps.list.length + 1);
  const crew: number[] = [];
  const roomBySlot = new Map(rooms.map((room) => [room.slot, room]));
  const take = (limit: Limit | undefined, begin: number): void => {
    if (limit === undefined) return;
    let number = numbers.get(limit);
    if (number === undefined) {
      numbers.set(limit, (number = list.length));
      list.push(limit);
    }
    // Named twice, it is taken once.
    for (let at = begin; at < crew.length; at++) if (crew[at] === number) return;
    crew.push(number);
  };
  steps.list.forEach((step, at) => {
    const begin = crew.length;
    if (step.kind === 'task' && step.given.stands === undefined) {
      const trade = trades[at];
      take(trade, begin);
      const firm = trade === undefined ? undefined : firms.get(trade.slot);
      if (firm?.given.crews !== undefined) take(firm, begin);
      for (const { value } of step.given.needs?.value ?? NONE) {
        const machine = model.element(value.machine);
        if (machine?.kind === 'machine') take(machine, begin);
      }
      if (rooms.length > 0) for (const { value } of step.given.in?.value ?? NONE) take(roomBySlot.get(value), begin);
    }
    taskStart[at + 1] = crew.length;
  });
  return {
    list,
    crews: {
      count: list.length,
      capacity: Int32Array.from(list, capacityOf),
      taskStart,
      crew: Int32Array.from(crew),
      units: new Int32Array(crew.length).fill(1),
    },
  };
}

const NONE: readonly never[] = [];
const NO_FIRMS: ReadonlyMap<Slot, Firm> = new Map();

/** How many there are: one unless said. */
export function capacityOf(limit: Limit): number {
  return Math.max(1, (limit.kind === 'machine' ? limit.given['of them'] : limit.given.crews)?.value ?? 1);
}

/** Each takes one of what it takes. */
function sameCrews(a: Crews, b: Crews): boolean {
  return sameNumbers(a.capacity, b.capacity) && sameNumbers(a.taskStart, b.taskStart) && sameNumbers(a.crew, b.crew);
}
