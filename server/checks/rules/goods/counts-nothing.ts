// A book chosen for something that it does not count: what stands in the plan changes nothing.
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';

export const countsNothing = findingSort<[book: string, what: string, counts: readonly string[]]>({
  code: 'goods/counts-nothing',
  severity: 'warning',
  say: (book, what, counts) =>
    `"${book}" says nothing of ${what}, so nothing is counted otherwise. ${counts.length === 0 ? 'Say what it counts ("of")' : `It counts ${counts.join(', ')}`}; choose a convention that counts ${what}, or override the row.`,
});

export const countsNothingCheck: Check = {
  code: 'goods/counts-nothing',
  about:
    'A plan chooses by which book something is counted (`counts studs by …`). A book that does not count that thing changes nothing, and the choice would be trusted for no reason.',
  wrong: `plan p
  counts slab-concrete by modern-carpentry
`,
  right: `plan p
  counts slab-concrete by navy-concrete
`,
  reads: ({ model }) => [model.plan, model.rows('convention')],
  run: ({ model }) =>
    (model.plan?.given.counts ?? []).flatMap(({ value: { of, by }, place }) => {
      const counts = by.given.of?.value.map(({ value }) => value.name) ?? [];
      return counts.includes(of.name) ? [] : [finding(countsNothing, place, by.label, of.name, counts)];
    }),
};
