// Trenches: what is dug, the bed, pipes and conduits, and what is filled again. Sides are counted
// upright, unless the plan gives their slope.
import { finding } from '#kit/finding';
import { form, measure } from '#kit/quantity';
import type { Trench } from '#model/model';
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
const filled = form('fill of the trench', 'trench − bed', (trench = 0, bed = 0) => Math.max(0, trench - bed));

export function measureTrench(trench: Trench): Measured {
  const { long, deep, wide, slope, pipe, conduit, bed } = trench.given;
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
    portions.push(portion('trench-volume', where, volume));
    const under = bed === undefined ? undefined : measure('volume', bedding, long.value, wide.value, bed.value.depth);
    if (bed !== undefined && under !== undefined)
      portions.push(portion('trench-bed-volume', where, under, { goods: bed.value.of }));
    portions.push(portion('trench-fill-volume', where, under === undefined ? volume : measure('volume', filled, volume, under)));
  }
  portions.push(portion('trench-length', where, long.value));
  for (const { value } of pipe) portions.push(portion('pipe-length', where, long.value, { goods: value }));
  for (const { value } of conduit) portions.push(portion('conduit-length', where, long.value, { goods: value }));
  return { portions, findings: lacks.length === 0 ? [] : [finding(sizeMissing, trench.place, trench.label, lacks.join(', '))] };
}
