// Whether two tasks do the same kinds of work, in the same order: whoever goes by the works of a task alone need not look again.
import type { Task } from './model.ts';

export function doSameWorks(a: Task, b: Task): boolean {
  if (a === b) return true;
  const [works, others] = [a.given.does?.value ?? NONE, b.given.does?.value ?? NONE];
  if (works.length !== others.length) return false;
  for (let at = 0; at < works.length; at++) if (works[at]!.value.work.name !== others[at]!.value.work.name) return false;
  return true;
}

const NONE: readonly never[] = [];
