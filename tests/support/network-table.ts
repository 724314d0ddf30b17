// Small networks as text, for tests: one step a line, as textbooks print them, with the answer in the same line.
// `C 4 | A, B SS-1, D FF+3 | 11 15 11 15 0 0`: name, days, what it follows, then ES EF LS LF TF FF in days.
import { expect } from 'vitest';
import { AROUND_THE_CLOCK, type Calendar, calendar, type WorkWeek } from '#schedule/calendar';
import { type CriticalPath, criticalPath } from '#schedule/critical-path';
import { buildNetwork, type Link, type LinkKind, type Network } from '#schedule/network';
import type { Timing } from '#schedule/timing';

export const CONTINUOUS: Calendar = calendar(AROUND_THE_CLOCK, [], 0, 400);
/** Monday to Friday, 8:00 to 12:00 and 13:00 to 17:00. */
export const OFFICE_WEEK: WorkWeek = {
  shifts: [0, 1, 2, 3, 4, 5, 6].map((day) =>
    day > 4
      ? []
      : ([
          [480, 720],
          [780, 1020],
        ] as const),
  ),
};

export interface NetworkTable {
  readonly names: readonly string[];
  readonly durations: readonly number[];
  readonly links: readonly Link[];
  /** Published columns of each row, after the second bar. */
  readonly columns: readonly (readonly number[])[];
}

export function readNetworkTable(text: string, dayMinutes = 1440): NetworkTable {
  const rows = text
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((part) => part.trim()));
  const heads = rows.map((row) => /^(\S+)\s+(.*)$/.exec(row[0] ?? '')!);
  const names = heads.map((head) => head[1]!);
  const links = rows.flatMap((row, to) =>
    (row[1] ?? '')
      .split(',')
      .map((item) => item.trim())
      .filter((item) => item !== '' && item !== '–')
      .map((item) => readLink(item, names, to, dayMinutes)),
  );
  return {
    names,
    links,
    durations: heads.map((head) => Number(head[2]) * dayMinutes),
    columns: rows.map((row) => numbers(row[2])),
  };
}

/** Everything on one calendar, from its first moment of work. */
export function timingOf(durations: readonly number[], works: Calendar, start: number): Timing {
  const count = durations.length;
  return {
    durations: Int32Array.from(durations),
    calendarOf: new Int32Array(count),
    calendars: [works],
    planCalendar: 0,
    start,
    notBefore: new Float64Array(count).fill(Number.NEGATIVE_INFINITY),
  };
}

/** Checks ES EF LS LF TF FF (as many as the table gives) of every row, in continuous days; gives the answer for more. */
export function checkNetworkTable(text: string, end: number): { path: CriticalPath; network: Network; table: NetworkTable } {
  const table = readNetworkTable(text);
  const network = buildNetwork(table.names.length, table.links);
  const path = criticalPath(network, timingOf(table.durations, CONTINUOUS, 0));
  expect(network.loops).toEqual([]);
  expect(path.end / 1440).toBe(end);
  table.names.forEach((name, task) => {
    const found = [path.start, path.finish, path.lateStart, path.lateFinish, path.totalFloat, path.freeFloat].map(
      (column) => column[task]! / 1440,
    );
    const given = table.columns[task]!;
    expect([name, ...found.slice(0, given.length)]).toEqual([name, ...given]);
  });
  return { path, network, table };
}

/** The names of the critical steps in plan order, joined by blanks. */
export function criticalNames(path: CriticalPath, names: readonly string[]): string {
  return names.filter((_, task) => path.critical[task] === 1).join(' ');
}

const KINDS: readonly string[] = ['FS', 'SS', 'FF', 'SF'];

function readLink(item: string, names: readonly string[], to: number, dayMinutes: number): Link {
  const [, name, kind, lag] = /^(\S+)(?:\s+(FS|SS|FF|SF)([+−-]?\d*))?$/.exec(item)!;
  const from = names.indexOf(name!);
  expect(from, `${item} in a network table`).toBeGreaterThanOrEqual(0);
  const days = Number((lag ?? '').replace('−', '-') || 0);
  return { from, to, kind: (kind === undefined ? 0 : KINDS.indexOf(kind)) as LinkKind, lag: days * dayMinutes, clock: 0 };
}

function numbers(text: string | undefined): number[] {
  return (text ?? '').split(/\s+/).filter(Boolean).map(Number);
}
