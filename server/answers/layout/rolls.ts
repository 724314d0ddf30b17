// Lengths off a roll for each floor: which way they run, what is left beside them, how long the seams are; beside the area rule.
import { rollBy } from '#takeoff/laid-out';
import type { Purchase } from '#takeoff/lines';
import { areaOff, type LaidRoll, laidRolls, type RollBy } from '#takeoff/rolls';
import { left, right, type Table, withoutEmpty } from '../table.ts';
import { type View, write } from '../view.ts';
import { bookOf } from './book.ts';
import { laidNet, notLaidText } from './not-laid.ts';
import { faceText, placeText, shareText } from './words.ts';

interface Rolls {
  readonly by: RollBy;
  readonly floors: readonly LaidRoll[];
}

/** Undefined for what comes off no roll of a known width. */
export function rollsOf({ goods, lines }: Purchase, view: View): Rolls | undefined {
  const row = goods.of;
  if (row?.kind !== 'material' || row.given.laid?.value !== 'rolls') return undefined;
  const by = rollBy(row, view.style.system, bookOf(row, view));
  const floors = by === undefined ? [] : laidRolls(lines, by);
  return by === undefined || floors.length === 0 ? undefined : { by, floors };
}

export function rollsTable(purchases: readonly Purchase[], view: View): Table | undefined {
  const rows = purchases.flatMap((purchase): Table['rows'] => {
    const laid = rollsOf(purchase, view);
    if (laid === undefined) return [];
    return [
      `${purchase.label}, ${write(laid.by.width, view.style)} wide: ${rollText(purchase, laid, view)}`,
      ...notLaidText(purchase, laid.floors, view),
      ...laid.floors.map((floor) => floorRow(floor, view)),
    ];
  });
  if (rows.length === 0) return undefined;
  return withoutEmpty({
    heading: [
      'Lengths off a roll, the way that takes least and then has the fewest seams. Strips of floors that run the same way are cut side by side.',
    ],
    columns: [
      left('Where'),
      right('Size'),
      left('Run'),
      right('Whole widths'),
      left('Strip'),
      right('Off the roll'),
      right('Seams'),
    ],
    rows,
    totals: [],
    remarks: [],
  });
}

/** '9'-6" off the roll, waste 28.0%; by area 45 sf, waste 10.0%'. */
export function rollText({ lines, needed }: Purchase, { by, floors }: Rolls, view: View): string {
  const { net, needed: rule } = laidNet(lines, floors);
  const area = areaOff(floors, by.width, needed.unit);
  const long = floors.reduce((sum, { length }) => sum + length.value, 0);
  return `${lengthText(long, view)} off the roll, ${write(area, view.style)}, waste ${shareText(area.value - net, net)}; by area waste ${shareText(rule - net, net)}`;
}

function floorRow({ line, face, run, widths, strip, pieces, length, seams, beside }: LaidRoll, view: View): readonly string[] {
  return [
    `  ${faceText(line, face, view)}`,
    `${lengthText(face.length.value, view)} x ${lengthText(face.height.value, view)}`,
    run,
    widths === 0 ? '' : `${widths}`,
    strip === 0 ? '' : `${lengthText(strip, view)}${pieces > 1 ? ` in ${pieces} pieces` : ''}`,
    [length.value > 0 ? lengthText(length.value, view) : '', beside === undefined ? '' : `beside ${placeText(beside, view)}`]
      .filter((each) => each !== '')
      .join(', the strip '),
    seams === 0 ? 'none' : lengthText(seams, view),
  ];
}

function lengthText(value: number, view: View): string {
  return write({ value, dimension: 'length' }, view.style);
}
