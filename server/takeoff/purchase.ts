// What to buy: the lines of an item over the whole plan, rounded up once into packages, or into the step it is ordered in;
// sticks that pieces are cut from by stock length; loads of what is dug and filled.
import { constant, form, measure, type Quantity, roundUp, total } from '#kit/quantity';
import type { System } from '#kit/units';
import type { Material } from '#model/model';
import { cutting } from './cutting.ts';
import { inUnitsOf, itemText, labelText, type Package, packagesOf } from './goods.ts';
import type { Line, NamedGoods, Purchase } from './lines.ts';

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

interface Group {
  readonly lines: readonly Line[];
  readonly purchases: readonly Purchase[];
}

/** The groups of the last look: a group whose lines are the same is not summed again. */
export interface PurchaseMemory {
  last:
    | {
        readonly lines: readonly Line[];
        readonly does: ReadonlySet<string>;
        readonly system: System;
        readonly groups: readonly Group[];
        /** The group of each line, -1 for none, and its place there. */
        readonly groupOf: Int32Array;
        readonly placeIn: Int32Array;
      }
    | undefined;
}

/**
 * Lines in plan order; those that only count where a task does their work are left out unless `does` has it. Packages are
 * those in units of the system, where the goods have any.
 */
export function purchasesOf(
  lines: readonly Line[],
  does: ReadonlySet<string>,
  system: System,
  memory: PurchaseMemory = { last: undefined },
): readonly Purchase[] {
  if (!renewed(lines, does, system, memory)) memory.last = { lines, does, system, ...grouped(lines, does, system) };
  return memory.last!.groups.flatMap((group) => group.purchases);
}

function counts(line: Line, does: ReadonlySet<string>): boolean {
  if (line.goods === undefined || line.needed === undefined) return false;
  return line.onlyIfDone !== true || (line.work !== undefined && does.has(line.work.name));
}

function grouped(
  lines: readonly Line[],
  does: ReadonlySet<string>,
  system: System,
): { groups: readonly Group[]; groupOf: Int32Array; placeIn: Int32Array } {
  const numbers = new Map<string, number>();
  const members: Line[][] = [];
  const groupOf = new Int32Array(lines.length).fill(-1);
  const placeIn = new Int32Array(lines.length);
  lines.forEach((line, at) => {
    if (!counts(line, does)) return;
    // The same item is rarely measured in two ways; then each is bought for itself.
    let number = numbers.get(line.item);
    if (number !== undefined && members[number]![0]!.needed!.dimension !== line.needed!.dimension)
      number = numbers.get(`${line.item} ${line.needed!.dimension}`);
    if (number === undefined) {
      number = members.push([]) - 1;
      numbers.set(numbers.has(line.item) ? `${line.item} ${line.needed!.dimension}` : line.item, number);
    }
    groupOf[at] = number;
    placeIn[at] = members[number]!.push(line) - 1;
  });
  return { groups: members.map((each) => ({ lines: each, purchases: bought(each, system) })), groupOf, placeIn };
}

/** Puts lines that changed in the places of the old, and sums only their groups; false where more than that changed. */
function renewed(lines: readonly Line[], does: ReadonlySet<string>, system: System, memory: PurchaseMemory): boolean {
  const { last } = memory;
  if (last === undefined || last.lines.length !== lines.length || last.does !== does || last.system !== system) return false;
  if (last.lines === lines) return true;
  const touched = new Map<number, Line[]>();
  for (let at = 0; at < lines.length; at++) {
    const [old, now] = [last.lines[at]!, lines[at]!];
    if (old === now) continue;
    const number = last.groupOf[at]!;
    if (old.item !== now.item || old.needed?.dimension !== now.needed?.dimension || counts(now, does) !== number >= 0)
      return false;
    if (number < 0) continue;
    let members = touched.get(number);
    if (members === undefined) touched.set(number, (members = last.groups[number]!.lines.slice()));
    members[last.placeIn[at]!] = now;
  }
  const groups = last.groups.slice();
  for (const [number, members] of touched) groups[number] = { lines: members, purchases: bought(members, system) };
  memory.last = { ...last, lines, groups };
  return true;
}

function bought(lines: readonly Line[], system: System): readonly Purchase[] {
  const goods = lines[0]!.goods!;
  const row = goods.of;
  switch (row?.kind) {
    case 'material':
      return materialBought(goods, row, lines, system);
    case 'item': {
      const load = row.given.load?.value;
      if (load?.dimension !== lines[0]!.needed!.dimension) return [];
      const { net, needed } = sums(lines);
      return [purchase(goods, lines, net, needed, measure('number', loads, needed, load), 'load', load)];
    }
    case 'assembly':
      return [];
    default: {
      const { net, needed } = sums(lines);
      return [
        purchase(
          goods,
          lines,
          net,
          needed,
          needed.dimension === 'number' ? measure('number', whole, needed) : needed,
          needed.dimension === 'number' ? 'each' : '',
        ),
      ];
    }
  }
}

function materialBought(goods: NamedGoods, row: Material, lines: readonly Line[], system: System): readonly Purchase[] {
  const ways = inUnitsOf(system, packagesOf(row, goods.sizes));
  const cut = lines.filter((line) => line.pieces !== undefined);
  const sticks = ways.filter(({ holds, loose }) => holds.dimension === 'length' && !loose);
  if (cut.length > 0 && sticks.length > 0) {
    const rest = lines.filter((line) => line.pieces === undefined);
    const bySticks = cutting(cut, sticks, row).map(({ lines: part, net, needed, sticks: count, package: { word, holds } }) =>
      purchase(goods, part, () => net, needed, count, word, holds),
    );
    return rest.length === 0 ? bySticks : [...bySticks, inPackages(goods, row, rest, ways, system)];
  }
  return [inPackages(goods, row, lines, ways, system)];
}

function inPackages(
  goods: NamedGoods,
  row: Material,
  lines: readonly Line[],
  ways: readonly Package[],
  system: System,
): Purchase {
  const { net, needed } = sums(lines);
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
    return purchase(goods, lines, net, needed, inUnitOf(needed, measure(needed.dimension, steps, needed, unit)), fitting.word);
  }
  if (fitting !== undefined)
    return purchase(goods, lines, net, needed, measure('number', packages, needed, fitting.holds), fitting.word, fitting.holds);
  // Counted goods are bought one by one, or one package each where coverage was given by the package.
  if (needed.dimension === 'number') return purchase(goods, lines, net, needed, measure('number', whole, needed), usual.word);
  return purchase(goods, lines, net, needed, needed, '');
}

/** Sums of an item's lines. Few ask for the net one, so it is summed when somebody does. */
function sums(lines: readonly Line[]): { readonly net: () => Quantity; readonly needed: Quantity } {
  const [only] = lines;
  if (lines.length === 1) return { net: () => asNeeded(only!.net, only!.needed!), needed: only!.needed! };
  let net: Quantity | undefined;
  return {
    net: () => (net ??= netOf(lines)),
    needed: inUnitOf(
      only!.needed!,
      total(
        'needed',
        only!.needed!.dimension,
        lines.map((line) => line.needed!),
      ),
    ),
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
  return unit === undefined ? quantity : { ...quantity, unit };
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
