// The next weeks on plans small enough to work out on a wall calendar: who is there when and where, and whom to call by when.
import { describe, expect, test } from 'vitest';
import { type CallKind, lookAhead } from '#answers/look-ahead';
import { lookAheadRows } from '#answers/look-ahead-json';
import { lookAheadTables } from '#answers/look-ahead-table';
import { messagesText } from '#answers/look-ahead-words';
import type { View } from '#answers/view';
import { drawTable } from '#cli/output';
import { dayOf, isoDate } from '#kit/dates';
import { viewText } from './plans.ts';

/** May 2027: the 3rd, 10th, 17th and 24th are Mondays. */
const PLAN = `
  plan house "Maple Street"
    start    2027-05-03
    address  "9 Maple Street"
    workweek mon-fri 8h
    call     1 week ahead
  trade me "Us" at $0/h
  trade digging "Digging" at $65/h
  trade framing "Framing" at $52/h, call 2 weeks ahead
  trade painting "Paint" at $44/h
  trade city "Inspector"
    sees mon, wed, fri
  firm ferro "Ferro Excavating" does digging
    phone   "555-0142"
    insured until 2027-05-14
  supplier yard "Hollis Lumber"
    phone "555-0177"
  task marks takes 1d by me, good for 14 days
  task dig takes 3d by digging after marks
  inspection soil-check of dig by city, call 1 day ahead
  task walls takes 10h by framing after soil-check, lumber-here
  task tidy takes 4h by framing after walls
  task paint takes 2d by painting after walls + 5d
  delivery lumber-here "Lumber" from yard, lead 1 week, not before 2027-05-11
  delivery glass-here "Glass" from yard, lead 2 weeks, measured after walls
  milestone roofed "Roofed" after walls`;

function seen(more = '', from?: number, weeks = 2, only?: string): { view: View; ahead: ReturnType<typeof lookAhead> } {
  const view = viewText(`${PLAN}${more}`);
  return { view, ahead: lookAhead(view, weeks, from, only) };
}

describe('whom to call', () => {
  const { ahead } = seen();
  const calls = ahead.calls.map(({ kind, about, by, late, for: day }) => [
    kind,
    about,
    isoDate(by).slice(5),
    late,
    isoDate(day).slice(5),
  ]);
  const of = (kind: CallKind): readonly unknown[] => calls.filter((call) => call[0] === kind);

  test('crews: so long ahead as the trade says, else the plan; never the owner', () => {
    // They dig from Tuesday the 4th: a week before is the 27th of April, which has passed. Framing begins on Tuesday the 11th.
    expect(of('confirm')).toEqual([
      ['confirm', 'Digging', '04-27', true, '05-04'],
      ['confirm', 'Framing', '04-27', true, '05-11'],
      ['confirm', 'Paint', '05-12', false, '05-19'],
    ]);
  });

  test('goods: by the lead, on a working day; what is measured first, on the day it can be', () => {
    expect(of('order')).toEqual([['order', 'Lumber', '05-04', false, '05-11']]);
    // Measured on Wednesday the 12th, two weeks later it is there on the morning after the 26th.
    expect(of('measure')).toEqual([['measure', 'Glass', '05-12', false, '05-27']]);
  });

  test('visits: with their notice', () => {
    // Dug by Thursday the 6th; the inspector sees Friday the 7th, a day after the call.
    expect(of('book')).toEqual([['book', 'soil check', '05-06', false, '05-07']]);
  });

  test('what is got for a time, and papers of firms that run out', () => {
    expect(of('get')).toEqual([['get', 'marks', '05-03', false, '05-03']]);
    expect(of('renew')).toEqual([['renew', 'insurance of Ferro Excavating', '05-14', false, '05-14']]);
  });

  test('with the firm’s number', () => {
    expect(ahead.calls.find(({ about }) => about === 'Digging')).toMatchObject({ who: 'Ferro Excavating', phone: '555-0142' });
    expect(ahead.calls.find(({ about }) => about === 'Lumber')).toMatchObject({ who: 'Hollis Lumber', phone: '555-0177' });
  });

  test('the earliest first', () => {
    const days = ahead.calls.map(({ by }) => by);
    expect([...days].sort((a, b) => a - b)).toEqual(days);
  });

  test('an order that is written down is not called for; nor what has begun', () => {
    const { ahead: later } = seen(`
  progress 2027-05-07
    marks finished 2027-05-03
    dig finished 2027-05-06
    soil-check passed 2027-05-07
    lumber-here now 2027-05-11`);
    expect(isoDate(later.from)).toBe('2027-05-07');
    expect(later.calls.map(({ kind, about }) => `${kind} ${about}`)).not.toContain('order Lumber');
    expect(later.calls.map(({ about }) => about)).not.toContain('Digging');
    // The marks of the 3rd are good to the 17th.
    expect(later.calls.find(({ kind, about }) => kind === 'renew' && about === 'marks')!.for).toBe(dayOf(2027, 5, 17));
  });

  test('nothing says how long ahead: nobody is to be confirmed, and the table says what to write', () => {
    const view = viewText('plan p\n  start 2027-05-03\ntrade t "Tile"\ntask tile takes 1d by t');
    const ahead = lookAhead(view, 3);
    expect(ahead.calls).toEqual([]);
    expect(drawTable(lookAheadTables(ahead, view)[0]!)).toContain('Nobody is to be called in these days.');
  });

  test('who is there when it is time to call is told on site: one call for both comings', () => {
    const view = viewText(`plan p
  start 2027-05-03
  call  1 week ahead
trade t "Concrete" at $58/h
task wait takes 10d
task forms takes 1d by t after wait
task strip takes 1d by t after forms + 3 days`);
    const [call, ...rest] = lookAhead(view, 4).calls;
    expect(rest).toEqual([]);
    expect(call).toMatchObject({ kind: 'confirm', by: dayOf(2027, 5, 10), for: dayOf(2027, 5, 17) });
    expect(call!.steps).toHaveLength(2);
  });
});

describe('who is on site', () => {
  const { ahead, view } = seen();

  test('trades in the order in which they come, with whole days and parts of days', () => {
    expect(ahead.trades.map(({ trade }) => trade.name)).toEqual(['me', 'digging', 'city', 'framing']);
    const framing = ahead.trades.find(({ trade }) => trade.name === 'framing')!;
    expect(framing.stays.map(({ wholeDays, goesOn, begun }) => [wholeDays, goesOn, begun])).toEqual([
      [false, false, false],
      [false, false, false],
    ]);
    expect(ahead.trades[1]!.stays[0]!.wholeDays).toBe(true);
  });

  test('only the days asked for: from the 12th one week; what came before is not ordered any more', () => {
    const { ahead: week } = seen('', dayOf(2027, 5, 12), 1);
    expect([isoDate(week.from), isoDate(week.to)]).toEqual(['2027-05-12', '2027-05-18']);
    expect(week.trades.map(({ trade }) => trade.name)).toEqual(['framing']);
    expect(week.calls.map(({ kind }) => kind)).not.toContain('order');
  });

  test('one trade alone', () => {
    const { ahead: own } = seen('', undefined, 3, 'digging');
    expect(own.trades.map(({ trade }) => trade.name)).toEqual(['digging']);
    expect(own.calls.map(({ about }) => about)).toEqual(['Digging']);
    expect(own.arrivals).toEqual([]);
  });

  test('what comes and what is reached', () => {
    expect(ahead.arrivals.map(({ step, day }) => [view.plan.timeline.steps.list[step]!.name, isoDate(day)])).toEqual([
      ['lumber-here', '2027-05-11'],
      ['roofed', '2027-05-12'],
    ]);
  });

  test('where: the rooms of its share of the work', () => {
    const tiled = viewText(`plan p
  start 2027-05-03
level main
room bath "Bath" on main
  size  5' x 8'
  floor porcelain-tile
trade tile
task set-tile does set-tile in bath takes 1d by tile`);
    expect(lookAhead(tiled, 1).trades[0]!.stays[0]!.where).toEqual(['Bath']);
  });

  test('steps that no trade is named for are not left out', () => {
    const view = viewText('plan p\n  start 2027-05-03\ntask sweep takes 1d');
    const own = lookAhead(view, 1);
    expect(own.trades).toEqual([]);
    expect(own.unnamed).toHaveLength(1);
    expect(messagesText(own, view)).toContain('No trade named:\n- Mon 3 May: sweep (1d)\n');
  });

  test('as messages to paste', () => {
    const text = messagesText(ahead, view);
    expect(text).toContain(
      'Digging, Maple Street, 9 Maple Street:\n- Tue 4 May to Thu 6 May: dig (3d)\nPlease confirm by Tue 27 Apr.\n',
    );
    expect(text).toContain('- was due 27 Apr: confirm Digging (Ferro Excavating, 555-0142), to come Tue 4 May: dig');
    expect(text).toContain('- today: get marks (Us), Mon 3 May');
    expect(text).toContain(
      'Framing, Maple Street, 9 Maple Street:\n- Tue 11 May 08:00 to Wed 12 May 10:00: walls (1.3d)\n- Wed 12 May 10:00 to 14:00: tidy (4 h)\n',
    );
  });

  test('as rows: calls, what comes, and every step with its trade', () => {
    const rows = lookAheadRows(ahead, view);
    expect(rows[0]).toContain('by');
    expect(rows.map((row) => row[0])).toContain('milestone');
    expect(rows.filter((row) => row[0] === 'on site').map((row) => row[5])).toEqual([
      'marks',
      'dig',
      'soil-check',
      'walls',
      'tidy',
    ]);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });
});

test('trades that nothing says how long ahead to call are named; who only inspects is not one, and what stands needs nobody', () => {
  const view = viewText(`
  plan p "P"
    start 2027-05-03
  trade fr "Frames", call 1 week ahead
  trade pl "Pipes"
  trade city "City"
  task walls takes 2d by fr
  task drains takes 2d by pl after walls
  inspection look of drains by city, call 2 days ahead
  task hire stands from walls to drains`);
  const ahead = lookAhead(view, 3);
  const text = lookAheadTables(ahead, view)
    .map((table) => drawTable(table))
    .join('');
  expect(text).toContain('How long before they come Pipes is called, the plan does not say');
  expect(text).not.toContain('No trade named');
});
