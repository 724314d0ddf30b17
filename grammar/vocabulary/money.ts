// Rows for money: prices, bids, funds, payments, changes.
import {
  anyName,
  date,
  either,
  fields,
  flag,
  kind,
  listOf,
  oneOf,
  optional,
  phrase,
  pointTo,
  priced,
  properties,
  quantity,
  wait,
  workTime,
} from './types.ts';

const money = quantity('money');
const unitPrice = either(
  money,
  quantity('money/area'),
  quantity('money/length'),
  quantity('money/volume'),
  quantity('money/weight'),
  quantity('money/time'),
  quantity('money/number'),
);
const share = fields({ share: quantity('number'), at: phrase('at', pointTo('step')) });

export const price = kind({
  word: 'price',
  help: 'What goods, or a kind of work, cost. Invented prices should say so.',
  example: 'price osb 7/16" $14.20/sheet from yard',
  name: 'none',
  takes: fields({
    of: priced,
    money: unitPrice,
    package: optional(phrase('per', anyName)),
    basis: optional(oneOf('each', 'lump', 'laid')),
  }),
  facts: {},
  properties: properties({
    from: { takes: pointTo('supplier'), inHeader: true, help: 'Who sells at it.', example: 'from yard' },
    by: { takes: pointTo('trade'), inHeader: true, help: 'The trade that works at it.', example: 'by plumbing' },
    on: { takes: date, inHeader: true, help: 'The day it was given.', example: 'on 2027-02-20' },
    until: { takes: date, inHeader: true, help: 'The last day it holds.', example: 'until 2027-06-30' },
    'short-load': {
      takes: either(quantity('money/volume'), money),
      inHeader: true,
      help: 'What the plant asks for a truck below its least load: for each yard short of it, or each truck.',
      example: 'short-load $75/cy',
    },
    chosen: { takes: flag, inHeader: true, help: 'Counts, though another is lower.', example: 'chosen' },
  }),
});

export const allowance = kind({
  word: 'allowance',
  help: 'Money kept for goods not yet chosen.',
  example: 'allowance cabinets $8,500',
  name: 'required',
  takes: money,
  facts: {},
  properties: properties({
    for: { takes: listOf(anyName), inHeader: true, help: 'What it stands for.', example: 'for base-cabinet' },
  }),
});

export const bid = kind({
  word: 'bid',
  help: 'What a firm asks for a trade’s work.',
  example: 'bid ruiz-bid by ruiz for plumbing $21,900, accepted 2027-03-02, with materials',
  name: 'required',
  facts: {},
  properties: properties({
    by: { takes: pointTo('firm'), inHeader: true, help: 'The firm.', example: 'by ruiz' },
    for: {
      takes: fields({ trades: listOf(pointTo('trade')), money }),
      inHeader: true,
      help: 'The trade, and the price.',
      example: 'for plumbing $21,900',
    },
    on: { takes: date, inHeader: true, help: 'The day it was given.', example: 'on 2027-02-11' },
    'good until': { takes: date, inHeader: true, help: 'The last day it holds.', example: 'good until 2027-06-30' },
    accepted: { takes: date, inHeader: true, help: 'The day it was accepted.', example: 'accepted 2027-03-02' },
    'with materials': { takes: flag, inHeader: true, help: 'Materials are in it.', example: 'with materials' },
    'labour only': { takes: flag, inHeader: true, help: 'Materials are not in it.', example: 'labour only' },
    includes: { takes: listOf(anyName), help: 'The work it covers.', example: 'includes rough-drains, rough-water' },
    'leaves out': { takes: listOf(anyName), help: 'What it does not cover.', example: 'leaves out trench-and-lay' },
    pays: { takes: listOf(share), help: 'When it is paid.', example: 'pays 30% at plumbing-rough' },
    holds: {
      takes: fields({ share: quantity('number'), for: phrase('for', wait) }),
      help: 'Held back.',
      example: 'holds 10% for 30 days',
    },
  }),
});

export const savings = kind({
  word: 'money',
  help: 'Money of one’s own.',
  example: 'money savings $78,000',
  name: 'required',
  takes: money,
  facts: {},
  properties: properties({}),
});
export const loan = kind({
  word: 'loan',
  help: 'A loan and its draws.',
  example: 'loan bank $165,000 at 8.25%',
  name: 'required',
  takes: money,
  facts: {},
  properties: properties({
    at: { takes: quantity('number'), inHeader: true, help: 'Interest a year.', example: 'at 8.25%' },
    from: { takes: pointTo('step'), inHeader: true, help: 'The step it opens with.', example: 'from loan-closed' },
    draw: { takes: share, repeats: true, help: 'A part paid out at a step.', example: 'draw 15% at strip-walls' },
  }),
});
export const paid = kind({
  word: 'paid',
  help: 'Money that has left.',
  example: 'paid ruiz $2,800 on 2027-05-21 for co-2',
  name: 'none',
  takes: fields({ who: anyName, money }),
  facts: {},
  properties: properties({
    on: { takes: date, inHeader: true, help: 'The day.', example: 'on 2027-05-21' },
    for: { takes: listOf(anyName), inHeader: true, help: 'What for.', example: 'for footings' },
    waiver: {
      takes: oneOf('conditional', 'final'),
      inHeader: true,
      help: 'Lien waiver that came with it.',
      example: 'waiver conditional',
    },
  }),
});
export const invoice = kind({
  word: 'invoice',
  help: 'Money asked for.',
  example: 'invoice anders $8,650 on 2027-05-28, due in 30 days',
  name: 'none',
  takes: fields({ who: anyName, money }),
  facts: {},
  properties: properties({
    on: { takes: date, inHeader: true, help: 'The day.', example: 'on 2027-05-28' },
    for: { takes: listOf(anyName), inHeader: true, help: 'What for.', example: 'for footings' },
    'due in': { takes: wait, inHeader: true, help: 'How long until it must be paid.', example: 'due in 30 days' },
  }),
});
export const alternate = kind({
  word: 'alternate',
  help: 'Another way of doing a thing, to be decided.',
  example: 'alternate shingles "Shingles" instead of metal-roof, decide by 2027-05-14',
  name: 'required',
  facts: {},
  properties: properties({
    'instead of': { takes: anyName, inHeader: true, help: 'What it stands in for.', example: 'instead of metal-roof' },
    'decide by': { takes: date, inHeader: true, help: 'Last day to decide.', example: 'decide by 2027-05-14' },
    chosen: { takes: date, inHeader: true, help: 'The day it was chosen.', example: 'chosen 2027-05-10' },
  }),
});
export const change = kind({
  word: 'change',
  help: 'A change of the job, with money and days.',
  example: 'change co-1 "Window over the sink" by me on 2027-05-03 adds $840, 1d to frame-walls',
  name: 'required',
  facts: {},
  properties: properties({
    by: { takes: anyName, inHeader: true, help: 'Who asks for it.', example: 'by me' },
    on: { takes: date, inHeader: true, help: 'The day.', example: 'on 2027-05-03' },
    adds: {
      takes: fields({ money, time: optional(phrase(',', workTime)), to: optional(phrase('to', pointTo('step'))) }),
      inHeader: true,
      help: 'Money and time it adds.',
      example: 'adds $840, 1d to frame-walls',
    },
    approved: { takes: date, inHeader: true, help: 'The day it was approved.', example: 'approved 2027-05-13' },
  }),
});
