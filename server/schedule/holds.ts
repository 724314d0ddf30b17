// Why a step begins when it does: the link that was tight, what it had to wait for that another step had, a date, a record, or
// the plan's first day. Read back from the finished passes.
import { HELD_BY_DATE, HELD_BY_PLAN, HELD_BY_RECORD } from './early-dates.ts';
import type { Limit } from './limits.ts';
import type { PlanLink } from './links.ts';
import type { Timeline } from './timeline.ts';

export type Hold =
  | { readonly kind: 'link'; readonly link: PlanLink }
  /** `of` is what the step `from` had: its trade's crew, a machine, a firm's crew, a room. */
  | { readonly kind: 'crew'; readonly from: number; readonly of: Limit | undefined }
  | { readonly kind: 'date' }
  | { readonly kind: 'record' }
  | { readonly kind: 'plan' };

/** What holds a step of the dates that are shown, crews as limits. */
export function holdOf(step: number, timeline: Timeline): Hold {
  const { crews, links, limits } = timeline;
  const giver = crews.heldByTask[step]!;
  if (giver >= 0) return { kind: 'crew', from: giver, of: limits[crews.heldByCrew[step]!] };
  const by = crews.heldBy[step]!;
  switch (by) {
    case HELD_BY_PLAN:
      return { kind: 'plan' };
    case HELD_BY_DATE:
      return { kind: 'date' };
    case HELD_BY_RECORD:
      return { kind: 'record' };
    default: {
      const link = links[by];
      return link === undefined ? { kind: 'plan' } : { kind: 'link', link };
    }
  }
}

/** The step it waits for, where it is one that holds it. */
export function holderOf(hold: Hold): number | undefined {
  return hold.kind === 'link' ? hold.link.from : hold.kind === 'crew' ? hold.from : undefined;
}

/** The chain that sets a step's date, itself first: each held by the next. */
export function chainOf(step: number, timeline: Timeline): readonly number[] {
  const chain = [step];
  const seen = new Set(chain);
  for (let at = holderOf(holdOf(step, timeline)); at !== undefined && !seen.has(at); at = holderOf(holdOf(at, timeline))) {
    chain.push(at);
    seen.add(at);
  }
  return chain;
}
