// The order of work as a tree: what a step waits for, what waits for it.
import { expect, test } from 'vitest';
import type { CallHierarchyIncomingCall, CallHierarchyItem, CallHierarchyOutgoingCall } from 'vscode-languageserver-types';
import { prepareWaiting, waitedFor, waitingFor } from '#editor/waiting';
import { covered, editing } from './editing.ts';

const PLAN = `
plan a
  start 2027-04-05
task dig takes 2d
task forms takes 1d after dig
task po<|>ur takes 1d after dig, forms + 2 days
phase rest in order after pour
  task strip takes 1d
  task fill takes 1d
`;

test('both ways, with where each link is said', () => {
  const { ask, textOf } = editing(PLAN);
  const [item] = ask<readonly CallHierarchyItem[]>(prepareWaiting);
  expect(item).toMatchObject({ name: 'pour', detail: 'Mon 12 Apr' });
  const outgoing = ask<readonly CallHierarchyOutgoingCall[]>(waitedFor, { item });
  expect(
    outgoing.map(({ to, fromRanges }) => [to.name, fromRanges.map((range) => covered(textOf('plan.screed'), range))]),
  ).toEqual([
    ['dig', ['dig']],
    ['forms', ['forms']],
  ]);
  const incoming = ask<readonly CallHierarchyIncomingCall[]>(waitingFor, { item });
  expect(incoming.map(({ from }) => from.name)).toEqual(['strip', 'fill']);
});

test('nothing for what is no step', () => {
  expect(editing('room ba<|>th\n').ask(prepareWaiting)).toBeUndefined();
  expect(editing('task a\n').ask(waitedFor, { item: { name: 'gone' } })).toEqual([]);
});
