// What the turns of a stair take: the framing and deck of a landing, winders with their framing and risers.
import { form, measure, type Quantity } from '#kit/quantity';
import { type Part, stairFacts, walkedDepth } from '#model/facts/stair';
import type { Goods, Stair } from '#model/model';
import type { StairCounts } from '../conventions.ts';
import type { Portion, Where } from '../lines.ts';
import { counted, portion } from './portion.ts';
import { piecesAlong, rectangle } from './runs.ts';

type Length = Quantity<'length'>;
type Turning = Exclude<Part, { kind: 'straight' }>;
type Winders = Extract<Part, { kind: 'winders' }>;

const landingFrame = form(
  'framing of the landing',
  'joists × its depth + 2 × across',
  (count = 0, depth = 0, across = 0) => count * depth + 2 * across,
);
const diagonal = form(
  'edge of a winder',
  'width × √2',
  (width = 0) => width * Math.sqrt(2),
  'common practice: as long as the longest, to the corner of the turn',
);
const winderFrame = form('framing of the winders', '(winders + 1) × edge', (count = 0, edge = 0) => (count + 1) * edge);
const winderBoards = form('riser boards', '(winders − 1) × edge', (count = 0, edge = 0) => Math.max(0, count - 1) * edge);
const winderSurface = form(
  'winders',
  'width × width, once or twice, as it turns',
  (width = 0, turns = 1) => width * width * turns,
);
const winderRail = form(
  'rail over the winders',
  '√((winders × walk line)² + ((winders − 1) × riser)²)',
  (count = 0, depth = 0, riser = 0) => Math.sqrt(count * depth * (count * depth) + (count - 1) * riser * ((count - 1) * riser)),
);
const two = counted('rims', 2);

/** `risers` says that riser boards close it, and of what. */
export function turnPortions(
  part: Turning,
  width: Length,
  risers: { readonly boards: Goods | undefined } | undefined,
  treads: Goods | undefined,
  outside: boolean,
  where: Where,
  counts: StairCounts,
): readonly Portion[] {
  const frameBy = outside ? 'step-landing-frame-length' : 'stair-landing-frame-length';
  if (part.kind === 'landing') {
    const { left: depth, right: across } = part.size;
    const count = piecesAlong(across, counts.landingSpacing);
    const pieces = [
      { count, length: depth },
      { count: two, length: across },
    ];
    const area = rectangle(depth, across);
    return [
      portion(frameBy, where, measure('length', landingFrame, count, depth, across), { pieces }),
      outside ? portion('step-tread-area', where, area, { goods: treads }) : portion('stair-landing-area', where, area),
    ];
  }
  const count = counted('winders', part.count);
  const edge = measure('length', diagonal, width);
  const frame = portion(frameBy, where, measure('length', winderFrame, count, edge), {
    pieces: [{ count: counted('edges', part.count + 1), length: edge }],
  });
  if (risers === undefined || outside || part.count < 2) return [frame];
  return [
    frame,
    portion('stair-riser-length', where, measure('length', winderBoards, count, edge), {
      goods: risers.boards,
      pieces: [{ count: counted('risers', part.count - 1), length: edge }],
    }),
  ];
}

/** Indoors each by itself; outdoors the boards of the square that they turn in. */
export function winderTreads({ count, turn }: Winders, outside: boolean, width: Length, where: Where): readonly Portion[] {
  if (!outside) return [portion('stair-winder-count', where, counted('winders', count))];
  const squares = counted('quarter turns', turn.deeper.half === undefined ? 1 : 2);
  return [portion('step-tread-area', where, measure('area', winderSurface, width, squares))];
}

/** Over winders the rail goes on along the walk line; at a landing it ends or goes level, as the drawing shows. */
export function turnRail(stair: Stair, part: Turning): Length | undefined {
  if (part.kind !== 'winders') return undefined;
  const { riser } = stairFacts(stair);
  const depth = walkedDepth(stair, part) ?? stair.given.tread?.value;
  if (riser === undefined || depth === undefined) return undefined;
  return measure('length', winderRail, counted('winders', part.count), depth, riser);
}
