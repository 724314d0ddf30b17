// Concrete by the truck: how many trucks an order takes, what the last of them carries, and what that lacks of the least that
// a plant sends out without a charge.
import { constant, form, measure, type Quantity, quantityIn, roundUp } from '#kit/quantity';
import type { Purchase } from './lines.ts';

type Volume = Quantity<'volume'>;

/** What comes on one day: mostly the whole order, else a step's share of it. */
export interface Truckload {
  readonly label: string;
  readonly ordered: Volume;
  readonly trucks: Quantity<'number'>;
  readonly last: Volume;
  /** The least load of the plant less the last truck's; undefined where that carries enough. */
  readonly short: Volume | undefined;
}

const trucksFor = form('trucks', 'ordered ÷ what a truck carries, rounded up', (ordered = 0, load = 1) =>
  load > 0 ? roundUp(ordered / load) : 0,
);
const onTheLast = form('in the last truck', 'ordered − full trucks before it', (ordered = 0, load = 0, trucks = 0) =>
  Math.max(0, ordered - (trucks - 1) * load),
);
const lacking = form('short of the least load', 'least load − what the truck carries', (least = 0, last = 0) => least - last);
const shareOf = form('ordered', 'share of what is needed, rounded up to whole steps', (needed = 0, share = 0, step = 0) =>
  step > 0 ? roundUp((needed * share) / step) * step : needed * share,
);

/** None for what does not come by the truck. */
export function truckloadsOf({ truck, pour, bought, needed, label }: Purchase): readonly Truckload[] {
  if (truck === undefined || bought.value <= 0) return [];
  const days = pour?.days ?? [];
  if (days.length < 2) return [loaded(pour?.label ?? label, bought as Volume, truck)];
  const step = truck.step ?? constant('no step', 0, 'volume');
  return days.map((day) => {
    const ordered = measure('volume', shareOf, needed, constant('share', day.share, 'number'), step);
    return loaded(day.label, needed.unit === undefined ? ordered : quantityIn(ordered, needed.unit), truck);
  });
}

function loaded(label: string, ordered: Volume, { load, least }: NonNullable<Purchase['truck']>): Truckload {
  const trucks = measure('number', trucksFor, ordered, load);
  const last = measure('volume', onTheLast, ordered, load, trucks);
  const short = least === undefined ? undefined : measure('volume', lacking, least, last);
  return { label, ordered, trucks, last, short: short !== undefined && short.value > EXACT * last.value ? short : undefined };
}

const EXACT = 1e-9;
