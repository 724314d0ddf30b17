// The topology of a plan: order, rows of links, and what becomes of loops and of links that lead nowhere.
import { expect, test } from 'vitest';
import { buildNetwork, type Link } from '#schedule/network';

const fs = (from: number, to: number): Link => ({ from, to, kind: 0, lag: 0, clock: 0 });

test('every step after what it hangs on; plan order settles ties', () => {
  expect([...buildNetwork(5, [fs(4, 0), fs(3, 1)]).order]).toEqual([2, 3, 1, 4, 0]);
});

test('rows of links by either end, in the order given', () => {
  const network = buildNetwork(3, [fs(0, 2), fs(1, 2), fs(0, 1)]);
  expect([[...network.incomingStart], [...network.incoming]]).toEqual([
    [0, 0, 1, 3],
    [2, 0, 1],
  ]);
  expect([[...network.outgoingStart], [...network.outgoing]]).toEqual([
    [0, 2, 3, 3],
    [0, 2, 1],
  ]);
});

test('a loop is told whole from its first step in plan order, and the link back to it is left out', () => {
  const network = buildNetwork(4, [fs(3, 1), fs(1, 2), fs(2, 3), fs(0, 1)]);
  expect(network.loops).toEqual([[1, 2, 3]]);
  expect([...network.order]).toEqual([0, 1, 2, 3]);
  expect([...network.incoming].sort()).toEqual([1, 2, 3]);
  expect(network.linkFrom.length).toBe(4);
});

test('a step that waits for itself is a loop of one', () => {
  const network = buildNetwork(2, [fs(1, 1), fs(0, 1)]);
  expect(network.loops).toEqual([[1]]);
  expect([...network.incoming]).toEqual([1]);
});

test('links to steps that do not exist are left out', () => {
  const network = buildNetwork(2, [fs(0, 7), fs(-1, 1), fs(0, 1)]);
  expect([...network.incoming]).toEqual([2]);
  expect(network.loops).toEqual([]);
});

test('lags no clock can hold are cut to what the arrays hold', () => {
  const network = buildNetwork(2, [
    { ...fs(0, 1), lag: 1e12 },
    { ...fs(0, 1), lag: -1e12 },
    { ...fs(0, 1), lag: Number.NaN },
  ]);
  expect([...network.linkLag]).toEqual([2 ** 31 - 1, 1 - 2 ** 31, 0]);
});
