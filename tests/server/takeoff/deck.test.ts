// Decks by hand: boards in rows as long as the deck, and what a pier weighs by its size.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const deck = (lines: string) => planOf(`deck porch\n${lines}`, { library: 'built-in' });

test('a deck of 12 by 8 ft: 96 / 5 1/2 in is 18 rows, each one board of 12 ft, and 10 % more', () => {
  const boards = deck("  size 12' x 8'\n  boards deck-board 5/4x6\n").purchase('deck-board 5/4x6');
  expect(boards.lines[0]!.pieces!.map(({ count, length }) => [count.value, amount(length, 'ft')])).toEqual([[18, 12]]);
  // 96 sf are 209.5 ft of board, 230.4 with waste: 19.2 boards.
  expect(boards.bought.value).toBe(20);
  expect(amount(boards.holds, 'ft')).toBe(12);
});

test('a deck of 8 by 12 ft: 27 rows of 8 ft; steps 3 ft wide are cut from the same boards', () => {
  const plain = deck("  size 8' x 12'\n  boards deck-board 5/4x6\n").purchase('deck-board 5/4x6');
  expect(plain.lines[0]!.pieces!.map(({ count, length }) => [count.value, amount(length, 'ft')])).toEqual([[27, 8]]);
  const stepped = deck('  size 8\' x 12\'\n  boards deck-board 5/4x6\n  high 24"\n  steps 3, 36" wide\n').purchase(
    'deck-board 5/4x6',
  );
  expect(stepped.lines.map(({ pieces }) => pieces!.map(({ count, length }) => [count.value, amount(length, 'ft')]))).toEqual([
    [[27, 8]],
    [[2 * 2, 3]],
  ]);
});

test('a pier of 12 by 36 in: 0.785 sf by 3 ft is 2.36 cf', () => {
  const piers = (deep: string) => amount(deck(`  size 8' x 6'\n  piers 4, 12" x ${deep}\n`).line('deck-pier-volume').net, 'cf');
  expect(piers('36"')).toBeCloseTo(4 * (Math.PI / 4) * 3, 2);
  expect(piers('30"')).toBeCloseTo(4 * (Math.PI / 4) * 2.5, 2);
});
