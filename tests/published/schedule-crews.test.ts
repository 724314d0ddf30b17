// List scheduling with a published answer: a habitat for two workers.
import { expect, test } from 'vitest';
import { crewPass } from '#schedule/crews';
import { criticalPath } from '#schedule/critical-path';
import { buildNetwork } from '#schedule/network';
import { CONTINUOUS, readNetworkTable, timingOf } from '#tests/support/network-table';

// Times, the result 42 and the paths from HU and AD are published in notes to the chapter; the other links are from
// memory, confirmed by giving 42 exactly.
const HABITAT = `
  AP 7 |
  AF 5 |
  AW 6 |
  AD 8 |
  IF 5 | AP, AF
  IW 7 | IF, AW
  ID 5 | AD, IW
  PL 4 | IF
  IP 4 | IW
  PU 3 | IP, ID
  HU 4 | IP
  IC 1 | PL, HU
  FW 6 | IC
  PD 3 | HU
  EU 2 | PU, HU`;

function hours(list: string): number {
  const table = readNetworkTable(HABITAT, 60);
  const count = table.names.length;
  const network = buildNetwork(count, table.links);
  const order = list.split(' ');
  const crews = {
    count: 1,
    capacity: Int32Array.of(2),
    taskStart: Int32Array.from({ length: count + 1 }, (_, task) => task),
    crew: new Int32Array(count),
    units: new Int32Array(count).fill(1),
  };
  const priority = Float64Array.from(table.names, (name) => order.indexOf(name));
  return crewPass(network, timingOf(table.durations, CONTINUOUS, 0), crews, priority).end / 60;
}

test('Tannenbaum, Excursions in Modern Mathematics, ch. 8: the habitat, two workers, list by decreasing time: 42 hours', () => {
  expect(hours('AD AP IW AW FW AF IF ID IP PL HU PU PD EU IC')).toBe(42);
});

test('Tannenbaum, Excursions in Modern Mathematics, ch. 8: list by longest remaining path: 36 hours (from memory, and computed)', () => {
  expect(hours('AP AF AW IF IW AD IP PL HU ID IC FW PU PD EU')).toBe(36);
});

test('Tannenbaum, Excursions in Modern Mathematics, ch. 8: the critical time is 34 hours', () => {
  const table = readNetworkTable(HABITAT, 60);
  expect(criticalPath(buildNetwork(table.names.length, table.links), timingOf(table.durations, CONTINUOUS, 0)).end / 60).toBe(34);
});
