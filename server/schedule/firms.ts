// Which firm does each trade: the one whose bid is accepted, else the only one that says it does it.
import type { Slot } from '#kit/place';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

export type Firm = ElementOf<'firm'>;

/** By trade; a trade that several do and none is chosen for has none. */
export function firmsByTrade(model: Model): ReadonlyMap<Slot, Firm> {
  const chosen = new Map<Slot, Firm>();
  const firms = model.list('firm');
  if (firms.length === 0) return chosen;
  for (const trade of model.list('trade')) {
    const bid = model
      .list('bid')
      .find(({ given }) => given.accepted !== undefined && given.for?.value.trades.some(({ value }) => value === trade.slot));
    const doing = firms.filter(({ given }) => given.does?.value.some(({ value }) => value === trade.slot));
    const firm =
      bid === undefined ? (doing.length === 1 ? doing[0] : undefined) : firms.find(({ slot }) => slot === bid.given.by?.value);
    if (firm !== undefined) chosen.set(trade.slot, firm);
  }
  return chosen;
}

/** All that the answer hangs on. */
export function readsOfFirms(model: Model): readonly unknown[] {
  return [model.list('firm'), model.list('trade'), model.list('bid')];
}
