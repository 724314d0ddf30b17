// Outside walls whose sheathing lies below the dew point of the rooms on an average winter day: water may gather on it.
import { type Finding, finding, findingSort } from '#kit/finding';
import { screenedWall } from '#takeoff/heat/dew-point';
import type { Check } from '../../check.ts';
import { quantityText } from '../../show.ts';

export const wet = findingSort<[wall: string, surface: string, face: string, dew: string]>({
  code: 'walls/dew-point',
  severity: 'note',
  say: (wall, surface, face, dew) =>
    `In "${wall}" the inner face of "${surface}" is at ${face} on average in the coldest months, below ${dew}, where the air of the rooms drops its water: what gets that far can wet sheathing and studs and rot them. Put more insulation outside of the framing, keep the air drier, or let a vapour retarder and airtight work hold it back. A screening only, which knows neither air leaks, which usually matter more, nor drying: have a building scientist or the designer review the wall; local code says which retarder a climate asks for.`,
});

export const dewPoint: Check = {
  code: 'walls/dew-point',
  about:
    'What lies outside of filled framing should be warmer inside than the dew point of the rooms. Outside walls are screened by that method where a plan gives the warmth and humidity indoors and the average of the coldest months outdoors.',
  wrong: `plan house "House"
  indoors 70 F, 50% humidity
  outdoors 5 F, 32 F on average
level main "Main floor"
  footprint 20' x 24'
  walls ext-2x6
`,
  right: `plan house "House"
  indoors 70 F, 30% humidity
  outdoors 5 F, 32 F on average
assembly outer "Wall with four inches of foam" for wall
  layer drywall 1/2"
  layer stud 2x6 at 16" oc, filled with r21-batt
  layer osb 7/16"
  layer xps-board 4"
  layer lap-siding, 7" to the weather
level main "Main floor"
  footprint 20' x 24'
  walls outer
`,
  reads: ({ model }) => [model.plan, model.list('level'), model.rows('convention'), model.settings],
  run: ({ model }) =>
    model.list('level').flatMap(({ given: { walls, basement } }): readonly Finding[] => {
      // Where earth lies outside, the air's average says nothing.
      const screened = walls === undefined || basement !== undefined ? undefined : screenedWall(walls.value, model);
      if (walls === undefined || screened === undefined || screened.face.value >= screened.dew.value) return [];
      const { surface, face, dew } = screened;
      return [finding(wet, walls.place, walls.value.label, surface, quantityText(face, model), quantityText(dew, model))];
    }),
};
