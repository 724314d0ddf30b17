// What one fixture takes in its own size: pipe, cable and duct to it, its box or valve, and the work that brings them.
import { form, measure, type Quantity } from '#kit/quantity';
import { type System, unitNamed } from '#kit/units';
import type { GoodsRow, WorkKind } from '#model/model';
import { systemOf } from './goods.ts';
import type { NamedGoods } from './lines.ts';
import { asCounted, type Rows } from './rows.ts';

type Fixture = Extract<GoodsRow, { kind: 'fixture' }>;

export interface OwnUse {
  readonly work: WorkKind;
  readonly goods: NamedGoods;
  readonly amount: Quantity;
}

const forAll = form('for all of them', 'count × what each takes', (count = 0, each = 0) => count * each);

/** What the fixture's row says, where it says any: of what stands there in feet and in metres, that in the plan's units. */
export function ownUses(goods: NamedGoods | undefined, rows: Rows): readonly OwnUse[] | undefined {
  if (goods?.of?.kind !== 'fixture' || goods.of.given.uses.length === 0) return undefined;
  const uses = inUnits(goods.of, rows);
  return uses.map(({ value }) => ({ work: value.by, goods: asCounted(value.goods, rows), amount: value.amount }));
}

function inUnits({ given: { uses } }: Fixture, { system }: Rows): Fixture['given']['uses'] {
  const speaks = uses.some(({ value }) => unitsOf(value) === system);
  return speaks ? uses.filter(({ value }) => (unitsOf(value) ?? system) === system) : uses;
}

/** Whose units the amount is in, or the size of what is counted. */
function unitsOf({ amount, goods }: Fixture['given']['uses'][number]['value']): System | undefined {
  const [size] = goods.sizes;
  const sized = size?.kind === 'quantity' && size.unit !== undefined ? unitNamed(size.unit)?.system : undefined;
  return systemOf(amount) ?? (sized === 'both' ? undefined : sized);
}

/** Of so many fixtures. */
export function amountOf({ amount }: OwnUse, count: Quantity): Quantity {
  return measure(amount.dimension, forAll, count, amount);
}
