// Rows for how it went: the diary, schedules that were kept, small things to put right.
import { lostToWeather } from './times.ts';
import { anyName, date, dates, fields, kind, optional, pointTo, properties, quantity, text, workTime } from './types.ts';

const money = quantity('money');

export const progress = kind({
  word: 'progress',
  help: 'How it stood on a day.',
  example: 'progress 2027-06-18',
  name: 'none',
  takes: date,
  facts: {},
  properties: properties({
    ...lostToWeather,
  }),
  entries: {
    takes: pointTo('step'),
    help: 'What happened to a step.',
    example: 'walls-up started 2027-06-07, 80% done, left 2d',
    deeper: properties({
      started: { takes: date, help: 'The day it began.', example: 'started 2027-06-07' },
      finished: { takes: date, help: 'The day it was done.', example: 'finished 2027-06-09' },
      passed: { takes: date, help: 'The day it passed.', example: 'passed 2027-05-03' },
      failed: {
        takes: fields({ date, why: optional(text) }),
        help: 'The day it failed, and why.',
        example: 'failed 2027-04-30 "no plans on site"',
      },
      fee: { takes: money, help: 'What the failed visit cost.', example: 'fee $75' },
      left: { takes: workTime, help: 'Work still to do.', example: 'left 2d' },
      done: { takes: quantity('number'), trailing: true, help: 'Share that is done.', example: '80% done' },
      now: {
        takes: dates,
        help: 'The day it is now expected; or from when to when, of which dates go by the middle.',
        example: 'now 2027-07-12',
      },
      'not before': { takes: date, help: 'Not before this day.', example: 'not before 2027-06-21' },
    }),
  },
});

export const asPlanned = kind({
  word: 'as-planned',
  help: 'A schedule as it stood on a day, kept to compare with: what was promised. "screed schedule PLAN --save NAME" writes it.',
  example: 'as-planned bank "What the bank has" on 2027-03-01',
  name: 'required',
  facts: {},
  properties: properties({
    on: { takes: date, inHeader: true, help: 'The day it stood so.', example: 'on 2027-03-01' },
    costs: { takes: money, inHeader: true, help: 'What the plan cost then.', example: 'costs $201,345' },
  }),
  entries: {
    takes: anyName,
    help: 'A step as it was planned; it may be gone since.',
    example: 'footings begins 2027-05-04, done 2027-05-05, costs $4,210',
    deeper: properties({
      begins: { takes: date, help: 'The day it was to begin.', example: 'begins 2027-05-04' },
      done: { takes: date, help: 'The day it was to be done.', example: 'done 2027-05-05' },
      costs: { takes: money, help: 'What it was to cost.', example: 'costs $4,210' },
    }),
  },
});

export const punch = kind({
  word: 'punch',
  help: 'A small thing left to put right.',
  example: 'punch "Door rubs at the top" in bath by trim',
  name: 'none',
  takes: text,
  facts: {},
  properties: properties({
    in: { takes: pointTo('room'), inHeader: true, help: 'The room.', example: 'in bath' },
    by: { takes: pointTo('trade'), inHeader: true, help: 'Who puts it right.', example: 'by trim' },
    done: { takes: date, inHeader: true, help: 'The day it was done.', example: 'done 2027-12-03' },
    hold: { takes: money, inHeader: true, help: 'Held back for it.', example: 'hold $150' },
  }),
});
