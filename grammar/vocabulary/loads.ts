// Rows for what a delivery brings and when, and for the hours of whoever sends it.
import { oneUnit } from './conventions.ts';
import { anyName, clockSpan, fields, optional, properties, wait } from './types.ts';

/** Of a supplier. */
export const loading = properties({
  open: { takes: clockSpan, inHeader: true, help: 'Hours in which it loads trucks.', example: 'open 6:00-16:30' },
});

/** Of a delivery. */
export const loads = properties({
  amount: {
    takes: fields({ of: optional(anyName), amount: oneUnit }),
    repeats: true,
    help: 'How much of it is ordered, truck by truck; the goods named where it brings several.',
    example: 'amount concrete 9 cy',
  },
  trucks: { takes: clockSpan, help: 'When its first truck comes and when its last.', example: 'trucks 7:00-9:30' },
  keeps: { takes: wait, help: 'How long it may lie on site.', example: 'keeps 2 weeks' },
});
