// Goods to be bought that no price, bid or allowance stands for: the total is short by them.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Missing } from '#money/cost-lines';
import type { Check } from '../../check.ts';
import { placeOfLine } from '../../mention.ts';

export const short = findingSort<[goods: readonly string[], others: number]>({
  code: 'money/price-missing',
  severity: 'warning',
  say: (goods, others) =>
    `No price stands for ${goods.join(', ')}${others > 0 ? ` and ${others} more` : ''}, so the total is short by ${goods.length + others === 1 ? 'it' : 'them'}. Add a price, an allowance, or an accepted bid that holds ${goods.length + others === 1 ? 'it' : 'them'}.`,
});

const LISTED = 6;

export const priceMissing: Check = {
  code: 'money/price-missing',
  about:
    'Once a plan has prices, everything it buys needs one: its own, an allowance, or an accepted bid that holds it. One finding lists what is missing; without any price in the plan it is a note.',
  wrong: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
  layer lap-siding, 7" to the weather
price housewrap $165/roll
`,
  right: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
price housewrap $165/roll
`,
  run: ({ model, budget }) => {
    const goods = budget.missing.filter(isBought);
    const [first] = goods;
    const place = first?.line === undefined ? undefined : placeOfLine(first.line, model);
    if (place === undefined) return [];
    const names = goods.map(({ what }) => what);
    const made: Finding = finding(short, place, names.slice(0, LISTED), Math.max(0, names.length - LISTED));
    return [model.list('price').length > 0 ? made : { ...made, severity: 'note' }];
  },
};

/** Items are measured, not bought. */
function isBought({ kind, line }: Missing): boolean {
  return kind === 'price' && line?.goods?.of?.kind !== 'item';
}
