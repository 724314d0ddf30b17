// Windows and doors whose rough opening is no larger than the unit: it does not go in, and the header comes out again.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { ElementOf } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { lengthText } from '../../show.ts';

export const tight = findingSort<[name: string, rough: string, unit: string, way: 'wide' | 'high']>({
  code: 'openings/rough-too-small',
  severity: 'error',
  say: (name, rough, unit, way) =>
    `The rough opening of "${name}" is ${rough} ${way}, and the unit itself ${unit}: it does not go in, or cannot be shimmed plumb, and header and studs are cut out again. Take the rough opening from the maker's sheet, commonly half an inch more than a window and two more than a door, and look whether order and drawing mean the same unit.`,
});

export const roughTooSmall: Check = {
  code: 'openings/rough-too-small',
  about:
    'A rough opening must be larger than the unit that goes into it, either way. The unit is measured as it is given: its nominal size, width first.',
  wrong: `window w-8060 8' x 6', rough 7'-0 1/2" x 6'-0 1/2"
`,
  right: `window w-8060 8' x 6', rough 8'-0 1/2" x 6'-0 1/2"
`,
  reads: ({ model }) => [model.list('window'), model.list('door')],
  run: ({ model }) =>
    [...model.list('window'), ...model.list('door')].flatMap((type): readonly Finding[] => {
      const found = tooSmall(type);
      if (found === undefined) return [];
      const { rough, unit, way } = found;
      return [finding(tight, type.given.rough!.place, type.name, lengthText(rough, model), lengthText(unit, model), way)];
    }),
};

interface Tight {
  readonly rough: number;
  readonly unit: number;
  readonly way: 'wide' | 'high';
}

const tooSmall = keptFor(({ given, takes }: ElementOf<'window'> | ElementOf<'door'>): Tight | undefined => {
  const unit = takes;
  const rough = given.rough?.value;
  if (unit === undefined || rough === undefined) return undefined;
  const [wide, high] = [
    { rough: rough.left.value, unit: unit.left.value, way: 'wide' },
    { rough: rough.right.value, unit: unit.right.value, way: 'high' },
  ] as const;
  return wide.rough <= wide.unit ? wide : high.rough <= high.unit ? high : undefined;
});
