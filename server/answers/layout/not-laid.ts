// What of an item the layout leaves to the area rule, so that the layout and the purchase list close.
import { type Quantity, roundUp, total } from '#kit/quantity';
import { inUnitsOf, packagesOf } from '#takeoff/goods';
import type { Line, Purchase } from '#takeoff/lines';
import { type NotLaid, notLaid } from '#takeoff/not-laid';
import { holdsText } from '../takeoff-table.ts';
import { type View, write } from '../view.ts';
import { placeText } from './words.ts';

type Laid = readonly { readonly line: Line }[];

export function restOf({ lines }: Purchase, laid: Laid): readonly NotLaid[] {
  return notLaid(lines, new Set(laid.map(({ line }) => line)));
}

/** Net and needed of what is laid, in base units. */
export function laidNet(lines: readonly Line[], laid: Laid): { readonly net: number; readonly needed: number } {
  const rest = notLaid(lines, new Set(laid.map(({ line }) => line)));
  const sum = (list: readonly (Quantity | undefined)[]): number => list.reduce((all, each) => all + (each?.value ?? 0), 0);
  return {
    net: sum(lines.map(({ net }) => net)) - sum(rest.map(({ net }) => net)),
    needed: sum(lines.map(({ needed }) => needed)) - sum(rest.map(({ needed }) => needed)),
  };
}

/** 'Not laid, by area: Roof 1,100 sf; Bath, wet walls 60 sf: 38 of 4' x 8''. None where all is laid. */
export function notLaidText(purchase: Purchase, laid: Laid, view: View): readonly string[] {
  const rest = restOf(purchase, laid);
  if (rest.length === 0) return [];
  return [`  Not laid, by area: ${restText(purchase, rest, view)}`];
}

/** Of sheets that nobody can lay at all, as a line of the table; none for other goods. */
export function byAreaAlone(purchase: Purchase, view: View): readonly string[] {
  const { goods } = purchase;
  if (goods.of?.kind !== 'material' || goods.of.given.laid?.value !== 'sheets') return [];
  return [`${purchase.label}: not laid, by area: ${restText(purchase, restOf(purchase, []), view)}`];
}

function restText({ goods }: Purchase, rest: readonly NotLaid[], view: View): string {
  const places = new Map<string, Quantity[]>();
  for (const { line, net } of rest) {
    const place = placeText(line, view);
    places.set(place, [...(places.get(place) ?? []), net]);
  }
  const areas = [...places].map(([place, nets]) => `${place} ${write(total(place, nets[0]!.dimension, nets), view.style)}`);
  const holds =
    goods.of?.kind === 'material' && goods.of.given.laid?.value === 'sheets'
      ? inUnitsOf(view.style.system, packagesOf(goods.of, goods.sizes))[0]?.holds
      : undefined;
  const needed = rest.reduce((sum, each) => sum + each.needed.value, 0);
  const sheets =
    holds === undefined || !(holds.value > 0) ? '' : `: ${roundUp(needed / holds.value)} of ${holdsText(holds, view)}`;
  return `${areas.join('; ')}${sheets}`;
}
