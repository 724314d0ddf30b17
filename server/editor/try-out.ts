// What a change of the text would do: the plan analysed with it, held against the plan as it is. Done when a fix is asked for,
// never while typing; with a memory of its own that is gone when the answer is.
import type { FileEdit } from '#answers/fix-edit';
import { counted } from '#answers/table';
import { lineStarts, offsetAt } from '#kit/text';
import { workBetween } from '#schedule/calendar';
import { analyse, emptyMemory, type Plan } from '#server/pipeline';

/** How a plan changes by some edits. */
export interface Effect {
  /** Working minutes by which the end moves; below zero it comes forward. */
  readonly end: number;
  /** 'adds no days', 'moves the end by 3 working days'. */
  readonly text: string;
  readonly plan: Plan;
}

/** Plans of more steps than this are not tried out: an editor would wait. */
export const MOST_STEPS = 400;

/** Answers for lists of edits, in turn; undefined for a plan too large. */
export function trying(plan: Plan): ((edits: readonly FileEdit[]) => Effect) | undefined {
  if (plan.timeline.steps.list.length > MOST_STEPS) return undefined;
  const texts = Object.fromEntries(plan.model.files.map(({ path, tree }) => [path, tree.text]));
  const { asOf } = plan.timeline.progress;
  const memory = emptyMemory();
  // The library's own findings are no concern of a plan.
  const library = { table: plan.model.library, findings: [] };
  return (edits) => {
    const changed = { ...texts };
    for (const path of new Set(edits.map((each) => each.path)))
      changed[path] = applied(
        texts[path] ?? '',
        edits.filter((each) => each.path === path),
      );
    const day = asOf === undefined ? {} : { asOf };
    const tried = analyse({ root: plan.root, texts: changed, library, ...day }, memory);
    return effectOf(plan, tried);
  };
}

function effectOf(before: Plan, after: Plan): Effect {
  const { timing, minutesPerDay } = before.timeline;
  const [from, to] = [before.timeline.crews.end, after.timeline.crews.end];
  const end = workBetween(timing.calendars[timing.planCalendar]!, from, to);
  return { end, text: effectText(end / minutesPerDay), plan: after };
}

function effectText(days: number): string {
  const size = Math.ceil(Math.abs(days) * 10 - 1e-9) / 10;
  if (size === 0) return 'adds no days';
  const counting = counted(size, 'working day');
  return days > 0 ? `moves the end by ${counting}` : `brings the end forward by ${counting}`;
}

function applied(text: string, edits: readonly FileEdit[]): string {
  const starts = lineStarts(text);
  return edits
    .map(({ edit }) => ({ from: offsetAt(text, starts, edit.range.start), to: offsetAt(text, starts, edit.range.end), ...edit }))
    .sort((a, b) => b.from - a.from)
    .reduce((done, { from, to, newText }) => done.slice(0, from) + newText + done.slice(to), text);
}
