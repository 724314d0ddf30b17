// Sheets as they lie on each wall, floor and ceiling, and the waste of that beside the waste of the area rule.
import { roundUp } from '#kit/quantity';
import { fromBase } from '#kit/units';
import { inUnitsOf, packagesOf } from '#takeoff/goods';
import type { Purchase } from '#takeoff/lines';
import { type LaidFace, type LaidSheets, layingOf } from '#takeoff/sheets';
import { counted, left, right, type Table } from '../table.ts';
import { holdsText } from '../takeoff-table.ts';
import { type View, write } from '../view.ts';
import { bookOf } from './book.ts';
import { longestFirst, type Proofs, patternRow, proofText } from './lengths.ts';
import { byAreaAlone, laidNet, notLaidText } from './not-laid.ts';
import { faceText, shareText } from './words.ts';

/** Undefined for what is no sheet, or lies nowhere that has sides. */
export function laidOf({ goods, lines }: Purchase, view: View): LaidSheets | undefined {
  const row = goods.of;
  if (row?.kind !== 'material') return undefined;
  return layingOf(goods, row, lines, view.style.system, bookOf(row, view)['laid-out']);
}

export function sheetsTable(purchases: readonly Purchase[], view: View, proofs: Proofs | undefined): Table | undefined {
  const rows = purchases.flatMap((purchase): Table['rows'] => {
    const laid = laidOf(purchase, view);
    if (laid === undefined) return byAreaAlone(purchase, view);
    return [
      `${purchase.label}: ${sheetsText(laid, view)}; ${wasteText(purchase, laid, view, proofs)}`,
      ...notLaidText(purchase, laid.faces, view),
      ...laid.faces.map((face) => faceRow(face, view)),
      ...longestFirst(laid.cut.patterns).map(({ stock, pieces, count }) => {
        const [sheets, of, cut, rest] = patternRow(count, stock.holds.value, pieces, view);
        return ['', '', `cut ${sheets} of ${of}`, `to ${cut}`, rest === '' ? '' : `${rest} left`];
      }),
    ];
  });
  if (rows.length === 0) return undefined;
  return {
    heading: [
      'Sheets as they are laid: so many courses along a wall or floor, or upright, and a strip ripped to what is left.',
      'Waste is what is bought over the net area, openings among it. Where joints must fall on framing, or be blocked, the drawings say.',
    ],
    columns: [left('Where'), right('Size'), left('Sheets'), left('Courses'), left('Strip')],
    rows,
    totals: [],
    remarks: [],
  };
}

/** '18 of 4' x 12', 33 of 4' x 8''. */
export function sheetsText({ cut, packages }: LaidSheets, view: View): string {
  return cut.sticks
    .map(({ bought, holds }) => `${write(bought, view.style)} of ${holdsText(packages.get(holds.value)!.holds, view)}`)
    .join(', ');
}

/** Of the layout, of the area rule, and the least for this layout where somebody asked for it; over the net area. */
export function wasteText(purchase: Purchase, laid: LaidSheets, view: View, proofs?: Proofs): string {
  const { goods, lines } = purchase;
  const usual = goods.of?.kind === 'material' ? inUnitsOf(view.style.system, packagesOf(goods.of, goods.sizes))[0] : undefined;
  const { net, needed } = laidNet(lines, laid.faces);
  const sheets = usual === undefined || usual.holds.value <= 0 ? 0 : roundUp(needed / usual.holds.value);
  const feet = view.style.system === 'feet';
  return [
    `waste ${shareText(laid.bought - net, net)}`,
    counted(
      Math.round(jointsIn(laid, view)),
      feet ? 'foot of joints' : 'metre of joints',
      feet ? 'feet of joints' : 'metres of joints',
    ),
    ...(usual === undefined
      ? []
      : [`by area ${sheets} of ${holdsText(usual.holds, view)}, waste ${shareText(sheets * usual.holds.value - net, net)}`]),
    ...proofText(proofs?.get(purchase.item), net, view, laid.width.value),
  ].join('; ');
}

function jointsIn({ joints }: LaidSheets, { style: { system } }: View): number {
  return fromBase(joints, system === 'feet' ? 'ft' : 'm') ?? 0;
}

function faceRow({ line, face, way, courses, run, strip, stepped }: LaidFace, view: View): readonly string[] {
  const length = (value: number): string => write({ value, dimension: 'length' }, view.style);
  return [
    `  ${faceText(line, face, view)}`,
    `${length(face.length.value)} x ${length(face.height.value)}`,
    way,
    coursesText({ courses, run, stepped }, length),
    strip === 0 ? '' : `${length(strip)} x ${length(run)}`,
  ];
}

/** '2 x 12'-0"'; '7, 2'-0" to 7'-0"' where they step. */
function coursesText(
  {
    courses,
    run,
    stepped,
  }: { readonly courses: number; readonly run: number; readonly stepped: LaidFace['stepped'] | undefined },
  length: (value: number) => string,
): string {
  const least = stepped?.reduce((low, each) => Math.min(low, each.run), run) ?? run;
  if (least < run) return `${courses}, ${length(least)} to ${length(run)}`;
  return courses === 0 ? '' : `${courses} x ${length(run)}`;
}
