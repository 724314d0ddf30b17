// The row for stairs: what flights and turns must tell so that its parts can be counted and its steps held against the code's minimums.
import { by, count, fields, flag, followedBy, goods, kind, nameOf, optional, phrase, properties, quantity } from './types.ts';

const length = quantity('length');

export const stair = kind({
  word: 'stair',
  help: 'Steps between two floors, or down to the ground: one flight, or several with landings or winders between.',
  example: 'stair cellar-stair "Stair to the basement" from main',
  name: 'required',
  facts: {
    rise: 'length',
    risers: 'number',
    riser: 'length',
    run: 'length',
    flights: 'number',
    'flight-rise': 'length',
    'turn-landing': 'length',
    'turn-landing-width': 'length',
    'winder-tread': 'length',
    headroom: 'length',
  },
  properties: properties({
    from: { takes: nameOf('level'), inHeader: true, help: 'The level at its top.', example: 'from main' },
    rise: { takes: length, help: 'Whole height from finished floor to finished floor.', example: 'rise 109 1/4"' },
    risers: { takes: count, help: 'How many risers.', example: 'risers 15' },
    riser: { takes: length, help: 'Height of one, where the drawing gives it.', example: 'riser 7 1/4"' },
    first: { takes: length, help: 'Height of the lowest riser as framed, where it differs.', example: 'first 6 5/8"' },
    finish: {
      takes: fields({
        below: followedBy(length, 'below'),
        treads: phrase(',', followedBy(length, 'on treads')),
        above: phrase(',', followedBy(length, 'above')),
      }),
      help: 'What is still to be laid on the floor below, the treads and the floor above, where the rise is as framed.',
      example: 'finish 5/8" below, 3/8" on treads, 3/8" above',
    },
    tread: { takes: length, help: 'Depth of a tread, nosing to nosing.', example: 'tread 10"' },
    turn: {
      takes: phrase('after', count),
      repeats: true,
      help: 'Where it turns, or rests: how many risers up from its foot; on a landing or over winders. Legs and hangers of a landing are not counted.',
      example: 'turn after 7, landing 36" x 36"',
      deeper: properties({
        landing: {
          takes: by(length, length),
          help: 'A landing, in the way of travel by across: it takes the place of a tread.',
          example: 'landing 36" x 36"',
        },
        winders: {
          takes: count,
          trailing: true,
          help: 'Treads that turn in its place, narrow at the inside.',
          example: '3 winders',
        },
        half: { takes: flag, help: 'It turns back; else a quarter.', example: 'half' },
      }),
    },
    opening: {
      takes: fields({ long: length, floor: phrase(',', followedBy(length, 'floor')) }),
      help: 'Opening in the floor above, over its upper flight: how far it reaches from the top riser, and how thick that floor is with its ceiling; the headroom where none is given.',
      example: `opening 10', 11 7/8" floor`,
    },
    'tread-most': { takes: length, help: 'Depth of its deepest tread, where they differ.', example: 'tread-most 10 1/4"' },
    narrow: { takes: length, help: 'Depth of a winder at its narrow end.', example: 'narrow 6"' },
    nosing: { takes: length, help: 'How far a tread stands out.', example: 'nosing 1"' },
    width: { takes: length, help: 'Clear width above the rails.', example: 'width 36"' },
    'below-rails': {
      takes: fields({ clear: length, rails: optional(phrase(',', followedBy(count, 'rails'))) }),
      help: 'Clear width below the height of the handrails, and how many rails stand into it.',
      example: 'below-rails 32", 1 rails',
    },
    headroom: { takes: length, help: 'Least height above the line of the nosings.', example: `headroom 6'-8"` },
    landing: { takes: length, help: 'Depth of the shorter landing, top or bottom.', example: 'landing 36"' },
    handrail: { takes: length, help: 'Height of the handrail, or 0 for none.', example: 'handrail 36"' },
    guard: { takes: length, help: 'Height of the guard at its open side.', example: 'guard 36"' },
    gaps: { takes: length, help: 'Widest gap in the guard at its open side.', example: 'gaps 4"' },
    triangle: {
      takes: length,
      help: 'Ball that passes between riser, tread and the foot of the guard.',
      example: 'triangle 5 1/2"',
    },
    stringers: {
      takes: fields({ count: optional(count), of: optional(goods) }),
      help: 'How many stringers carry it, and of what, where that is not the usual.',
      example: 'stringers 3 stair-stringer',
    },
    treads: { takes: goods, help: 'What its treads are made of.', example: 'treads deck-board 5/4x6' },
    'riser-boards': { takes: goods, help: 'What closes its risers, or none.', example: 'riser-boards none' },
    outside: { takes: flag, inHeader: true, help: 'Outdoors, built with the deck or porch.', example: 'outside' },
    winding: { takes: flag, inHeader: true, help: 'With winders; the tread is that at the walk line.', example: 'winding' },
    spiral: { takes: flag, inHeader: true, help: 'Round a post; the tread is that at the walk line.', example: 'spiral' },
  }),
});
