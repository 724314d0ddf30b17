// Bids that do not say whether materials are in them.
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const unsaid = findingSort<[bid: string]>({
  code: 'money/bid-without-scope',
  severity: 'note',
  say: (bid) =>
    `"${bid}" does not say whether materials are in it; until it does they count as included. Ask, and write "with materials" or "labour only".`,
});

export const bidWithoutScope: Check = {
  code: 'money/bid-without-scope',
  about:
    'A bid should say "with materials" or "labour only": materials are half of many trades, and two bids compare only when both say it. Silent for a bid kept on record after another for the same trade was accepted.',
  wrong: `trade plumbing crew of 2 at $78/h
firm ruiz does plumbing
bid ruiz-bid by ruiz for plumbing $17,900, accepted 2027-03-02
`,
  right: `trade plumbing crew of 2 at $78/h
firm ruiz does plumbing
bid ruiz-bid by ruiz for plumbing $17,900, accepted 2027-03-02, with materials
`,
  run: ({ model }) => {
    const bids = model.list('bid');
    const settled = new Set(
      bids.flatMap(({ given }) =>
        given.accepted === undefined ? [] : (given.for?.value.trades.map(({ value }) => value) ?? []),
      ),
    );
    return bids.flatMap(({ given, place, name }) => {
      if (given['with materials'] !== undefined || given['labour only'] !== undefined) return [];
      const trades = given.for?.value.trades ?? [];
      if (given.accepted === undefined && trades.length > 0 && trades.every(({ value }) => settled.has(value))) return [];
      return [finding(unsaid, place, name)];
    });
  },
};
