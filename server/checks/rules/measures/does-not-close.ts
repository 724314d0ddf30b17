// Dimension strings whose parts do not add up to the whole.
import { finding, findingSort } from '#kit/finding';
import type { Check } from '../../check.ts';
import { lengthText } from '../../show.ts';

export const notClosed = findingSort<[name: string | undefined, parts: string, whole: string, by: string, over: boolean]>({
  code: 'measures/does-not-close',
  severity: 'error',
  say: (name, parts, whole, by, over) =>
    `${name === undefined ? 'This string of dimensions' : `The string "${name}"`} does not close: its parts make ${parts}, the whole is ${whole}, ${by} ${over ? 'less' : 'more'}. Whoever lays it out will guess which is wrong. Check the parts against the drawing.`,
});

export const doesNotClose: Check = {
  code: 'measures/does-not-close',
  about: 'The parts of a dimension string must add up to the whole, exactly.',
  wrong: `measure main.north 5 1/2" + 11'-2" + 5 1/2" = 12'-2"\n`,
  right: `measure main.north 5 1/2" + 11'-2" + 5 1/2" = 12'-1"\n`,
  reads: ({ model }) => [model.list('measure'), model.settings],
  run: ({ model }) =>
    model.list('measure').flatMap(({ takes, place }) => {
      if (takes === undefined || takes.left.value === takes.right.value) return [];
      const difference = takes.left.value - takes.right.value;
      return [
        finding(
          notClosed,
          takes.of?.place ?? place,
          takes.of?.name,
          lengthText(takes.left.value, model),
          lengthText(takes.right.value, model),
          lengthText(Math.abs(difference), model),
          difference > 0,
        ),
      ];
    }),
};
