// Decks and porches: joists that run away from the house, rim and ledger, beam, boards along the house, posts, piers, rail, steps.
import type { Finding } from '#kit/finding';
import { form, measure } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import type { StairCounts } from '../conventions.ts';
import type { Portion } from '../lines.ts';
import { boardRows } from './deck-boards.ts';
import { beamPortions, postPortion, roundPiers } from './piers.ts';
import { asSize, counted, type Measured, portion } from './portion.ts';
import { piecesAlong, rectangle } from './runs.ts';
import { deckSteps } from './stair.ts';

const joistLength = form(
  'joists, rim and ledger',
  'joists × how far it stands out + 2 × along the house',
  (count = 0, out = 0, along = 0) => count * out + 2 * along,
);
const two = counted('rim and ledger', 2);

export function measureDeck(deck: ElementOf<'deck'>, counts: StairCounts): Measured {
  const { size, joists, posts, piers, boards, beam, rails, high } = deck.given;
  const where = { element: deck.slot };
  const portions: Portion[] = [];
  if (size !== undefined) {
    const { left: along, right: out } = size.value;
    const area = rectangle(along, out);
    portions.push(portion('deck-area', where, area));
    if (deck.given.freestanding === undefined) portions.push(portion('ledger-length', where, along));
    if (joists !== undefined) {
      const count = piecesAlong(along, joists.value.at);
      portions.push(
        portion('deck-joist-length', where, measure('length', joistLength, count, out, along), {
          sizes: [joists.value.size],
          pieces: [
            { count, length: out },
            { count: two, length: along },
          ],
        }),
        portion('deck-joist-count', where, count, { sizes: [joists.value.size] }),
      );
    }
    if (beam !== undefined)
      portions.push(...beamPortions({ ...beam.value, long: beam.value.long ?? along }, where, 'deck-beam-length'));
    if (boards !== undefined)
      portions.push(
        portion('deck-board-area', where, area, { goods: boards.value, pieces: boardRows(boards.value, along, out) }),
      );
  }
  if (posts !== undefined)
    portions.push(postPortion('deck-post-count', posts.value, posts.deeper.long?.value ?? high?.value, where));
  if (piers !== undefined) {
    const count = counted('piers', piers.value.count);
    const { left, right } = piers.value.size;
    portions.push(
      portion('deck-pier-count', where, count, { sizes: [asSize(left)] }),
      portion('deck-pier-volume', where, measure('volume', roundPiers, count, left, right)),
    );
  }
  if (rails !== undefined) portions.push(portion('deck-rail-length', where, rails.value));
  const findings: Finding[] = [];
  portions.push(...deckSteps(deck, where, counts, findings));
  return { portions, findings };
}
