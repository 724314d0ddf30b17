// Rows for working time that several kinds take: hours of a month or a date, weather, windows of dates, what stands between
// two steps; and the row of a climate.
import { months } from './common.ts';
import {
  clockSpan,
  count,
  date,
  dates,
  either,
  fields,
  kind,
  listOf,
  nameOf,
  oneOf,
  optional,
  phrase,
  pointTo,
  properties,
  quantity,
  weekdays,
  workTime,
  written,
} from './types.ts';

/** Days of the week with their hours. */
export const hoursOfWeek = listOf(fields({ days: weekdays, hours: either(clockSpan, workTime) }));
/** Kinds of weather that stop work outside. */
export const weathers = oneOf('rain', 'frost', 'wind', 'heat');

export const ownHours = properties({
  hours: {
    takes: listOf(fields({ when: either(months, dates), hours: either(clockSpan, workTime) })),
    help: 'Hours of the working days of a month, or of a date, where they are others: winter, a half day, a Saturday.',
    example: 'hours dec 7:00-14:30, jan 6h, 2027-12-24 4h',
  },
});

const lostDays = listOf(fields({ month: months, lost: workTime, to: optional(weathers) }));
const usualLows = listOf(fields({ month: months, low: quantity('temperature') }));

export const planWeather = properties({
  weather: {
    takes: lostDays,
    help: 'Working days lost a month, outside work only; to one kind of weather where it says so.',
    example: 'weather mar 4d, apr 3d rain, jan 6d frost',
  },
  climate: {
    takes: nameOf('climate'),
    help: 'Whose table of days lost and of lows is used where the plan says none.',
    example: 'climate cold-inland',
  },
  lows: { takes: usualLows, help: 'The usual low of a month at night, outside.', example: 'lows dec 22 F, jan 16 F' },
  forecast: {
    takes: fields({
      days: dates,
      low: optional(written('temperature')),
      rain: optional(either(oneOf('rain'), phrase(',', oneOf('rain')))),
      wind: optional(either(phrase('wind', quantity('speed')), phrase(', wind', quantity('speed')))),
    }),
    repeats: true,
    help: 'What is told for days to come: the low, rain, the most wind.',
    example: 'forecast 2027-11-20..2027-11-22 19 F, wind 30 mph',
  },
});

/** Days lost, in the diary. */
export const lostToWeather = properties({
  rain: { takes: dates, repeats: true, help: 'Days lost to rain or snow.', example: 'rain 2027-06-14..2027-06-15' },
  frost: { takes: dates, repeats: true, help: 'Days lost to frost.', example: 'frost 2027-12-06' },
  wind: { takes: dates, repeats: true, help: 'Days lost to wind.', example: 'wind 2027-06-21' },
  heat: { takes: dates, repeats: true, help: 'Days lost to heat.', example: 'heat 2027-07-19..2027-07-20' },
});

/** When a step may be done, and on which days and hours. */
export const stepWindows = properties({
  works: {
    takes: hoursOfWeek,
    inHeader: true,
    help: 'Days and hours of this step alone, other than those of its trade.',
    example: 'works sat 7:00-12:00',
  },
  between: {
    takes: either(
      fields({ from: date, to: phrase('and', date) }),
      fields({
        from: fields({ month: months, day: count }),
        to: phrase('and', fields({ month: months, day: count })),
      }),
    ),
    inHeader: true,
    help: 'Only between these days, both included; each year where no year is given.',
    example: 'between apr 15 and oct 1',
  },
  'must start': {
    takes: date,
    inHeader: true,
    help: 'Begins on this day: not before, and what leads to it must be done.',
    example: 'must start 2027-06-21',
  },
});

/** From the start of one step to the end of another. */
export const standsBetween = fields({ from: phrase('from', pointTo('step')), to: phrase('to', pointTo('step')) });

export const climate = kind({
  word: 'climate',
  help: 'How many working days a month are lost to weather in a region, and how cold its nights are.',
  example: 'climate cold-inland "Cold winters, inland"',
  name: 'required',
  facts: {},
  properties: properties({
    weather: { takes: lostDays, help: 'Working days lost a month.', example: 'weather jan 8d frost, apr 4d rain' },
    lows: { takes: usualLows, help: 'The usual low of a month at night.', example: 'lows jan 16 F, feb 20 F' },
  }),
});
