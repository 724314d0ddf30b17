// The take-off for programs: every line with its working, and what is bought. The shape is published in
// server/schemas/takeoff.schema.json.
import { lengthOf } from '#money/prices';
import type { Line, Purchase } from '#takeoff/lines';
import { type Amount, amountOf } from './amount.ts';
import { type ListedReason, listedReason } from './listed-reason.ts';
import { countedLines, countedPurchases, elementOf } from './takeoff-lines.ts';
import type { View } from './view.ts';

export interface TakeOffAnswer {
  readonly screed: 1;
  readonly lines: readonly ListedLine[];
  readonly purchases: readonly ListedPurchase[];
}

export interface ListedLine extends Amount {
  readonly id: string;
  readonly item: string;
  readonly label: string;
  readonly where: { readonly element: string; readonly part?: string; readonly room?: string; readonly level?: string };
  /** Code of the element of UNIFORMAT II that it belongs to. */
  readonly uniformat?: string;
  /** The kind of work that installs it. */
  readonly work?: string;
  readonly needed?: Amount;
  /** Person-hours. */
  readonly hours?: number;
  /** Of the whole plan's item, the same at each of its lines. */
  readonly purchase?: Amount;
  readonly reason: ListedReason;
}

export interface ListedPurchase {
  readonly item: string;
  readonly label: string;
  readonly net: Amount;
  readonly needed: Amount;
  readonly bought: Amount;
  /** Of sticks or sheets in several lengths: how many of each. */
  readonly sticks?: readonly { readonly count: number; readonly length: Amount }[];
  readonly lines: readonly string[];
  readonly reason: ListedReason;
}

export function takeOffAnswer(view: View): TakeOffAnswer {
  const lines = countedLines(view);
  const purchases = countedPurchases(view, new Set(lines));
  const boughtFor = new Map<Line, Purchase>();
  for (const purchase of purchases) for (const line of purchase.lines) if (!boughtFor.has(line)) boughtFor.set(line, purchase);
  return {
    screed: 1,
    lines: lines.map((line) => listedLine(line, boughtFor.get(line), view)),
    purchases: purchases.map((purchase) => ({
      item: purchase.item,
      label: purchase.label,
      net: amountOf(purchase.net, view.style),
      needed: amountOf(purchase.needed, view.style),
      bought: bought(purchase, view),
      ...(purchase.sticks === undefined
        ? {}
        : {
            sticks: purchase.sticks.map(({ bought: { value }, holds }) => ({
              count: value,
              length: amountOf(lengthOf(holds)!, view.style),
            })),
          }),
      lines: purchase.lines.map(({ id }) => id),
      reason: listedReason(purchase.bought, view),
    })),
  };
}

/** What is bought, in whole packages where it comes in packages. */
export function bought({ bought: quantity, package: word, holds }: Purchase, view: View): Amount {
  const amount = amountOf(quantity, view.style);
  return holds === undefined && quantity.dimension !== 'number' ? amount : { quantity: amount.quantity, unit: word };
}

function listedLine(line: Line, purchase: Purchase | undefined, view: View): ListedLine {
  const { element, part, room, level } = line.where;
  const of = elementOf(line);
  return {
    id: line.id,
    item: line.item,
    label: line.label,
    ...amountOf(line.net, view.style),
    where: {
      element: `${element.kind} ${element.name}`,
      ...(part === undefined ? {} : { part }),
      ...(room === undefined ? {} : { room: room.name }),
      ...(level === undefined ? {} : { level: level.name }),
    },
    ...(of === undefined ? {} : { uniformat: of.name.toUpperCase() }),
    ...(line.work === undefined ? {} : { work: line.work.name }),
    ...(line.needed === undefined ? {} : { needed: amountOf(line.needed, view.style) }),
    ...(line.hours === undefined ? {} : { hours: amountOf(line.hours, view.style).quantity }),
    ...(purchase === undefined ? {} : { purchase: bought(purchase, view) }),
    reason: listedReason(line.needed ?? line.net, view),
  };
}
