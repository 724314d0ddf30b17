// Sheets laid out on walls, floors and ceilings: on each in courses along it or upright, cut to whole runs; what is left of a
// course is a strip ripped from a sheet; what is no rectangle takes courses of stepping length. All pieces are cut together, so offcuts of one wall serve another. A quick rule: of
// each face the better way by itself, or one way everywhere, whichever buys least, then has the fewest joints.
import { constant, type Quantity } from '#kit/quantity';
import { bandsOf, turned } from '#kit/shapes/bands';
import type { Outline } from '#kit/shapes/outline';
import type { System } from '#kit/units';
import type { Material } from '#model/model';
import { type Cut, cutting } from './cutting.ts';
import { inUnitsOf, type Package, packagesOf } from './goods.ts';
import type { Face, Line, NamedGoods, Pieces } from './lines.ts';

export type Way = 'along' | 'upright';

/** A face with its sheets: so many courses, and the strip beside them. Lengths in base units. */
export interface LaidFace {
  readonly line: Line;
  readonly face: Face;
  readonly way: Way;
  readonly courses: number;
  readonly run: number;
  /** 0 where the courses cover it. */
  readonly strip: number;
  readonly joints: number;
  /** Of a face that is no rectangle: each course by itself, as long as the face reaches in it and as wide as it is. */
  readonly stepped?: readonly Strip[];
}
export interface Strip {
  readonly run: number;
  readonly wide: number;
}

export interface LaidSheets {
  readonly width: Quantity<'length'>;
  readonly faces: readonly LaidFace[];
  /** Its stock are lengths of sheets; `packages` are the sheets, by length. */
  readonly cut: Cut;
  readonly packages: ReadonlyMap<number, Package>;
  /** What is cut, and the lengths that it is cut from. */
  readonly pieces: readonly Pieces[];
  readonly stock: readonly Package[];
  /** Area in base units. */
  readonly bought: number;
  readonly joints: number;
}

/** How sheets of a group are laid, whether or not its row asks for it; undefined where nobody knows what they lie on. */
export function layingOf(
  goods: NamedGoods,
  row: Material,
  lines: readonly Line[],
  system: System,
  laidOut = row.given['laid-out'],
): LaidSheets | undefined {
  const sheets = inUnitsOf(system, packagesOf(row, goods.sizes));
  const by = {
    short: laidOut?.value.short?.value ?? 0,
    deducts: row.given.deducts?.value.value ?? Number.POSITIVE_INFINITY,
  };
  return row.given.laid?.value === 'sheets' ? laidSheets(lines, sheets, by, system) : undefined;
}

export interface LaidBy {
  /** How far a face may be left short. */
  readonly short: number;
  /** Openings larger than this are left out. */
  readonly deducts: number;
}

/** Undefined where no line has faces, or no sheet has sides. Lines without faces are not laid. */
export function laidSheets(
  lines: readonly Line[],
  sheets: readonly Package[],
  by: LaidBy,
  system: System,
): LaidSheets | undefined {
  const faces = lines.flatMap((line) =>
    (line.faces?.() ?? []).flatMap((face) => parted(face, by).map((part) => ({ line, face: part }))),
  );
  if (faces.length === 0) return undefined;
  let best: LaidSheets | undefined;
  for (const stock of byWidth(sheets)) {
    const way = (chosen: (laid: Laying) => Way): LaidSheets => together(faces, chosen, stock, by, system);
    for (const choice of [way(() => 'along'), way(() => 'upright'), way((laid) => better(laid, stock, system))])
      if (best === undefined || isBetter(choice, best)) best = choice;
  }
  return best;
}

function isBetter(a: LaidSheets, b: LaidSheets): boolean {
  if (Math.abs(a.bought - b.bought) > EXACT * b.bought) return a.bought < b.bought;
  return a.joints < b.joints * (1 - EXACT);
}

interface Stock {
  readonly width: Quantity<'length'>;
  readonly lengths: readonly Package[];
  readonly packages: ReadonlyMap<number, Package>;
}

/** Sheets of one width together, as sticks of their lengths. */
function byWidth(sheets: readonly Package[]): readonly Stock[] {
  const widths = new Map<number, { width: Quantity<'length'>; packages: Map<number, Package> }>();
  for (const each of sheets) {
    const [one, other] = each.holds.inputs as readonly Quantity<'length'>[];
    if (each.holds.dimension !== 'area' || one === undefined || other === undefined || one.value <= 0) continue;
    const [width, length] = one.value <= other.value ? [one, other] : [other, one];
    const known = widths.get(width.value);
    if (known === undefined) widths.set(width.value, { width, packages: new Map([[length.value, each]]) });
    else known.packages.set(length.value, each);
  }
  return [...widths.values()].map(({ width, packages }) => ({
    width,
    packages,
    lengths: [...packages].map(([length, { word }]) => ({
      word,
      holds: constant(`one ${word}`, length, 'length'),
      loose: false,
    })),
  }));
}

interface Laying {
  readonly line: Line;
  readonly face: Face;
  readonly along: LaidFace;
  readonly upright: LaidFace;
}

function together(
  faces: readonly Pick<Laying, 'line' | 'face'>[],
  wayOf: (laid: Laying) => Way,
  { width, lengths, packages }: Stock,
  by: LaidBy,
  system: System,
): LaidSheets {
  const laid = faces.map(({ line, face }): LaidFace => {
    const both = {
      line,
      face,
      along: along(line, face, width.value, by),
      upright: upright(line, face, width.value, lengths, by),
    };
    return both[wayOf(both)];
  });
  const pieces = piecesOf(laid, width.value);
  const cut = cutting([{ pieces }], lengths, 1, system);
  const sum = (of: (face: LaidFace) => number): number => laid.reduce((all, face) => all + of(face), 0);
  return {
    width,
    faces: laid,
    cut,
    packages,
    pieces,
    stock: lengths,
    bought: cut.sticks.reduce((all, { bought, holds }) => all + bought.value * holds.value, 0) * width.value,
    joints: sum(({ joints }) => joints) + butts(laid, lengths) * width.value,
  };
}

/** Courses along the face, from one end to the other. */
function along(line: Line, face: Face, width: number, { short }: LaidBy): LaidFace {
  if (face.shapes !== undefined) return stepped(line, face, 'along', face.shapes, width);
  const [length, height] = [face.length.value, face.height.value];
  const { courses, strip } = coursesIn(height, width, short);
  const rows = courses + (strip > 0 ? 1 : 0);
  return { line, face, way: 'along', courses, run: length, strip, joints: Math.max(0, rows - 1) * length };
}

/** Sheets upright, side by side; one that is as long as the face, but for what may stay short, is not cut. */
function upright(line: Line, face: Face, width: number, lengths: readonly Package[], { short }: LaidBy): LaidFace {
  if (face.shapes !== undefined) return stepped(line, face, 'upright', turned(face.shapes), width);
  const [length, height] = [face.length.value, face.height.value];
  const whole = lengths.filter(({ holds }) => holds.value <= height && holds.value >= height - short - EXACT * height);
  const run = whole.reduce((most, { holds }) => Math.max(most, holds.value), 0);
  const { courses, strip } = coursesIn(length, width, 0);
  const rows = courses + (strip > 0 ? 1 : 0);
  return { line, face, way: 'upright', courses, run: run > 0 ? run : height, strip, joints: Math.max(0, rows - 1) * height };
}

/** Courses of stepping length, each as long as the face reaches anywhere in it. What is cut off slanting serves for nothing. */
function stepped(line: Line, face: Face, way: Way, shapes: readonly Outline[], width: number): LaidFace {
  const bands = bandsOf(shapes, width);
  const strips = bands.flatMap(({ depth, reaches }) => reaches.map(([from, to]): Strip => ({ run: to - from, wide: depth })));
  const run = strips.reduce((most, each) => Math.max(most, each.run), 0);
  const joints = strips.reduce((sum, each) => sum + each.run, 0) - run;
  return { line, face, way, courses: strips.length, run, strip: 0, joints, stepped: strips };
}

function coursesIn(extent: number, width: number, short: number): { readonly courses: number; readonly strip: number } {
  const courses = Math.floor(extent / width + EXACT);
  const strip = Math.max(0, extent - courses * width);
  return { courses, strip: strip <= short + EXACT * extent ? 0 : strip };
}

/** Of one face by itself. */
function better({ along: one, upright: other }: Laying, { width, lengths }: Stock, system: System): Way {
  const cost = (face: LaidFace): readonly [number, number] => {
    const { sticks } = cutting([{ pieces: piecesOf([face], width.value) }], lengths, 1, system);
    return [
      sticks.reduce((sum, { bought, holds }) => sum + bought.value * holds.value, 0),
      face.joints + butts([face], lengths) * width.value,
    ];
  };
  const [a, b] = [cost(one), cost(other)];
  if (Math.abs(a[0] - b[0]) > EXACT * a[0]) return a[0] < b[0] ? 'along' : 'upright';
  return b[1] < a[1] * (1 - EXACT) ? 'upright' : 'along';
}

/** Whole courses, and strips ripped from as few sheets as they fit in side by side: the longest first, where least is left. */
function piecesOf(faces: readonly LaidFace[], width: number): readonly Pieces[] {
  const pieces: Pieces[] = [];
  const add = (length: number, count: number): void => {
    if (count > 0 && length > 0)
      pieces.push({ count: constant('courses', count, 'number'), length: constant('course', length, 'length') });
  };
  const narrow: { readonly run: number; readonly strip: number }[] = [];
  for (const { courses, run, strip, stepped: own } of faces) {
    if (own === undefined) {
      add(run, courses);
      if (strip > 0) narrow.push({ run, strip });
    } else
      for (const each of own) {
        if (each.wide > width * (1 - EXACT)) add(each.run, 1);
        else narrow.push({ run: each.run, strip: each.wide });
      }
  }
  const strips = narrow.sort((a, b) => b.run - a.run || b.strip - a.strip);
  const ripped: { readonly run: number; room: number }[] = [];
  for (const { run, strip } of strips) {
    let best: (typeof ripped)[number] | undefined;
    for (const each of ripped) if (each.room >= strip * (1 - EXACT) && (best === undefined || each.room < best.room)) best = each;
    if (best === undefined) ripped.push((best = { run, room: width }));
    best.room -= strip;
  }
  for (const { run } of ripped) add(run, 1);
  return pieces;
}

/** Ends of sheets that meet within a course. */
function butts(faces: readonly LaidFace[], lengths: readonly Package[]): number {
  const longest = lengths.reduce((most, { holds }) => Math.max(most, holds.value), 0);
  if (longest <= 0) return 0;
  const ends = (run: number): number => Math.max(0, Math.ceil(run / longest - EXACT) - 1);
  return faces.reduce((sum, { run, courses, strip, stepped: own }) => {
    if (own !== undefined) return own.reduce((all, each) => all + ends(each.run), sum);
    return sum + (courses + (strip > 0 ? 1 : 0)) * ends(run);
  }, 0);
}

/** A large opening is left out: the wall beside it, and what is over it and under it. */
function parted(face: Face, { deducts }: LaidBy): readonly Face[] {
  const parts: Face[] = [];
  let length = face.length.value;
  for (const { width, height, sill, label } of face.openings) {
    if (width.value * height.value <= deducts || width.value > length) continue;
    length -= width.value;
    const under = sill?.value ?? 0;
    const over = face.height.value - under - height.value;
    for (const [where, high] of [['over', over] as const, ['under', under] as const])
      if (high > 0)
        parts.push({
          label: `${face.label}, ${where} ${label}`,
          length: width,
          height: constant(`${where} the opening`, high, 'length'),
          openings: [],
        });
  }
  if (length === face.length.value) return [face];
  return length <= 0 ? parts : [{ ...face, length: constant('wall beside openings', length, 'length') }, ...parts];
}

const EXACT = 1e-9;
