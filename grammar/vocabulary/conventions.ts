// The rows by which books differ when they count the same thing, and tables that arithmetic goes by; a plan chooses one by its name.
import {
  anyName,
  either,
  fields,
  flag,
  followedBy,
  kind,
  listOf,
  oneOf,
  optional,
  phrase,
  properties,
  quantity,
} from './types.ts';

const length = quantity('length');
/** A bare number is a number of things before it is anything else. */
export const oneUnit = either(quantity('number'), quantity('area'), quantity('length'), quantity('volume'), quantity('weight'));

/** From net to what is needed and ordered: of a material, or of a book for several. */
export const counting = properties({
  waste: {
    takes: fields({ rate: quantity('number'), form: oneOf('added', 'divided') }),
    help: 'Waste: added to what is needed, or need divided by what is left.',
    example: 'waste 5% added',
  },
  deducts: {
    takes: phrase('openings over', quantity('area')),
    help: 'Smaller openings are not taken off.',
    example: 'deducts openings over 32 sf',
  },
  rounds: {
    takes: phrase('up to', oneUnit),
    repeats: true,
    help: 'Step in which it is ordered; one in feet and one in metres.',
    example: 'rounds up to 1/4 cy',
  },
  nearest: {
    takes: oneUnit,
    help: 'Step to the nearest of which it is ordered, up or down: the order may be short.',
    example: 'nearest 1 cy',
  },
  least: { takes: oneUnit, help: 'The least that is ordered at once.', example: 'least 2 cy' },
  whole: {
    takes: oneOf('in each part'),
    help: 'Whole packages are counted in each part, such as the walls of a room, before waste; and once more for the order.',
    example: 'whole in each part',
  },
  'laid-out': {
    takes: fields({ short: optional(phrase('up to', followedBy(length, 'short'))) }),
    help: 'Bought by how it is laid: sheets wall by wall and ceiling by ceiling in the best lengths and way of those sold, rolls by lengths, tile with its cuts; and how far a wall may be left short at its foot.',
    example: 'laid-out up to 1 1/2" short',
  },
  trim: { takes: length, help: 'Added at both ends of a length off a roll, and cut away.', example: 'trim 3"' },
  pieced: {
    takes: flag,
    help: 'What is cut off is used: strips of a roll are put together end to end, one tile gives two cuts.',
    example: 'pieced',
  },
  covers: {
    // An area over a volume is one over a length, a length over a volume one over an area.
    takes: fields({
      amount: either(
        quantity('number/length'),
        quantity('area/weight'),
        quantity('number/area'),
        quantity('length/weight'),
        quantity('area'),
        quantity('length'),
      ),
      package: optional(phrase('per', anyName)),
    }),
    help: 'What one unit covers.',
    example: 'covers 350 sf per gal',
  },
  lap: { takes: either(quantity('number'), length), help: 'Added for laps, before waste.', example: 'lap 10%' },
});

export const convention = kind({
  word: 'convention',
  help: 'How a book counts, where books differ. A plan chooses it: "counts studs by …".',
  example: 'convention navy-concrete "Engineering Aid: concrete" of concrete, slab-concrete',
  name: 'required',
  facts: {},
  properties: properties({
    of: {
      takes: listOf(anyName),
      inHeader: true,
      help: 'What it counts: studs, with plates and headers; stairs; partitions; attic-vents; air-films; slab-edges; earth; or materials.',
      example: 'of concrete, slab-concrete',
    },
    usual: { takes: flag, inHeader: true, help: 'Counts where the plan chooses none.', example: 'usual' },
    ...counting,
    'end-studs': { takes: quantity('number'), help: 'Studs beyond one a space, in a straight run.', example: 'end-studs 1' },
    'wall-by-wall': { takes: flag, help: 'Each wall is counted from end to end, not once round.', example: 'wall-by-wall' },
    'corner-studs': { takes: quantity('number'), help: 'More studs at a corner.', example: 'corner-studs 2' },
    'slanted-corner-studs': {
      takes: quantity('number'),
      help: 'More studs at a corner that is not square, where not as many as at a square one.',
      example: 'slanted-corner-studs 2',
    },
    'crossing-studs': { takes: quantity('number'), help: 'More studs where walls meet.', example: 'crossing-studs 2' },
    'opening-studs': { takes: quantity('number'), help: 'More studs at an opening.', example: 'opening-studs 2' },
    'door-studs': {
      takes: quantity('number'),
      help: 'More studs at a door, where not as many as at any opening.',
      example: 'door-studs 5',
    },
    plates: { takes: quantity('number'), help: 'Plates above and below a wall together.', example: 'plates 3' },
    'plate-thickness': { takes: length, help: 'Of one plate, where its studs do not tell.', example: 'plate-thickness 1 1/2"' },
    'header-plies': { takes: quantity('number'), help: 'Pieces of a header side by side.', example: 'header-plies 2' },
    'header-bearing': { takes: length, help: 'Bearing at both ends of a header.', example: 'header-bearing 3"' },
    'stringer-spacing': {
      takes: length,
      help: 'Stringers stand no further apart, where a stair does not say how many there are.',
      example: 'stringer-spacing 18"',
    },
    'landing-spacing': { takes: length, help: 'Joists of a landing of a stair.', example: 'landing-spacing 16"' },
    'outside-tread': { takes: length, help: 'Tread of the steps of a deck.', example: 'outside-tread 11"' },
    'widest-partition': {
      takes: length,
      help: 'Placed rooms further apart have no single wall between them.',
      example: 'widest-partition 12"',
    },
    'high-vents': {
      takes: quantity('number'),
      help: 'Share of an attic’s free vent area near the ridge, where the roof does not say.',
      example: 'high-vents 50%',
    },
    film: {
      takes: fields({ at: oneOf('outside', 'level', 'upward', 'downward'), resistance: quantity('resistance') }),
      repeats: true,
      help: 'Still air at a surface: outside; or inside, by the way that heat flows.',
      example: 'film level R-0.68',
    },
    edge: {
      takes: fields({
        insulates: either(oneOf('bare'), quantity('resistance')),
        deep: optional(phrase(',', followedBy(length, 'deep'))),
        factor: phrase('as', quantity('transfer/length')),
      }),
      repeats: true,
      help: 'What a length of slab edge loses, by the insulation that stands at it and how deep it goes.',
      example: 'edge R-10, 24" deep as 0.54 Btu/hF/ft',
    },
    soil: { takes: quantity('resistance/length'), help: 'R of the earth.', example: 'soil R-1.25 per ft' },
    'wall-in-earth': {
      takes: quantity('resistance'),
      help: 'R of a bare wall in the earth, and of a bare floor on it, with the still air inside.',
      example: 'wall-in-earth R-1.47',
    },
  }),
});
