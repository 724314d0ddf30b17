// Dry wells: the rain of a roof in one storm must fit into the air between the stones.
import { exponential, logarithm } from '#kit/exponential';
import { finding } from '#kit/finding';
import { constant, form, measure, type Quantity, total } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import { sizeMissing } from '../problems.ts';
import { type Measured, portion } from './portion.ts';
import { roofFigures } from './roof-figures.ts';

export type DryWell = ElementOf<'dry-well'>;

const runoff = form(
  'rain of the storm',
  'plan of the roof × share × depth of the storm',
  (plan = 0, share = 0, storm = 0) => plan * share * storm,
);
const stone = form(
  'stone',
  'rain of the storm ÷ share of the stone that is air',
  (rain = 0, voids = 1) => (voids > 0 ? rain / voids : 0),
  'state stormwater manuals, from memory: water stands in the voids of the stone only',
);
const depth = form(
  'depth of the stone',
  'stone ÷ (length × width of the pit)',
  (volume = 0, length = 1, width = 1) => volume / (length * width),
);
const cloth = form(
  'fabric round the stone',
  '2 × length × width + 2 × (length + width) × depth: bottom, top and sides',
  (length = 0, width = 0, deep = 0) => 2 * length * width + 2 * (length + width) * deep,
);
const clothOfCube = form('fabric round the stone', '6 × ∛stone²: a pit as deep as it is long and wide', (volume = 0) =>
  volume > 0 ? 6 * exponential((2 / 3) * logarithm(volume)) : 0,
);
const whole = constant('share of the roof', 1, 'number');

export function measureDryWell(well: DryWell): Measured {
  const volume = dryWellStone(well);
  if (volume === undefined) {
    const lacks = [
      well.given.for.length === 0 ? 'the roof it drains' : '',
      well.given.storm === undefined ? 'the depth of its storm' : '',
      well.given.voids === undefined ? 'the voids of its stone' : '',
    ].filter((part) => part !== '');
    return {
      portions: [],
      findings: [finding(sizeMissing, well.place, well.label, lacks.length === 0 ? 'a roof with a plan' : lacks.join(', '))],
    };
  }
  const where = { element: well.slot };
  const size = well.given.size?.value;
  const deep = dryWellDepth(well);
  const around =
    size === undefined || deep === undefined
      ? measure('area', clothOfCube, volume)
      : measure('area', cloth, size.left, size.right, deep);
  return {
    portions: [
      portion('dry-well-volume', where, volume),
      portion('dry-well-stone-volume', where, volume, { goods: well.given.stone?.value }),
      portion('dry-well-fabric-area', where, around),
    ],
    findings: [],
  };
}

/** Volume of stone: what the roofs shed, over the voids. Undefined where something it needs is not given. */
export function dryWellStone(well: DryWell): Quantity<'volume'> | undefined {
  const { storm, voids } = well.given;
  if (storm === undefined || voids === undefined || !(voids.value.value > 0)) return undefined;
  const parts = well.given.for.flatMap(({ value }) => {
    const plan = roofFigures(value.of)?.plan;
    return plan === undefined ? [] : [measure('volume', runoff, plan, value.share ?? whole, storm.value)];
  });
  if (parts.length === 0) return undefined;
  return measure('volume', stone, parts.length === 1 ? parts[0]! : total('rain of the storm', 'volume', parts), voids.value);
}

/** How deep the pit must be filled, where its plan is given. */
export function dryWellDepth(well: DryWell): Quantity<'length'> | undefined {
  const volume = dryWellStone(well);
  const size = well.given.size?.value;
  return volume === undefined || size === undefined ? undefined : measure('length', depth, volume, size.left, size.right);
}
