// Strips of ground that are cut down or filled up to grade, each a wedge; what the cut gives to the fill, and what of either is
// left to haul away or to bring. In bank volume, as the earth lies before it is dug; the fill as it lies when compacted.
import { form, measure, type Quantity } from '#kit/quantity';
import type { Portion, Where } from '../lines.ts';
import type { Item, Site } from './foundation.ts';
import { inPart, portion } from './portion.ts';

const wedge = form(
  'strip',
  'length × width × (depth along one edge + depth along the other) ÷ 2',
  (length = 0, width = 0, first = 0, last = 0) => (length * width * (first + last)) / 2,
);
const added = form('all strips', 'added', (...strips) => strips.reduce((sum, strip) => sum + strip, 0));
const bank = form('fill, from the bank', 'fill ÷ what compacting leaves', (fill = 0, shrinks = 1) =>
  shrinks > 0 ? fill / shrinks : fill,
);
const over = form('cut left over', 'cut − fill from the bank', (cut = 0, fill = 0) => Math.max(0, cut - fill));
const short = form('earth that is lacking', 'fill from the bank − cut', (fill = 0, cut = 0) => Math.max(0, fill - cut));

type Strips = Site['given']['cut'];

export function gradedPortions({ given: { cut, fill } }: Site, where: Where, filled: Item | undefined): readonly Portion[] {
  if (cut.length === 0 && fill.length === 0) return [];
  const cuts = wedges(cut);
  const fills = wedges(fill);
  const portions = [
    ...cuts.map((volume, index) => portion('cut-volume', inPart(where, `cut ${index + 1}`), volume)),
    ...fills.map((volume, index) => portion('fill-volume', inPart(where, `fill ${index + 1}`), volume)),
  ];
  const allCut = measure('volume', added, ...cuts);
  const allFill = measure('volume', added, ...fills);
  const shrinks = filled?.given.shrinks?.value;
  const needs = shrinks === undefined ? allFill : measure('volume', bank, allFill, shrinks);
  if (allCut.value > needs.value) portions.push(portion('grade-haul-volume', where, measure('volume', over, allCut, needs)));
  if (needs.value > allCut.value) portions.push(portion('grade-import-volume', where, measure('volume', short, needs, allCut)));
  return portions;
}

function wedges(strips: Strips): readonly Quantity<'volume'>[] {
  return strips.map(({ value: { size, first, last } }) => measure('volume', wedge, size.left, size.right, first, last));
}
