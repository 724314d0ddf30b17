// What is worth paying for to be done sooner: calendars, crews, waits, work bought all at once, what is done already.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { bestEnd, type Faster, fasterOf } from '#answers/faster';
import { fasterAnswer } from '#answers/faster-json';
import { aloneTable, endsTable } from '#answers/faster-table';
import { type View, viewOf } from '#answers/view';
import { checked } from '#tests/support/checked';

function viewed(text: string): View {
  return viewOf(checked(text).plan);
}
/** 'Thu 6 May 2027 $300: a 1d' for each end. */
function ends(text: string): readonly string[] {
  const view = viewed(text);
  return endsTable(fasterOf(view), view).rows.map((row) => `${row[0]} ${row[2]}: ${row[3]}`);
}
function alone(text: string): readonly string[] {
  const view = viewed(text);
  return aloneTable(fasterOf(view), view).rows.map((row) => (row as readonly string[]).filter((cell) => cell !== '').join(' | '));
}
const faster = (text: string): Faster => fasterOf(viewed(text));

test('each step alone, the cheapest day first; what gains nothing says why', () => {
  expect(
    alone(`plan p
  start 2027-05-03
task a takes 4d faster by 2d for $300 each
task b takes 4d faster by 1d for $200 each, after a
task c takes 2d faster by 1d for $50 each, after a
`),
  ).toEqual([
    'b | 1d faster for $200.00 each | 1d | $200.00 | 1d | $200.00 | Tue 11 May 2027',
    'a | 2d faster for $300.00 each | 2d | $600.00 | 2d | $300.00 | Mon 10 May 2027',
    'c | 1d faster for $50.00 each | nothing: it has 2d to spare',
  ]);
});

test('a wait that runs through the weekend swallows a day: what counts is the end', () => {
  // Poured by Wednesday 5 May; five calendar days end on Monday 10 May, so frame is Tuesday to Thursday. A day less of the
  // pour ends the wait on Sunday: frame begins on Monday, a day sooner. A second ends it on Saturday, and gains nothing.
  const plan = `plan p
  start 2027-05-03
task pour takes 3d faster by 2d for $100 each
task frame takes 3d after pour + 5 days
`;
  expect(alone(plan)).toEqual(['pour | 2d faster for $100.00 each | 1d | $100.00 | 1d | $100.00 | Wed 12 May 2027']);
  expect(ends(plan)).toEqual(['Wed 12 May 2027 $100.00: pour 1d']);
});

test('days that gain nothing alone gain together', () => {
  // The visit comes on Thursdays only. Monday to Wednesday of the week after: five days less bring it a week forward.
  const plan = `plan p
  start 2027-05-03
trade city
  sees thu
task forms takes 8d faster by 6d for $100 each
inspection look of forms by city
task pour takes 1d after look
`;
  expect(ends(plan)).toEqual(['Fri 7 May 2027 $500.00: forms 5d']);
});

test('so do days of two steps, where one of them alone is swallowed', () => {
  // Done on Friday 7 May, seen on Thursday 13 May. A day less is Thursday, which is too late for that day's visit.
  const plan = `plan p
  start 2027-05-03
trade city
  sees thu
task a takes 3d faster by 1d for $100 each
task b takes 2d faster by 1d for $150 each, after a
inspection look of b by city
task pour takes 1d after look
`;
  expect(alone(plan).every((row) => row.includes('nothing'))).toBe(true);
  expect(ends(plan)).toEqual(['Fri 7 May 2027 $250.00: a 1d, b 1d']);
});

describe('weekly visits, waits and one crew', () => {
  const plans = Array.from({ length: 12 }, (_, nth) => randomPlan(nth + 1));

  test.each(plans.slice(0, 2))('every combination, each written down as shorter lengths: %#', ({ text, most, price }) => {
    const found = faster(text());
    expect(found.isLeast).toBe(true);
    const least = new Map<number, number>();
    for (const taken of combinations(most)) {
      const { end } = checked(text(taken)).plan.timeline.crews;
      const cost = taken.reduce((sum, count, at) => sum + count * price[at]! * 100, 0);
      least.set(end, Math.min(least.get(end) ?? Number.POSITIVE_INFINITY, cost));
    }
    const outline = [...least]
      .filter(([end, cost]) => end < found.end && ![...least].some(([other, less]) => other <= end && less < cost))
      .sort(([a], [b]) => b - a);
    const cheapest = outline.filter(([end, cost]) => !outline.some(([other, less]) => other < end && less <= cost));
    expect(found.ends.map((tried) => [tried.end, tried.price])).toEqual(cheapest);
  });

  test('by sets of steps nothing is cheaper than the least, and most of it is found', () => {
    let [reached, all] = [0, 0];
    for (const { text } of plans) {
      const view = viewed(text());
      const [every, sets] = [fasterOf(view), fasterOf(view, 0)];
      for (const tried of sets.ends)
        expect(tried.price).toBeGreaterThanOrEqual(
          Math.min(...every.ends.filter(({ end }) => end <= tried.end).map(({ price }) => price)),
        );
      for (const least of every.ends) {
        all++;
        if (sets.ends.some((tried) => tried.end <= least.end && tried.price <= least.price)) reached++;
      }
    }
    expect(all).toBeGreaterThan(20);
    expect(reached / all).toBeGreaterThan(0.6);
  });
});

interface RandomPlan {
  /** With so many days off each step; as it can be faster where none are given. */
  readonly text: (taken?: readonly number[]) => string;
  readonly most: readonly number[];
  readonly price: readonly number[];
}

function randomPlan(seed: number): RandomPlan {
  let state = seed;
  const roll = (most: number): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return (state >>> 8) % most;
  };
  const four = (make: () => number): number[] => Array.from({ length: 4 }, make);
  const [most, price, days] = [four(() => 1 + roll(2)), four(() => 50 * (1 + roll(9))), four(() => 3 + roll(3))];
  const wait = ['', ' + 1 day', ' + 2 days', ' + 3 days'][roll(4)]!;
  const sees = ['mon', 'thu', 'tue, fri'][roll(3)]!;
  const text = (taken?: readonly number[]): string => {
    const task = (at: number, more: string): string => {
      const can = taken === undefined ? ` faster by ${most[at]}d for $${price[at]} each,` : '';
      return `task t${at} takes ${days[at]! - (taken?.[at] ?? 0)}d${can}${more}\n`;
    };
    return `plan p
  start 2027-05-03
trade crew
trade city
  sees ${sees}
${task(0, ' by crew')}${task(1, ' by crew')}${task(2, ` after t0${wait}`)}inspection look of t1, t2 by city
${task(3, ' after look')}`;
  };
  return { text, most, price };
}

function combinations(most: readonly number[]): readonly (readonly number[])[] {
  return most.reduce<readonly (readonly number[])[]>(
    (lists, upTo) => lists.flatMap((list) => Array.from({ length: upTo + 1 }, (_, count) => [...list, count])),
    [[]],
  );
}

test('two crews’ work on one crew: both hold the end, and either gains', () => {
  const plan = `plan p
  start 2027-05-03
trade crew-a
task one takes 4d by crew-a, faster by 1d for $400 each
task two takes 4d by crew-a, faster by 1d for $300 each
`;
  // By links alone both would be done on Thursday 6 May, and shortening one would gain nothing.
  expect(ends(plan)).toEqual(['Tue 11 May 2027 $300.00: two 1d', 'Mon 10 May 2027 $700.00: one 1d']);
});

test('all at once or not at all: every combination with days by the day is looked at', () => {
  const plan = `plan p
  start 2027-05-03
task a takes 6d faster by 3d for $500
task b takes 4d faster by 2d for $200 each, after a
`;
  // Ten days. One day: $200 of b; two: $400; three: $500, a at once; four and five: a and b.
  expect(ends(plan)).toEqual([
    'Thu 13 May 2027 $200.00: b 1d',
    'Wed 12 May 2027 $400.00: b 1d',
    'Tue 11 May 2027 $500.00: a 3d, b -2d',
    'Mon 10 May 2027 $700.00: b 1d',
    'Fri 7 May 2027 $900.00: b 1d',
  ]);
});

test('a day that became superfluous is given back', () => {
  // Two chains share b: x-b and b-y are held by both ends. Paying for x and y alone later frees b.
  const text = `plan p
  start 2027-05-03
task p1 takes 5d faster by 2d for $100 each
task p2 takes 5d faster by 2d for $100 each
task middle takes 1d after p1
task q1 takes 6d faster by 2d for $100 each, after p1
task q2 takes 6d faster by 2d for $100 each, after p2, middle
`;
  const { ends: found } = faster(text);
  expect(found.every(({ price, gains }) => price > 0 && gains > 0)).toBe(true);
  expect([...found].sort((a, b) => a.price - b.price)).toEqual(found);
});

test('what is done is over; of what is begun only what is left can be shorter', () => {
  const plan = `plan p
  start 2027-05-03
task a takes 4d faster by 2d for $100 each
task b takes 6d faster by 4d for $100 each, after a
progress 2027-05-12
  a finished 2027-05-06
  b started 2027-05-07, left 2d
`;
  const found = faster(plan);
  expect(found.options.map(({ step, most }) => [step, most / 480])).toEqual([[1, 2]]);
});

test('carrying says where it stops being worth it', () => {
  const plan = `plan p
  start 2027-05-03
  carrying $1,400/week
task a takes 6d faster by 3d for $150 each
task b takes 4d faster by 2d for $900 each, after a
`;
  const view = viewed(plan);
  const found = fasterOf(view);
  // $200 a calendar day: a day of a gains $50 and more over a weekend, one of b never does.
  expect(bestEnd(found, view)?.price).toBe(45_000);
});

test('a plan that says nothing of it is told how to', () => {
  const view = viewed('plan p\n  start 2027-05-03\ntask a takes 4d\n');
  expect(aloneTable(fasterOf(view), view).heading[1]).toContain('faster by 2d for $300 each');
  expect(endsTable(fasterOf(view), view).rows).toEqual([]);
});

test('JSON keeps to its schema', () => {
  const view = viewed(`plan p
  start 2027-05-03
  carrying $1,400/week
task a takes 6d faster by 3d for $150 each
task b takes 4d faster by 2d for $900, after a
`);
  const answer = fasterAnswer(fasterOf(view), view);
  const schema = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../../server/schemas/faster.schema.json'), 'utf8'),
  ) as object;
  const valid = new Ajv2020().compile(schema);
  expect(valid(JSON.parse(JSON.stringify(answer))) ? [] : valid.errors).toEqual([]);
  expect(answer.ends.map(({ cents, days }) => [cents, days])).toEqual([
    [15_000, 1],
    [30_000, 2],
    [45_000, 3],
    [120_000, 4],
    [135_000, 5],
  ]);
});
