// A basement in the earth: heat goes through wall or floor and then round through the soil to the surface, the longer the
// deeper. Averages over depth and width by the circles that it takes; what stands above the ground meets the air.
import { logarithm } from '#kit/exponential';
import { form, measure, type Quantity, total } from '#kit/quantity';
import { levelShape } from '#model/facts/level';
import type { Foundation, Level } from '#model/model';
import type { Model } from '#model/resolve';
import { assemblyFigures } from '../assembly.ts';
import { airFilms, type Earth, earthAround } from '../conventions.ts';
import { type Held, netOf } from '../measure/openings.ts';

type Length = Quantity<'length'>;
type R = Quantity<'resistance'>;
interface Part {
  readonly conductance: Quantity<'conductance'>;
  readonly area: Quantity<'area'>;
}
export interface Buried {
  readonly above: Part | undefined;
  readonly wall: Part | undefined;
  readonly floor: Part | undefined;
  readonly without: readonly string[];
}

const METHOD =
  'from memory: ASHRAE Handbook of Fundamentals, residential loads: average U of walls and floors below grade, after Latta and Boileau';
const ofWall = form(
  'U of a wall in the earth',
  '2 ÷ (π × soil × depth) × (ln(depth + 2 × R ÷ (π × soil)) − ln(2 × R ÷ (π × soil)))',
  (depth = 1, resistance = 1, soil = 1) => {
    const within = (2 * resistance) / (Math.PI * soil);
    return (2 / (Math.PI * soil * depth)) * (logarithm(depth + within) - logarithm(within));
  },
  METHOD,
);
const ofFloor = form(
  'U of a floor in the earth',
  '2 ÷ (π × soil × width) × (ln(width ÷ 2 + depth ÷ 2 + R ÷ (π × soil)) − ln(depth ÷ 2 + R ÷ (π × soil)))',
  (width = 1, depth = 0, resistance = 1, soil = 1) => {
    const within = depth / 2 + resistance / (Math.PI * soil);
    return (2 / (Math.PI * soil * width)) * (logarithm(width / 2 + within) - logarithm(within));
  },
  METHOD,
);
const byEarth = form(
  'U for the difference to the air outside',
  'U × (indoors − earth) ÷ (indoors − outdoors)',
  (conductance = 0, inside = 0, earth = 0, outside = 0) =>
    inside > outside ? (conductance * Math.max(0, inside - earth)) / (inside - outside) : conductance,
);
const throughAll = form('U over all', '1 ÷ R over all', (resistance = 1) => 1 / resistance);
const innerPart = form('R without the air outside', 'R over all − air film outside', (all = 0, film = 0) =>
  Math.max(0, all - film),
);
const surface = form('wall surface', 'length round × height', (length = 0, height = 0) => length * height);
const lesser = form('depth in the earth', 'the lesser of ground above the floor and height', (ground = 0, height = 0) =>
  Math.min(ground, height),
);
const rest = form('height above the ground', 'height − depth in the earth', (height = 0, depth = 0) =>
  Math.max(0, height - depth),
);

/**
 * Where nothing says how high the ground stands, the whole wall lies in it. `held` are the openings of its walls, which lie
 * above the ground. Undefined where the basement has no height, or no row tells of earth.
 */
export function buriedBasement(
  level: Level,
  held: readonly Held[],
  foundation: Foundation | undefined,
  model: Model,
): Buried | undefined {
  const shape = levelShape(level);
  const height = level.given.height?.value;
  const earth = earthAround(model);
  if (shape === undefined || height === undefined || earth === undefined) return undefined;
  const films = airFilms(model);
  const inner = innerOf(level, foundation, earth, model);
  const ground = level.given.ground?.value;
  const depth = ground?.way === 'above' ? measure('length', lesser, ground.distance, height) : height;
  const open = measure('length', rest, height, depth);
  const above =
    open.value > 0
      ? {
          conductance: measure('conductance', throughAll, total('R of the wall', 'resistance', [inner, films.outside])),
          area: netOf(measure('area', surface, shape.perimeter, open), held).net,
        }
      : undefined;
  const narrow: Length = shape.width.value <= shape.depth.value ? shape.width : shape.depth;
  const { plan } = model;
  const warmth = plan?.given.outdoors?.deeper.earth?.value;
  const inWarmth = (conductance: Quantity<'conductance'>): Quantity<'conductance'> => {
    const [inside, outside] = [plan?.given.indoors?.value.temperature, plan?.given.outdoors?.value.temperature];
    return warmth === undefined || inside === undefined || outside === undefined
      ? conductance
      : measure('conductance', byEarth, conductance, inside, warmth, outside);
  };
  const deep = depth.value > 0;
  return {
    above,
    wall: deep
      ? {
          conductance: inWarmth(measure('conductance', ofWall, depth, inner, earth.soil)),
          area: measure('area', surface, shape.perimeter, depth),
        }
      : undefined,
    floor: {
      conductance: inWarmth(measure('conductance', ofFloor, narrow, depth, earth.bare, earth.soil)),
      area: shape.area,
    },
    without: warmth === undefined ? ['warmth of the earth (taken as cold as the air)'] : [],
  };
}

/** From the room's air to the earth: the assembly that the walls are made of, else the bare wall and its insulation. */
function innerOf(level: Level, foundation: Foundation | undefined, earth: Earth, model: Model): R {
  const films = airFilms(model);
  const walls = level.given.walls?.value;
  if (walls !== undefined) {
    const { resistance, unknown } = assemblyFigures(walls, films);
    if (unknown.resistance.length === 0 && resistance.value > films.outside.value)
      return measure('resistance', innerPart, resistance, films.outside);
  }
  const insulated = foundation?.given.insulated?.value ?? [];
  return total('R of the wall with its insulation', 'resistance', [earth.bare, ...insulated.map(({ value }) => value.insulates)]);
}
