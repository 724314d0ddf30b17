// Values that several kinds take alike: the sides of the compass, a place, outlines by sides, corners or rectangles, the months,
// headers and posts, what rooms are for, how goods are stored.
import {
  by,
  count,
  either,
  fields,
  listOf,
  literal,
  nameOf,
  oneOf,
  optional,
  phrase,
  properties,
  quantity,
  wait,
} from './types.ts';

const length = quantity('length');
export const sides = oneOf('north', 'east', 'south', 'west');
/** And the four ways between them, at 45 degrees. */
export const headings = oneOf('north', 'east', 'south', 'west', 'northeast', 'southeast', 'southwest', 'northwest');
/** East, then north. */
export const place = fields({ east: length, north: phrase(',', length) });
/** A rectangle, and others that are put to it or cut from it. */
const rectangles = fields({
  first: by(length, length),
  more: phrase(',', listOf(fields({ how: oneOf('plus', 'less'), size: by(length, length), at: phrase('at', place) }))),
});
const corners = fields({ corners: phrase('corners', listOf(by(length, length))) });
const walk = listOf(fields({ side: headings, length }));
export const outline = either(rectangles, corners, walk);
/** A bay of three sides on a wall. */
export const bay = fields({
  size: by(length, length),
  side: phrase('in', sides),
  at: phrase('at', length),
  angle: optional(phrase(',', quantity('slope'))),
});
/** How many pieces side by side, and what they are sawn as. */
export const headerSize = fields({ plies: optional(count), size: literal });
export const postLength = properties({
  long: { takes: length, trailing: true, help: 'How long each post is.', example: '22" long' },
});
export const months = oneOf('jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec');
export const roomUse = oneOf(
  'sleeping',
  'living',
  'cooking',
  'bathing',
  'passage',
  'storage',
  'utility',
  'laundry',
  'closet',
  'garage',
);
/** How long goods lie well on site, and how. */
export const storage = properties({
  keeps: { takes: wait, help: 'How long it may lie on site before it is used.', example: 'keeps 3 weeks' },
  stored: {
    takes: listOf(oneOf('dry', 'indoors', 'flat', 'locked', 'warm')),
    help: 'How it lies until then: dry is off the ground and covered, indoors in a closed house, warm without frost.',
    example: 'stored indoors, flat',
    deeper: properties({
      until: {
        takes: nameOf('state'),
        help: 'The state that the house must have before it has a place for it.',
        example: 'until dry',
      },
    }),
  },
});
