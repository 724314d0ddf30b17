// Piers, pads, posts and beams under a floor; posts, beams and piers under the roof of a porch or carport.
import { INCH } from '#kit/dimension';
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Goods, Roof } from '#model/model';
import type { Literal, Portion, Where } from '../lines.ts';
import type { Ground } from './foundation.ts';
import { asSize, counted, portion } from './portion.ts';

const grid = form('piers', 'rows × piers in a row', (rows = 0, each = 0) => rows * each);
export const roundPiers = form(
  'piers',
  'count × π ÷ 4 × diameter² × depth',
  (count = 0, across = 0, depth = 0) => (count * Math.PI * across * across * depth) / 4,
);
const square = form(
  'pads',
  'count × length × width × depth',
  (count = 0, length = 0, width = 0, depth = 0) => count * length * width * depth,
);

export function pierPortions({ foundation, where }: Ground): readonly Portion[] {
  const { piers, posts, beam, concrete } = foundation.given;
  const portions: Portion[] = [];
  if (piers !== undefined) {
    const { by, size } = piers.value;
    const first = counted('piers', piers.value.count);
    const count = by === undefined ? first : measure('number', grid, first, counted('in a row', by));
    const goods = concrete?.value;
    if (size?.third !== undefined)
      portions.push(
        portion('pad-volume', where, measure('volume', square, count, size.first, size.second, size.third), { goods }),
      );
    else {
      portions.push(portion('pier-count', where, count, size === undefined ? {} : { sizes: [asSize(size.first)] }));
      if (size !== undefined)
        portions.push(
          portion('pier-volume', where, pierVolume(count, size.first, size.second, piers.deeper.around?.value), { goods }),
        );
    }
  }
  if (posts !== undefined) portions.push(postPortion('post-count', posts.value, posts.deeper.long?.value, where));
  if (beam !== undefined) portions.push(...beamPortions(beam.value, where));
  return portions;
}

/** Posts of a length told are cut out of longer ones; of others one is bought for each. */
export function postPortion(
  by: 'post-count' | 'deck-post-count',
  { count, size }: { readonly count: number; readonly size: Literal },
  long: Quantity<'length'> | undefined,
  where: Where,
): Portion {
  const posts = counted('posts', count);
  return portion(by, where, posts, { sizes: [size], pieces: long === undefined ? undefined : [{ count: posts, length: long }] });
}

/** Each ply as long as the beam; one without a length is not counted. */
export function beamPortions(
  { plies, size, long }: Beam,
  where: Where,
  by: 'beam-length' | 'deck-beam-length' = 'beam-length',
): readonly Portion[] {
  if (long === undefined) return [];
  const named = isGoods(size) ? { goods: size } : { sizes: [size] };
  const times = counted('plies', plies ?? 1);
  return [portion(by, where, long, { ...named, times, pieces: [{ count: times, length: long }] })];
}

/** What carries the roof of a porch or a carport. */
export function underRoof({ given: { posts, beam, piers } }: Roof, where: Where): readonly Portion[] {
  const portions: Portion[] = [];
  if (piers !== undefined) {
    const count = counted('piers', piers.value.count);
    const { left, right } = piers.value.size;
    portions.push(
      portion('pier-count', where, count, { sizes: [asSize(left)] }),
      portion('pier-volume', where, measure('volume', roundPiers, count, left, right)),
    );
  }
  if (posts !== undefined) portions.push(postPortion('post-count', posts.value, posts.deeper.long?.value, where));
  if (beam !== undefined) portions.push(...beamPortions(beam.value, where));
  return portions;
}

type Beam = NonNullable<Roof['given']['beam']>['value'];

const roundAround = form(
  'concrete around posts',
  'count × (π ÷ 4 × diameter² − thickness × width of the post) × depth',
  (count = 0, across = 0, depth = 0, thick = 0, wide = 0) =>
    count * Math.max(0, (Math.PI * across * across) / 4 - thick * wide) * depth,
);
/** A post of dressed lumber is half an inch under its nominal size. */
const UNDER = INCH / 2;
function pierVolume(
  count: Quantity<'number'>,
  across: Quantity<'length'>,
  depth: Quantity<'length'>,
  around: Literal | undefined,
): Quantity<'volume'> {
  const post = postAround(around);
  if (post === undefined) return measure('volume', roundPiers, count, across, depth);
  return measure('volume', roundAround, count, across, depth, post.thick, post.wide);
}

/** Dressed sides of a post that stands in a pier; undefined where its size is none of lumber. */
export function postAround(
  around: Literal | undefined,
): { readonly thick: Quantity<'length'>; readonly wide: Quantity<'length'> } | undefined {
  if (around?.kind !== 'nominal') return undefined;
  const [thick = 0, wide = 0] = around.across.map((side) => (around.unit === undefined ? side * INCH - UNDER : side));
  return {
    thick: constant('post, dressed', thick, 'length', DRESSED),
    wide: constant('post, dressed', wide, 'length', DRESSED),
  };
}
const DRESSED = 'PS 20, American Softwood Lumber Standard, Table 3: half an inch under the nominal size up to 6 in';

function isGoods(size: Goods | Literal): size is Goods {
  return 'name' in size;
}
