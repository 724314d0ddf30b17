// What can hurt someone while a step goes on: what its kinds of work say of themselves, each hazard once.
import type { Step } from '#model/model';
import { type ListedReason, saying } from './listed-reason.ts';

/** Undefined where nothing is known of any. */
export function hazardReason(step: Step): ListedReason | undefined {
  if (step.kind !== 'task') return undefined;
  const texts = new Set((step.given.does?.value ?? []).flatMap(({ value }) => value.work.given.hazard.map((line) => line.value)));
  if (texts.size === 0) return undefined;
  return saying(
    'hazards',
    '',
    [...texts].map((text) => {
      const colon = text.indexOf(':');
      return saying(text.slice(0, colon + 1), text.slice(colon + 1).trim());
    }),
  );
}
