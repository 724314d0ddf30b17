// A valid plan of any length for measuring: a street of cottages built one after another by the same trades, in one file,
// in a cottage's proportions (34 tasks and 9 rooms to some 225 lines). Deterministic: the same length and seed give the
// same text. Some cottages hold mistakes on purpose, so that every outcome of a rule occurs.
import { closing } from './closing.ts';
import { house } from './house.ts';
import { opening } from './opening.ts';
import { type Random, seeded } from './random.ts';
import { steps } from './steps.ts';

/** A plan of exactly so many lines (at least as many as one cottage needs), each ended by a line feed. */
export function bigPlan(lines: number, seed = 1): string {
  const random = seeded(seed);
  const head = opening();
  const houses: (readonly string[])[] = [];
  let used = head.length;
  for (let number = 1; ; number++) {
    const next = cottage(number, random);
    // What closes the plan grows with the number of cottages, since it waits for all of them.
    if (number > 1 && used + next.length + closing(number, 0).length > lines) break;
    houses.push(next);
    used += next.length;
  }
  const tail = closing(houses.length, lines - used);
  return `${[...head, ...houses.flat(), ...tail].join('\n')}\n`;
}

/** What goes wrong in a cottage; most are in order. */
export type Fault = 'none' | 'board too early' | 'siding by luck' | 'no trade' | 'dangling';

function cottage(number: number, random: Random): readonly string[] {
  const faults: readonly Fault[] = ['none', 'board too early', 'none', 'siding by luck', 'none', 'no trade', 'none', 'dangling'];
  const name = `c${String(number).padStart(2, '0')}`;
  return [...house(name, number, random), ...steps(name, number, faults[(number - 1) % faults.length]!, random)];
}
