// Steps of a stair as walked: what finishes add to and take from its risers, and what its risers leave of the rise.
import { form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Stair } from '#model/model';
import { type FactTable, number } from './tables.ts';

const difference = form(
  'greatest riser less the least',
  'of the lowest (+ tread − floor below), those between, and the highest (+ floor above − tread)',
  (first = 0, between = 0, last = 0, below = 0, treads = 0, above = 0) => {
    const walked = [first + treads - below, between, last + above - treads];
    return Math.max(...walked) - Math.min(...walked);
  },
);
const asFramed = form('greatest riser less the least', 'the lowest and those above it', (first = 0, between = 0) =>
  Math.abs(first - between),
);
const others = form(
  'riser',
  '(rise − lowest) ÷ (risers − 1)',
  (rise = 0, first = 0, risers = 2) => (rise - first) / (risers - 1),
);
const leftOver = form('rise that the risers leave', 'rise − risers × riser, either way', (rise = 0, risers = 0, riser = 0) =>
  Math.abs(rise - risers * riser),
);

function riserDifference(stair: Stair): Quantity | undefined {
  const { first, finish, rise, riser } = stair.given;
  const { risers, riser: each } = factsOf(stair);
  if (first === undefined && finish === undefined) return undefined;
  const between =
    riser?.value ??
    (first !== undefined && rise !== undefined && risers !== undefined && risers.value > 1
      ? measure('length', others, rise.value, first.value, risers)
      : each);
  if (between === undefined) return undefined;
  const lowest = first?.value ?? between;
  if (finish === undefined) return measure('length', asFramed, lowest, between);
  const { below, treads, above } = finish.value;
  return measure('length', difference, lowest, between, between, below, treads, above);
}

const treadsDiffer = form('deepest tread less the usual', 'deepest − usual, either way', (most = 0, usual = 0) =>
  Math.abs(most - usual),
);

export const factsOfStair: FactTable<Stair> = {
  lines: {
    'riser-difference': 'finish',
    'rise-left': 'rise',
    'tread-difference': 'tread-most',
    'clear-below-rails': 'below-rails',
    'flight-rise': 'rise',
    'turn-landing': 'turn',
    'turn-landing-width': 'turn',
    'winder-tread': 'turn',
  },
  own: {
    'tread-difference': ({ given: { tread, 'tread-most': most } }) =>
      tread === undefined || most === undefined ? undefined : measure('length', treadsDiffer, most.value, tread.value),
    'clear-below-rails': ({ given }) => given['below-rails']?.value.clear,
    // Nobody who names one width below rails means none.
    rails: ({ given }) => number('rails', given['below-rails']?.value.rails ?? 1),
    'riser-difference': riserDifference,
    'rise-left': ({ given }) => {
      const { rise, risers, riser, first } = given;
      if (rise === undefined || risers === undefined || riser === undefined || first !== undefined) return undefined;
      return measure('length', leftOver, rise.value, number('risers', risers.value), riser.value);
    },
  },
};
