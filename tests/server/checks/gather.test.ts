// Many findings of one sort told as one.
import { expect, test } from 'vitest';
import { gathered } from '#checks/gather';
import { finding, findingSort, messageOf, type Severity } from '#kit/finding';

const late = findingSort<[days: number]>({ code: 'dates/late', severity: 'warning', say: (days) => `${days} days late.` });
const other = findingSort<[]>({ code: 'dates/late', severity: 'warning', say: () => 'Otherwise late.' });

const at = (name: string, sort: typeof late = late, severity: Severity = 'warning') => ({
  ...finding(sort, { slot: { file: 'p.screed', kind: 'task', name, again: 0 }, spot: { path: [], from: 0, to: 1 } }, 3),
  severity,
});

test('three stay three', () => {
  const three = [at('a'), at('b'), at('c')];
  expect(gathered(three, () => true)).toEqual(three);
});

test('from four on the first speaks for all', () => {
  const [one, ...none] = gathered([at('a'), at('b'), at('c'), at('d')], () => true);
  expect(none).toEqual([]);
  expect(messageOf(one!)).toBe('3 days late. The same of "b", "c" and "d".');
  expect(one?.related?.map(({ place }) => place.slot.name)).toEqual(['b', 'c', 'd']);
  expect(one?.code).toBe('dates/late');
});

test('the names of more than a few are not all spelled out', () => {
  const [one] = gathered(
    Array.from({ length: 30 }, (_, index) => at(`t${index}`)),
    () => true,
  );
  expect(messageOf(one!)).toBe('3 days late. The same of "t1", "t2", "t3", "t4" and 25 more.');
  expect(one?.related).toHaveLength(20);
});

test('sorts, severities and codes that do not gather stay apart', () => {
  const mixed = [at('a'), at('b'), at('c', late, 'error'), at('d', other as unknown as typeof late), at('e')];
  expect(gathered(mixed, () => true)).toHaveLength(5);
  expect(gathered([at('a'), at('b'), at('c'), at('d')], () => false)).toHaveLength(4);
});

test('the wording is the same object each time, so that equal findings stay equal', () => {
  const four = (): ReturnType<typeof gathered> => gathered([at('a'), at('b'), at('c'), at('d')], () => true);
  expect(four()[0]?.sort).toBe(four()[0]?.sort);
});
