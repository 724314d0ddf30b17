// Boards laid in rows: as many as cover the way across, each as long as the row, so that stock is chosen by the row's length.
import { form, measure, type Quantity, roundUp } from '#kit/quantity';
import type { Goods } from '#model/model';
import { actualSize, materialOf } from '../goods.ts';
import type { Pieces } from '../lines.ts';

type Length = Quantity<'length'>;

const rowsOf = form('rows of boards', 'way across ÷ part of each board that shows, rounded up', (across = 0, face = 1) =>
  face > 0 ? roundUp(across / face) : 0,
);
const timesRows = form('boards', 'rows × how often', (rows = 0, often = 1) => rows * often);

/** `often` such surfaces. Undefined where nobody knows how wide the boards are. */
export function boardRows(
  goods: Goods | undefined,
  long: Length,
  across: Length,
  often?: Quantity<'number'>,
): readonly Pieces[] | undefined {
  if (goods === undefined) return undefined;
  const face = materialOf(goods)?.given.face?.value ?? actualSize(goods)?.right;
  if (face === undefined || !(face.value > 0)) return undefined;
  const rows = measure('number', rowsOf, across, face);
  return [{ count: often === undefined ? rows : measure('number', timesRows, rows, often), length: long }];
}
