// One value of insulation an inch written for two loose materials: fibres differ, and the depth of one of them is wrong.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Quantity } from '#kit/quantity';
import { formatQuantity } from '#kit/units';
import type { Material } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const alike = findingSort<[second: string, first: string, value: string]>({
  code: 'goods/one-r',
  severity: 'note',
  say: (second, first, value) =>
    `${second} insulates ${value}, just as ${first} does: loose fibres differ by a third and more (glass about 2.5 an inch, cellulose about 3.6), and the depth of one of the two comes out short. Take each value from its own bag.`,
});

export const oneR: Check = {
  code: 'goods/one-r',
  about:
    'A plan that gives two loose fillings of its own the same R an inch has mostly one figure from a page for both. Depth, bags and weight of one of them are then wrong.',
  wrong: `material glass-fill "Loose glass fibre" laid loose
  insulates R-3 per inch
material paper-fill "Loose cellulose" laid loose
  insulates R-3 per inch
`,
  right: `material glass-fill "Loose glass fibre" laid loose
  insulates R-2.5 per inch
material paper-fill "Loose cellulose" laid loose
  insulates R-3.6 per inch
`,
  reads: ({ model }) => [model.rows('material')],
  run: ({ model }) => {
    const firsts = new Map<string, Material>();
    return loose(model.rows('material')).flatMap((row): readonly Finding[] => {
      const insulates = row.given.insulates!;
      // What the library says is each row's own.
      if (!model.names.first.has(`material/${row.name}`) || !model.names.order.has(insulates.place.slot)) return [];
      const key = `${insulates.value.dimension} ${insulates.value.value}`;
      const first = firsts.get(key);
      if (first === undefined) firsts.set(key, row);
      return first === undefined ? [] : [finding(alike, insulates.place, row.label, first.label, inchText(insulates.value))];
    });
  },
};

/** 'R-3 an inch'. */
function inchText(value: Quantity): string {
  return formatQuantity(value, 'feet').replace(/^(\S+) R\/in$/, 'R-$1 an inch');
}

const loose = keptFor((rows: readonly Material[]) =>
  rows.filter(({ given }) => given.laid?.value === 'loose' && given.insulates !== undefined),
);
