// Things declared that nothing uses: a value, a type of window, a trade, a supplier. Mostly a misspelled use, or a leftover.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import { isReadBy } from '#model/elements';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const notUsed = findingSort<[kind: string, name: string, by: string]>({
  code: 'names/unused',
  severity: 'note',
  say: (kind, name, by) => `The ${kind === 'let' ? 'value' : kind} "${name}" is used by nothing: ${by}. Use it, or take it out.`,
});

/** Kinds that are there to be used, and what would use them. */
const USES = {
  let: 'no value is computed from it',
  window: 'no room has one',
  door: 'no room has one',
  assembly: 'no level, wall, roof or layer is made of it',
  trade: 'no step is done by it',
  supplier: 'no price and no delivery comes from it',
  machine: 'no step needs it',
  firm: 'it does no trade, has no bid and was not paid',
} as const;
type UsedKind = keyof typeof USES;

export const unused: Check = {
  code: 'names/unused',
  gathers: true,
  about: 'A value, window, door, assembly, trade, supplier, machine or firm should be used somewhere in the plan.',
  wrong: `let clear = 8'\n`,
  right: `let clear = 8'\nlevel main\n  height clear\n`,
  run: ({ model }) => {
    const findings: Finding[] = [];
    for (const kind of Object.keys(USES) as UsedKind[]) {
      for (const thing of model.list(kind)) {
        // What overrides a row of the library is meant for those who use the row.
        if (model.library.first.has(`${kind}/${thing.name}`) || isUsed(thing, model)) continue;
        if (model.names.bySlot.get(thing.slot)?.declaration.name === '') continue;
        findings.push(finding(notUsed, thing.place, kind, thing.name, USES[kind]));
      }
    }
    return findings;
  },
};

function isUsed(thing: ElementOf<UsedKind>, model: Model): boolean {
  switch (thing.kind) {
    case 'let':
      return isReadBy(thing.slot, () => true, model.now);
    case 'window':
    case 'door':
    case 'assembly':
      // A price does not put goods into the house.
      return isReadBy(thing.slot, (kind) => kind !== 'price', model.now);
    case 'trade':
      return at(model.list('task'), byTrade).has(thing.slot) || at(model.list('inspection'), byTrade).has(thing.slot);
    case 'supplier':
      return at(model.list('price'), fromSupplier).has(thing.slot) || at(model.list('delivery'), fromSupplier).has(thing.slot);
    case 'machine':
      return thing.given.stands !== undefined || at(model.list('task'), needed).has(thing.slot);
    case 'firm':
      return (
        thing.given.does !== undefined ||
        model.list('bid').some(({ given }) => given.by?.value === thing.slot) ||
        [...model.list('paid'), ...model.list('invoice')].some(({ takes }) => takes?.who.name === thing.name)
      );
  }
}

const byTrade = keptFor((list: readonly ElementOf<'task' | 'inspection'>[]): ReadonlySet<Slot> => {
  const trades = new Set<Slot>();
  for (const { given } of list) if (given.by !== undefined) trades.add(given.by.value);
  return trades;
});
const fromSupplier = keptFor((list: readonly ElementOf<'price' | 'delivery'>[]): ReadonlySet<Slot> => {
  const suppliers = new Set<Slot>();
  for (const { given } of list) if (given.from !== undefined) suppliers.add(given.from.value);
  return suppliers;
});
const needed = keptFor((list: readonly ElementOf<'task'>[]): ReadonlySet<Slot> => {
  const machines = new Set<Slot>();
  for (const { given } of list) for (const { value } of given.needs?.value ?? NO_NEEDS) machines.add(value.machine);
  return machines;
});
const NO_NEEDS: readonly never[] = [];

function at<E>(list: readonly E[], of: (list: readonly E[]) => ReadonlySet<Slot>): ReadonlySet<Slot> {
  return list.length === 0 ? NONE : of(list);
}
const NONE: ReadonlySet<Slot> = new Set();
