// Rows for the ground and what stands in it: site, trenches, foundations, crawl space.
import { postLength, sides } from './common.ts';
import {
  by,
  code,
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
  properties,
  quantity,
  text,
  written,
} from './types.ts';

const length = quantity('length');
const bars = fields({ count, bar: literal });
const barsAt = fields({ bar: literal, at: phrase('at', followedBy(length, 'oc')) });
/** How a hole is kept from falling in. */
const keptOpen = properties({
  slope: {
    takes: quantity('slope'),
    inHeader: true,
    help: 'Side slope, level to upright; in degrees, the angle that its sides stand at.',
    example: 'slope 1.5:1',
  },
  protection: {
    takes: listOf(oneOf('shoring', 'shield', 'benches', 'engineer')),
    inHeader: true,
    help: 'What keeps its sides from falling in, besides a slope.',
    example: 'protection shield',
  },
});

const graded = fields({ size: by(length, length), first: phrase(',', length), last: phrase('to', length) });
const bedOf = fields({ depth: length, of: goods });

export const site = kind({
  word: 'site',
  help: 'The ground the house stands on.',
  example: 'site lot "Lot 14"',
  name: 'optional',
  facts: {},
  properties: properties({
    size: { takes: by(length, length), help: 'Size of the lot, east by north.', example: "size 80' x 140'" },
    soil: { takes: code, help: 'Soil class, which sets how steep an excavation may stand.', example: 'soil type-C' },
    falls: {
      takes: fields({ slope: quantity('slope'), to: optional(phrase('to', sides)) }),
      help: 'How the ground falls.',
      example: 'falls 4% to south',
    },
    drains: {
      takes: oneOf('well', 'slowly'),
      help: 'How the ground takes water; sand and gravel take it well.',
      example: 'drains well',
    },
    flood: { takes: code, help: 'Flood zone it lies in.', example: 'flood AE' },
    radon: { takes: flag, help: 'Radon rules are adopted here.', example: 'radon' },
    termites: { takes: flag, help: 'Termites are usual here.', example: 'termites' },
    ice: { takes: flag, help: 'The local table says ice at the eaves.', example: 'ice' },
    grade: {
      takes: fields({ fall: length, within: phrase('in', length) }),
      help: 'How far finished grade falls away from the house.',
      example: `grade 6" in 10'`,
    },
    topsoil: { takes: length, help: 'Depth of topsoil to strip and keep.', example: 'topsoil 6"' },
    clear: { takes: followedBy(length, 'around'), help: 'How far beyond the house to strip.', example: "clear 5' around" },
    strip: {
      takes: by(length, length),
      repeats: true,
      help: 'More ground that is stripped, such as for a drive.',
      example: "strip 60' x 12'",
    },
    cut: {
      takes: graded,
      repeats: true,
      help: 'A strip that is cut down to grade: length by width, and how deep along its one edge and its other.',
      example: `cut 40' x 10', 8" to 0"`,
    },
    fill: {
      takes: graded,
      repeats: true,
      help: 'A strip that is filled up to grade, such as along a wall.',
      example: `fill 60' x 10', 6" to 0"`,
    },
    fence: { takes: length, help: 'Length of silt fence.', example: "fence 120'" },
    wattles: { takes: length, help: 'Length of straw rolls that hold soil on a slope or at a drain.', example: "wattles 60'" },
    entrance: {
      takes: by(length, length),
      help: 'Length by width of the stone that cleans the wheels of trucks before the street.',
      example: "entrance 50' x 12'",
    },
    drive: {
      takes: by(length, length),
      help: 'Length by width of the drive.',
      example: "drive 60' x 10'",
      deeper: properties({
        base: { takes: bedOf, help: 'Depth of its stone, where it is not the usual.', example: 'base 8" road-base' },
        paving: { takes: bedOf, help: 'What it is paved with, and how thick.', example: 'paving 3" asphalt' },
        falls: { takes: quantity('slope'), help: 'How it falls away from the house.', example: 'falls 2%' },
      }),
    },
    storage: {
      takes: quantity('area'),
      help: 'Ground on which deliveries can lie.',
      example: 'storage 400 sf',
    },
    'escape-path': {
      takes: length,
      help: 'Least width of the way from the escape windows to the street.',
      example: 'escape-path 36"',
    },
  }),
});

export const trench = kind({
  word: 'trench',
  help: 'A trench for a pipe or a wire.',
  example: `trench water-line "Water" 62' long, 42" deep, 12" wide`,
  name: 'required',
  facts: { length: 'length', depth: 'length' },
  properties: properties({
    long: { takes: length, trailing: true, inHeader: true, help: 'Its length.', example: "62' long" },
    deep: { takes: length, trailing: true, inHeader: true, help: 'Its depth.', example: '42" deep' },
    wide: { takes: length, trailing: true, inHeader: true, help: 'Its width at the bottom.', example: '12" wide' },
    pipe: { takes: goods, repeats: true, help: 'A pipe laid in it.', example: 'pipe poly-pipe 1"' },
    conduit: { takes: goods, repeats: true, help: 'A conduit laid in it.', example: 'conduit pvc-conduit 2"' },
    falls: { takes: quantity('slope'), help: 'Fall of a drain laid in it.', example: 'falls 1/4" per foot' },
    bed: { takes: fields({ depth: length, of: goods }), help: 'Bedding under and around the pipe.', example: 'bed 4" sand' },
    ...keptOpen,
  }),
});

export const dryWell = kind({
  word: 'dry-well',
  help: 'A pit of stone that takes the rain of a roof.',
  example: 'dry-well east-well "Dry well" for roof main 50%',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: fields({ kind: oneOf('roof'), of: nameOf('roof'), share: optional(quantity('number')) }),
      repeats: true,
      inHeader: true,
      help: 'The roof, or part of it, that it drains.',
      example: 'for roof main 50%',
    },
    storm: { takes: length, help: 'Depth of the rain it must take.', example: 'storm 1.5"' },
    voids: { takes: quantity('number'), help: 'Share of the stone that is air.', example: 'voids 40%' },
    size: { takes: by(length, length), help: 'Plan of the pit.', example: "size 8' x 8'" },
    stone: { takes: goods, help: 'The stone it is filled with.', example: 'stone washed-stone' },
    away: { takes: length, help: 'Distance from the house.', example: "away 12'" },
    soaks: { takes: quantity('length/time'), help: 'How fast water soaks away, as measured.', example: 'soaks 1 in/h' },
    protection: keptOpen.protection,
  }),
});

export const foundation = kind({
  word: 'foundation',
  help: 'Footings, walls, slabs, piers and beams under a level.',
  example: 'foundation perimeter under main',
  name: 'optional',
  facts: { bottom: 'length', 'wall-height': 'length', fill: 'length' },
  properties: properties({
    under: { takes: nameOf('level'), inHeader: true, help: 'The level it carries.', example: 'under main' },
    footing: {
      takes: fields({ size: by(length, length), bars: optional(phrase(',', bars)) }),
      help: 'Width by depth of the strip footing, and the bars along it.',
      example: 'footing 20" x 8", 2 #4',
    },
    long: { takes: length, trailing: true, help: 'Length of footing and wall, where no level gives it.', example: "318' long" },
    wall: {
      takes: fields({ size: by(length, length), bars: optional(phrase(',', barsAt)) }),
      help: 'Thickness by height of the wall, and its upright bars.',
      example: 'wall 8" x 32", #4 at 48" oc',
    },
    blocks: {
      takes: goods,
      help: 'What the wall is laid of, where it is not poured.',
      example: 'blocks concrete-block',
    },
    mat: {
      takes: barsAt,
      help: 'Bars both ways in the slab.',
      example: 'mat #4 at 18" oc',
    },
    slab: {
      takes: fields({
        thickness: length,
        area: optional(phrase(',', written('area'))),
        mesh: optional(phrase(',', goods)),
        over: optional(phrase(', over', listOf(goods))),
      }),
      help: 'Thickness, what reinforces it, and what lies under it.',
      example: 'slab 4", wire-mesh, over vapour-retarder, gravel-base 4"',
      deeper: properties({
        heated: { takes: flag, help: 'Pipes or cables in it warm the rooms.', example: 'heated' },
      }),
    },
    piers: {
      takes: fields({
        count,
        by: optional(phrase('by', count)),
        size: optional(phrase(',', fields({ first: length, second: phrase('x', length), third: optional(phrase('x', length)) }))),
      }),
      help: 'Round piers by diameter and depth, or square pads by three sizes.',
      example: 'piers 4 by 3, 12" x 30"',
      deeper: properties({
        around: { takes: literal, help: 'A post that stands in each, down to its bottom.', example: 'around 4x4' },
      }),
    },
    bottom: {
      takes: followedBy(length, 'below grade'),
      help: 'Underside of the footing below the ground.',
      example: 'bottom 32" below grade',
    },
    'working-space': { takes: length, help: 'Room to work beyond the footing.', example: "working-space 1'" },
    slope: {
      takes: quantity('slope'),
      help: 'Side slope of the excavation, level to upright, where the soil row does not say; in degrees, the angle that its sides stand at.',
      example: 'slope 1:2',
    },
    protection: keptOpen.protection,
    fill: {
      takes: length,
      help: 'How much higher the earth stands outside the wall than inside, where it is not all the way from the footing.',
      example: `fill 3'-6"`,
    },
    braced: {
      takes: text,
      help: 'What holds the top of the wall while earth is filled against it, if not the floor.',
      example: 'braced "Shores as the engineer drew them"',
    },
    dig: {
      takes: either(oneOf('all', 'trench'), quantity('area')),
      help: 'Whether the whole plan is dug, or a trench under the walls; or the area dug, with upright sides. Where a basement is inside (its level says so, or a wall as high as a room with a slab inside), the whole unless said.',
      example: 'dig trench',
    },
    drain: {
      takes: fields({ pipe: length, in: phrase('in', fields({ depth: length, of: goods })) }),
      help: 'Foundation drain and the stone about it.',
      example: 'drain 4" in 12" washed-stone',
    },
    bolts: {
      takes: fields({ size: length, at: phrase('at', followedBy(length, 'oc')) }),
      help: 'Anchor bolts.',
      example: 'bolts 1/2" at 6\' oc',
      deeper: properties({
        'from ends': {
          takes: length,
          trailing: true,
          help: 'From each end of a piece of plate to its first bolt.',
          example: '10" from ends',
        },
        altogether: { takes: count, trailing: true, help: 'How many there are, where drawn.', example: '22 altogether' },
        deep: { takes: length, trailing: true, help: 'How deep they stand in the concrete.', example: '7" deep' },
      }),
    },
    plates: { takes: listOf(length), help: 'Lengths of the pieces of sill plate.', example: "plates 16', 8'" },
    edge: {
      takes: fields({ insulates: quantity('resistance'), deep: optional(phrase(',', followedBy(length, 'deep'))) }),
      help: 'Insulation along the edge of a slab, and how deep it goes.',
      example: 'edge R-10, 24" deep',
    },
    insulated: {
      takes: wallInsulation(),
      help: 'Insulation of the wall around a heated basement: unbroken, or between framing.',
      example: 'insulated R-13 between framing, R-5',
    },
    'damp-proof': {
      takes: phrase('to', either(oneOf('grade'), length)),
      help: 'Coating of the wall below the ground.',
      example: 'damp-proof to grade',
    },
    beam: {
      takes: fields({ plies: optional(count), size: goodsOrSize(), long: optional(phrase(',', followedBy(length, 'long'))) }),
      help: 'A beam under the floor.',
      example: "beam 3-ply 2x10, 32' long",
    },
    posts: {
      takes: fields({ count, size: literal, at: optional(phrase('at', followedBy(length, 'oc'))) }),
      help: 'Posts under a beam.',
      example: 'posts 3 6x6 at 8\' oc, 22" long',
      deeper: postLength,
    },
    concrete: { takes: goods, help: 'Concrete other than the usual.', example: 'concrete concrete-3000' },
  }),
});

export const crawl = kind({
  word: 'crawl',
  help: 'The crawl space under a level.',
  example: 'crawl under main',
  name: 'optional',
  facts: {},
  properties: properties({
    under: { takes: nameOf('level'), inHeader: true, help: 'The level above it.', example: 'under main' },
    cover: { takes: goods, help: 'What covers the ground.', example: 'cover vapour-retarder' },
    vents: { takes: code, help: 'Vent area as a share of the floor.', example: 'vents 1/150' },
    corners: { takes: length, help: 'From a corner to the nearest vent, where it is farthest.', example: "corners 3'" },
    access: {
      takes: by(length, length),
      help: 'Way in.',
      example: 'access 24" x 30"',
      deeper: properties({
        'through floor': { takes: flag, help: 'It is in the floor above, not in a wall.', example: 'through floor' },
      }),
    },
    insulated: {
      takes: wallInsulation(),
      help: 'Insulation of the walls of a crawl space without vents: unbroken, or between framing.',
      example: 'insulated R-15',
    },
    air: { takes: quantity('flow'), help: 'Air moved through a crawl space without vents.', example: 'air 20 cfm' },
  }),
});

function wallInsulation() {
  return listOf(fields({ insulates: quantity('resistance'), way: optional(oneOf('between framing')) }));
}

function goodsOrSize() {
  return either(literal, goods);
}
