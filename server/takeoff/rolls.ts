// Goods off a roll of one width, laid on floors: lengths side by side the way that takes least off the roll, then has fewest
// seams. What is left beside the last whole width is a length of its own, or pieced of strips cut side by side from a
// shorter one. Strips of several floors that run the same way share a length, so that pile and pattern run as they should.
// Published way of piecing: constructionwork.com, Carpet and vinyl.
import { constant, form, measure, type Quantity, quantityIn } from '#kit/quantity';
import { bandsOf, turned } from '#kit/shapes/bands';
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
  /** The floor whose length its strip is cut beside. */
  readonly beside?: Line;
  /** Length of seams in base units. */
  readonly seams: number;
}

const offRoll = form(
  'off the roll',
  'whole widths × (run + 2 × trim) + strips × (run ÷ pieces + 2 × trim)',
  (widths = 0, run = 0, trim = 0, strips = 0, pieces = 1) => widths * (run + 2 * trim) + strips * (run / pieces + 2 * trim),
);

const besideAnother = form(
  'off the roll',
  'whole widths × (run + 2 × trim); the strip comes out of another floor’s length',
  (widths = 0, run = 0, trim = 0) => widths * (run + 2 * trim),
);
const eachReach = form('off the roll', 'each length + 2 × trim, added', (trim = 0, ...lengths) =>
  lengths.reduce((sum, length) => sum + length + 2 * trim, 0),
);

export function laidRolls(lines: readonly Line[], by: RollBy): readonly LaidRoll[] {
  const floors = lines
    .flatMap((line) => (line.faces?.() ?? []).map((face) => waysOf(line, face, by)))
    .filter((ways) => ways.length > 0);
  let chosen = floors.map((ways) => ways.reduce((least, way) => (isLess(way, least) ? way : least)));
  let laid = shared(chosen, by);
  // Turning one floor may let its strip lie beside another's.
  for (let better = true; better; ) {
    better = false;
    for (const [at, ways] of floors.entries())
      for (const way of ways) {
        if (way === chosen[at]) continue;
        const other = chosen.with(at, way);
        const tried = shared(other, by);
        if (lengthOf(tried) >= lengthOf(laid) * (1 - EXACT)) continue;
        [chosen, laid, better] = [other, tried, true];
      }
  }
  return laid;
}

function waysOf(line: Line, face: Face, by: RollBy): readonly LaidRoll[] {
  const runs = ['east-west', 'north-south'] as const;
  return runs.flatMap((run) => (face.shapes === undefined ? laid(line, face, run, by) : stepped(line, face, run, by)) ?? []);
}

function lengthOf(floors: readonly LaidRoll[]): number {
  return floors.reduce((sum, { length }) => sum + length.value, 0);
}

/**
 * Strips narrower than the roll are cut side by side from one length where they fit and run the same way: the longest first,
 * each where least is left. The shorter ones then take nothing more off the roll.
 */
function shared(floors: readonly LaidRoll[], by: RollBy): readonly LaidRoll[] {
  const strips = floors.filter(({ strip, pieces, face }) => strip > 0 && pieces === 1 && face.shapes === undefined);
  const lengths: { readonly first: LaidRoll; room: number }[] = [];
  const beside = new Map<LaidRoll, LaidRoll>();
  for (const floor of [...strips].sort((a, b) => alongOf(b) - alongOf(a) || b.strip - a.strip)) {
    let best: (typeof lengths)[number] | undefined;
    for (const each of lengths)
      if (each.first.run === floor.run && each.room >= floor.strip * (1 - EXACT) && (best === undefined || each.room < best.room))
        best = each;
    if (best === undefined) lengths.push({ first: floor, room: by.width.value - floor.strip });
    else {
      best.room -= floor.strip;
      beside.set(floor, best.first);
    }
  }
  return floors.map((floor) => {
    const first = beside.get(floor);
    if (first === undefined) return floor;
    const length = measure(
      'length',
      besideAnother,
      constant('whole widths', floor.widths, 'number'),
      floor.run === 'east-west' ? floor.face.length : floor.face.height,
      by.trim,
    );
    return { ...floor, length, beside: first.line };
  });
}

function alongOf({ run, face }: LaidRoll): number {
  return (run === 'east-west' ? face.length : face.height).value;
}

/** A floor that is no rectangle: lengths as far as it reaches in each width. */
function stepped(line: Line, face: Face, run: LaidRoll['run'], { width, trim }: RollBy): LaidRoll | undefined {
  const shapes = face.shapes ?? [];
  const bands = bandsOf(run === 'east-west' ? shapes : turned(shapes), width.value);
  if (bands.length === 0) return undefined;
  const reaches = bands.map(({ reaches: all }) => all[all.length - 1]![1] - all[0]![0]);
  const length = measure('length', eachReach, trim, ...reaches.map((reach) => constant('length', reach, 'length')));
  const last = bands[bands.length - 1]!.depth;
  const whole = last >= width.value * (1 - EXACT);
  const seams = reaches.slice(1).reduce((sum, reach, at) => sum + Math.min(reach, reaches[at]!), 0);
  return { line, face, run, widths: bands.length - (whole ? 0 : 1), strip: whole ? 0 : last, pieces: 1, length, seams };
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
