// Calendar files read back by another program's reader (ical.js): whole days and times as they are on site, names that stay,
// revisions that grow; and the plain rules of RFC 5545: lines of 75 octets at most, ended by CR LF.
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { lookAhead } from '#answers/look-ahead';
import type { View } from '#answers/view';
import { callsCalendar, tradeCalendar } from '#cli/calendar-file';
import { dayOf, isoDate, isoMoment } from '#kit/dates';
import { viewSample, viewText } from '#tests/server/answers/plans';

const STAMP = dayOf(2027, 5, 7) * 1440 + 390;

function eventsOf(text: string): readonly InstanceType<typeof ICAL.Event>[] {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
}

function small(walls = '2d', start = '2027-05-03'): View {
  return viewText(`plan house "Maple, Street; 9"
  start    ${start}
  address  "9 Maple Street"
  workweek mon-fri 8h
  call     1 week ahead
trade framing "Framing" at $52/h
task walls "Walls, with a label that is long enough to be folded; and märked" takes ${walls} by framing
task tidy takes 4h by framing after walls
task joists takes 12h by framing after tidy`);
}

describe('a small plan', () => {
  const view = small();
  const text = tradeCalendar(lookAhead(view, 3).trades, view, STAMP);
  const [walls, tidy, joists] = eventsOf(text);

  test('whole days are dates, the end is the day after the last (RFC 5545 3.6.1)', () => {
    expect([walls!.startDate.isDate, walls!.startDate.toString(), walls!.endDate.toString()]).toEqual([
      true,
      '2027-05-03',
      '2027-05-05',
    ]);
  });

  test('part of a day has its times, without a zone: seven in the morning is that on site', () => {
    expect(tidy!.startDate.isDate).toBe(false);
    expect([tidy!.startDate.toString(), tidy!.endDate.toString()]).toEqual(['2027-05-05T08:00:00', '2027-05-05T12:00:00']);
    expect(tidy!.startDate.zone.tzid).toBe('floating');
  });

  test('what spans days with a part of one stands as whole days, its hours in its words', () => {
    expect([joists!.startDate.isDate, joists!.startDate.toString(), joists!.endDate.toString()]).toEqual([
      true,
      '2027-05-05',
      '2027-05-07',
    ]);
    expect(joists!.description).toContain('From 12:00, on the last day until 16:00');
  });

  test('texts come back as they were, with their commas, semicolons and letters', () => {
    expect(walls!.summary).toBe('Walls, with a label that is long enough to be folded; and märked');
    expect(walls!.location).toBe('9 Maple Street');
  });

  test('no line is longer than 75 octets, each ends with CR LF (RFC 5545 3.1)', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    const lines = text.split('\r\n');
    expect(lines.filter((line) => /[\r\n]/.test(line))).toEqual([]);
    expect(lines.filter((line) => Buffer.byteLength(line, 'utf8') > 75)).toEqual([]);
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
  });

  test('brought in again, after the plan changed and a later stamp: the same names, greater revisions', () => {
    const later = small('3d', '2027-05-10');
    const again = eventsOf(tradeCalendar(lookAhead(later, 3).trades, later, STAMP + 60));
    const first = eventsOf(text);
    expect(again.map(({ uid }) => uid)).toEqual(first.map(({ uid }) => uid));
    expect(new Set(again.map(({ uid }) => uid)).size).toBe(3);
    for (const [at, event] of again.entries()) expect(event.sequence).toBeGreaterThan(first[at]!.sequence);
    expect(again[0]!.startDate.toString()).toBe('2027-05-10');
    const stamp = (event: InstanceType<typeof ICAL.Event>): string => String(event.component.getFirstPropertyValue('dtstamp'));
    expect([stamp(first[0]!), stamp(again[0]!)]).toEqual(['2027-05-07T06:30:00Z', '2027-05-07T07:30:00Z']);
  });

  test('the same plan and stamp, the same bytes', () => {
    expect(tradeCalendar(lookAhead(small(), 3).trades, small(), STAMP)).toBe(text);
  });
});

test('a call to a trade keeps its name when the step it comes for first changes, and when an earlier coming is over', () => {
  const plan = (first: string, diary = ''): View =>
    viewText(`
  plan house "House"
    start 2027-05-03
  trade fr "Frames" at $50/h, call 1 week ahead
  task walls takes 2d by fr
  task ${first} takes 1d by fr, not before 2027-06-01
  task soffit takes 1d by fr after ${first}
${diary}`);
  const uids = (view: View): readonly string[] =>
    eventsOf(callsCalendar(lookAhead(view, 6, dayOf(2027, 5, 3)), view, STAMP)).map(({ uid }) => uid);
  expect(uids(plan('rafters'))).toEqual(['confirm-fr-1@house.screed', 'confirm-fr-2@house.screed']);
  expect(uids(plan('trusses'))).toEqual(uids(plan('rafters')));
  expect(uids(plan('rafters', '  progress 2027-05-05\n    walls started 2027-05-03, finished 2027-05-04\n'))).toEqual([
    'confirm-fr-2@house.screed',
  ]);
});

describe('the cottage', () => {
  const view = viewSample('cottage');
  const ahead = lookAhead(view, 30);

  test('every step of every trade is there once, on its days', () => {
    const events = eventsOf(tradeCalendar(ahead.trades, view, STAMP));
    const stays = ahead.trades.flatMap((trade) => trade.stays);
    expect(events).toHaveLength(stays.length);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    stays.forEach((stay, at) => {
      const { startDate, endDate } = events[at]!;
      if (startDate.isDate) {
        expect(startDate.toString()).toBe(isoDate(stay.firstDay));
        expect(endDate.toString()).toBe(isoDate(stay.lastDay + 1));
      } else {
        expect(startDate.toString()).toBe(`${isoMoment(stay.start)}:00`);
        expect(endDate.toString()).toBe(`${isoMoment(stay.finish)}:00`);
      }
    });
  });

  test('calls and what comes are whole days with names of their own', () => {
    const events = eventsOf(callsCalendar(ahead, view, STAMP));
    expect(events).toHaveLength(ahead.calls.length + ahead.arrivals.length);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    expect(events.every(({ startDate }) => startDate.isDate)).toBe(true);
    const order = events.find(({ uid }) => uid === 'order-lumber-here@larkspur.screed')!;
    expect([order.summary, order.startDate.toString()]).toEqual(['Order: Lumber and sheathing', '2027-05-18']);
  });
});
