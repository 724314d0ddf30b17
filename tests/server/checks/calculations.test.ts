// Rows of calculations: which case applies, one that is made of another, what nobody gave, and a row as a plan changes it.
import { expect, test } from 'vitest';
import { explain, explanationText } from '#answers/explain';
import { figureOf, figuresOf } from '#checks/calculations';
import { planOf } from '#tests/support/plan';
import { viewText } from '../answers/plans.ts';

const ROWS = `calculation floor "Floor" for plan
  value plan.floor-area
calculation twice "Twice the floor" for plan
  value plan.floor * 2
calculation small "Small house" for plan
  fact sort
  when plan.floor-area under 500 sf
  value 1
calculation large "Large house" for plan
  fact sort
  when plan.floor-area at least 500 sf
  value 2
calculation round "Goes round" for plan
  value plan.again
calculation again "Goes round" for plan
  value plan.round + 1 sf
calculation of-room "Of a room" for room
  value room.floor-area * plan.bedrooms
`;
const house = (footprint: string) => `plan p
level main
  footprint ${footprint}
room bed on main
  use sleeping
  size 10' x 12'
`;
const at = (footprint: string) => {
  const { model } = planOf(house(footprint), { library: [ROWS] });
  return (fact: string) => figureOf(model.plan!, fact, model)?.value.value;
};

test('one calculation is made of another; cases go by their conditions', () => {
  const small = at(`20' x 20'`);
  expect(small('twice')).toBe(2 * small('floor')!);
  expect(small('sort')).toBe(1);
  expect(at(`30' x 30'`)('sort')).toBe(2);
});

test('one that leads back to itself comes to nothing, and so does one of which nobody gave the parts', () => {
  expect(at(`20' x 20'`)('round')).toBeUndefined();
  const { model } = planOf('plan p\n', { library: [ROWS] });
  expect(figureOf(model.plan!, 'floor', model)).toBeUndefined();
  expect(figuresOf(model.plan!, model)).toEqual([]);
});

test('of a room', () => {
  const { model } = planOf(house(`20' x 20'`), { library: [ROWS] });
  const [bed] = model.list('room');
  expect(figuresOf(bed!, model).map(({ fact }) => fact)).toEqual(['of-room']);
});

test('a plan changes a row property by property', () => {
  const changed = `${house(`30' x 50'`)}calculation ventilation
  value plan.floor-area * 0.02 cfm/sf
`;
  const { model } = planOf(changed, { library: 'built-in' });
  const figure = figureOf(model.plan!, 'ventilation', model)!;
  expect(figure.row.label).toBe('Whole-house ventilation by the model code');
  expect(figure.value.value).toBeCloseTo(30 * 0.471947, 4);
});

test('explain tells the rule as it is written, what went into it by name, its caution and its source', () => {
  const view = viewText(house(`30' x 50'`).replace('plan p\n', 'plan p\n  units feet\n'));
  const text = explanationText(explain('plan.ventilation', view).found[0]!);
  expect(text).toContain('It is 30 cfm.');
  expect(text).toContain(
    'Whole-house ventilation by the model code  30 cfm  = floor-area × 0.01 cfm/sf + 7.5 cfm × (bedrooms + 1)',
  );
  expect(text).toMatch(/^ {4}floor-area {2}1,500 sf/m);
  expect(text).toMatch(/^ {4}bedrooms {2}1$/m);
  expect(text).toContain('the heating designer sizes the fan');
  expect(text).toContain('M1505.4.3');
  // By the row's name alone, and a fact that only least values ask for.
  expect(explain('ventilation', view).found[0]?.why).toMatch(/^It is 30 cfm\. Outside air/);
  expect(explain('plan.bedrooms', view).found[0]?.why).toBe('It is 1.');
  expect(explain('hot-water-peak', view).found[0]?.why).toMatch(/^The plan does not tell all that it is made of\. /);
});
