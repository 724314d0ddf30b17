// Uses of hot water in the busiest hour, as the plan says them: hourly-showers, hourly-baths and the like; what runs hot at
// once, and by how many degrees it is heated.
import type { Plan } from '#model/model';
import { type FactTable, number } from './tables.ts';

type Use = NonNullable<Plan['given']['busiest-hour']>['value'][number]['value']['use'];

const USES: { readonly [use in Use]: true } = {
  showers: true,
  baths: true,
  shaves: true,
  washes: true,
  shampoos: true,
  dishes: true,
  dishwashers: true,
  meals: true,
  laundry: true,
};

export const hotWaterOfPlan: FactTable<Plan> = {
  own: {
    'hot-flow': ({ given }) => given['hot-water']?.value.flow,
    'hot-rise': ({ given }) => {
      const water = given['hot-water']?.value;
      return water === undefined ? undefined : number('rise in degrees F', ((water.to.value - water.from.value) * 9) / 5);
    },
    ...Object.fromEntries(
      Object.keys(USES).map((use) => [
        `hourly-${use}`,
        ({ given }: Plan) => {
          const hour = given['busiest-hour']?.value;
          if (hour === undefined) return undefined;
          const times = hour.filter(({ value }) => value.use === use).reduce((sum, { value }) => sum + value.count, 0);
          return number(use, times);
        },
      ]),
    ),
  },
};
