// Rows for who does what, and when: the plan, trades, steps, the diary.
import { months } from './common.ts';
import { loading, loads } from './loads.ts';
import { editions } from './rules.ts';
import {
  anyName,
  anyQuantity,
  clockSpan,
  code,
  condition,
  count,
  date,
  dates,
  either,
  fields,
  flag,
  followedBy,
  kind,
  listOf,
  nameOf,
  oneOf,
  optional,
  phrase,
  pointTo,
  properties,
  quantity,
  step,
  text,
  wait,
  weekdays,
  workTime,
} from './types.ts';

const money = quantity('money');
const hoursOfWeek = listOf(fields({ days: weekdays, hours: either(clockSpan, workTime) }));

export const plan = kind({
  word: 'plan',
  help: 'The house as a whole: dates, units, code, money rules. A file with a plan is a root.',
  example: 'plan larkspur "Larkspur cottage"',
  name: 'required',
  facts: {},
  properties: properties({
    address: { takes: text, help: 'Where it stands.', example: 'address "14 Larkspur Lane"' },
    client: { takes: text, help: 'For whom.', example: 'client "Family Aalto"' },
    permit: { takes: code, help: 'Permit number.', example: 'permit B-27-0418' },
    start: { takes: date, help: 'First day of work.', example: 'start 2027-04-05' },
    target: { takes: date, help: 'The day it should be done.', example: 'target 2027-12-17' },
    units: {
      takes: oneOf('feet', 'metric', 'mm'),
      help: 'What is printed; with mm, bare lengths are millimetres.',
      example: 'units feet',
    },
    code: { takes: code, help: 'Code edition, for the minimums.', example: 'code irc-2021' },
    profile: {
      takes: oneOf('owner', 'builder', 'ci'),
      help: 'Who reads the findings: an owner sees all, a builder no notes of common practice, ci errors and warnings.',
      example: 'profile builder',
    },
    counts: {
      takes: fields({ of: anyName, by: phrase('by', nameOf('convention')) }),
      repeats: true,
      help: 'How something is counted, where books differ: studs, or a material.',
      example: 'counts studs by modern-carpentry',
    },
    zone: { takes: code, help: 'Climate zone.', example: 'zone 5A' },
    frost: { takes: quantity('length'), help: 'Depth of frost.', example: 'frost 30"' },
    loads: {
      takes: text,
      help: 'Snow, wind, earthquake and the like, from the building department.',
      example: 'loads "ground snow 30 psf, wind 115 mph, seismic B, termites slight, ice barrier"',
    },
    'fresh-air': {
      takes: fields({
        rate: quantity('flow'),
        running: optional(phrase(', running', quantity('number'))),
        standard: optional(phrase(', by', code)),
      }),
      help: 'Outside air for the whole house, the share of time the fan runs, and the standard if it is not the plan’s code.',
      example: 'fresh-air 100 cfm, running 50%',
    },
    'leakage-credit': {
      takes: quantity('flow'),
      help: 'Outside air that tested leakage counts for, where ASHRAE 62.2 lets it.',
      example: 'leakage-credit 30 cfm',
    },
    'busiest-hour': {
      takes: listOf(
        fields({
          count,
          use: oneOf('showers', 'baths', 'shaves', 'washes', 'shampoos', 'dishes', 'dishwashers', 'meals', 'laundry'),
        }),
      ),
      help: 'What hot water is used for in the hour of the day that takes most of it.',
      example: 'busiest-hour 3 showers, 1 dishes',
    },
    'air-leakage': {
      takes: quantity('number'),
      help: 'Air changes an hour at 50 Pa, asked for or tested.',
      example: 'air-leakage 3.0',
    },
    indoors: {
      takes: fields({
        temperature: quantity('temperature'),
        humidity: optional(phrase(',', followedBy(quantity('number'), 'humidity'))),
      }),
      help: 'How warm the house is kept in winter, and how damp its air is then.',
      example: 'indoors 70 F, 40% humidity',
    },
    outdoors: {
      takes: fields({
        temperature: quantity('temperature'),
        mean: optional(phrase(',', followedBy(quantity('temperature'), 'on average'))),
      }),
      help: 'Winter design temperature of the place; and the average of its coldest months, by which walls are screened for damp.',
      example: 'outdoors 5 F, 28 F on average',
    },
    infiltration: {
      takes: quantity('number'),
      help: 'Air changes an hour through its cracks in winter.',
      example: 'infiltration 0.35',
    },
    'air-intake': {
      takes: quantity('length'),
      help: 'From its fresh-air intake to the nearest exhaust, plumbing vent or chimney.',
      example: "air-intake 12'",
    },
    'plumbing-code': {
      takes: oneOf('irc', 'upc'),
      help: 'Whose rules its plumbing follows, where not those of the model code: irc, or the uniform plumbing code.',
      example: 'plumbing-code upc',
    },
    'water-pressure': {
      takes: quantity('pressure'),
      help: 'Pressure of the water at the house.',
      example: 'water-pressure 60 psi',
    },
    designed: {
      takes: fields({
        what: oneOf('structure', 'foundation', 'panels', 'heating', 'plumbing', 'wiring', 'gas', 'septic'),
        by: phrase('by', text),
      }),
      repeats: true,
      help: 'Which licensed person or works designs what a plan cannot.',
      example: 'designed structure by "J. Moreno, engineer"',
    },
    built: {
      takes: quantity('number'),
      help: 'Year in which the house that is worked on was built, where it is an old one.',
      example: 'built 1962',
    },
    workweek: {
      takes: fields({ hours: hoursOfWeek, lunch: optional(phrase(', lunch', workTime)) }),
      help: 'Working days and hours.',
      example: 'workweek mon-fri 8h',
    },
    holidays: { takes: code, help: 'Whose public holidays are kept.', example: 'holidays US' },
    closed: { takes: listOf(dates), repeats: true, help: 'Days nobody works.', example: 'closed 2027-07-02..2027-07-06' },
    weather: {
      takes: listOf(fields({ month: months, lost: workTime })),
      help: 'Working days lost a month, outside work only.',
      example: 'weather mar 4d, apr 3d',
    },
    lows: {
      takes: listOf(fields({ month: months, low: quantity('temperature') })),
      help: 'The usual low of a month at night, outside.',
      example: 'lows dec 22 F, jan 16 F',
    },
    forecast: {
      takes: fields({ days: dates, low: quantity('temperature') }),
      repeats: true,
      help: 'The low that is told for days to come.',
      example: 'forecast 2027-11-20..2027-11-22 19 F',
    },
    contingency: { takes: quantity('number'), help: 'Kept for what is not yet known.', example: 'contingency 10%' },
    tax: {
      takes: fields({ rate: quantity('number'), on: optional(phrase('on', oneOf('materials', 'all'))) }),
      help: 'Sales tax.',
      example: 'tax 6.5% on materials',
    },
    currency: { takes: code, help: 'Money of the plan.', example: 'currency USD' },
    carrying: { takes: quantity('money/time'), help: 'What each week costs by itself.', example: 'carrying $310/week' },
    profit: { takes: quantity('number'), help: 'Added to what it costs.', example: 'profit 12%' },
  }),
});

export const include = kind({
  word: 'include',
  name: 'none',
  takes: text,
  facts: {},
  properties: properties({}),
  help: 'Another file of this plan.',
  example: 'include "prices.screed"',
});
export const letRow = kind({
  word: 'let',
  name: 'required',
  takes: fields({ value: phrase('=', anyQuantity) }),
  facts: {},
  properties: properties({}),
  help: 'Names a value.',
  example: `let plate-height = 8'-1 1/8"`,
});
export const acceptRow = kind({
  word: 'accept',
  name: 'none',
  facts: {},
  takes: fields({ code, for: optional(either(phrase('for', listOf(anyName)), oneOf('everywhere'))), reason: optional(text) }),
  help: 'Answers a finding, with a reason.',
  example: 'accept rooms/gap everywhere "Closet walls are not drawn"',
  properties: properties({
    until: { takes: date, inHeader: true, help: 'The day the acceptance ends.', example: 'until 2027-06-30' },
  }),
});

export const trade = kind({
  word: 'trade',
  help: 'A kind of work and the people who do it.',
  example: 'trade framing "Framing" crew of 4 at $52/h',
  name: 'required',
  facts: { people: 'number' },
  properties: properties({
    'crew of': { takes: count, inHeader: true, help: 'People in a crew.', example: 'crew of 4' },
    at: { takes: quantity('money/time'), inHeader: true, help: 'What one of them costs an hour.', example: 'at $52/h' },
    crews: { takes: count, inHeader: true, help: 'How many crews; one unless said.', example: 'crews 2' },
    works: { takes: hoursOfWeek, help: 'Days and hours other than the plan’s.', example: 'works mon-thu 7:00-17:30' },
    away: { takes: listOf(dates), repeats: true, help: 'Days they are not there.', example: 'away 2027-05-24..2027-05-28' },
    sees: { takes: listOf(weekdays), help: 'Days an inspecting body comes.', example: 'sees mon, wed, fri' },
    call: {
      takes: followedBy(wait, 'ahead'),
      inHeader: true,
      help: 'How long before they must be called.',
      example: 'call 2 weeks ahead',
    },
  }),
});

export const firm = kind({
  word: 'firm',
  help: 'A company that does one trade or several.',
  example: 'firm ruiz "Ruiz Plumbing" does plumbing',
  name: 'required',
  facts: {},
  properties: properties({
    does: { takes: listOf(pointTo('trade')), inHeader: true, help: 'The trades it does.', example: 'does plumbing' },
    phone: { takes: text, help: 'Whom to ring.', example: 'phone "555-0142"' },
    insured: { takes: phrase('until', date), help: 'Insurance runs to.', example: 'insured until 2027-09-30' },
    licensed: { takes: phrase('until', date), help: 'Licence runs to.', example: 'licensed until 2028-01-31' },
  }),
});
export const supplier = kind({
  word: 'supplier',
  help: 'Who sells materials.',
  example: 'supplier yard "Hollis Lumber"',
  name: 'required',
  facts: {},
  properties: properties({ phone: { takes: text, help: 'Whom to ring.', example: 'phone "555-0177"' }, ...loading }),
});
export const machine = kind({
  word: 'machine',
  help: 'A machine, or a thing on hire.',
  example: 'machine crane "Boom truck" at $185/h, at least 4h',
  name: 'required',
  facts: {},
  properties: properties({
    at: { takes: either(quantity('money/time'), money), inHeader: true, help: 'Hire.', example: 'at $185/h' },
    'at least': { takes: workTime, inHeader: true, help: 'Shortest hire.', example: 'at least 4h' },
    stands: {
      takes: fields({ from: phrase('from', pointTo('step')), to: phrase('to', pointTo('step')) }),
      help: 'On site from one step to another.',
      example: 'stands from clear to co',
    },
  }),
});

const waiting = properties({
  after: { takes: listOf(step), inHeader: true, help: 'Starts when these are finished.', example: 'after footings + 2 days' },
  'also after': {
    takes: listOf(step),
    inHeader: true,
    help: 'Besides the line above it, waits for these.',
    example: 'also after footing-check',
  },
  with: {
    takes: listOf(step),
    inHeader: true,
    help: 'Starts with these, or so long after they start.',
    example: 'with drains + 1d',
  },
  'done with': {
    takes: listOf(step),
    inHeader: true,
    help: 'Finishes with these, or so long after.',
    example: 'done with tape + 1d',
  },
  'done after': {
    takes: listOf(step),
    inHeader: true,
    help: 'Finishes after these start.',
    example: 'done after start of drains',
  },
  'same day as': { takes: listOf(step), inHeader: true, help: 'On the same day as these.', example: 'same day as roof-deck' },
  beside: { takes: flag, inHeader: true, help: 'Waits for what the line above waits for.', example: 'beside' },
  'not before': { takes: date, inHeader: true, help: 'Not before this day.', example: 'not before 2027-06-21' },
  deadline: { takes: date, inHeader: true, help: 'Must be finished by this day.', example: 'deadline 2027-08-01' },
  'to the end': { takes: flag, inHeader: true, help: 'Nothing needs to wait for it.', example: 'to the end' },
});
const paying = properties({
  costs: { takes: money, inHeader: true, help: 'Fixed price of the step.', example: 'costs $1,450' },
  fee: { takes: money, inHeader: true, help: 'A fee paid with it.', example: 'fee $150' },
});
const someQuantity = either(quantity('number'), quantity('area'), quantity('length'), quantity('volume'));

export const task = kind({
  word: 'task',
  space: 'step',
  help: 'Work that somebody does.',
  example: 'task footings does pour-footings by concrete after footing-check',
  name: 'required',
  facts: {},
  properties: properties({
    does: {
      takes: listOf(fields({ work: nameOf('work'), amount: optional(someQuantity) })),
      inHeader: true,
      help: 'Kinds of work it does.',
      example: 'does frame-walls, sheathe-walls',
    },
    in: { takes: listOf(pointTo('room')), inHeader: true, help: 'Only in these rooms.', example: 'in bath, hall' },
    on: { takes: listOf(pointTo('level')), inHeader: true, help: 'Only on these levels.', example: 'on main' },
    of: { takes: listOf(anyName), inHeader: true, help: 'Only of these things.', example: 'of water-line, sewer-line' },
    except: { takes: listOf(anyName), inHeader: true, help: 'All but these.', example: 'except bath' },
    coat: { takes: count, inHeader: true, help: 'Only this coat.', example: 'coat 1' },
    takes: {
      takes: fields({ time: workTime, likely: optional(phrase('likely', workTime)) }),
      inHeader: true,
      help: 'How long it takes: given beats computed.',
      example: 'takes 3d',
    },
    by: { takes: pointTo('trade'), inHeader: true, help: 'The trade that does it.', example: 'by framing' },
    'crew of': { takes: count, inHeader: true, help: 'People on this task.', example: 'crew of 2' },
    needs: {
      takes: listOf(fields({ machine: pointTo('machine'), time: optional(workTime) })),
      inHeader: true,
      help: 'A machine it needs.',
      example: 'needs crane 4h',
    },
    'good for': { takes: wait, inHeader: true, help: 'How long what it gets stays valid.', example: 'good for 14 days' },
    above: { takes: quantity('temperature'), inHeader: true, help: 'Not colder than this.', example: 'above 40 F' },
    ...waiting,
    ...paying,
  }),
});

export const inspection = kind({
  word: 'inspection',
  space: 'step',
  help: 'A visit that must be passed before work is covered or goes on.',
  example: 'inspection footing-check of forms before footings by city, call 1 day ahead',
  name: 'required',
  facts: {},
  properties: properties({
    of: { takes: listOf(anyName), inHeader: true, help: 'The steps or works it looks at.', example: 'of forms, steel' },
    before: { takes: listOf(anyName), inHeader: true, help: 'The steps or works it holds.', example: 'before footings' },
    by: { takes: pointTo('trade'), inHeader: true, help: 'Who inspects.', example: 'by city' },
    call: { takes: followedBy(wait, 'ahead'), inHeader: true, help: 'Notice.', example: 'call 1 day ahead' },
    takes: {
      takes: fields({ time: workTime, likely: optional(phrase('likely', workTime)) }),
      inHeader: true,
      help: 'How long it takes.',
      example: 'takes 1h',
    },
    'good for': { takes: wait, inHeader: true, help: 'How long it stays valid.', example: 'good for 180 days' },
    'not held': {
      takes: text,
      inHeader: true,
      help: 'This town does not make the visit, and why it is left out.',
      example: 'not held "Cedar County does not look before fill"',
    },
    local: { takes: flag, inHeader: true, help: 'A visit that only some towns make.', example: 'local' },
    when: { takes: condition, repeats: true, help: 'Asked for only then.', example: 'when any site has flood' },
    unless: { takes: condition, repeats: true, help: 'Not asked for then.', example: 'unless every room has use garage' },
    ...editions,
    ...waiting,
    ...paying,
  }),
});

export const milestone = kind({
  word: 'milestone',
  space: 'step',
  help: 'A moment, without length.',
  example: 'milestone dry-in after felt, set-windows, set-doors',
  name: 'required',
  facts: {},
  properties: properties({
    'good for': { takes: wait, inHeader: true, help: 'How long it stays valid.', example: 'good for 180 days' },
    on: { takes: date, inHeader: true, help: 'The day it happens.', example: 'on 2027-04-12' },
    except: { takes: listOf(anyName), inHeader: true, help: 'Left out on purpose.', example: 'except w-24' },
    without: { takes: listOf(pointTo('step')), inHeader: true, help: 'Open when it is granted.', example: 'without drive, seed' },
    ...waiting,
    ...paying,
  }),
});

export const delivery = kind({
  word: 'delivery',
  space: 'step',
  help: 'Goods that come to the site.',
  example: 'delivery windows-here brings w-3050 from millwork, lead 9 weeks',
  name: 'required',
  facts: {},
  properties: properties({
    brings: { takes: listOf(anyName), inHeader: true, help: 'What it brings.', example: 'brings w-3050, d-3068' },
    from: { takes: pointTo('supplier'), inHeader: true, help: 'Who sends it.', example: 'from millwork' },
    lead: { takes: wait, inHeader: true, help: 'Time from order to delivery.', example: 'lead 9 weeks' },
    ordered: { takes: date, inHeader: true, help: 'The day it was ordered.', example: 'ordered 2027-04-19' },
    'measured after': {
      takes: listOf(step),
      inHeader: true,
      help: 'The lead starts when this is done.',
      example: 'measured after frame-check',
    },
    arrives: {
      takes: fields({ before: followedBy(wait, 'before'), step: pointTo('step') }),
      help: 'So long before a step.',
      example: 'arrives 5 days before plank',
    },
    ...loads,
    ...waiting,
    ...paying,
  }),
});

export const phase = kind({
  word: 'phase',
  space: 'step',
  help: 'Steps that belong together; in order, each waits for the one above.',
  example: 'phase foundation "Foundation" in order after permit-issued',
  name: 'required',
  facts: {},
  declares: ['task', 'inspection', 'milestone', 'delivery'],
  properties: properties({
    'in order': { takes: flag, inHeader: true, help: 'Each step waits for the one above.', example: 'in order' },
    after: { takes: listOf(step), inHeader: true, help: 'Holds for every step in it.', example: 'after permit-issued' },
  }),
});

export const progress = kind({
  word: 'progress',
  help: 'How it stood on a day.',
  example: 'progress 2027-06-18',
  name: 'none',
  takes: date,
  facts: {},
  properties: properties({
    rain: { takes: dates, repeats: true, help: 'Days lost to weather.', example: 'rain 2027-06-14..2027-06-15' },
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
      now: { takes: date, help: 'The day it is now expected.', example: 'now 2027-07-12' },
      'not before': { takes: date, help: 'Not before this day.', example: 'not before 2027-06-21' },
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
