// Properties that say what is not certain: how far lengths stray, how often visits fail, how many days the weather takes.
import { months } from './common.ts';
import { fields, listOf, optional, phrase, properties, quantity } from './types.ts';

const spreadOfLengths = fields({ share: quantity('number'), likely: optional(phrase('likely', quantity('number'))) });

/** Of the plan. */
export const planRisk = properties({
  'bad-weather': {
    takes: listOf(fields({ month: months, share: quantity('number') })),
    help: 'Chance that a day of outside work is lost, by month, for the risk; else the days of weather over those of the month.',
    example: 'bad-weather mar 25%, apr 15%',
  },
  lengths: {
    takes: spreadOfLengths,
    help: 'How far lengths without a range of their own may stray, for the risk.',
    example: 'lengths 85%..140% likely 100%',
  },
});

/** Of a trade; of an inspecting body. */
export const tradeRisk = properties({
  lengths: {
    takes: spreadOfLengths,
    help: 'How far its lengths may stray, for the risk, where not as the plan says.',
    example: 'lengths 90%..120%',
  },
  fails: {
    takes: quantity('number'),
    help: 'How often a visit of this inspecting body fails, for the risk.',
    example: 'fails 15%',
  },
});

/** Of one visit. */
export const visitRisk = properties({
  fails: {
    takes: quantity('number'),
    inHeader: true,
    help: 'How often such a visit fails, for the risk: it then comes again, with its notice.',
    example: 'fails 20%',
  },
});
