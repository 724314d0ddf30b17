// Goods that must lie in a closed house, and come before it is one.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { State } from '#model/model';
import type { Timeline } from '#schedule/timeline';
import { broughtGoods } from '../../brought.ts';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { type Scopes, scopeOf, scopesOf } from '../../scopes.ts';
import { dayText, finishText } from '../../show.ts';
import { buildingsOf } from '../../standing-on.ts';

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
    'Rows of the library say of some goods that they are stored indoors until the house has a state, such as dry. A delivery of them must not come before every step that makes the state is done; of several houses, in the first of those that use them.',
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
  reads: ({ timeline, model }) => [
    broughtGoods(model, timeline),
    timeline.claims.byWork,
    model.rows('state'),
    scopesOf({ timeline, model }),
  ],
  run: ({ model, timeline }) => {
    const scopes = scopesOf({ timeline, model });
    const houses = buildingsOf(model);
    const lasts = new Map<State, Lasts>();
    const lastFor = (state: State, users: readonly number[]): number | undefined => {
      let known = lasts.get(state);
      if (known === undefined) lasts.set(state, (known = lastsOf(state, houses, scopes, timeline)));
      return firstHouse(known, users, houses, scopes, timeline);
    };
    return broughtGoods(model, timeline).flatMap(({ dates: { delivery, step, comes }, goods }): readonly Finding[] => {
      for (const { row, label, users } of goods) {
        const stored = row !== undefined && 'stored' in row.given ? row.given.stored : undefined;
        const state = stored?.deeper.until?.value;
        if (stored === undefined || state === undefined) continue;
        const last = lastFor(state, users);
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

/** By house, and of the whole plan where it is one: the last of the steps that make a state. */
type Lasts = ReadonlyMap<Slot | undefined, number>;
type Houses = ReadonlySet<Slot> | undefined;

function lastsOf(state: State, houses: Houses, scopes: Scopes, { claims, steps, crews }: Timeline): Lasts {
  const lasts = new Map<Slot | undefined, number>();
  const add = (house: Slot | undefined, step: number): void => {
    const last = lasts.get(house);
    if (last === undefined || crews.finish[step]! > crews.finish[last]!) lasts.set(house, step);
  };
  for (const { value } of state.given['made by']?.value ?? [])
    for (const task of claims.byWork.get(value.name)?.tasks ?? []) {
      const step = steps.index.get(task.slot)!;
      for (const house of scopeOf({ step, work: value.name }, scopes).buildings ?? houses ?? [undefined]) add(house, step);
    }
  return lasts;
}

/** Of the houses that use the goods, the last step of that which has the state first: there is a place for them. */
function firstHouse(
  lasts: Lasts,
  users: readonly number[],
  houses: Houses,
  { bySteps }: Scopes,
  { crews }: Timeline,
): number | undefined {
  const used = new Set<Slot | undefined>();
  let anywhere = false;
  for (const step of users) {
    const at = housesAt(bySteps[step]!);
    for (const house of at.named) used.add(house);
    anywhere ||= at.anywhere;
  }
  if (anywhere) for (const house of houses ?? [undefined]) used.add(house);
  let first: number | undefined;
  for (const [house, last] of lasts)
    if ((used.size === 0 || used.has(house)) && (first === undefined || crews.finish[last]! < crews.finish[first]!)) first = last;
  return first;
}

/** The houses that a step's works belong to, and whether some belong to none: kept with the places of its works. */
const housesAt = keptFor(
  (byWork: Scopes['bySteps'][number]): { readonly named: ReadonlySet<Slot>; readonly anywhere: boolean } => {
    const named = new Set<Slot>();
    let anywhere = false;
    for (const { buildings } of byWork.values()) {
      if (buildings === undefined) anywhere = true;
      else for (const house of buildings) named.add(house);
    }
    return { named, anywhere };
  },
);
