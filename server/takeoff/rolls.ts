// Goods off a roll of one width, laid on floors: lengths side by side the way that takes least off the roll, then has fewest
// seams. What is left beside the last whole width is a length of its own, or pieced of strips cut side by side from a
// shorter one. Each floor by itself: pattern and pile run one way in a room. Published way of piecing: constructionwork.com,
// Carpet and vinyl.
import { constant, form, measure, type Quantity, quantityIn } from '#kit/quantity';
import type { Face, Line } from './lines.ts';

type Length = Quantity<'length'>;

export interface RollBy {
  readonly width: Length;
  /** Added at both ends of each length. */
  readonly trim: Length;
  /** Strips may be put together end to end. */
  readonly pieced: boolean;
}

/** A floor with its lengths. */
export interface LaidRoll {
  readonly line: Line;
  readonly face: Face;
  /** Which way the lengths run. */
  readonly run: 'east-west' | 'north-south';
  /** Whole widths, and the strip beside them; in base units, 0 where they cover it. */
  readonly widths: number;
  readonly strip: number;
  /** How many strips are put together end to end to fill it. */
  readonly pieces: number;
  /** Off the roll. */
  readonly length: Length;
  /** Length of seams in base units. */
  readonly seams: number;
}

const offRoll = form(
  'off the roll',
  'whole widths × (run + 2 × trim) + strips × (run ÷ pieces + 2 × trim)',
  (widths = 0, run = 0, trim = 0, strips = 0, pieces = 1) => widths * (run + 2 * trim) + strips * (run / pieces + 2 * trim),
);

export function laidRolls(lines: readonly Line[], by: RollBy): readonly LaidRoll[] {
  return lines.flatMap((line) => (line.faces?.() ?? []).flatMap((face) => best(line, face, by) ?? []));
}

function best(line: Line, face: Face, by: RollBy): LaidRoll | undefined {
  const ways = [laid(line, face, 'east-west', by), laid(line, face, 'north-south', by)].filter((way) => way !== undefined);
  return ways.reduce<LaidRoll | undefined>((least, way) => (least === undefined || isLess(way, least) ? way : least), undefined);
}

function isLess(a: LaidRoll, b: LaidRoll): boolean {
  if (Math.abs(a.length.value - b.length.value) > EXACT * b.length.value) return a.length.value < b.length.value;
  return a.seams < b.seams * (1 - EXACT);
}

function laid(line: Line, face: Face, run: LaidRoll['run'], { width, trim, pieced }: RollBy): LaidRoll | undefined {
  const [along, across] = run === 'east-west' ? [face.length, face.height] : [face.height, face.length];
  if (!(width.value > 0) || along.value <= 0 || across.value <= 0) return undefined;
  const widths = Math.floor(across.value / width.value + EXACT);
  const rest = across.value - widths * width.value;
  const strip = rest > EXACT * across.value ? rest : 0;
  // A room narrower than the roll takes one length, cut down; strips are pieced beside a whole width only.
  const pieces = strip > 0 && pieced && widths > 0 ? Math.max(1, Math.floor(width.value / strip + EXACT)) : 1;
  const length = measure(
    'length',
    offRoll,
    constant('whole widths', widths, 'number'),
    along,
    trim,
    constant('strips', strip > 0 ? 1 : 0, 'number'),
    constant('pieces', pieces, 'number'),
  );
  const beside = widths + (strip > 0 ? 1 : 0);
  const seams = Math.max(0, beside - 1) * along.value + (pieces - 1) * strip;
  return { line, face, run, widths, strip, pieces, length, seams };
}

const area = form(
  'area off the roll',
  'lengths, added × width',
  (width = 0, ...lengths) => lengths.reduce((sum, length) => sum + length, 0) * width,
);

/** What is paid for: the roll's whole width. */
export function areaOff(rolls: readonly LaidRoll[], width: Length, unit: string | undefined): Quantity<'area'> {
  const all = measure<'area'>('area', area, width, ...rolls.map(({ length }) => length));
  return unit === undefined ? all : quantityIn(all, unit);
}

const EXACT = 1e-9;
