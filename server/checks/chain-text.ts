// The chain of steps that sets a step's date, as a sentence says it.
import { chainOf } from '#schedule/holds';
import type { Timeline } from '#schedule/timeline';

/** More names than these are not read. */
const MOST = 5;

/** '"dig" → "forms" → "pour"', the last steps of the chain; undefined where nothing else holds the step. */
export function chainText(step: number, timeline: Timeline): string | undefined {
  const chain = chainOf(step, timeline);
  if (chain.length < 2) return undefined;
  const names = chain
    .slice(0, MOST)
    .reverse()
    .map((each) => `"${timeline.steps.list[each]!.name}"`);
  return `${chain.length > MOST ? '… → ' : ''}${names.join(' → ')}`;
}
