// A last truck that comes when whoever sends it has closed: what lacks then cannot be called for.
import { clock } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const closed = findingSort<[delivery: string, last: string, supplier: string, closes: string]>({
  code: 'deliveries/after-closing',
  severity: 'warning',
  say: (delivery, last, supplier, closes) =>
    `The last truck of "${delivery}" comes at ${last}, and "${supplier}" closes at ${closes}: if it runs short then, nobody sends the rest, and a pour stops at a cold joint or goes on from bags by night. Begin earlier, or agree that somebody stays until the last truck is placed.`,
});

export const afterClosing: Check = {
  code: 'deliveries/after-closing',
  about:
    'How much a pour lacks is known when its last truck is nearly empty. A plant must still be open then (`open`), when the last truck (`trucks`) has come.',
  wrong: `supplier plant open 6:00-16:30
trade concrete crew of 3
delivery mixers brings slab-concrete from plant
  trucks 15:00-17:00
task pour takes 1d by concrete after mixers
`,
  right: `supplier plant open 6:00-16:30
trade concrete crew of 3
delivery mixers brings slab-concrete from plant
  trucks 7:00-9:00
task pour takes 1d by concrete after mixers
`,
  reads: ({ model }) => [model.list('delivery'), model.list('supplier')],
  run: ({ model }) =>
    model.list('delivery').flatMap(({ name, given }): readonly Finding[] => {
      const supplier = given.from === undefined ? undefined : model.element(given.from.value);
      const closes = supplier?.kind === 'supplier' ? supplier.given.open?.value[1] : undefined;
      const last = given.trucks?.value[1];
      if (given.trucks === undefined || supplier === undefined || closes === undefined || last === undefined) return [];
      return last < closes ? [] : [finding(closed, given.trucks.place, name, clock(last), supplier.name, clock(closes))];
    }),
};
