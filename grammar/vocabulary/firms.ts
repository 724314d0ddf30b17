// Rows for companies and what is hired or bought from them: firms, suppliers, machines.
import { loading } from './loads.ts';
import { standsBetween } from './times.ts';
import { count, date, either, kind, listOf, phrase, pointTo, properties, quantity, text, workTime } from './types.ts';

const money = quantity('money');

export const firm = kind({
  word: 'firm',
  help: 'A company that does one trade or several.',
  example: 'firm ruiz "Ruiz Plumbing" does plumbing',
  name: 'required',
  facts: {},
  properties: properties({
    does: { takes: listOf(pointTo('trade')), inHeader: true, help: 'The trades it does.', example: 'does plumbing' },
    phone: { takes: text, help: 'Whom to ring.', example: 'phone "555-0142"' },
    crews: { takes: count, inHeader: true, help: 'How many crews it has for all its trades.', example: 'crews 1' },
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
    'of them': {
      takes: count,
      inHeader: true,
      trailing: true,
      help: 'How many there are; one unless said.',
      example: '2 of them',
    },
    stands: {
      takes: standsBetween,
      help: 'On site from one step to another.',
      example: 'stands from clear to co',
    },
  }),
});
