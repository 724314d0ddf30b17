// Which crew each step takes: one for each trade unless the trade says more. Visits, moments and deliveries take none.
import type { Trade } from '#model/model';
import type { Crews } from './crews.ts';
import { sameNumbers } from './same-numbers.ts';
import type { Steps } from './steps.ts';

export interface CrewsMemory {
  readonly steps: Steps;
  readonly trades: readonly (Trade | undefined)[];
  readonly crews: Crews;
}

/** The same crews while nobody takes others, and there are as many of each. */
export function tradeCrews(steps: Steps, trades: readonly (Trade | undefined)[], before: CrewsMemory | undefined): CrewsMemory {
  if (before !== undefined && before.steps === steps && before.trades === trades) return before;
  const crews = crewsOf(steps, trades);
  return { steps, trades, crews: before !== undefined && sameCrews(crews, before.crews) ? before.crews : crews };
}

/** Each takes one of its crew. */
function sameCrews(a: Crews, b: Crews): boolean {
  return sameNumbers(a.capacity, b.capacity) && sameNumbers(a.taskStart, b.taskStart) && sameNumbers(a.crew, b.crew);
}

function crewsOf(steps: Steps, trades: readonly (Trade | undefined)[]): Crews {
  const numbers = new Map<Trade, number>();
  const capacity: number[] = [];
  const taskStart = new Int32Array(steps.list.length + 1);
  const crew: number[] = [];
  steps.list.forEach((step, at) => {
    const trade = trades[at];
    if (step.kind === 'task' && trade !== undefined) {
      let number = numbers.get(trade);
      if (number === undefined) {
        numbers.set(trade, (number = capacity.length));
        capacity.push(Math.max(1, trade.given.crews?.value ?? 1));
      }
      crew.push(number);
    }
    taskStart[at + 1] = crew.length;
  });
  return {
    count: capacity.length,
    capacity: Int32Array.from(capacity),
    taskStart,
    crew: Int32Array.from(crew),
    units: new Int32Array(crew.length).fill(1),
  };
}
