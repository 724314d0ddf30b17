// The least values of the model code that a thing meets, in words: what it has beside each limit, never more than a few lines,
// with the caution that goes with them.
import { minimumsMet } from '#checks/minimum-met';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import { counted } from './table.ts';

/** No more than this are listed. */
const MOST = 8;

/** Undefined where it meets none that is known of. What it misses is counted; the findings tell it. */
export function leastValues(
  element: Element,
  model: Model,
): { readonly why: string; readonly lines: readonly string[] } | undefined {
  const values = minimumsMet(element, model);
  if (values === undefined || values.met.length === 0) return undefined;
  const { code, met, missed } = values;
  const lines = met.map(
    ({ what, has, limits, sections }) =>
      `${what} ${has}: ${limits.join(', ')}${sections.length === 0 ? '' : ` (${sections.join(', ')})`}`,
  );
  const more = lines.length - MOST;
  const others = missed === 0 ? '' : ` It misses ${counted(missed, 'other')}: the findings say which.`;
  return {
    why: `Meets the model minimum of ${code} in what is listed; local code governs.${others}`,
    lines: more > 1 ? [...lines.slice(0, MOST), `… ${more} more`] : lines,
  };
}
