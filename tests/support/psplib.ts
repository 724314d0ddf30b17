// Reads the project files of PSPLIB (R. Kolisch, A. Sprecher, European Journal of Operational Research 96 (1997) 205–216):
// `.sm`, Patterson's `.rcp` and the `.SCH` of RCPSP/max. The files are no part of this package.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Project, projectOf, type StartLink } from '#schedule/search/project';

/** A project as it stands in a file; arcs as start-to-start waits, those below zero are the longest waits of RCPSP/max. */
export interface Instance {
  readonly name: string;
  readonly durations: readonly number[];
  readonly arcs: readonly StartLink[];
  readonly capacity: readonly number[];
  readonly needs: readonly (readonly number[])[];
}

/** What is known of the best finish; `best` is missing where nobody has a schedule. */
export interface Bounds {
  readonly lower: number;
  readonly best: number | undefined;
  readonly optimal: boolean;
  readonly byLinks: number;
}

export const SETS = ['j30', 'j60', 'j120', 'patterson', 'rcpsp-max'] as const;
export type SetName = (typeof SETS)[number];

/** The instances of a set by number, and what is known of them. */
export function readSet(folder: string, set: SetName): readonly { readonly instance: Instance; readonly bounds: Bounds }[] {
  switch (set) {
    case 'j30':
    case 'j60':
    case 'j120': {
      const known = new Map(table(join(folder, 'bounds.csv')).map((row) => [row[1]!, row]));
      return filesOf(join(folder, set), '.sm').map((file) => {
        const instance = readSm(file, readFileSync(join(folder, set, file), 'utf8'));
        const [, , lower, best, optimal, links] = known.get(instance.name)!;
        return {
          instance,
          bounds: { lower: Number(lower), best: Number(best), optimal: optimal === 'yes', byLinks: Number(links) },
        };
      });
    }
    case 'patterson': {
      const known = new Map(table(join(folder, set, 'optimum.csv')).map((row) => [row[0]!, Number(row[1])]));
      return filesOf(join(folder, set), '.rcp').map((file) => {
        const instance = readRcp(file, readFileSync(join(folder, set, file), 'utf8'));
        const best = known.get(file)!;
        return { instance, bounds: { lower: best, best, optimal: true, byLinks: Number.NaN } };
      });
    }
    case 'rcpsp-max':
      return ['sm_j10', 'sm_j20', 'sm_j30'].flatMap((part) => {
        const known = new Map(table(join(folder, set, part, 'bounds.csv')).map((row) => [row[0]!, row]));
        return filesOf(join(folder, set, part), '.SCH').map((file) => {
          const instance = readSch(file, readFileSync(join(folder, set, part, file), 'utf8'));
          const [, status, lower, best, links] = known.get(instance.name)!;
          return {
            instance: { ...instance, name: `${part}/${instance.name}` },
            bounds: {
              lower: Number(lower),
              best: best === '' ? undefined : Number(best),
              optimal: status === 'optimal',
              byLinks: Number(links),
            },
          };
        });
      });
  }
}

export function hasSet(folder: string, set: SetName): boolean {
  return existsSync(join(folder, set));
}

/** The project for the search; undefined where arcs run in loops. */
export function numericProject({ durations, arcs, capacity, needs }: Instance): Project | undefined {
  return projectOf(Int32Array.from(durations), arcs, Int32Array.from(capacity), Int32Array.from(needs.flat()));
}

/** Arcs that a schedule does not keep, and moments at which more is taken than there is. */
export function violations({ durations, arcs, capacity, needs }: Instance, starts: ArrayLike<number>): number {
  let found = arcs.filter(({ from, to, wait }) => starts[to]! < starts[from]! + wait).length;
  const end = durations.reduce((latest, length, each) => Math.max(latest, starts[each]! + length), 0);
  const taken = capacity.map(() => new Int32Array(end));
  durations.forEach((length, each) => {
    if (!(starts[each]! >= 0)) found++;
    for (let moment = starts[each]!; moment < starts[each]! + length; moment++) {
      capacity.forEach((_, resource) => {
        taken[resource]![moment]! += needs[each]![resource]!;
      });
    }
  });
  capacity.forEach((limit, resource) => {
    found += taken[resource]!.reduce((over, units) => over + (units > limit ? 1 : 0), 0);
  });
  return found;
}

export function readSm(file: string, text: string): Instance {
  const lines = text.split(/\r?\n/);
  const after = (heading: string, skip: number): number => lines.findIndex((line) => line.startsWith(heading)) + skip;
  const count = numbers(lines.find((line) => line.startsWith('jobs'))!.split(':')[1]!)[0]!;
  const links = lines.slice(after('PRECEDENCE', 2), after('PRECEDENCE', 2) + count).map(numbers);
  const rows = lines.slice(after('REQUESTS', 3), after('REQUESTS', 3) + count).map(numbers);
  const durations = rows.map((row) => row[2]!);
  return {
    name: file.replace('.sm', ''),
    durations,
    arcs: links.flatMap(([job, , , ...next]) => next.map((to) => ({ from: job! - 1, to: to - 1, wait: durations[job! - 1]! }))),
    capacity: numbers(lines[after('RESOURCEAVAILABILITIES', 2)]!),
    needs: rows.map((row) => row.slice(3)),
  };
}

export function readRcp(file: string, text: string): Instance {
  const all = numbers(text);
  let at = 0;
  const take = (count: number): number[] => all.slice(at, (at += count));
  const [count, resources] = take(2) as [number, number];
  const capacity = take(resources);
  const durations: number[] = [];
  const needs: number[][] = [];
  const arcs: StartLink[] = [];
  for (let each = 0; each < count; each++) {
    durations.push(take(1)[0]!);
    needs.push(take(resources));
    for (const to of take(take(1)[0]!)) arcs.push({ from: each, to: to - 1, wait: durations[each]! });
  }
  return { name: file.replace('.rcp', ''), durations, arcs, capacity, needs };
}

export function readSch(file: string, text: string): Instance {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const count = numbers(lines[0]!)[0]! + 2;
  const arcs = lines.slice(1, count + 1).flatMap((line) => {
    const [from, , several, ...rest] = numbers(line.replaceAll(/[[\]]/g, ' '));
    return rest.slice(0, several).map((to, at) => ({ from: from!, to, wait: rest[several! + at]! }));
  });
  const rows = lines.slice(count + 1, 2 * count + 1).map(numbers);
  return {
    name: file.replace('.SCH', ''),
    durations: rows.map((row) => row[2]!),
    arcs,
    capacity: numbers(lines[2 * count + 1]!),
    needs: rows.map((row) => row.slice(3)),
  };
}

function numbers(text: string): number[] {
  return text.trim().split(/\s+/).map(Number);
}

function table(path: string): readonly (readonly string[])[] {
  return readFileSync(path, 'utf8')
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(','));
}

/** Files by the numbers in their names. */
function filesOf(folder: string, ending: string): readonly string[] {
  const key = (file: string): number => numbers(file.replaceAll(/\D+/g, ' ')).reduce((sum, each) => sum * 1000 + each, 0);
  return readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .sort((a, b) => key(a) - key(b));
}
