// Piers, pads, posts and beams under a floor.
import { form, measure } from '#kit/quantity';
import type { Goods } from '#model/model';
import type { Literal, Portion } from '../lines.ts';
import type { Ground } from './foundation.ts';
import { asSize, counted, portion } from './portion.ts';

const grid = form('piers', 'rows × piers in a row', (rows = 0, each = 0) => rows * each);
const round = form(
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
        portions.push(portion('pier-volume', where, measure('volume', round, count, size.first, size.second), { goods }));
    }
  }
  if (posts !== undefined)
    portions.push(portion('post-count', where, counted('posts', posts.value.count), { sizes: [posts.value.size] }));
  if (beam?.value.long !== undefined) {
    const { plies, size, long } = beam.value;
    const named = isGoods(size) ? { goods: size } : { sizes: [size] };
    const times = counted('plies', plies ?? 1);
    portions.push(portion('beam-length', where, long, { ...named, times, pieces: [{ count: times, length: long }] }));
  }
  return portions;
}

function isGoods(size: Goods | Literal): size is Goods {
  return 'name' in size;
}
