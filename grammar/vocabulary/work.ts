// Rows for who does what, and when: the plan, trades, steps.
import { loads } from './loads.ts';
import { planRisk, tradeRisk, visitRisk } from './risk.ts';
import { editions } from './rules.ts';
import { hoursOfWeek, ownHours, planWeather, standsBetween, stepWindows } from './times.ts';
import {
  anyName,
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
import { warmth } from './warmth.ts';

const money = quantity('money');

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
        recovers: optional(phrase(', recovers', quantity('number'))),
        standard: optional(phrase(', by', code)),
      }),
      help: 'Outside air for the whole house, the share of time the fan runs, the share of heat that is recovered from the air that leaves, and the standard if it is not the plan’s code.',
      example: 'fresh-air 100 cfm, running 50%, recovers 75%',
    },
    'leakage-credit': {
      takes: quantity('flow'),
      help: 'Outside air that tested leakage counts for, where ASHRAE 62.2 lets it.',
      example: 'leakage-credit 30 cfm',
    },
    ...warmth,
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
    ...ownHours,
    ...planWeather,
    ...planRisk,
    call: {
      takes: followedBy(wait, 'ahead'),
      help: 'How long before their first day trades are called, where they do not say it themselves.',
      example: 'call 1 week ahead',
    },
    'begun-early': {
      takes: oneOf('waits', 'continues'),
      help: 'What is left of a step that was begun before what it follows was done: it waits for that (unless said), or continues.',
      example: 'begun-early continues',
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
    ...ownHours,
    away: { takes: listOf(dates), repeats: true, help: 'Days they are not there.', example: 'away 2027-05-24..2027-05-28' },
    sees: { takes: listOf(weekdays), help: 'Days an inspecting body comes.', example: 'sees mon, wed, fri' },
    ...tradeRisk,
    call: {
      takes: followedBy(wait, 'ahead'),
      inHeader: true,
      help: 'How long before they must be called.',
      example: 'call 2 weeks ahead',
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
      help: 'How long it takes: given beats computed. A range says from where to where; dates go by what is likely, else by its middle.',
      example: 'takes 3d..6d likely 4d',
    },
    'faster by': {
      takes: fields({ time: workTime, price: phrase('for', money), each: optional(oneOf('each')) }),
      inHeader: true,
      help: 'By how much it can be done sooner, and what that costs: for all of it at once, or for each day (overtime, a second crew).',
      example: 'faster by 2d for $300 each',
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
    stands: {
      takes: standsBetween,
      inHeader: true,
      help: 'Stands from the start of one step to the end of another, and takes as long as they do.',
      example: 'stands from lap to trim-coat',
    },
    ...stepWindows,
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
    ...visitRisk,
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
    ...stepWindows,
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
    lead: {
      takes: wait,
      inHeader: true,
      help: 'Time from order to delivery. Of a range, dates go by its middle.',
      example: 'lead 9 weeks',
    },
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
