// Goods that no delivery brings, in a plan that has deliveries: who fetches them, and when, nobody has said.
import { finding, findingSort } from '#kit/finding';
import type { Delivery } from '#model/model';
import type { NamedGoods } from '#takeoff/lines';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const fetched = findingSort<[count: number, all: number, most: readonly string[]]>({
  code: 'deliveries/not-brought',
  severity: 'note',
  say: (count, all, most) =>
    `No delivery brings ${count} of the ${all} things to buy, such as ${most.join(', ')}. Work that waits for a trip to the yard is paid for standing. Let a delivery bring them, or accept it with who fetches them; "screed buy" lists them.`,
});

const SHOWN = 4;

export const notBrought: Check = {
  code: 'deliveries/not-brought',
  about:
    'Once a plan has deliveries, whatever is bought and not in an accepted bid should come with one of them. One finding names the dearest of what no delivery brings.',
  wrong: `level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer housewrap
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
delivery boards brings lap-siding from yard
task lap does wrap-walls, side-walls by siding after boards
price housewrap $165/roll from yard
price lap-siding $13/piece from yard
`,
  right: `level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer housewrap
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
delivery boards brings lap-siding, housewrap, outside-trim, sealant, siding-nail, outside-paint, outside-primer from yard
task lap does wrap-walls, side-walls by siding after boards
price housewrap $165/roll from yard
price lap-siding $13/piece from yard
`,
  reads: ({ model, budget }) => [model.list('delivery'), budget.goods],
  run: ({ model, budget }) => {
    const deliveries = model.list('delivery');
    const [first] = deliveries;
    if (first === undefined) return [];
    const bought = budget.goods.filter(({ purchase: { goods } }) => goods.of?.kind !== 'item');
    const names = namesBrought(deliveries);
    const open = bought.filter(({ purchase: { goods } }) => !namesOf(goods).some((name) => names.has(name)));
    if (open.length === 0) return [];
    const dearest = [...open].sort((a, b) => (b.cost?.cents ?? 0) - (a.cost?.cents ?? 0)).slice(0, SHOWN);
    return [
      finding(
        fetched,
        first.place,
        open.length,
        bought.length,
        dearest.map(({ purchase }) => purchase.label),
      ),
    ];
  },
};

const namesBrought = keptFor(
  (deliveries: readonly Delivery[]): ReadonlySet<string> =>
    new Set(deliveries.flatMap(({ given }) => given.brings?.value.map(({ value }) => value.name) ?? [])),
);

/** Their own name, and second ones. */
function namesOf({ name, of }: NamedGoods): readonly string[] {
  if (of === undefined || !('also' in of.given) || of.given.also.length === 0) return [name];
  return [name, ...of.given.also.flatMap(({ value }) => value.map((each) => each.value.name))];
}
