// Which books of the plan's own choice count the quantities of a thing: told beside them.
import type { Slot } from '#kit/place';
import type { Plan } from '#server/pipeline';

const STUDS: ReadonlySet<string> = new Set(['wall-stud-count', 'partition-stud-count']);

/** Labels of the conventions, in the order that the plan names them; none where it names none. */
export function countedBy({ model, takeOff }: Plan, slot: Slot): readonly string[] {
  const counts = model.plan?.given.counts ?? [];
  if (counts.length === 0) return [];
  const lines = takeOff.linesOf(slot);
  const used = counts.filter(({ value: { of } }) =>
    of.name === 'studs'
      ? lines.some(({ measure }) => STUDS.has(measure))
      : lines.some(({ goods }) => goods?.name === of.name || goods?.of?.name === of.name),
  );
  return [...new Set(used.map(({ value: { by } }) => by.label))];
}
