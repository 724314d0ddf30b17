// Rows for rooms, the openings in their walls and the walls between them.
import { bay, headerSize, headings, outline, roomUse, sides, storage } from './common.ts';
import {
  anyName,
  by,
  count,
  either,
  fields,
  flag,
  followedBy,
  goods,
  kind,
  listOf,
  literal,
  nameOf,
  oneOf,
  optional,
  phrase,
  pointTo,
  properties,
  quantity,
} from './types.ts';

const length = quantity('length');
const area = quantity('area');
const finish = listOf(
  fields({
    layers: listOf(goods, 'over'),
    to: optional(phrase('to', length)),
    above: optional(oneOf('above')),
  }),
);

const openingProperties = properties({
  rough: { takes: by(length, length), inHeader: true, help: 'Rough opening.', example: `rough 3'-0 1/2" x 5'-0 1/2"` },
  clear: { takes: by(length, length), inHeader: true, help: 'Net clear opening, from the maker.', example: 'clear 31" x 55"' },
  header: {
    takes: headerSize,
    inHeader: true,
    help: 'The header over it, where it is not the level’s.',
    example: 'header 2-ply 2x12',
  },
  U: { takes: quantity('conductance'), inHeader: true, help: 'Heat that passes through.', example: 'U 0.28' },
  SHGC: {
    takes: quantity('number'),
    inHeader: true,
    help: 'Share of the sun’s heat that passes through, from the label.',
    example: 'SHGC 0.25',
  },
  tempered: { takes: flag, inHeader: true, help: 'Safety glass.', example: 'tempered' },
  ...storage,
});

const countedOpening = fields({
  count: optional(count),
  type: nameOf('opening'),
  side: optional(phrase('in', headings)),
  at: optional(phrase('at', listOf(length))),
  to: optional(phrase('to', pointTo('room'))),
});
const countedGoods = listOf(
  fields({ count: optional(either(count, length)), type: goods, ratings: listOf(either(by(literal, literal), literal), 'none') }),
);

export const window = kind({
  word: 'window',
  space: 'goods',
  help: 'A type of window, by its nominal unit size, width first.',
  example: `window w-3050 3'-0" x 5'-0", sill 24", U 0.28`,
  name: 'required',
  takes: by(length, length),
  facts: { area: 'area', width: 'length', height: 'length' },
  properties: properties({
    ...openingProperties,
    sill: { takes: length, inHeader: true, help: 'Sill above the floor.', example: 'sill 24"' },
    casement: { takes: flag, inHeader: true, help: 'Hinged at the side.', example: 'casement' },
    awning: { takes: flag, inHeader: true, help: 'Hinged at the top.', example: 'awning' },
    slider: { takes: flag, inHeader: true, help: 'Slides sideways.', example: 'slider' },
    'double-hung': { takes: flag, inHeader: true, help: 'Two sashes that slide up and down.', example: 'double-hung' },
    fixed: { takes: flag, inHeader: true, help: 'Does not open.', example: 'fixed' },
    skylight: { takes: flag, inHeader: true, help: 'Set in the roof.', example: 'skylight' },
    limiter: { takes: flag, inHeader: true, help: 'Opens less than 4 inches, or has a fall guard.', example: 'limiter' },
  }),
});

export const door = kind({
  word: 'door',
  space: 'goods',
  help: 'A type of door, width first.',
  example: `door d-3068 3'-0" x 6'-8", exterior`,
  name: 'required',
  takes: by(length, length),
  facts: { area: 'area', width: 'length', height: 'length' },
  properties: properties({
    ...openingProperties,
    exterior: { takes: flag, inHeader: true, help: 'An outside door.', example: 'exterior' },
    interior: { takes: flag, inHeader: true, help: 'An inside door; so unless it says exterior.', example: 'interior' },
    'half-glass': { takes: flag, inHeader: true, help: 'Glass in the upper half.', example: 'half-glass' },
    sliding: { takes: flag, inHeader: true, help: 'Slides.', example: 'sliding' },
    bifold: { takes: flag, inHeader: true, help: 'Folds.', example: 'bifold' },
    pocket: { takes: flag, inHeader: true, help: 'Slides into the wall.', example: 'pocket' },
  }),
});

export const room = kind({
  word: 'room',
  help: 'A space with a floor. Clear size, framing face to framing face.',
  example: 'room bath "Bath" on main',
  name: 'required',
  facts: {
    'floor-area': 'area',
    perimeter: 'length',
    height: 'length',
    'wall-area': 'area',
    'window-area': 'area',
    width: 'length',
    depth: 'length',
    volume: 'volume',
  },
  properties: properties({
    on: { takes: nameOf('level'), inHeader: true, help: 'The level it is on.', example: 'on main' },
    at: {
      takes: fields({ east: length, north: phrase(',', length) }),
      inHeader: true,
      help: 'Its clear south-west corner, from the outside south-west corner of the framing: east, then north.',
      example: `at 11'-5 1/2", 18'-7"`,
    },
    size: { takes: by(length, length), inHeader: true, help: 'Clear size: east, then north.', example: `size 8'-0" x 5'-0"` },
    outline: {
      takes: outline,
      help: 'Its sides walked, in eight directions, its corners, or rectangles put together and cut away, where it is no rectangle.',
      example: "outline east 10', north 6', northwest 4'-3\", west 7', south 9'",
    },
    bay: {
      takes: bay,
      repeats: true,
      help: 'A bay of three sides that it reaches into, by clear sizes: along the wall by out from it, how far it begins from the west or south end of the room, and the angle of its sides to the wall, 45 degrees unless said.',
      example: `bay 7'-6" x 2' in south at 3', 45 degrees`,
    },
    'wall-lengths': {
      takes: listOf(length),
      help: 'Lengths of its walls, where neither size nor sides are told; each face of a wall by itself.',
      example: "wall-lengths 148', 2 * 149'",
    },
    crews: { takes: count, help: 'How many crews it has room for at once; as many as come unless said.', example: 'crews 1' },
    use: {
      takes: roomUse,
      help: 'What it is for.',
      example: 'use sleeping',
    },
    sunroom: {
      takes: flag,
      inHeader: true,
      help: 'It is built of glass before the house, which takes light and air through it.',
      example: 'sunroom',
    },
    height: { takes: length, help: 'Its height, where it is not the level’s.', example: `height 7'-6"` },
    sloped: {
      takes: fields({
        low: length,
        lowSide: phrase('in', sides),
        high: phrase(',', fields({ height: length, side: phrase('in', oneOf('north', 'east', 'south', 'west', 'middle')) })),
      }),
      help: 'A sloped ceiling: its height at the low side, and at the high side across from it or in the middle.',
      example: `sloped 4'-6" in west, 10' in east`,
    },
    lowest: { takes: length, help: 'Underside of its lowest beam or duct.', example: `lowest 6'-8"` },
    floor: {
      takes: finish,
      help: 'Finished floor: layers from the top down.',
      example: 'floor porcelain-tile over tile-membrane',
    },
    walls: { takes: finish, help: 'Finish of its walls.', example: 'walls moisture-board, paint' },
    ceiling: { takes: finish, help: 'Finish of its ceiling.', example: 'ceiling paint' },
    base: { takes: goods, help: 'Base at the foot of its walls, or none.', example: 'base none' },
    wet: {
      takes: fields({
        area,
        layers: listOf(goods, 'over'),
        high: optional(phrase(',', followedBy(length, 'high'))),
        behind: optional(phrase(',', listOf(goods))),
      }),
      repeats: true,
      help: 'Tiled wet wall: how high it reaches, and what is behind the tile.',
      example: 'wet 60 sf porcelain-tile over backer-board, tile-membrane',
    },
    tile: {
      takes: fields({ area, of: goods }),
      repeats: true,
      help: 'Tile on part of a wall, such as a splash.',
      example: 'tile 32 sf porcelain-tile',
    },
    windows: {
      takes: listOf(countedOpening),
      repeats: true,
      help: 'Its windows, and the wall they are in.',
      example: `windows 2 w-3050 in south at 2'-6", 9'-0"`,
    },
    well: {
      takes: fields({
        size: by(length, length),
        deep: optional(phrase(',', followedBy(length, 'deep'))),
        way: optional(phrase(',', oneOf('ladder', 'steps'))),
        form: optional(phrase(',', oneOf('half-round'))),
      }),
      repeats: true,
      help: 'A window well outside it: width along the wall by clear space before the window, depth, way up; half-round where its wall has no corners.',
      example: 'well 48" x 36", 50" deep, ladder',
      deeper: properties({
        stone: {
          takes: fields({ depth: length, of: goods }),
          help: 'Stone in its bottom, which drains it.',
          example: 'stone 12" washed-stone',
        },
      }),
    },
    doors: {
      takes: listOf(countedOpening),
      repeats: true,
      help: 'Its doors; a door to another room is counted once.',
      example: 'doors 1 d-2868 to hall',
    },
    cased: {
      takes: listOf(fields({ size: by(length, length), to: phrase('to', pointTo('room')) })),
      repeats: true,
      help: 'An opening without a door.',
      example: `cased 3'-6" x 6'-8" to living`,
    },
    'open to': { takes: listOf(pointTo('room')), help: 'No wall between.', example: 'open to kitchen' },
    closet: {
      takes: fields({
        size: by(length, length),
        side: optional(phrase('in', sides)),
        door: optional(phrase(',', fields({ count: optional(count), type: nameOf('opening') }))),
      }),
      repeats: true,
      help: 'A closet inside the room.',
      example: `closet 6'-0" x 2'-0" in south, 1 d-5068`,
    },
    fixtures: {
      takes: countedGoods,
      repeats: true,
      help: 'Plumbing fixtures and the like.',
      example: 'fixtures 1 toilet, 1 vanity 30"',
    },
    clearance: {
      takes: fields({
        fixture: oneOf('toilet', 'basin', 'shower', 'alarm'),
        distances: listOf(
          fields({ length, way: oneOf('to side', 'in front', 'to centre', 'overhead', 'to bath door', 'to stove') }),
        ),
      }),
      repeats: true,
      help: 'Room about a fixture: from its centre to the side, clear in front, from centre to centre of the next; about an alarm.',
      example: 'clearance toilet 16" to side, 24" in front',
    },
    'dryer-duct': {
      takes: fields({
        long: length,
        elbows: optional(phrase(',', followedBy(count, 'elbows'))),
        bends: optional(phrase(',', followedBy(count, 'bends'))),
      }),
      help: 'Dryer exhaust to the outside: its length, elbows of 90 degrees, bends of 45.',
      example: `dryer-duct 18', 2 elbows, 1 bends`,
      deeper: properties({
        across: { takes: length, trailing: true, help: 'Its diameter.', example: '4" across' },
        transition: { takes: length, help: 'Soft duct between dryer and wall.', example: "transition 6'" },
        'from openings': {
          takes: length,
          trailing: true,
          help: 'From where it ends outside to the nearest window, door or intake.',
          example: "4' from openings",
        },
      }),
    },
    'trap-arm': {
      takes: fields({ size: length, long: phrase(',', followedBy(length, 'long')) }),
      help: 'The longest arm from a trap to its vent: size and length.',
      example: `trap-arm 1 1/2", 5' long`,
      deeper: properties({
        falls: { takes: quantity('slope'), help: 'Its fall.', example: 'falls 1/4" per foot' },
      }),
    },
    tailpiece: {
      takes: fields({ down: followedBy(length, 'down'), across: optional(phrase(',', followedBy(length, 'across'))) }),
      help: 'From the outlet of a fixture to the weir of its trap, where it is farthest.',
      example: `tailpiece 12" down, 8" across`,
    },
    drain: { takes: length, help: 'Size of the branch drain that takes all its fixtures.', example: 'drain 3"' },
    guard: { takes: length, help: 'Height of the guard where its floor is open to below.', example: 'guard 36"' },
    devices: {
      takes: countedGoods,
      repeats: true,
      help: 'Outlets, switches, lights, alarms.',
      example: 'devices 1 gfci-outlet, 2 light',
    },
    cabinets: {
      takes: countedGoods,
      repeats: true,
      help: 'Cabinets, by length or count.',
      example: "cabinets 15' base-cabinet, 1 tall-cabinet",
    },
    counter: { takes: fields({ area, of: optional(goods) }), help: 'Counter top.', example: 'counter 28 sf' },
    island: {
      takes: fields({ size: by(length, length), outlets: optional(phrase(',', followedBy(count, 'outlets'))) }),
      repeats: true,
      help: 'An island or peninsula of counter, and how many of the room’s outlets it has.',
      example: "island 6' x 3', 1 outlets",
    },
    circuits: {
      takes: listOf(fields({ count, current: phrase('at', quantity('current')) })),
      repeats: true,
      help: 'Branch circuits for its outlets and appliances.',
      example: 'circuits 2 at 20 A, 1 at 50 A',
    },
    finish: {
      takes: phrase('as', pointTo('room')),
      help: 'Takes floor, walls, ceiling and base from another room where they are not given here.',
      example: 'finish as bed-1',
    },
  }),
});

export const wall = kind({
  word: 'wall',
  help: 'One inside wall that differs from the level’s partitions.',
  example: 'wall wet-wall between bath, bed-2 of int-2x6',
  name: 'required',
  facts: {},
  properties: properties({
    between: { takes: listOf(pointTo('room')), inHeader: true, help: 'The two rooms it parts.', example: 'between bath, bed-2' },
    of: { takes: nameOf('assembly'), inHeader: true, help: 'What it is made of.', example: 'of int-2x6' },
    long: {
      takes: length,
      trailing: true,
      inHeader: true,
      help: 'Its length, where the rooms are not placed.',
      example: "9' long",
    },
  }),
});

export const measured = kind({
  word: 'measure',
  help: 'A dimension string of the drawing that must close.',
  example: `measure main.north 5 1/2" + 27'-1" = 28'`,
  name: 'none',
  takes: fields({ of: optional(anyName), left: length, right: phrase('=', length) }),
  facts: {},
  properties: properties({}),
});
