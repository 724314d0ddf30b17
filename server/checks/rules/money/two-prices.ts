// Two prices for the same goods that cannot be weighed against each other: one for a sheet and one for a square foot, or one
// of nothing. The lowest would count, and which that is cannot be said.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Price } from '#model/model';
import { sameSize } from '#money/prices';
import type { Check } from '../../check.ts';

export const nothing = findingSort<[goods: string]>({
  code: 'money/two-prices',
  severity: 'warning',
  say: (goods) =>
    `${goods} has a price of nothing beside another, and the lowest counts: the total leaves it out. Take one of the two away, or mark the one that holds ("chosen").`,
});

export const otherUnits = findingSort<[goods: string]>({
  code: 'money/two-prices',
  severity: 'warning',
  say: (goods) =>
    `${goods} has two prices in different units, and nothing says which holds; compared as they stand they may be far apart. Write both for the same unit, or mark the one that holds ("chosen").`,
});

export const twoPrices: Check = {
  code: 'money/two-prices',
  about:
    'Of several prices for the same goods the lowest counts. That says nothing where one of them is nothing, or where they are for different units; then one must be marked as chosen.',
  wrong: `price osb 7/16" $14.20/sheet
price osb 7/16" $0/sheet
`,
  right: `price osb 7/16" $14.20/sheet
price osb 7/16" $13.90/sheet
`,
  reads: ({ model }) => [model.list('price')],
  run: ({ model }) => {
    const byName = new Map<string, Price[]>();
    const findings: Finding[] = [];
    for (const price of model.list('price')) {
      const name = price.takes?.of.name;
      if (name === undefined) continue;
      const before = byName.get(name);
      if (before === undefined) byName.set(name, [price]);
      else {
        findings.push(...besides(price, before));
        before.push(price);
      }
    }
    return findings;
  },
};

function besides(price: Price, others: readonly Price[]): readonly Finding[] {
  const other = others.find((each) => sameThing(price, each));
  if (other === undefined || price.given.chosen !== undefined || other.given.chosen !== undefined) return [];
  const { of, money } = price.takes!;
  const label = of.of?.label ?? of.name;
  const related = [{ place: other.place, note: 'the other price' }];
  const at = money.place ?? price.place;
  if ((money.value === 0) !== (other.takes!.money.value === 0)) return [{ ...finding(nothing, at, label), related }];
  if (money.dimension !== other.takes!.money.dimension) return [{ ...finding(otherUnits, at, label), related }];
  return [];
}

/** The same goods in the same sizes, as bought or as laid alike. */
function sameThing(a: Price, b: Price): boolean {
  const [own, other] = [a.takes!, b.takes!];
  return (
    (own.basis === 'laid') === (other.basis === 'laid') &&
    a.given.by?.value === b.given.by?.value &&
    own.of.sizes.length === other.of.sizes.length &&
    own.of.sizes.every((size) => other.of.sizes.some((each) => sameSize(size, each)))
  );
}
