// Goods bought in a way that does not suit so much of them: a slab of bagged concrete.
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';
import { placeOfLine } from '../../mention.ts';
import { quantityText } from '../../show.ts';

export const tooMuch = findingSort<[goods: string, needed: string, most: string, packages: string, instead: string]>({
  code: 'goods/too-much-so',
  severity: 'warning',
  say: (goods, needed, most, packages, instead) =>
    `${goods}: ${needed} are needed, ${packages}. That is bought so up to about ${most}; beyond it the handling costs more than the goods, and the work cannot keep up with itself. ${instead}`,
});

export const tooMuchSo: Check = {
  code: 'goods/too-much-so',
  about:
    'Some goods are meant for small amounts, as their rows say (`most`): concrete from bags for a pier, not for a slab. Above that another way of buying is cheaper, quicker and better.',
  wrong: `level floor
  footprint 60' x 40'
foundation slab under floor
  slab     6"
  concrete bag-concrete
`,
  right: `level floor
  footprint 60' x 40'
foundation slab under floor
  slab     6"
`,
  reads: ({ model, takeOff }) => [takeOff.purchases(), model.settings],
  run: ({ model, takeOff }) =>
    takeOff.purchases().flatMap(({ goods, label, needed, bought, package: word, lines }) => {
      const most = goods.of?.kind === 'material' ? goods.of.given.most?.value : undefined;
      const place = most === undefined ? undefined : placeOfLine(lines[0]!, model);
      if (most === undefined || place === undefined || most.amount.dimension !== needed.dimension) return [];
      if (needed.value <= most.amount.value) return [];
      const packages = `${Math.round(bought.value)} ${word}${bought.value === 1 ? '' : 's'}`;
      const instead = most.instead === undefined ? 'Buy it another way.' : `Buy ${most.instead}.`;
      return [
        finding(
          tooMuch,
          place,
          label,
          quantityText(needed, model, most.amount.unit),
          quantityText(most.amount, model, most.amount.unit),
          packages,
          instead,
        ),
      ];
    }),
};
