// The search, the bounds and the pass by links against PSPLIB (R. Kolisch, A. Sprecher, European Journal of Operational
// Research 96 (1997) 205–216), Patterson's set with its optima, and the lags of RCPSP/max (Schwindt 1998). The files are
// not ours to carry: where they are not beside this copy, or where PSPLIB says, these tests are skipped and say so.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { describe, expect, test } from 'vitest';
import { criticalPath } from '#schedule/critical-path';
import {
  buildNetwork,
  FINISH_FINISH,
  FINISH_START,
  type Link,
  type LinkKind,
  START_FINISH,
  START_START,
} from '#schedule/network';
import { measureSearch } from '#tests/support/measured-search';
import { CONTINUOUS, timingOf } from '#tests/support/network-table';
import { type Instance, readSet } from '#tests/support/psplib';

const folder = process.env.PSPLIB ?? join(import.meta.dirname, '../../../shared/psplib');
const isThere = existsSync(join(folder, 'bounds.csv'));
if (!isThere) process.stderr.write(`PSPLIB is not in ${folder}: its tests are skipped. Set PSPLIB to where it lies.\n`);

describe.skipIf(!isThere)('PSPLIB', () => {
  // One pass by latest finish with a double justification, as computed before with other code: 2.44, 14.42, 39.11 %.
  test.each([
    ['j30', 2.5],
    ['j60', 14.5],
    ['j120', 39.2],
  ] as const)('%s, all: the instant pass is within %d percent, breaks nothing and is never below a proven bound', (set, most) => {
    const { averageDeviation, violations, schedules } = measureSearch(folder, set, 1, { seed: 1, every: 1 });
    expect(schedules).toBe(3);
    expect(violations).toBe(0);
    expect(averageDeviation).toBeLessThanOrEqual(most);
  });

  // Of each tenth the best known lie 11.48 % (J60) and 28.64 % (J120) above the critical path; of all, 10.37 % and 28.92 %.
  test.each([
    ['j30', 0.19],
    ['j60', 12.4],
    ['j120', 33.1],
  ] as const)('%s, every tenth: 5,000 schedules are within %d percent', (set, most) => {
    const { averageDeviation, violations } = measureSearch(folder, set, 5000, { seed: 1, every: 10 });
    expect(violations).toBe(0);
    expect(averageDeviation).toBeLessThanOrEqual(most);
  });

  test('Patterson, all: within 0.04 % of the published optima', () => {
    const { averageDeviation, violations, instances } = measureSearch(folder, 'patterson', 5000, { seed: 1, every: 1 });
    expect(instances).toBe(110);
    expect(violations).toBe(0);
    expect(averageDeviation).toBeLessThanOrEqual(0.04);
  });

  test('RCPSP/max, all 810: the pass by links ends at the published bound of the network', () => {
    for (const { instance, bounds } of readSet(folder, 'rcpsp-max')) {
      expect([instance.name, linksAlone(instance)]).toEqual([instance.name, bounds.byLinks]);
    }
  });
});

/**
 * The end by links. Least waits are links of all four kinds by turns, which say the same. Longest waits, and what closes a
 * ring, are no links of ours: they are told as given dates, again and again until nothing moves.
 */
function linksAlone({ durations, arcs }: Instance): number {
  const links = arcs.filter(({ wait }) => wait >= 0).map(({ from, to, wait }, at) => linkOf(from, to, wait, durations, at));
  const network = buildNetwork(durations.length, links);
  const notBefore = new Float64Array(durations.length).fill(Number.NEGATIVE_INFINITY);
  for (;;) {
    const { start } = criticalPath(network, { ...timingOf(durations, CONTINUOUS, 0), notBefore });
    const late = arcs.filter(({ from, to, wait }) => start[to]! < start[from]! + wait);
    if (late.length === 0) return start[durations.length - 1]!;
    for (const { from, to, wait } of late) notBefore[to] = Math.max(notBefore[to]!, start[from]! + wait);
  }
}

function linkOf(from: number, to: number, wait: number, durations: readonly number[], at: number): Link {
  const kind = ([FINISH_START, START_START, FINISH_FINISH, START_FINISH] as const)[at % 4]! as LinkKind;
  const [own, next] = [durations[from]!, durations[to]!];
  const lag = {
    [FINISH_START]: wait - own,
    [START_START]: wait,
    [FINISH_FINISH]: wait + next - own,
    [START_FINISH]: wait + next,
  }[kind]!;
  return { from, to, kind, lag, clock: 0 };
}
