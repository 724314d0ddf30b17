// Rows for building knowledge: materials, kinds of work, states, holidays. The built-in
// library is written with them, and a plan may use every one.
import { months, roomUse, storage } from './common.ts';
import { counting, oneUnit } from './conventions.ts';
import { measures } from './measures.ts';
import {
  anyName,
  by,
  code,
  count,
  either,
  fields,
  flag,
  followedBy,
  goods,
  kind,
  listOf,
  literal,
  nameOf,
  oneOf,
  optional,
  phrase,
  properties,
  quantity,
  text,
  wait,
  weekdays,
} from './types.ts';

const length = quantity('length');
// A bare number is a number of things before it is anything else.
const contents = either(
  by(length, length),
  quantity('number'),
  quantity('area'),
  quantity('length'),
  quantity('volume'),
  quantity('weight'),
);
const measureWord = oneOf(...measures);

const physical = properties({
  insulates: {
    takes: either(quantity('resistance/length'), quantity('resistance')),
    inHeader: true,
    help: 'Its R, whole or per inch.',
    example: 'insulates R-3.5 per inch',
  },
  weighs: {
    takes: either(quantity('weight/area'), quantity('weight/length'), quantity('weight/volume'), quantity('weight')),
    inHeader: true,
    help: 'What it weighs.',
    example: 'weighs 2.2 lb/sf',
  },
  actual: { takes: by(length, length), inHeader: true, help: 'True size of a nominal one.', example: 'actual 1 1/2" x 5 1/2"' },
});
/** How it is piled on the ground. */
const piled = properties({
  lies: {
    takes: fields({ amount: either(count, oneUnit), plan: phrase('on', by(length, length)) }),
    help: 'How much of it, as it is bought, lies in one bundle or heap, and on what ground.',
    example: "lies 60 on 4' x 8'",
  },
});
/** What is made to what stands, and not to the drawing. */
const madeTo = properties({
  'measured after': {
    takes: listOf(nameOf('work')),
    help: 'It is made to measure: the works that must stand before anybody measures for it.',
    example: 'measured after sheathe-roof',
  },
});
/** Where a row belongs among the elements of a building. */
const classified = properties({
  element: {
    takes: fields({
      of: nameOf('element'),
      by: optional(phrase('by', listOf(measureWord))),
      part: optional(phrase('in', oneOf('ceiling'))),
    }),
    repeats: true,
    help: 'The element of the building it belongs to; with a measure or the ceiling, what is counted by that or there.',
    example: 'element B3010 by ceiling-insulation-area',
  },
});
const packaged = properties({
  'sold by': {
    takes: fields({ package: anyName, holds: optional(phrase('of', contents)) }),
    repeats: true,
    help: 'A package and what it holds; the first is the usual one.',
    example: "sold by sheet of 4' x 8'",
  },
});

export const material = kind({
  word: 'material',
  space: 'goods',
  help: 'Something bought: package, waste, how it is laid.',
  example: 'material drywall "Drywall" laid sheets',
  name: 'required',
  facts: {},
  properties: properties({
    laid: {
      takes: oneOf(
        'sheets',
        'framing',
        'courses',
        'membrane',
        'batts',
        'loose',
        'panels',
        'boards',
        'coats',
        'tiles',
        'poured',
        'bulk',
        'pieces',
        'rolls',
        'strip',
      ),
      inHeader: true,
      help: 'How it goes in, which sets how it is measured.',
      example: 'laid sheets',
    },
    also: { takes: listOf(anyName), repeats: true, help: 'Second names.', example: 'also plasterboard, gypsum-board' },
    ...packaged,
    ...counting,
    most: {
      takes: fields({ amount: oneUnit, instead: optional(phrase(',', text)) }),
      help: 'More of it than this is not sensibly bought so; and what is.',
      example: 'most 2 cy, "ready-mixed concrete"',
    },
    load: {
      takes: quantity('volume'),
      repeats: true,
      help: 'What a truck of it carries, where it comes by the truck; one in feet and one in metres.',
      example: 'load 10 cy',
    },
    'least-load': {
      takes: quantity('volume'),
      repeats: true,
      help: 'A truck with less than this is a short load, for which plants charge; one in feet and one in metres.',
      example: 'least-load 4 cy',
    },
    coats: { takes: count, help: 'Coats on new work.', example: 'coats 2' },
    'under it': { takes: nameOf('material'), help: 'A coat that goes on first.', example: 'under it primer' },
    'serves as': {
      takes: oneOf('board', 'finish floor', 'lining', 'wall finish', 'insulation', 'masonry veneer'),
      help: 'What a room’s word replaces; insulation that no framing interrupts; or brick and stone that only face a wall.',
      example: 'serves as board',
    },
    'for-rooms': {
      takes: listOf(roomUse),
      help: 'Board made for rooms of these uses: an inside wall that has it on one side turns that side to them.',
      example: 'for-rooms bathing, laundry',
    },
    thick: { takes: length, help: 'Its thickness.', example: 'thick 3/4"' },
    face: { takes: length, help: 'Width one course or board covers.', example: 'face 5 1/8"' },
    'roll-width': {
      takes: length,
      repeats: true,
      help: 'How wide a roll is that lengths are cut from; one in feet and one in metres.',
      example: "roll-width 12'",
    },
    joint: { takes: length, help: 'Between two tiles.', example: 'joint 1/8"' },
    framing: {
      takes: quantity('number'),
      help: 'Share of a wall that it takes up as walls are usually built, where the wall does not say.',
      example: 'framing 25%',
    },
    effective: {
      takes: fields({
        filling: quantity('resistance'),
        counts: phrase('as', quantity('resistance')),
        at: optional(phrase('at', followedBy(length, 'oc'))),
      }),
      repeats: true,
      help: 'What a filling between such framing is worth where heat goes round it through metal.',
      example: 'effective R-13 as R-6 at 16" oc',
    },
    mass: {
      takes: flag,
      inHeader: true,
      help: 'Heavy enough to hold heat: concrete, block, solid brick, logs.',
      example: 'mass',
    },
    density: { takes: quantity('weight/volume'), help: 'Weight of its volume.', example: 'density 4,050 lb/cy' },
    ...storage,
    ...piled,
    ...madeTo,
    ...classified,
    ...physical,
    size: {
      takes: literal,
      repeats: true,
      help: 'A size it comes in.',
      example: 'size 2x6 actual 1 1/2" x 5 1/2"',
      deeper: properties({
        ...physical,
        ...packaged,
        between: {
          takes: followedBy(length, 'oc'),
          help: 'The spacing of framing that it is made to fill.',
          example: 'between 16" oc',
        },
      }),
    },
  }),
});

export const item = kind({
  word: 'item',
  space: 'goods',
  help: 'Something measured that is not bought.',
  example: 'item excavation "Earth dug" by volume',
  name: 'required',
  facts: {},
  properties: properties({
    by: {
      takes: oneOf('volume', 'area', 'length', 'number', 'count'),
      inHeader: true,
      help: 'How it is measured.',
      example: 'by volume',
    },
    swells: { takes: quantity('number'), help: 'How much it grows when dug.', example: 'swells 25%' },
    shrinks: { takes: phrase('to', quantity('number')), help: 'What is left of it when compacted.', example: 'shrinks to 95%' },
    slope: {
      takes: fields({ soil: code, slope: quantity('slope') }),
      repeats: true,
      help: 'How steep a soil may stand, level to upright.',
      example: 'slope type-C 1.5:1',
    },
    upright: {
      takes: phrase('to', length),
      help: 'How deep its sides may stand upright; from there they are sloped, shored or shielded.',
      example: "upright to 5'",
    },
    load: { takes: quantity('volume'), help: 'What a truck carries.', example: 'load 10 cy' },
    ...classified,
  }),
});

export const fixture = kind({
  word: 'fixture',
  space: 'goods',
  help: 'A thing set and connected: fixture, device, cabinet, appliance.',
  example: 'fixture toilet "Toilet"',
  name: 'required',
  facts: {},
  properties: properties({
    also: { takes: listOf(anyName), repeats: true, help: 'Second names.', example: 'also water-closet' },
    ...storage,
    ...madeTo,
    ...classified,
    'set by': { takes: listOf(nameOf('work')), help: 'The work that sets it.', example: 'set by set-fixtures' },
    'roughed by': { takes: listOf(nameOf('work')), help: 'The work that prepares for it.', example: 'roughed by rough-drains' },
    counted: {
      takes: oneOf('as fixture', 'as device', 'as cabinet'),
      help: 'Which count it belongs to.',
      example: 'counted as device',
    },
    uses: {
      takes: fields({
        amount: oneUnit,
        each: optional(oneOf('each')),
        goods: phrase('of', goods),
        by: phrase('by', nameOf('work')),
      }),
      repeats: true,
      help: 'What one of it takes in its own size, and the work that brings it, in place of what that work uses for any; one in feet and one in metres.',
      example: 'uses 15 ft of waste-pipe 3" by rough-drains',
    },
    drains: {
      takes: quantity('number'),
      help: 'Units by which pipes of drains are sized.',
      example: 'drains 3',
    },
    'serves as': {
      takes: listOf(
        oneOf(
          'smoke alarm',
          'co alarm',
          'flame',
          'outlet',
          'counter outlet',
          'outside outlet',
          'light',
          'exhaust',
          'steady exhaust',
          'shower',
          'service',
          'tankless heater',
          'appliance',
          'range',
          'dryer',
          'heat pump',
          'heat',
          'cooling',
          'counter',
        ),
      ),
      help: 'What code minimums count it as; flame is whatever burns fuel.',
      example: 'serves as smoke alarm, co alarm',
    },
  }),
});

export const work = kind({
  word: 'work',
  help: 'A kind of work: scope, what it installs, labour.',
  example: 'work hang-board "Hang drywall"',
  name: 'required',
  facts: {},
  properties: properties({
    scope: {
      takes: oneOf('in room', 'on level', 'per element', 'for house'),
      inHeader: true,
      help: 'What one part of it belongs to.',
      example: 'scope in room',
    },
    installs: {
      takes: fields({ goods: listOf(anyName), by: phrase('by', listOf(measureWord)) }),
      repeats: true,
      help: 'What it installs, and by which measure.',
      example: 'installs drywall, moisture-board by board-area',
    },
    labour: {
      takes: fields({
        rate: either(
          quantity('time/area'),
          quantity('time/length'),
          quantity('time/volume'),
          quantity('time/weight'),
          quantity('time/number'),
          quantity('time'),
        ),
        each: optional(oneOf('each')),
        by: optional(phrase('by', measureWord)),
      }),
      repeats: true,
      help: 'Person-hours for a unit of what it installs.',
      example: 'labour 0.017 h/sf',
    },
    uses: {
      takes: fields({
        goods: nameOf('goods'),
        amount: oneUnit,
        each: optional(oneOf('each')),
        per: phrase('for each', fields({ amount: oneUnit, each: optional(oneOf('each')), begun: optional(oneOf('begun')) })),
        by: optional(phrase('by', measureWord)),
      }),
      repeats: true,
      help: 'What else it uses up; for each whole or begun amount where it says so.',
      example: 'uses drywall-screw 1,000 each for each 1,000 sf',
      deeper: properties({
        'only for': {
          takes: listOf(anyName),
          help: 'Only with these goods, openings of this sort, or doors of rooms of this use.',
          example: 'only for plank, strip-floor',
        },
        'except for': {
          takes: listOf(anyName),
          help: 'Not with these goods, nor openings of this sort, nor doors of rooms of this use.',
          example: 'except for bifold, pocket',
        },
      }),
    },
    trade: { takes: code, help: 'Who usually does it.', example: 'trade drywall' },
    ...classified,
    exposed: {
      takes: phrase('to', listOf(oneOf('rain', 'frost', 'wind', 'heat'))),
      help: 'Weather that stops it.',
      example: 'exposed to rain, frost',
    },
    above: {
      takes: fields({ least: quantity('temperature'), after: optional(phrase(',', followedBy(wait, 'after'))) }),
      help: 'Not done colder than this, nor left so for as long after.',
      example: 'above 40 F, 2 days after',
    },
    wind: {
      takes: phrase('under', quantity('speed')),
      help: 'Not done in more wind than this.',
      example: 'wind under 25 mph',
    },
    dry: { takes: followedBy(wait, 'after'), help: 'How long after it rain spoils it.', example: 'dry 24h after' },
    'kept warm by': {
      takes: listOf(anyName),
      help: 'Work before it with which it may be done colder.',
      example: 'kept warm by ready-cold-cover',
    },
    hides: { takes: listOf(anyName), help: 'Work it covers.', example: 'hides rough-wiring' },
    hazard: {
      takes: text,
      repeats: true,
      help: 'What can hurt someone, the usual measure, whom to ask.',
      example: 'hazard "Falls: …"',
    },
  }),
});

export const element = kind({
  word: 'element',
  help: 'A part of a building by what it does, whatever it is made of: an element of UNIFORMAT II.',
  example: 'element B2010 "Exterior Walls"',
  name: 'required',
  facts: {},
  properties: properties({}),
});

export const state = kind({
  word: 'state',
  help: 'A state of the house, made by kinds of work.',
  example: 'state dry "Dry"',
  name: 'required',
  facts: {},
  properties: properties({
    'made by': {
      takes: listOf(nameOf('work')),
      help: 'The works that make it.',
      example: 'made by lay-underlayment, set-windows',
    },
  }),
});

export const holiday = kind({
  word: 'holiday',
  help: 'A public holiday.',
  example: 'holiday independence-day "Independence Day" in US',
  name: 'required',
  facts: {},
  properties: properties({
    in: {
      takes: listOf(code),
      inHeader: true,
      help: 'The countries (ISO 3166-1) or regions (ISO 3166-2) that keep it.',
      example: 'in CA-ON, CA-BC',
    },
    on: {
      takes: either(
        fields({
          month: months,
          day: count,
          observed: optional(phrase(', observed', oneOf('nearest weekday', 'next monday', 'two days later'))),
        }),
        fields({ wait, side: oneOf('before easter', 'after easter') }),
        fields({ weekday: weekdays, side: oneOf('before', 'after'), month: months, day: count }),
        fields({ nth: either(code, oneOf('last')), weekday: weekdays, of: phrase('of', months) }),
      ),
      help: 'The day each year.',
      example: 'on jul 4, observed nearest weekday',
    },
    since: { takes: count, inHeader: true, help: 'First year it was kept.', example: 'since 2021' },
    until: { takes: count, inHeader: true, help: 'Last year it is kept.', example: 'until 2025' },
  }),
});
