// A plan that keeps the holidays of a country or region whose days nobody wrote down: they would all be worked.
import { finding, findingSort } from '#kit/finding';
import { holidaysOf } from '#schedule/plan-calendars';
import type { Check } from '../../check.ts';

export const noneKnown = findingSort<[code: string, country: string | undefined]>({
  code: 'dates/no-holidays',
  severity: 'warning',
  say: (code, country) =>
    country === undefined
      ? `No holidays of "${code}" are known, so all of them are worked. Write the country, and the region after a hyphen, by their codes (US, CA-ON), or write the days under "closed".`
      : `No holidays of "${code}" itself are known, only those of "${country}" as a whole. Check the region’s code, or write its own days under "closed".`,
});

export const noHolidays: Check = {
  code: 'dates/no-holidays',
  about:
    'The holidays that a plan keeps should be rows of the library or of the plan (holiday … in CA-ON). A region whose own days nobody wrote down keeps those of its country alone.',
  wrong: 'plan p\n  holidays XX\n',
  right: 'plan p\n  holidays US\n',
  reads: ({ model }) => [model.plan?.given.holidays, model.rows('holiday')],
  run: ({ model }) => {
    const kept = model.plan?.given.holidays;
    if (kept === undefined) return [];
    const code = kept.value.toLowerCase();
    const known = holidaysOf(model);
    if (known.length === 0) return [finding(noneKnown, kept.place, kept.value, undefined)];
    // Some countries have no days of single regions in the library; then the country's are all there is to say.
    const country = code.split('-')[0]!;
    const regions = model.rows('holiday').flatMap((row) => row.given.in?.value.map(({ value }) => value.toLowerCase()) ?? []);
    const isRegion = code !== country && regions.some((each) => each.startsWith(`${country}-`));
    return isRegion && !regions.includes(code) ? [finding(noneKnown, kept.place, kept.value, country.toUpperCase())] : [];
  },
};
