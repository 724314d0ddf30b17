// What a roof has less where others run into it: its eaves where they stand before them, its surface under them.
import { form, measure, type Quantity } from '#kit/quantity';
import type { RoofFigures } from './roof-figures.ts';
import type { RunIn } from './roof-into.ts';

const lessEave = form('eaves', 'eaves − where other roofs run in', (eaves = 0, ...taken) =>
  Math.max(
    0,
    taken.reduce((rest, length) => rest - length, eaves),
  ),
);

/** The figures of a roof with its eaves shorter where others stand before them, and what they cover of it. */
export function withOthers(
  figures: RoofFigures,
  others: readonly RunIn[],
): {
  readonly figures: RoofFigures;
  readonly covered: readonly Quantity<'area'>[];
  readonly cutOut: readonly Quantity<'area'>[];
} {
  const covered = others.map(({ hides }) => hides);
  // A dormer is open to the room below; under a porch roof the deck runs through.
  const cutOut = others.filter(({ frontWall }) => frontWall !== undefined).map(({ hides }) => hides);
  const taken = others.flatMap(({ takesEave }) => takesEave ?? []);
  if (taken.length === 0) return { figures, covered, cutOut };
  const eaveOn = { ...figures.eaveOn };
  for (const { side, takesEave } of others) {
    const eave = eaveOn[side];
    if (takesEave !== undefined && eave !== undefined) eaveOn[side] = measure('length', lessEave, eave, takesEave);
  }
  return { figures: { ...figures, eaves: measure('length', lessEave, figures.eaves, ...taken), eaveOn }, covered, cutOut };
}
