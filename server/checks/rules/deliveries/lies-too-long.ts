// Goods that lie on site longer than they keep before their first use: wet, bent, in the way, or gone.
import { DAY_MINUTES } from '#kit/dates';
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import { formatQuantity } from '#kit/units';
import { type Brought, broughtGoods } from '../../brought.ts';
import type { Check } from '../../check.ts';
import { counted, dayText } from '../../show.ts';

export const early = findingSort<
  [
    delivery: string,
    comes: string,
    goods: string,
    step: string,
    uses: string,
    days: number,
    keeps: string,
    stored: readonly string[],
  ]
>({
  code: 'deliveries/lies-too-long',
  severity: 'note',
  say: (delivery, comes, goods, step, uses, days, keeps, stored) =>
    `"${delivery}" comes on ${comes} and "${step}" first uses it on ${uses}: ${goods} lies on site for ${counted(days, 'day')} and keeps ${keeps}${stored.length === 0 ? '' : `, stored ${stored.join(', ')}`}. What lies about gets wet, bent or stolen and stands in the way. Let it come later: after a step nearer to "${step}", or "not before" a day.`,
});

export const liesTooLong: Check = {
  code: 'deliveries/lies-too-long',
  about:
    'A delivery, or the library’s row of what it brings, says how long the goods keep on site. A warning where the delivery says so itself, a note where only the row does.',
  wrong: `plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
task shell takes 40d by siding
delivery boards brings lap-siding from yard, lead 1 week
  keeps 2 weeks
task lap does side-walls by siding after shell
`,
  right: `plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
  height 8'
  walls timber
assembly timber for wall
  layer lap-siding, 7" to the weather
supplier yard
trade siding crew of 2
task shell takes 40d by siding
delivery boards brings lap-siding from yard, lead 1 week, not before 2027-04-19
  keeps 2 weeks
task lap does side-walls by siding after shell
`,
  reads: ({ timeline, model }) => [broughtGoods(model, timeline), timeline.claims.byWork],
  run: ({ model, timeline }) =>
    broughtGoods(model, timeline).flatMap(({ dates: { delivery, comes }, goods }): readonly Finding[] => {
      let worst: { readonly goods: Brought['goods'][number]; readonly keeps: Quantity; readonly over: number } | undefined;
      for (const each of goods) {
        const keeps = delivery.given.keeps?.value ?? rowKeeps(each.row);
        if (keeps === undefined || each.day === undefined) continue;
        const over = each.day - comes - keeps.value / DAY_MINUTES;
        if (over > 0 && (worst === undefined || over > worst.over)) worst = { goods: each, keeps, over };
      }
      if (worst === undefined) return [];
      const { row, label, first, day } = worst.goods;
      const stored = row !== undefined && 'stored' in row.given ? row.given.stored : undefined;
      const found = finding(
        early,
        delivery.place,
        delivery.name,
        dayText(comes, timeline),
        label,
        timeline.steps.list[first!]!.name,
        dayText(day!, timeline),
        day! - comes,
        formatQuantity(worst.keeps, 'feet'),
        stored?.value.map(({ value }) => value) ?? [],
      );
      return [delivery.given.keeps === undefined ? found : { ...found, severity: 'warning' }];
    }),
};

function rowKeeps(row: Brought['goods'][number]['row']): Quantity | undefined {
  return row !== undefined && 'keeps' in row.given ? row.given.keeps?.value : undefined;
}
