// The take-off as a sheet: one row a line. What is bought stands at the first line of its item, once, so that it adds up.
import { number, type Sheet, type SheetCell, text } from './sheet.ts';
import { takeOffAnswer } from './takeoff-json.ts';
import type { View } from './view.ts';

export function takeOffSheet(view: View): Sheet {
  const { lines, purchases } = takeOffAnswer(view);
  const bought = new Map(purchases.map((purchase) => [purchase.lines[0], purchase.bought]));
  return {
    name: 'Take-off',
    currency: view.style.currency,
    columns: [
      ...['id', 'item', 'label', 'element', 'part', 'room', 'level', 'uniformat', 'work'].map(text),
      number('net'),
      text('net unit'),
      number('needed'),
      text('needed unit'),
      number('hours'),
      number('bought'),
      text('bought unit'),
    ],
    rows: lines.map((line): readonly SheetCell[] => [
      line.id,
      line.item,
      line.label,
      line.where.element,
      line.where.part,
      line.where.room,
      line.where.level,
      line.uniformat,
      line.work,
      line.quantity,
      line.unit,
      line.needed?.quantity,
      line.needed?.unit,
      line.hours,
      bought.get(line.id)?.quantity,
      bought.get(line.id)?.unit,
    ]),
  };
}
