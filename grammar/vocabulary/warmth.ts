// What a plan says of warmth: hot water, air through cracks, how warm it is inside and out.
import { count, fields, followedBy, listOf, oneOf, optional, phrase, properties, quantity } from './types.ts';

export const warmth = properties({
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
  'hot-water': {
    takes: fields({
      flow: quantity('flow'),
      from: phrase('from', quantity('temperature')),
      to: phrase('to', quantity('temperature')),
    }),
    help: 'What runs hot at the same time, how cold the water comes in and how warm it goes out: by which heaters without a tank are reckoned.',
    example: 'hot-water 3.25 gpm from 50 F to 120 F',
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
    deeper: properties({
      earth: {
        takes: quantity('temperature'),
        help: 'The surface of the ground in the coldest weeks, by which basements are reckoned.',
        example: 'earth 32 F',
      },
    }),
  },
  'strip-heat': {
    takes: oneOf('locked-out'),
    help: 'A control keeps a heat pump and its strip heat from running together, so the service need not carry both.',
    example: 'strip-heat locked-out',
  },
  infiltration: {
    takes: quantity('number'),
    help: 'Air changes an hour through its cracks in winter.',
    example: 'infiltration 0.35',
  },
});
