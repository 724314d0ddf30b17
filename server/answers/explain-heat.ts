// What a storey or the house loses of heat, as reasons with their working; with the caution that it sizes nothing.
import type { Element } from '#model/model';
import { type HeatLoss, heatLossOf, heatLossOfHouse } from '#takeoff/heat/heat-loss';
import { type ListedReason, listedReason, saying } from './listed-reason.ts';
import { listed } from './table.ts';
import { type View, write } from './view.ts';

const CAUTION =
  'A rough sum to compare by, without ducts, earth and sun. The licensed heating designer sizes equipment, by ACCA Manual J and S where the local code asks for them.';

function heatOf(element: Element, { plan: { model } }: View): HeatLoss | undefined {
  if (element.kind === 'level') return heatLossOf(element, model);
  return element.kind === 'plan' ? heatLossOfHouse(model) : undefined;
}

/** By their names: ua, and heat-loss where the plan gives both temperatures. */
export function heatReasons(element: Element, view: View): readonly ListedReason[] {
  const heat = heatOf(element, view);
  if (heat === undefined) return [];
  const { ua, loss, air, fresh } = heat;
  const shown = [
    listedReason(ua, view, 'ua'),
    ...(loss !== undefined ? [] : [air, fresh].flatMap((each) => (each === undefined ? [] : [listedReason(each, view)]))),
    ...(loss === undefined ? [] : [listedReason(loss, view, 'heat-loss')]),
  ];
  return [...shown, ...restOf(heat)];
}

/** One of them, with what is not in it. */
export function heatReason(element: Element, fact: string, view: View): ListedReason | undefined {
  if (fact !== 'ua' && fact !== 'heat-loss') return undefined;
  const heat = heatOf(element, view);
  const value = fact === 'ua' ? heat?.ua : heat?.loss;
  if (heat === undefined || value === undefined) return undefined;
  const reason = listedReason(value, view);
  return { ...reason, inputs: [...reason.inputs, ...restOf(heat)] };
}

function restOf({ without }: HeatLoss): readonly ListedReason[] {
  return [...(without.length === 0 ? [] : [saying('not in it', listed(without))]), saying('caution', CAUTION)];
}

/** '16,200 Btu/h lost': for a hint; nothing where the plan gives no temperatures. */
export function heatText(element: Element, view: View): string | undefined {
  const loss = heatOf(element, view)?.loss;
  return loss === undefined ? undefined : `${write(loss, view.style)} lost`;
}
