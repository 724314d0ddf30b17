// Outside work on days for which rain is forecast, or that is not yet dry by then.
import { finding, findingSort } from '#kit/finding';
import type { WorkKind } from '#model/model';
import type { Check } from '../../check.ts';
import { type Forecast, metOn, metText, openWorks, readsOfForecast } from '../../forecasts.ts';

export const wet = findingSort<[step: string, work: string, day: string, several: boolean]>({
  code: 'dates/too-wet',
  severity: 'warning',
  say: (step, work, day, several) =>
    `"${step}": rain is forecast for ${day}, and "${work}" is not done in rain. Plan work inside for ${several ? 'those days; when days are' : 'that day; when the day is'} lost, write it in the diary ("rain"), and the dates follow.`,
});

export const notDry = findingSort<[step: string, work: string, day: string]>({
  code: 'dates/too-wet',
  severity: 'warning',
  say: (step, work, day) =>
    `"${step}": rain is forecast for ${day}, when "${work}" is not yet dry: rain spoils it. Move it, or cover it.`,
});

export const tooWet: Check = {
  code: 'dates/too-wet',
  gathers: true,
  about:
    'Work outside that rain stops should not lie on days for which the plan has a forecast of rain, nor should rain come before it is dry. Which work that is, and how long it must stay dry, its row says (exposed, dry).',
  wrong: `plan p
  start 2027-06-14
  forecast 2027-06-15 rain
trade roofing crew of 3
task felt does lay-underlayment takes 3d by roofing
`,
  right: `plan p
  start 2027-06-14
  forecast 2027-06-17 rain
trade roofing crew of 3
task felt does lay-underlayment takes 3d by roofing
`,
  reads: (results) => readsOfForecast(results, isRain),
  run: (results) => {
    const { model, timeline } = results;
    const { plan } = model;
    if (plan === undefined || !timeline.dated || !plan.given.forecast.some(({ value }) => isRain(value))) return [];
    return openWorks(results, isSpoilt).flatMap(({ at, work }) => {
      const step = timeline.steps.list[at]!;
      const during = stoppedByRain(work) ? metOn(at, undefined, plan, timeline, isRain) : [];
      if (during.length > 0)
        return [finding(wet, step.place, step.name, work.label, metText(during, timeline), during.length > 1)];
      const after = work.given.dry?.value;
      const met = after === undefined ? [] : metOn(at, after, plan, timeline, isRain);
      return met.length === 0 ? [] : [finding(notDry, step.place, step.name, work.label, metText(met, timeline))];
    });
  },
};

function isRain({ rain }: Forecast): boolean {
  return rain !== undefined;
}

function stoppedByRain({ given }: WorkKind): boolean {
  return given.exposed?.value.some(({ value }) => value === 'rain') === true;
}

function isSpoilt(work: WorkKind): boolean {
  return work.given.dry !== undefined || stoppedByRain(work);
}
