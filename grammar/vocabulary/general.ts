// Rows that are about no part of the job: other files, values with a name, answers to findings.
import {
  anyName,
  anyQuantity,
  code,
  date,
  either,
  fields,
  kind,
  listOf,
  oneOf,
  optional,
  phrase,
  properties,
  text,
} from './types.ts';

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
