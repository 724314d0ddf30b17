// Work that wind makes dangerous, or spoils, on days for which more of it is forecast than its row bears.
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';
import { metOn, metText, openWorks, readsOfForecast } from '../../forecasts.ts';
import { quantityText } from '../../show.ts';

export const windy = findingSort<[step: string, work: string, most: string, day: string, wind: string]>({
  code: 'dates/too-windy',
  severity: 'warning',
  say: (step, work, most, day, wind) =>
    `Falls and flying sheets: wind of ${wind} is forecast for ${day}, when "${step}" is under way, and "${work}" is not done in more than ${most}. Wait for a calmer day, and tie down what lies loose. The crane operator, the makers of panels and trusses, and local rules decide.`,
});

export const tooWindy: Check = {
  code: 'dates/too-windy',
  gathers: true,
  about:
    'Some work is not done in wind: its row says up to how much. Where the plan has a forecast of more on one of its days, it should move. The limits of rows are usual ones; the operator and the maker decide.',
  wrong: `plan p
  start 2027-06-14
  forecast 2027-06-15 wind 35 mph
trade framing crew of 4
task trusses does set-trusses takes 2d by framing
`,
  right: `plan p
  start 2027-06-14
  forecast 2027-06-15 wind 15 mph
trade framing crew of 4
task trusses does set-trusses takes 2d by framing
`,
  reads: (results) => readsOfForecast(results, ({ wind }) => wind !== undefined),
  run: (results) => {
    const { model, timeline } = results;
    const { plan } = model;
    if (plan === undefined || !timeline.dated || !plan.given.forecast.some(({ value }) => value.wind !== undefined)) return [];
    return openWorks(results, ({ given }) => given.wind !== undefined).flatMap(({ at, work }) => {
      const most = work.given.wind!.value;
      const met = metOn(at, undefined, plan, timeline, ({ wind }) => wind !== undefined && wind.value > most.value * (1 + 1e-9));
      if (met.length === 0) return [];
      const step = timeline.steps.list[at]!;
      const strongest = met.map(({ forecast }) => forecast.wind!).reduce((a, b) => (b.value > a.value ? b : a));
      const even = met.every(({ forecast }) => forecast.wind!.value === strongest.value);
      const wind = `${even ? '' : 'up to '}${quantityText(strongest, model)}`;
      return [finding(windy, step.place, step.name, work.label, quantityText(most, model), metText(met, timeline), wind)];
    });
  },
};
