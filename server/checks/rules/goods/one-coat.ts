// Paint that is counted for one coat on new board: it shows every joint, and is bought again.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Material } from '#model/model';
import type { Purchase } from '#takeoff/lines';
import type { Check } from '../../check.ts';
import { placeOfLine } from '../../mention.ts';
import { quantityText } from '../../show.ts';

export const thin = findingSort<[goods: string, area: string, under: string | undefined]>({
  code: 'goods/one-coat',
  severity: 'warning',
  say: (goods, area, under) =>
    `${goods} is counted for one coat on ${area} of new ${under === undefined ? 'board, with nothing under it' : `board, over ${under}`}: bare board and its joints drink differently, and one coat shows every tape. Count two ("coats 2")${under === undefined ? ' over a primer ("under it primer")' : ''}, or the painter comes back at your cost.`,
});

export const oneCoat: Check = {
  code: 'goods/one-coat',
  about:
    'New board takes a primer and two coats on its walls; a ceiling one flat coat over primer. Fewer are an old wall’s, or a forgotten line.',
  wrong: `material paint
  coats 1
room den
  size 10' x 12'
  height 8'
  walls paint
`,
  right: `room den
  size 10' x 12'
  height 8'
  walls paint
`,
  reads: ({ model, takeOff }) => [takeOff.purchases(), model.settings],
  run: ({ model, takeOff }) => {
    const painted = takeOff
      .purchases()
      .filter(({ goods, lines }) => isCoat(goods.of) && lines.some(({ measure }) => isOnBoard(measure)));
    const under = new Set(painted.flatMap(({ goods }) => underIt(goods.of as Material)?.name ?? []));
    return painted.flatMap((purchase): readonly Finding[] => {
      const row = purchase.goods.of as Material;
      if (under.has(row.name)) return [];
      const primer = underIt(row);
      const lines = purchase.lines.filter(
        ({ measure, coats }) => coats < 2 && (measure === WALLS || (measure === CEILINGS && primer === undefined)),
      );
      const [first] = lines;
      const place = first === undefined ? undefined : placeOfLine(first, model);
      if (first === undefined || place === undefined) return [];
      return [finding(thin, place, purchase.label, quantityText(areaOf(lines), model), primer?.label)];
    });
  },
};

const WALLS = 'painted-wall-area';
const CEILINGS = 'painted-ceiling-area';

function isOnBoard(measure: string): boolean {
  return measure === WALLS || measure === CEILINGS;
}

function isCoat(row: Purchase['goods']['of']): boolean {
  return row?.kind === 'material' && row.given.laid?.value === 'coats';
}

function underIt({ given }: Material): Material | undefined {
  const row = given['under it']?.value;
  return row?.kind === 'material' ? row : undefined;
}

function areaOf(lines: Purchase['lines']) {
  return { value: lines.reduce((sum, { net }) => sum + net.value, 0), dimension: 'area' } as const;
}
