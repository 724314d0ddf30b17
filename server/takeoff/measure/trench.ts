// Trenches: what is dug, the bed, pipes and conduits, what is filled again and what earth is left over. Sides are counted
// upright, unless the plan gives their slope.
import { finding } from '#kit/finding';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Goods, Trench } from '#model/model';
import { sideSlopeOf } from '#model/side-slope';
import type { Portion } from '../lines.ts';
import { sizeMissing } from '../problems.ts';
import { type Measured, portion } from './portion.ts';

const dug = form('trench', 'length × depth × width', (length = 0, depth = 0, width = 0) => length * depth * width);
const sloped = form(
  'trench with sloped sides',
  'length × depth × (width at the bottom + slope × depth)',
  (length = 0, depth = 0, width = 0, slope = 0) => length * depth * (width + slope * depth),
);
const bedding = form('bed', 'length × width × depth of the bed', (length = 0, width = 0, depth = 0) => length * width * depth);
const inPipe = form(
  'pipe',
  'π ÷ 4 × size² × length',
  (size = 0, length = 0) => (Math.PI * size * size * length) / 4,
  'common practice: by the nominal size; the outside is a little more',
);
const bedded = form('bed', 'bed − pipes that lie in it', (bed = 0, ...pipes) =>
  Math.max(
    0,
    pipes.reduce((rest, pipe) => rest - pipe, bed),
  ),
);
const filled = form('fill of the trench', 'trench − bed − pipes', (trench = 0, ...inIt) =>
  Math.max(
    0,
    inIt.reduce((rest, volume) => rest - volume, trench),
  ),
);
const leftOver = form('earth left over', 'trench − fill of the trench', (trench = 0, fill = 0) => trench - fill);

export function measureTrench(trench: Trench): Measured {
  const { long, deep, wide, slope, pipe, conduit } = trench.given;
  const where = { element: trench.slot };
  const portions: Portion[] = [];
  const lacks = [
    long === undefined ? 'length ("62\' long")' : '',
    deep === undefined ? 'depth ("42" deep")' : '',
    wide === undefined ? 'width ("12" wide")' : '',
  ].filter((part) => part !== '');
  if (long === undefined) return { portions, findings: [finding(sizeMissing, trench.place, trench.label, lacks.join(', '))] };
  if (deep !== undefined && wide !== undefined) {
    const volume =
      slope === undefined
        ? measure('volume', dug, long.value, deep.value, wide.value)
        : measure('volume', sloped, long.value, deep.value, wide.value, sideSlopeOf(slope.value));
    portions.push(portion('trench-volume', where, volume), ...filling(trench, volume, long.value, wide.value));
  }
  portions.push(portion('trench-length', where, long.value));
  for (const { value } of pipe) portions.push(portion('pipe-length', where, long.value, { goods: value }));
  for (const { value } of conduit) portions.push(portion('conduit-length', where, long.value, { goods: value }));
  return { portions, findings: lacks.length === 0 ? [] : [finding(sizeMissing, trench.place, trench.label, lacks.join(', '))] };
}

/** What goes back into it, and what is left over for that. A bed deeper than a pipe is laid round it, one that is not under it. */
function filling(
  { slot, given: { pipe, conduit, bed } }: Trench,
  volume: Quantity<'volume'>,
  long: Quantity<'length'>,
  wide: Quantity<'length'>,
): readonly Portion[] {
  const where = { element: slot };
  const portions: Portion[] = [];
  const pipes = [...pipe, ...conduit].flatMap(({ value }) => pipeVolume(value, long));
  const deep = bed?.value.depth;
  const isInBed = ({ size }: { readonly size: Quantity }): boolean => deep !== undefined && size.value < deep.value;
  const taken: Quantity[] = pipes.filter((each) => !isInBed(each)).map((each) => each.volume);
  if (bed !== undefined) {
    const whole = measure('volume', bedding, long, wide, bed.value.depth);
    const inBed = pipes.filter(isInBed).map((each) => each.volume);
    const laid = inBed.length === 0 ? whole : measure('volume', bedded, whole, ...inBed);
    portions.push(portion('trench-bed-volume', where, laid, { goods: bed.value.of }));
    taken.unshift(whole);
  }
  const fill = taken.length === 0 ? volume : measure('volume', filled, volume, ...taken);
  portions.push(portion('trench-fill-volume', where, fill));
  if (taken.length > 0) portions.push(portion('trench-haul-volume', where, measure('volume', leftOver, volume, fill)));
  return portions;
}

/** What a pipe takes up, where its size is told. */
function pipeVolume(goods: Goods, long: Quantity<'length'>) {
  return goods.sizes.flatMap((literal) => {
    if (literal.kind !== 'quantity' || literal.dimension !== 'length') return [];
    const size = constant('size', literal.value, 'length');
    return [{ size, volume: measure('volume', inPipe, size, long) }];
  });
}
