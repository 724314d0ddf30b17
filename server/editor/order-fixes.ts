// Fixes of an order that nothing holds, each tried out on the text: those that do not hold it are left out, and the one that
// costs the fewest days stands first.
import { editOf, type FileEdit } from '#answers/fix-edit';
import { repairsOf } from '#answers/repairs';
import type { Finding } from '#kit/finding';
import type { Plan } from '#server/pipeline';
import { moveBelow } from './move-step.ts';
import { type Effect, trying } from './try-out.ts';

export interface OrderFix {
  readonly title: string;
  readonly edits: readonly FileEdit[];
}

/** A plan's answers stay while it is the same: an editor asks again whenever the cursor moves. */
const kept = new WeakMap<Finding, { readonly plan: Plan; readonly fixes: readonly OrderFix[] | undefined }>();

/** Undefined where the finding's own fixes are all there is. */
export function orderFixes(found: Finding, plan: Plan): readonly OrderFix[] | undefined {
  const known = kept.get(found);
  if (known?.plan === plan) return known.fixes;
  const fixes = tried(found, plan);
  kept.set(found, { plan, fixes });
  return fixes;
}

function tried(found: Finding, plan: Plan): readonly OrderFix[] | undefined {
  const fixes = repairsOf(found, plan)?.map(({ title, change }): OrderFix => {
    if (change.kind === 'move') return { title, edits: moveBelow(change.step, change.below, plan) };
    const edit = editOf(change, plan);
    return { title, edits: edit === undefined ? [] : [edit] };
  });
  const open = fixes?.filter(({ edits }) => edits.length > 0);
  if (open === undefined || open.length === 0) return undefined;
  const attempt = trying(plan);
  if (attempt === undefined) return open;
  const before = loudIn(plan);
  return open
    .map((fix, at) => ({ fix, at, effect: attempt(fix.edits) }))
    .filter(({ effect }) => isMended(found, effect) && loudIn(effect.plan) <= before)
    .sort((a, b) => a.effect.end - b.effect.end || a.at - b.at)
    .map(({ fix, effect }) => ({ ...fix, title: `${fix.title}: ${effect.text}` }));
}

/** Whether nothing under the same code stands at that step any more. */
function isMended({ code, place }: Finding, { plan }: Effect): boolean {
  return !plan.findings.some((each) => each.code === code && each.place.slot.name === place.slot.name);
}

/** A change that mends one order and breaks another is none. */
function loudIn({ findings }: Plan): number {
  return findings.reduce((count, { severity }) => count + (severity === 'note' ? 0 : 1), 0);
}
