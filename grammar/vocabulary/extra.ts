// The row for goods that somebody has counted by hand.
import { count, either, fields, goods, kind, optional, phrase, properties, quantity } from './types.ts';

export const extra = kind({
  word: 'extra',
  help: 'Goods counted by hand, where no part of the house gives them; their waste comes on top.',
  example: `extra cleats "Cleats in the store" 8 batten 1x4, each 14'`,
  name: 'required',
  takes: fields({
    amount: either(count, quantity('area'), quantity('length'), quantity('volume'), quantity('weight')),
    of: goods,
    each: optional(phrase(', each', quantity('length'))),
  }),
  facts: {},
  properties: properties({}),
});
