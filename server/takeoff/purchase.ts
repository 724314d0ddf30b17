// What to buy: the lines of an item over the whole plan, rounded up once into packages, or into the step it is ordered in;
// sticks that pieces are cut from by stock length; loads of what is dug and filled.
import { constant, form, measure, type Quantity, quantityIn, roundUp, total, totalOf } from '#kit/quantity';
import type { System } from '#kit/units';
import type { Material } from '#model/model';
import { cutting } from './cutting.ts';
import { inUnitsOf, itemText, labelText, type Package, packagesOf, sticksOf } from './goods.ts';
import { type Group, type Grouping, groupedBy, type PartLines, type Sort } from './grouping.ts';
import { laidOut } from './laid-out.ts';
import type { Line, NamedGoods, Purchase } from './lines.ts';
import { wasteFactor } from './needed.ts';

const packages = form('bought', 'needed ÷ what one holds, rounded up', (needed = 0, holds = 1) =>
  holds > 0 ? roundUp(needed / holds) : 0,
);
const steps = form('bought', 'needed rounded up to whole steps', (needed = 0, step = 1) =>
  step > 0 ? roundUp(needed / step) * step : needed,
);
const whole = form('bought', 'needed, rounded up', (needed = 0) => roundUp(needed));
const loads = form('loads', 'loose volume ÷ load of a truck, rounded up', (loose = 0, load = 1) =>
  load > 0 ? roundUp(loose / load) : 0,
);

const CUT = ' cut';

/** What lines are bought together by: the works done decide which count, the plan's units which packages there are. */
interface Buying extends Sort {
  readonly does: ReadonlySet<string>;
  readonly system: System;
}

export interface PurchaseMemory {
  buying: Buying | undefined;
  groups: Grouping | undefined;
  /** What was bought of each group. */
  bought: WeakMap<Group, readonly Purchase[]>;
  last: readonly Purchase[];
}
export function purchaseMemory(): PurchaseMemory {
  return { buying: undefined, groups: undefined, bought: new WeakMap(), last: [] };
}

/**
 * Lines of each part in plan order; those that only count where a task does their work are left out unless `does` has it.
 * Packages are those in units of the system, where the goods have any. The same list while nothing bought is another.
 */
export function purchasesOf(
  parts: readonly PartLines[],
  does: ReadonlySet<string>,
  system: System,
  memory: PurchaseMemory = purchaseMemory(),
): readonly Purchase[] {
  if (memory.buying?.does !== does || memory.buying.system !== system) {
    memory.buying = buyingBy(does, system);
    memory.bought = new WeakMap();
  }
  const before = memory.groups;
  memory.groups = groupedBy(memory.buying, parts, before);
  if (memory.groups.groups === before?.groups) return memory.last;
  const purchases: Purchase[] = [];
  for (const group of memory.groups.groups.values()) {
    let own = memory.bought.get(group);
    if (own === undefined) memory.bought.set(group, (own = bought(group, system)));
    for (const each of own) purchases.push(each);
  }
  memory.last = purchases;
  return purchases;
}

/** The same item is rarely measured in two ways, or cut to pieces here and not there; then each is bought for itself. */
function buyingBy(does: ReadonlySet<string>, system: System): Buying {
  return {
    does,
    system,
    keyOf: (line) => {
      if (!counts(line, does)) return undefined;
      const cut = line.pieces !== undefined && sticksOf(line.goods!, system).length > 0;
      return `${line.item} ${line.needed!.dimension}${cut ? CUT : ''}`;
    },
    amountOf: (line) => line.needed!.value,
  };
}

function counts(line: Line, does: ReadonlySet<string>): boolean {
  if (line.goods === undefined || line.needed === undefined) return false;
  return line.onlyIfDone !== true || (line.work !== undefined && does.has(line.work.name));
}

function bought(group: Group, system: System): readonly Purchase[] {
  const { lines } = group;
  const goods = lines[0]!.goods!;
  const row = goods.of;
  switch (row?.kind) {
    case 'material':
      return materialBought(goods, row, group, system);
    case 'item': {
      const load = row.given.load?.value;
      if (load?.dimension !== lines[0]!.needed!.dimension) return [];
      const { net, needed } = sums(group);
      return [purchase(goods, lines, net, needed, measure('number', loads, needed, load), 'load', load)];
    }
    case 'assembly':
      return [];
    default: {
      const { net, needed } = sums(group);
      const counted = needed.dimension === 'number';
      return [purchase(goods, lines, net, needed, counted ? measure('number', whole, needed) : needed, counted ? 'each' : '')];
    }
  }
}

function materialBought(goods: NamedGoods, row: Material, group: Group, system: System): readonly Purchase[] {
  const laid = laidOut(goods, row, group.lines, system);
  if (laid !== undefined) {
    const { net, needed } = sums(group);
    const { bought, word, holds, sticks } = laid;
    const one = purchase(goods, group.lines, net, needed, bought, word, holds);
    return [sticks === undefined ? one : Object.assign(one, { sticks })];
  }
  if (!group.key.endsWith(CUT))
    return [
      byTruck(
        asOrdered(inPackages(goods, row, group, inUnitsOf(system, packagesOf(row, goods.sizes)), system), row),
        row,
        system,
      ),
    ];
  const { net, needed } = sums(group);
  const { word, bought: all, sticks } = cutting(group.lines, sticksOf(goods, system), wasteFactor(row), system);
  const [only, ...others] = sticks;
  if (only === undefined) return [];
  return others.length === 0
    ? [purchase(goods, group.lines, net, needed, all, word, only.holds)]
    : [{ ...purchase(goods, group.lines, net, needed, all, word), sticks }];
}

const nearestStep = form('bought', 'needed, to the nearest whole step', (needed = 0, step = 1) =>
  step > 0 ? Math.round(needed / step) * step : needed,
);
const leastOrder = form('bought', 'what is needed, the least order at least', (bought = 0, least = 0) => Math.max(bought, least));
/** By the nearest step where the row says so, and the least that is ordered at once, in what it is bought by. */
function asOrdered(purchase: Purchase, row: Material): Purchase {
  const { nearest, least } = row.given;
  const { needed } = purchase;
  let { bought } = purchase;
  if (nearest !== undefined && nearest.value.dimension === bought.dimension && needed.dimension === bought.dimension)
    bought = inUnitOf(bought, measure(bought.dimension, nearestStep, needed, nearest.value));
  if (least !== undefined && least.value.dimension === bought.dimension && bought.value < least.value.value)
    bought = inUnitOf(bought, measure(bought.dimension, leastOrder, bought, least.value));
  return bought === purchase.bought ? purchase : withBought(purchase, bought);
}

function byTruck(purchase: Purchase, { given }: Material, system: System): Purchase {
  const inUnits = <T extends Quantity>(list: readonly { readonly value: T }[]): T | undefined =>
    inUnitsOf(
      system,
      list.map(({ value }) => value),
    )[0];
  const load = inUnits(given.load);
  if (load === undefined || purchase.bought.dimension !== 'volume') return purchase;
  const step = given.nearest?.value ?? inUnits(given.rounds);
  const truck = {
    load,
    least: inUnits(given['least-load']),
    step: step?.dimension === 'volume' ? (step as Quantity<'volume'>) : undefined,
  };
  return Object.assign(purchase, { truck });
}

function withBought(purchase: Purchase, bought: Quantity): Purchase {
  return Object.defineProperties(
    {},
    { ...Object.getOwnPropertyDescriptors(purchase), bought: { value: bought, enumerable: true } },
  ) as Purchase;
}

function inPackages(goods: NamedGoods, row: Material, group: Group, ways: readonly Package[], system: System): Purchase {
  const { lines } = group;
  const { net, needed } = sums(group);
  const [step] = inUnitsOf(
    system,
    row.given.rounds.map(({ value }) => value),
  );
  const usual = ways[0];
  if (step !== undefined && step.dimension === needed.dimension)
    return purchase(
      goods,
      lines,
      net,
      needed,
      inUnitOf(needed, measure(needed.dimension, steps, needed, step)),
      usual?.word ?? '',
    );
  if (usual === undefined)
    return purchase(goods, lines, net, needed, needed.dimension === 'number' ? measure('number', whole, needed) : needed, '');
  const fitting = ways.find(({ holds }) => holds.dimension === needed.dimension);
  if (fitting?.loose === true) {
    const unit = constant(`one ${fitting.word}`, fitting.holds.value, needed.dimension);
    const all = purchase(
      goods,
      lines,
      net,
      needed,
      inUnitOf(needed, measure(needed.dimension, steps, needed, unit)),
      fitting.word,
    );
    const larger = ways.find(
      ({ holds, loose }) => !loose && holds.dimension === needed.dimension && holds.value <= all.bought.value,
    );
    return larger === undefined ? all : Object.assign(all, { larger });
  }
  if (fitting !== undefined)
    return purchase(goods, lines, net, needed, measure('number', packages, needed, fitting.holds), fitting.word, fitting.holds);
  // Counted goods are bought one by one, or one package each where coverage was given by the package.
  if (needed.dimension === 'number') return purchase(goods, lines, net, needed, measure('number', whole, needed), usual.word);
  return purchase(goods, lines, net, needed, needed, '');
}

/** Sums of an item's lines. Few ask for the net one, so it is summed when somebody does. */
function sums({ lines, values }: Group): { readonly net: () => Quantity; readonly needed: Quantity } {
  const [only] = lines;
  const needed = only!.needed!;
  if (lines.length === 1) return { net: () => asNeeded(only!.net, needed), needed };
  let net: Quantity | undefined;
  return {
    net: () => (net ??= netOf(lines)),
    needed: totalOf('needed', needed.dimension, values, () => lines.map((line) => line.needed!), needed.unit),
  };
}

function netOf(lines: readonly Line[]): Quantity {
  const [only] = lines;
  const nets = lines.map((line) => line.net).filter((net) => net.dimension === only!.net.dimension);
  return asNeeded(total('net', only!.net.dimension, nets), only!.needed!);
}

/** What is sold by the gallon is spoken of in gallons before the waste, too. */
function asNeeded(net: Quantity, needed: Quantity): Quantity {
  return net.dimension === needed.dimension ? inUnitOf(needed, net) : net;
}

function inUnitOf({ unit }: Quantity, quantity: Quantity): Quantity {
  return unit === undefined ? quantity : quantityIn(quantity, unit);
}

function purchase(
  goods: NamedGoods,
  lines: readonly Line[],
  net: () => Quantity,
  needed: Quantity,
  bought: Quantity,
  word: string,
  holds?: Quantity,
): Purchase {
  return {
    item: itemText(goods),
    label: labelText(goods),
    goods,
    needed,
    bought,
    package: word,
    lines,
    get net() {
      return net();
    },
    ...(holds === undefined ? {} : { holds }),
  };
}
