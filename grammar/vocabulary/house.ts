// Rows for the shell: levels, assemblies, roofs, decks, panels; and what every declaration takes.
import { bay, headerSize, outline, place, postLength, sides } from './common.ts';
import { foundation } from './ground.ts';
import {
  by,
  code,
  count,
  date,
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
  text,
} from './types.ts';

const length = quantity('length');
/** Allowed under every declaration. */
export const always = properties({
  note: {
    takes: text,
    repeats: true,
    inHeader: true,
    help: 'A remark that is printed on sheets.',
    example: 'note "Ask about the sill"',
  },
  see: { takes: text, repeats: true, inHeader: true, help: 'A drawing or paper to look at.', example: 'see "A-3"' },
  accept: {
    takes: fields({ code, reason: optional(text) }),
    repeats: true,
    help: 'Answers a finding here, with a reason.',
    example: 'accept sequence/board-before-dry "Tarped, inspector agreed"',
    deeper: properties({
      until: { takes: date, help: 'The day the acceptance ends.', example: 'until 2027-06-30' },
    }),
  },
  source: {
    takes: text,
    inHeader: true,
    help: 'The publication a value comes from, or "common practice".',
    example: 'source "common practice"',
  },
});

export const level = kind({
  word: 'level',
  help: 'A floor of the house: its outline, height and what it is made of.',
  example: 'level main "Main floor"',
  name: 'required',
  facts: {
    'floor-area': 'area',
    perimeter: 'length',
    height: 'length',
    width: 'length',
    depth: 'length',
    corners: 'number',
    'north-length': 'length',
    'east-length': 'length',
    'south-length': 'length',
    'west-length': 'length',
    'slanted-length': 'length',
  },
  properties: properties({
    footprint: {
      takes: either(outline, by(length, length)),
      help: 'Outside face of the framing: east by north, with rectangles put to it or cut from it; or its corners, or the sides walked, in eight directions.',
      example: "footprint 28' x 32', plus 12' x 8' at 28', 0",
    },
    bay: {
      takes: bay,
      repeats: true,
      help: 'A bay of three sides on an outside wall: along the wall by out from it, how far it begins from the west or south end of the house, and the angle of its sides to the wall, 45 degrees unless said. The beam over its opening is not counted.',
      example: "bay 8' x 2' in south at 6', 45 degrees",
      deeper: properties({
        hung: { takes: flag, help: 'It hangs on the joists of the floor: no foundation stands under it.', example: 'hung' },
      }),
    },
    on: {
      takes: pointTo('level'),
      inHeader: true,
      help: 'The level that it stands on.',
      example: 'on main',
    },
    at: {
      takes: place,
      inHeader: true,
      help: 'Its south-west corner, from that of the level it stands on: east, then north.',
      example: "at 0, -2'",
    },
    height: { takes: length, help: 'Top of subfloor to top of plates.', example: `height 8'-1 1/8"` },
    basement: { takes: flag, inHeader: true, help: 'A storey below the ground.', example: 'basement' },
    attic: { takes: flag, inHeader: true, help: 'A storey under the roof that is lived in.', example: 'attic' },
    ground: {
      takes: fields({ distance: length, way: oneOf('below', 'above') }),
      help: 'The ground outside, from the top of this floor.',
      example: 'ground 24" below',
    },
    walls: { takes: nameOf('assembly'), help: 'What its outside walls are made of.', example: 'walls ext-2x6' },
    partitions: {
      takes: nameOf('assembly'),
      help: 'What its inside walls are made of.',
      example: 'partitions int-2x4',
      deeper: properties({
        long: { takes: length, trailing: true, help: 'Their whole length, where rooms are not placed.', example: "86' long" },
        corners: { takes: quantity('number'), trailing: true, help: 'Corners in that length.', example: '12 corners' },
        intersections: {
          takes: quantity('number'),
          trailing: true,
          help: 'Places where one of them meets another wall.',
          example: '10 intersections',
        },
      }),
    },
    floor: { takes: nameOf('assembly'), help: 'What its floor is made of.', example: 'floor floor-2x10' },
    ceiling: {
      takes: nameOf('assembly'),
      help: 'What closes it above.',
      example: 'ceiling flat-lid',
      deeper: properties({
        'raised heels': {
          takes: flag,
          help: 'Its insulation keeps its whole depth out over the plates.',
          example: 'raised heels',
        },
      }),
    },
    rim: {
      takes: either(oneOf('none'), length),
      help: 'How far the outside of its walls runs on below its floor, where that is not subfloor, joists and sill.',
      example: 'rim 14 1/2", filled with r21-batt',
      deeper: properties({
        'filled with': { takes: goods, help: 'Insulation against the rim.', example: 'filled with r21-batt' },
      }),
    },
    headers: {
      takes: headerSize,
      help: 'Headers over the openings of its outside walls, as the drawings or the span table have them, where an opening does not say.',
      example: 'headers 2-ply 2x10',
    },
    casing: { takes: goods, help: 'What trims its windows and doors inside.', example: 'casing casing 2 1/4"' },
    joists: {
      takes: phrase('run', oneOf('north-south', 'east-west')),
      help: 'The way the joists run.',
      example: 'joists run north-south',
    },
  }),
});

export const assembly = kind({
  word: 'assembly',
  space: 'goods',
  help: 'What a wall, floor, ceiling or roof is made of, layer by layer.',
  example: 'assembly ext-2x6 "Exterior wall" for wall',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: oneOf('wall', 'partition', 'floor', 'ceiling', 'roof'),
      inHeader: true,
      help: 'Where it is used.',
      example: 'for wall',
    },
    layer: {
      takes: goods,
      repeats: true,
      help: 'A layer: from the room outwards; floors and roofs from the top down.',
      example: 'layer stud 2x6 at 16" oc, filled with r21-batt',
      deeper: properties({
        at: { takes: followedBy(length, 'oc'), help: 'Spacing, centre to centre.', example: 'at 16" oc' },
        'filled with': { takes: goods, help: 'What fills the space between.', example: 'filled with r21-batt' },
        'to the weather': { takes: length, trailing: true, help: 'Exposed part of each course.', example: '7" to the weather' },
        glued: { takes: flag, help: 'Laid in glue.', example: 'glued' },
      }),
    },
    framing: { takes: quantity('number'), help: 'Share of the area that is framing.', example: 'framing 25%' },
    thick: { takes: length, help: 'How thick it is drawn; its layers must add up to that.', example: 'thick 7 7/16"' },
  }),
});

export const roof = kind({
  word: 'roof',
  help: 'A roof over a level.',
  example: 'roof main over main',
  name: 'required',
  facts: { pitch: 'slope' },
  properties: properties({
    over: { takes: nameOf('level'), inHeader: true, help: 'The level it covers.', example: 'over main' },
    'over bays of': {
      takes: nameOf('level'),
      inHeader: true,
      help: 'The level whose bays it covers: three slopes over each, up against the wall.',
      example: 'over bays of main',
    },
    shape: {
      takes: fields({
        form: oneOf('gable', 'shed', 'hip', 'flat', 'gambrel'),
        pitch: optional(quantity('slope')),
        upper: optional(phrase(', upper', quantity('slope'))),
        break: optional(phrase(', break', length)),
        ridge: optional(phrase(', ridge', oneOf('north-south', 'east-west'))),
        high: optional(phrase(', high', sides)),
      }),
      help: 'Form and pitch; of a gambrel the pitch above its break too, and how far in from the wall that is; which way the ridge runs, or which side is high.',
      example: 'shape gable 6:12, ridge north-south',
    },
    beside: {
      takes: nameOf('level'),
      inHeader: true,
      help: 'The storey that stands on part of the level: the roof covers the rest, a slope, flat, or a gable or hip whose ridge runs square against it, and runs up against its walls.',
      example: 'beside upper',
    },
    into: {
      takes: fields({ roof: pointTo('roof'), side: phrase('in', sides) }),
      inHeader: true,
      help: 'The roof that it runs into, and the side of the house whose slope it meets; its size is then along the wall by out from it.',
      example: 'into main in south',
    },
    dormer: {
      takes: fields({
        wide: followedBy(length, 'wide'),
        back: phrase(',', followedBy(length, 'back')),
        raised: phrase(',', followedBy(length, 'raised')),
      }),
      help: 'A dormer: its width, how far its front stands back from the wall below, its plate above the plates of the roof that it stands on.',
      example: "dormer 8' wide, 3' back, 5' raised",
    },
    factor: {
      takes: quantity('number'),
      help: 'What its level plan is multiplied by for the surface, where a table’s figure is used and not the pitch’s own.',
      example: 'factor 1.12',
    },
    size: {
      takes: by(length, length),
      help: 'Plan of the roof without overhangs, where no level gives it.',
      example: "size 24' x 50'",
    },
    overhang: {
      takes: fields({
        eaves: length,
        eavesWord: optional(oneOf('eaves', 'high')),
        rakes: optional(phrase(',', fields({ length, where: oneOf('rakes', 'sides', 'low') }))),
      }),
      help: 'Level distance from the framing to the outer face of the fascia.',
      example: 'overhang 18" eaves, 12" rakes',
    },
    framed: {
      takes: either(
        fields({ kind: oneOf('panels'), of: goods }),
        fields({ of: goods, at: phrase('at', followedBy(length, 'oc')) }),
      ),
      help: 'Trusses, rafters or panels.',
      example: 'framed truss at 24" oc',
    },
    'ridge-board': {
      takes: literal,
      help: 'What the ridge board between its rafters is sawn as; bought without a size where nobody says.',
      example: 'ridge-board 2x10',
    },
    'collar-ties': {
      takes: fields({
        size: literal,
        at: phrase('at', followedBy(length, 'oc')),
        long: phrase(',', followedBy(length, 'long')),
      }),
      help: 'Ties across the rafters near the ridge, their spacing and how long each is.',
      example: `collar-ties 2x4 at 48" oc, 8' long`,
    },
    deck: { takes: goods, help: 'Sheathing on the framing.', example: 'deck osb 7/16"' },
    roofing: {
      takes: listOf(goods, 'over'),
      help: 'Layers from the weather inwards.',
      example: 'roofing standing-seam over felt',
    },
    gutters: {
      takes: listOf(oneOf('eaves', 'north', 'east', 'south', 'west', 'none')),
      help: 'Eaves that have gutters.',
      example: 'gutters east, west',
      deeper: properties({ size: { takes: literal, help: 'How wide they are.', example: 'size 5"' } }),
    },
    leaders: {
      takes: count,
      help: 'How many leaders.',
      example: 'leaders 4, size 2x3',
      deeper: properties({
        size: { takes: literal, help: 'Their cross-section.', example: 'size 2x3' },
        piped: {
          takes: count,
          trailing: true,
          help: 'How many of them run into a pipe and want no splash block.',
          example: '2 piped',
        },
      }),
    },
    fascia: { takes: literal, help: 'What its fascia is sawn as.', example: 'fascia 1x6' },
    unpainted: {
      takes: flag,
      help: 'Fascia and soffit come finished: whoever paints the walls leaves them alone.',
      example: 'unpainted',
    },
    posts: {
      takes: fields({ count, size: literal }),
      help: 'Posts that carry it, of a porch or carport.',
      example: "posts 4 6x6, 8' long",
      deeper: postLength,
    },
    beam: { takes: foundation.properties.beam.takes, help: 'A beam on its posts.', example: "beam 2-ply 2x10, 20' long" },
    piers: {
      takes: fields({ count, size: phrase(',', by(length, length)) }),
      help: 'Piers under its posts, diameter by depth.',
      example: 'piers 4, 12" x 36"',
    },
    soffit: { takes: goods, help: 'What closes the underside of the overhang.', example: 'soffit vented-soffit' },
    vents: {
      takes: fields({
        open: either(quantity('area'), code),
        high: optional(phrase(',', followedBy(quantity('number'), 'high'))),
      }),
      help: 'Net free area of the attic vents, or its share of the attic floor; and how much of it is near the ridge.',
      example: 'vents 1/300, 45% high',
      deeper: properties({
        'over retarder': {
          takes: flag,
          help: 'A Class I or II vapour retarder lies on the warm side of the ceiling below.',
          example: 'over retarder',
        },
      }),
    },
    access: {
      takes: by(length, length),
      help: 'Way into the attic.',
      example: 'access 22" x 30"',
      deeper: properties({
        headroom: { takes: length, trailing: true, help: 'Clear height above it.', example: '30" headroom' },
      }),
    },
    'air-gap': { takes: length, help: 'Clear space above the insulation for air from the eaves.', example: 'air-gap 1"' },
    'vent-holes': { takes: length, help: 'Size of the holes in the screens of its vents.', example: 'vent-holes 1/8"' },
    unvented: {
      takes: quantity('resistance'),
      help: 'A closed roof without vents: R of the part of its insulation that no air passes, such as foam.',
      example: 'unvented R-20',
    },
    'plumbing-vent': {
      takes: followedBy(length, 'above'),
      help: 'How far the drains’ vent stands above the roof.',
      example: 'plumbing-vent 12" above',
      deeper: properties({
        'from openings': {
          takes: length,
          trailing: true,
          help: 'From the nearest window, door or intake, on the level.',
          example: "10' from openings",
        },
        'over openings': {
          takes: length,
          trailing: true,
          help: 'Above the top of that opening.',
          example: "3' over openings",
        },
      }),
    },
  }),
});

export const deck = kind({
  word: 'deck',
  help: 'A deck, porch or terrace.',
  example: 'deck porch "Front porch"',
  name: 'required',
  facts: { area: 'area' },
  properties: properties({
    size: { takes: by(length, length), help: 'Along the house by away from it.', example: "size 8' x 6'" },
    high: { takes: length, help: 'Walking surface above the ground.', example: 'high 22"' },
    joists: {
      takes: fields({ size: literal, at: phrase('at', followedBy(length, 'oc')) }),
      help: 'Joists and their spacing.',
      example: 'joists 2x8 at 16" oc',
    },
    posts: {
      takes: fields({ count, size: literal }),
      help: 'Posts; as long as the deck is high where nothing is said.',
      example: 'posts 4 6x6, 22" long',
      deeper: postLength,
    },
    piers: {
      takes: fields({ count, size: phrase(',', by(length, length)) }),
      help: 'Piers, diameter by depth.',
      example: 'piers 4, 12" x 30"',
    },
    beam: {
      takes: foundation.properties.beam.takes,
      help: 'The beam under the outer end of its joists; as long as the deck where nothing is said.',
      example: 'beam 2-ply 2x10',
    },
    boards: { takes: goods, help: 'Boards.', example: 'boards deck-board' },
    rails: { takes: length, help: 'Length of guard rail.', example: "rails 20'" },
    'rail-height': { takes: length, help: 'Height of the guard rail.', example: 'rail-height 36"' },
    gaps: { takes: length, help: 'Widest gap in the guard rail.', example: 'gaps 3 1/2"' },
    steps: {
      takes: count,
      help: 'Risers of its steps down to the ground, where no stair tells more of them.',
      example: "steps 3, 4' wide",
      deeper: properties({
        wide: { takes: length, trailing: true, help: 'How wide its steps are.', example: "4' wide" },
      }),
    },
    freestanding: { takes: flag, help: 'On its own posts, not hung on the house.', example: 'freestanding' },
  }),
});

export const panels = kind({
  word: 'panels',
  help: 'Structural insulated panels: how a level’s panel walls are laid.',
  example: 'panels shell "Panels from the works" for main',
  name: 'required',
  facts: {},
  properties: properties({
    for: { takes: listOf(nameOf('level')), inHeader: true, help: 'The level whose walls are panels.', example: 'for main' },
    width: { takes: length, help: 'Width of one panel.', example: 'width 1200 mm' },
    joint: {
      takes: fields({ spline: goods, beads: optional(phrase(',', fields({ count, of: phrase('beads of', goods) }))) }),
      help: 'What joins two panels, and the beads of sealant in it.',
      example: 'joint surface-spline, 3 beads of panel-sealant',
    },
    beads: {
      takes: fields({ count, at: phrase('at', oneOf('plates')) }),
      help: 'Beads of sealant at each plate.',
      example: 'beads 2 at plates',
    },
  }),
});
