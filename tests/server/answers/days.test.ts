// Moments as days: dates where the plan has a first day, counted working days where it has none.
import { expect, test } from 'vitest';
import { lastDay, momentText, span, startDay, stepFinishDay } from '#answers/days';
import { scheduleAnswer } from '#answers/schedule-json';
import { scheduleTable } from '#answers/schedule-table';
import { finishText, planSummary } from '#answers/summary';
import { shortDate } from '#kit/dates';
import { viewText } from './plans.ts';

const undated = viewText(`
  phase all in order
    task clear takes 3d
    task dig   takes 4d
    task pour  takes 1d
    milestone done
`);
const dated = viewText(`
  plan p "Plan"
    start 2027-04-05
    target 2027-04-16
  phase all in order
    task clear takes 3d
    task dig   takes 4d
    task pour  takes 1d
    milestone done
`);

test('without a first day, working days are counted; a weekend has no numbers', () => {
  const { timeline } = undated.plan;
  const days = [0, 1, 2, 3].map((step) => [
    startDay(timeline.crews.start[step]!, timeline),
    stepFinishDay(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline),
  ]);
  expect(days).toEqual([
    ['day 1', 'day 3'],
    ['day 4', 'day 7'],
    ['day 8', 'day 8'],
    ['day 8', 'day 8'],
  ]);
  expect(finishText(undated)).toBe('done on day 8');
  expect(momentText(timeline.crews.start[1]!, timeline)).toBe('day 4T08:00');
  expect(scheduleTable(undated).heading.join('\n')).toContain('its first is day 1');
  expect(scheduleAnswer(undated).dated).toBe(false);
});

test('with one, a step of one day begins and is done on it', () => {
  const { timeline } = dated.plan;
  const [start, finish] = [timeline.crews.start[2]!, timeline.crews.finish[2]!];
  expect(startDay(start, timeline)).toBe('Wed 14 Apr 2027');
  expect(stepFinishDay(start, finish, timeline)).toBe('Wed 14 Apr 2027');
  expect(span(start, finish, timeline)).toBe('14 Apr');
  expect(span(timeline.crews.start[1]!, timeline.crews.finish[1]!, timeline)).toBe('8 Apr – 13 Apr');
  expect(shortDate(lastDay(timeline))).toBe('Wed 14 Apr 2027');
  expect(momentText(start, timeline)).toBe('2027-04-14T08:00');
});

test('against the target in working days', () => {
  expect(planSummary(dated)).toBe('Plan: done Wed 14 Apr 2027, 2 working days before its target of 16 Apr.');
});

test('a plan without steps has no end, and says nothing of one', () => {
  const empty = viewText("room bath\n  size 5' x 8'\n");
  expect(finishText(empty)).toBeUndefined();
  expect(planSummary(empty)).toBe('');
  expect(scheduleAnswer(empty).tasks).toEqual([]);
});
