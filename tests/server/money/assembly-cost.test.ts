// Labour and materials of a wall for each square foot, added by hand from rates and prices of the test's own.
import { expect, test } from 'vitest';
import { explain, explanationText } from '#answers/explain';
import { assemblyCost } from '#money/assembly-cost';
import { sampleOf } from '#takeoff/assembly-sample';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';
import { viewSample } from '../answers/plans.ts';

const ROWS = `material pole "Pole" laid framing
  sold by each
  actual 1 1/2" x 3 1/2"
material sheet "Sheet" laid sheets
  sold by sheet of 4' x 8'
material lath "Lath" laid sheets
  sold by sheet of 4' x 8'
work frame-it "Frame" in level
  installs pole by wall-stud-count
  labour 0.20 h each
work sheathe-it "Sheathe" in level
  installs sheet by wall-sheathing-area
  labour 0.01 h/sf
assembly w "Wall" for wall
  layer pole 2x4 at 16" oc
  layer sheet 1/2"
  layer lath 1/2"
`;
const { model } = planOf('plan p\n  units feet\nprice pole 2x4 $4.00 each\nprice sheet $16/sheet\n', { library: [ROWS] });
const wall = model.rows('assembly').find(({ name }) => name === 'w')!;

test('a pole every 16 inches in a wall of 8 feet: 0.20 h ÷ 10 2/3 sf, and 0.01 h for each of the two layers of sheets', () => {
  const sample = sampleOf(wall, model)!;
  expect(amount(sample.labour, 'h/sf')).toBeCloseTo(0.2 / (8 * (16 / 12)) + 0.02, 9);
});

test('materials: $4.00 ÷ 10 2/3 sf, and $16 ÷ 32 sf; what has no price is named', () => {
  const cost = assemblyCost(sampleOf(wall, model)!, model)!;
  // A thousand poles and as many sheets as 10,667 sf take, whole ones.
  expect(cost.each.value * 144 * 8128 * 8128).toBeCloseTo((4000 * 100 + Math.ceil(10666.67 / 32) * 1600) / 10666.67, 2);
  expect(cost.without).toEqual(['Lath 1/2"']);
});

test('a floor: a joist every 16 inches, so much for each foot of it; a roof is framed by itself and tells nothing', () => {
  const rows = `material joist "Joist" laid framing
  sold by each
work joists "Joists" in level
  installs joist by floor-frame-length
  labour 0.03 h/lf
assembly f for floor
  layer joist 2x10 at 16" oc
assembly r for roof
  layer joist 2x10 at 16" oc
`;
  const { model: other } = planOf('plan p\n', { library: [rows] });
  const [floor, roof] = other.rows('assembly');
  expect(amount(sampleOf(floor!, other)!.labour, 'h/sf')).toBeCloseTo(0.03 / (16 / 12), 9);
  expect(sampleOf(roof!, other)).toBeUndefined();
});

test('a ceiling of blown insulation: R-60 at R-3 an inch is 20 inches deep, 0.2 h a cubic yard', () => {
  const rows = `material blown "Blown" laid loose
  insulates R-3 per inch
work blow "Blow" in level
  installs blown by ceiling-insulation-volume
  labour 0.2 h/cy
assembly c for ceiling
  layer blown R-60
`;
  const { model: other } = planOf('plan p\n', { library: [rows] });
  expect(amount(sampleOf(other.rows('assembly')[0]!, other)!.labour, 'h/sf')).toBeCloseTo((0.2 * 20) / 12 / 27, 9);
});

test('explain tells both, with what went into them', () => {
  const view = viewSample('cottage', 'plan.screed');
  const told = explanationText(explain('outer-2x6', view).found[0]!);
  expect(told).toMatch(/^ {2}labour {2}0\.\d+ h\/sf/m);
  expect(told).toMatch(/^ {2}materials {2}\$\d+\.\d+\/sf/m);
  expect(told).toContain('Stud 2x6');
});
