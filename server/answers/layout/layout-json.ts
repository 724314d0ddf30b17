// The layout for programs: as JSON, whose shape is published in server/schemas/layout.schema.json, and as comma-separated values.
// Shares of waste are over the net area or the pieces' length: 0.05 for 5 %.
import type { Cell } from '#kit/table';
import { type Cut, lengthOf, type Pattern } from '#takeoff/cutting';
import type { Face, Line, Purchase } from '#takeoff/lines';
import type { LaidFace, LaidSheets } from '#takeoff/sheets';
import { truckloadsOf } from '#takeoff/truckloads';
import { type Amount, amountOf } from '../amount.ts';
import type { View } from '../view.ts';
import { laidPurchases } from './layout.ts';
import { byLengthOf, cutOf, type Proofs, piecesLength } from './lengths.ts';
import { laidNet, restOf } from './not-laid.ts';
import { panelLevels } from './panels.ts';
import { rollsOf } from './rolls.ts';
import { laidOf } from './sheets.ts';
import { tiledOf } from './tile.ts';
import { faceText, placeText } from './words.ts';

export interface LayoutAnswer {
  readonly screed: 1;
  readonly pours: readonly Pour[];
  readonly lengths: readonly ListedLengths[];
  /** Items that are bought by their length alone: nobody tells their pieces. */
  readonly byLength: readonly Item[];
  readonly sheets: readonly ListedSheets[];
  readonly panels: readonly ListedPanel[];
  readonly rolls: readonly ListedRolls[];
  readonly tiles: readonly ListedTiles[];
}
interface Item {
  readonly item: string;
  readonly label: string;
}
interface Pour extends Item {
  readonly pour: string;
  readonly ordered: Amount;
  readonly trucks: number;
  readonly last: Amount;
  readonly short?: Amount;
}
interface ListedCut {
  readonly count: number;
  readonly of: Amount;
  readonly pieces: readonly Amount[];
}
interface ListedLengths extends Item {
  readonly cuts: readonly ListedCut[];
  readonly waste: number;
  /** Of the rule that cuts each length by itself. */
  readonly simple: number;
  readonly least?: Least;
}
interface Least {
  readonly proven: boolean;
  readonly length: Amount;
}
interface NotLaidArea {
  readonly where: string;
  readonly area: Amount;
}
interface Place {
  readonly where: string;
  readonly length: Amount;
  readonly height: Amount;
}
interface ListedSheets extends Item {
  readonly width: Amount;
  readonly sheets: readonly { readonly count: number; readonly length: Amount }[];
  readonly net: Amount;
  readonly waste: number;
  readonly faces: readonly (Place & { readonly way: 'along' | 'upright'; readonly courses: readonly Course[] })[];
  readonly cuts: readonly ListedCut[];
  readonly notLaid: readonly NotLaidArea[];
  readonly least?: Least;
}
interface Course {
  readonly count: number;
  readonly run: Amount;
  readonly wide: Amount;
}
interface ListedPanel {
  readonly level: string;
  readonly wall: string;
  readonly panel: string;
  readonly from: Amount;
  readonly width: Amount;
  readonly openings: readonly string[];
}
interface ListedRolls extends Item {
  readonly width: Amount;
  readonly floors: readonly (Place & {
    readonly run: string;
    readonly widths: number;
    readonly strip: Amount;
    readonly off: Amount;
    readonly beside?: string;
  })[];
  readonly notLaid: readonly NotLaidArea[];
}
interface ListedTiles extends Item {
  readonly floors: readonly (Place & {
    readonly columns: number;
    readonly rows: number;
    readonly whole: number;
    readonly cut: number;
    readonly tiles: number;
  })[];
  readonly notLaid: readonly NotLaidArea[];
}

export function layoutAnswer(view: View, proofs?: Proofs): LayoutAnswer {
  const purchases = laidPurchases(view);
  return {
    screed: 1,
    pours: purchases.flatMap((purchase) => poursOf(purchase, view)),
    lengths: purchases.flatMap((purchase) => lengthsOf(purchase, view, proofs)),
    byLength: byLengthOf(purchases).map(itemOf),
    sheets: purchases.flatMap((purchase) => sheetsOf(purchase, view, proofs)),
    panels: panelLevels(view).flatMap(({ level, walls }) =>
      walls.flatMap(({ label, panels }) =>
        panels.map(({ name, from, width, openings }) => ({
          level,
          wall: label,
          panel: name,
          from: amountOf(from, view.style),
          width: amountOf(width, view.style),
          openings,
        })),
      ),
    ),
    rolls: purchases.flatMap((purchase): readonly ListedRolls[] => {
      const laid = rollsOf(purchase, view);
      if (laid === undefined) return [];
      const floors = laid.floors.map(({ line, face, run, widths, strip, length, beside }) => ({
        ...placeOf(line, face, view),
        run,
        widths,
        strip: feet(strip, view),
        off: feet(length.value, view),
        ...(beside === undefined ? {} : { beside: placeText(beside, view) }),
      }));
      return [
        { ...itemOf(purchase), width: feet(laid.by.width.value, view), floors, notLaid: rest(purchase, laid.floors, view) },
      ];
    }),
    tiles: purchases.flatMap((purchase): readonly ListedTiles[] => {
      const laid = tiledOf(purchase, view);
      if (laid === undefined) return [];
      const floors = laid.floors.map(({ line, face, columns, rows, whole, cut, tiles }) => ({
        ...placeOf(line, face, view),
        columns,
        rows,
        whole,
        cut,
        tiles: tiles.value,
      }));
      return [{ ...itemOf(purchase), floors, notLaid: rest(purchase, laid.floors, view) }];
    }),
  };
}

const itemOf = ({ item, label }: Purchase): Item => ({ item, label });
const feet = (value: number, view: View): Amount => amountOf({ value, dimension: 'length' }, view.style);
const share = (part: number, whole: number): number => (whole > 0 ? Math.round((part / whole) * 10_000) / 10_000 : 0);

function placeOf(line: Line, face: Face, view: View): Place {
  return { where: faceText(line, face, view), length: feet(face.length.value, view), height: feet(face.height.value, view) };
}

function rest(purchase: Purchase, laid: readonly { readonly line: Line }[], view: View): readonly NotLaidArea[] {
  return restOf(purchase, laid).map(({ line, net }) => ({ where: placeText(line, view), area: amountOf(net, view.style) }));
}

function poursOf(purchase: Purchase, view: View): readonly Pour[] {
  return truckloadsOf(purchase).map(({ label, ordered, trucks, last, short }) => ({
    ...itemOf(purchase),
    pour: label,
    ordered: amountOf(ordered, view.style),
    trucks: trucks.value,
    last: amountOf(last, view.style),
    ...(short === undefined ? {} : { short: amountOf(short, view.style) }),
  }));
}

function lengthsOf(purchase: Purchase, view: View, proofs: Proofs | undefined): readonly ListedLengths[] {
  const cut = cutOf(purchase, view);
  if (cut === undefined || cut.patterns.length === 0) return [];
  const pieces = piecesLength(cut);
  return [
    {
      ...itemOf(purchase),
      cuts: cutsOf(cut, view),
      waste: share(lengthOf(cut.patterns) - pieces, pieces),
      simple: share(cut.simple - pieces, pieces),
      ...leastOf(purchase, view, proofs),
    },
  ];
}

function cutsOf({ patterns }: Cut, view: View): readonly ListedCut[] {
  return patterns.map(({ stock, pieces, count }: Pattern) => ({
    count,
    of: feet(stock.holds.value, view),
    pieces: pieces.map((piece) => feet(piece, view)),
  }));
}

function leastOf({ item }: Purchase, view: View, proofs: Proofs | undefined): { readonly least?: Least } {
  const proof = proofs?.get(item);
  if (proof === undefined || proof.kind === 'none') return {};
  return { least: { proven: proof.kind === 'proven', length: feet(proof.length, view) } };
}

function sheetsOf(purchase: Purchase, view: View, proofs: Proofs | undefined): readonly ListedSheets[] {
  const laid: LaidSheets | undefined = laidOf(purchase, view);
  if (laid === undefined) return [];
  const { net } = laidNet(purchase.lines, laid.faces);
  return [
    {
      ...itemOf(purchase),
      width: feet(laid.width.value, view),
      sheets: laid.cut.sticks.map(({ bought, holds }) => ({ count: bought.value, length: feet(holds.value, view) })),
      net: amountOf({ value: net, dimension: 'area' }, view.style),
      waste: share(laid.bought - net, net),
      faces: laid.faces.map((face) => ({
        ...placeOf(face.line, face.face, view),
        way: face.way,
        courses: coursesOf(face, laid.width.value, view),
      })),
      cuts: cutsOf(laid.cut, view),
      notLaid: rest(purchase, laid.faces, view),
      ...leastOf(purchase, view, proofs),
    },
  ];
}

function coursesOf({ courses, run, strip, stepped }: LaidFace, width: number, view: View): readonly Course[] {
  const course = (count: number, long: number, wide: number): Course => ({
    count,
    run: feet(long, view),
    wide: feet(wide, view),
  });
  if (stepped !== undefined) return stepped.map((each) => course(1, each.run, each.wide));
  return [...(courses > 0 ? [course(courses, run, width)] : []), ...(strip > 0 ? [course(1, run, strip)] : [])];
}

/** A row for each pour, cut, course, panel, floor, and area that is not laid. */
export function layoutRows(answer: LayoutAnswer): readonly (readonly Cell[])[] {
  const rows: (readonly Cell[])[] = [['kind', 'item', 'label', 'where', 'count', 'length', 'width', 'unit', 'detail']];
  const add = (
    kind: string,
    item: string,
    label: string,
    where: string,
    count: number,
    length: Amount | undefined,
    width: Amount | undefined,
    detail: string,
  ): void => {
    rows.push([kind, item, label, where, count, length?.quantity, width?.quantity, (length ?? width)?.unit, detail]);
  };
  for (const { item, label, pour, ordered, trucks } of answer.pours)
    add('pour', item, label, pour, trucks, ordered, undefined, 'trucks');
  const cuts = (kind: string, { item, label }: Item, list: readonly ListedCut[]): void => {
    for (const { count, of, pieces } of list)
      add(kind, item, label, '', count, of, undefined, pieces.map(({ quantity }) => quantity).join(' + '));
  };
  const notLaid = ({ item, label }: Item, list: readonly NotLaidArea[]): void => {
    for (const { where, area } of list) add('not laid', item, label, where, 1, area, undefined, 'by area');
  };
  for (const each of answer.lengths) cuts('cut', each, each.cuts);
  for (const { item, label } of answer.byLength) add('by length', item, label, '', 1, undefined, undefined, '');
  for (const each of answer.sheets) {
    for (const { where, way, courses } of each.faces)
      for (const { count, run, wide } of courses) add('course', each.item, each.label, where, count, run, wide, way);
    cuts('sheet', each, each.cuts);
    notLaid(each, each.notLaid);
  }
  for (const { level, wall, panel, from, width, openings } of answer.panels)
    add('panel', panel, `${level}, ${wall}`, wall, 1, from, width, openings.join(', '));
  for (const each of answer.rolls) {
    for (const { where, run, off, strip, beside } of each.floors)
      add('roll', each.item, each.label, where, 1, off, strip, beside === undefined ? run : `${run}, beside ${beside}`);
    notLaid(each, each.notLaid);
  }
  for (const each of answer.tiles) {
    for (const { where, length, height, tiles, cut } of each.floors)
      add('tile', each.item, each.label, where, tiles, length, height, `${cut} cut`);
    notLaid(each, each.notLaid);
  }
  return rows;
}
