// Goods that must lie in a closed house, and come before it is one.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { State } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import { broughtGoods } from '../../brought.ts';
import type { Check } from '../../check.ts';
import { dayText, finishText } from '../../show.ts';

export const noPlace = findingSort<
  [delivery: string, comes: string, goods: string, stored: readonly string[], state: string, day: string, last: string]
>({
  code: 'deliveries/no-place-yet',
  severity: 'note',
  say: (delivery, comes, goods, stored, state, day, last) =>
    `"${delivery}" comes on ${comes}, but the house is ${state} on ${day} ("${last}" is last). ${goods} is stored ${stored.join(', ')}, and until then there is no place for it: in the open it is ruined or stolen. Let "${delivery}" wait for "${last}".`,
});

export const noPlaceYet: Check = {
  code: 'deliveries/no-place-yet',
  about:
    'Rows of the library say of some goods that they are stored indoors until the house has a state, such as dry. A delivery of them must not come before every step that makes the state is done.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  ceiling lid
assembly lid for ceiling
  layer drywall 1/2"
room hall on main
  size 10' x 10'
supplier yard
trade crew crew of 2
delivery board brings drywall from yard, lead 1 week
task roof does lay-underlayment takes 20d by crew
task hang does hang-board takes 3d by crew after roof
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  ceiling lid
assembly lid for ceiling
  layer drywall 1/2"
room hall on main
  size 10' x 10'
supplier yard
trade crew crew of 2
task roof does lay-underlayment takes 20d by crew
delivery board brings drywall from yard, lead 1 week, after roof
task hang does hang-board takes 3d by crew after board
`,
  reads: ({ timeline, model }) => [broughtGoods(model, timeline), timeline.claims.byWork, model.rows('state')],
  run: ({ model, timeline }) => {
    const lasts = new Map<State, number | undefined>();
    const lastFor = (state: State): number | undefined => {
      if (!lasts.has(state)) lasts.set(state, lastOf(state, timeline));
      return lasts.get(state);
    };
    return broughtGoods(model, timeline).flatMap(({ dates: { delivery, step, comes }, goods }): readonly Finding[] => {
      for (const { row, label } of goods) {
        const stored = row?.kind === 'material' || row?.kind === 'fixture' ? row.given.stored : undefined;
        const state = stored?.deeper.until?.value;
        if (stored === undefined || state === undefined) continue;
        const last = lastFor(state);
        if (last === undefined || timeline.crews.finish[last]! <= timeline.crews.start[step]!) continue;
        return [
          finding(
            noPlace,
            delivery.place,
            delivery.name,
            dayText(comes, timeline),
            label,
            stored.value.map(({ value }) => value),
            state.name.replaceAll('-', ' '),
            finishText(timeline.crews.finish[last]!, timeline),
            timeline.steps.list[last]!.name,
          ),
        ];
      }
      return [];
    });
  },
};

/** The last of the steps that make a state; undefined where the plan has none. */
function lastOf(state: State, { claims, steps, crews }: Timeline): number | undefined {
  let last: number | undefined;
  for (const { value } of state.given['made by']?.value ?? [])
    for (const task of claims.byWork.get(value.name)?.tasks ?? []) {
      const step = steps.index.get(task.slot)!;
      if (last === undefined || crews.finish[step]! > crews.finish[last]!) last = step;
    }
  return last;
}
