// Condensation inside a wall by the dew-point method: how cold the inner face of the sheathing is on average in the coldest
// months, against the temperature at which the air of the rooms drops its water. A screening in steady state: it knows
// neither leaks nor drying, and judges no wall.
import { exponential, logarithm } from '#kit/exponential';
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Assembly } from '#model/model';
import type { Model } from '#model/resolve';
import { assemblyFigures, layerResistance } from '../assembly.ts';
import { airFilms } from '../conventions.ts';
import { isPanel, layersOf } from '../measure/layers.ts';

type Temperature = Quantity<'temperature'>;

export interface Screened {
  /** What the first cold surface is: the layer outside of the framing. */
  readonly surface: string;
  readonly face: Temperature;
  readonly dew: Temperature;
}

const MAGNUS = 'from memory: ISO 13788:2012, formulas of the saturation pressure over water';
const dewOf = form(
  'dew point of the air indoors',
  'temperature at which that much water saturates the air',
  (inside = 0, humidity = 0) => {
    // The same exponential both ways: 610.5 Pa at the freezing point cancels.
    const water = logarithm(humidity * exponential((17.269 * inside) / (237.3 + inside)));
    return (237.3 * water) / (17.269 - water);
  },
  MAGNUS,
);
const faceOf = form(
  'inner face of the sheathing',
  'outdoors + R outside of it ÷ R of all × (indoors − outdoors)',
  (outside = 0, beyond = 0, all = 1, inside = 0) => outside + (beyond / all) * (inside - outside),
  'Journal of Light Construction, Where Does the Dew Drop',
);

/** The dew point of air at a temperature and relative humidity (0 to 1, above 0). */
export function dewPoint(inside: Temperature, humidity: Quantity<'number'>): Temperature {
  return { ...measure('temperature', dewOf, inside, humidity), unit: inside.unit ?? 'C' };
}

/**
 * Between the framing, where insulation keeps the sheathing coldest. Undefined where the plan gives no humidity or no average
 * of the cold months, where the wall has no filled framing with something outside of it, or where insulation tells no R.
 */
export function screenedWall(assembly: Assembly, model: Model): Screened | undefined {
  const { plan } = model;
  const films = airFilms(model);
  const indoors = plan?.given.indoors?.value;
  const mean = plan?.given.outdoors?.value.mean;
  if (indoors?.humidity === undefined || mean === undefined || assembly.given.for?.value !== 'wall') return undefined;
  const { main, after } = layersOf(assembly);
  const [surface] = after;
  const { between, unknown } = assemblyFigures(assembly, films);
  if (main === undefined || isPanel(main) || main.deeper['filled with'] === undefined || surface === undefined) return undefined;
  if (unknown.resistance.length > 0 || !(between.value > 0) || !(indoors.humidity.value > 0)) return undefined;
  const beyond = total('R outside of it', 'resistance', [films.outside, ...after.flatMap((layer) => layerResistance(layer))]);
  const face = measure<'temperature'>('temperature', faceOf, mean, beyond, between, indoors.temperature);
  return {
    surface: surface.value.of?.label ?? surface.value.name,
    face: { ...face, unit: indoors.temperature.unit ?? 'C' },
    dew: dewPoint(indoors.temperature, indoors.humidity),
  };
}
