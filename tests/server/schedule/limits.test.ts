// What there is only so much of: crews, machines, firms and rooms limit the dates that are shown, and the sentence of a step
// that waits names what it waits for.
import { describe, expect, test } from 'vitest';
import { emptyMemory } from '#server/pipeline';
import { daysOf, planOf, spareOf, whyOf } from '#tests/support/dated';

// 5 April 2027 is a Monday.
const START = 'plan p\n  start 2027-04-05\n';

describe('a machine', () => {
  const text = (more: string): string => `${START}trade framing crew of 4
trade roofing crew of 3
machine crane "Boom truck" at $185/h${more}
task trusses takes 1d by framing needs crane 4h
task bundles takes 2d by roofing needs crane
task walls   takes 1d by roofing after bundles
`;

  test('one of it is at one step at a time: the longer chain goes first', () => {
    const plan = planOf(text(''));
    expect(daysOf(plan)).toEqual({ trusses: '04-07', bundles: '04-05 04-06', walls: '04-07' });
    expect(whyOf(plan, 'trusses')).toBe(
      'It takes 1d as given, begins Wed 7 Apr 2027 because the machine "crane" is at "bundles" until Tue 6 Apr, and cannot slip without moving the end.',
    );
    // By links alone all could begin on Monday.
    expect(plan.timeline.byLinks.start[0]).toBe(plan.timeline.byLinks.start[1]);
  });

  test('two of them', () => {
    expect(daysOf(planOf(text(', 2 of them')))).toEqual({ trusses: '04-05', bundles: '04-05 04-06', walls: '04-07' });
  });

  test('it is there on the days of those who work with it', () => {
    const weekly = text('').replace('trade framing crew of 4', 'trade framing crew of 4\n  works tue-thu 8h');
    // Tuesday is taken by the bundles; Wednesday is free.
    expect(daysOf(planOf(weekly)).trusses).toBe('04-07');
  });
});

describe('a room', () => {
  const text = (crews: string): string => `${START}room bath "Bath"
  size 8' x 5'
${crews}trade tile crew of 2
trade plumbing crew of 2
trade painting crew of 2
task tile-bath takes 2d by tile in bath
task tub       takes 1d by plumbing in bath
task paint     takes 1d by painting
`;

  test('as many as come, unless it says how many it has room for', () => {
    expect(daysOf(planOf(text('')))).toEqual({ 'tile-bath': '04-05 04-06', tub: '04-05', paint: '04-05' });
  });

  test('room for one: one after the other, in plan order where both may end as late; the rest of the house goes on', () => {
    const plan = planOf(text('  crews 1\n'));
    expect(daysOf(plan)).toEqual({ 'tile-bath': '04-05 04-06', tub: '04-07', paint: '04-05' });
    expect(whyOf(plan, 'tub')).toContain('begins Wed 7 Apr 2027 because the room "bath" is taken by "tile-bath" until Tue 6 Apr');
    expect(daysOf(planOf(text('  crews 2\n'))).tub).toBe('04-05');
  });
});

describe('a firm that does several trades', () => {
  const text = (crews: string, more = ''): string => `${START}trade framing crew of 4
trade siding crew of 2
firm rivers "Two Rivers" does framing, siding${crews}
task porch takes 2d by framing
task lap   takes 3d by siding
${more}`;

  test('each trade has its own crew, unless the firm says how many it has', () => {
    expect(daysOf(planOf(text('')))).toEqual({ porch: '04-05 04-06', lap: '04-05 04-07' });
    const plan = planOf(text(', crews 1'));
    expect(daysOf(plan)).toEqual({ porch: '04-05 04-06', lap: '04-07 04-09' });
    expect(whyOf(plan, 'lap')).toContain('because the crew of its firm (Two Rivers) is at "porch" until Tue 6 Apr');
    expect(spareOf(plan, 'porch')).toBe(0);
    expect(daysOf(planOf(text(', crews 2')))).toEqual({ porch: '04-05 04-06', lap: '04-05 04-07' });
  });

  test('where two firms do a trade, the accepted bid says whose crews count', () => {
    const other = 'firm lake "Lake" does siding\n';
    expect(daysOf(planOf(text(', crews 1', other))).lap).toBe('04-05 04-07');
    const bid = `${other}bid one by rivers for siding $4,000 on 2027-02-15, accepted 2027-03-01, labour only\n`;
    expect(daysOf(planOf(text(', crews 1', bid))).lap).toBe('04-07 04-09');
  });
});

test('typed and taken back: as a fresh look', () => {
  const memory = emptyMemory();
  const base = `${START}room bath
trade tile crew of 2
trade plumbing crew of 2
machine lift
firm both does tile, plumbing
task a takes 2d by tile in bath needs lift
task b takes 1d by plumbing in bath
task c takes 1d needs lift
`;
  const before = daysOf(planOf(base, memory));
  for (const [from, to] of [
    ['room bath', 'room bath\n  crews 1'],
    ['machine lift', 'machine lift 2 of them'],
    ['firm both does tile, plumbing', 'firm both does tile, plumbing, crews 1'],
    ['task c takes 1d needs lift', 'task c takes 1d'],
    ['in bath\n', 'in bath needs lift\n'],
  ] as const) {
    const edited = base.replace(from, to);
    expect(daysOf(planOf(edited, memory))).toEqual(daysOf(planOf(edited)));
  }
  expect(daysOf(planOf(base, memory))).toEqual(before);
});
