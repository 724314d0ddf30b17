// DOOR: model → take-off: every line with its working, by work, and what to buy. Geometry of each element gives portions,
// the library's rows make lines of them; both are kept while what they came from is the same.
import type { Finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { System } from '#kit/units';
import type { Work } from '#kit/work';
import type { WorkKind } from '#model/model';
import type { Model } from '#model/resolve';
import { measurings } from './elements.ts';
import type { Line, Purchase } from './lines.ts';
import { partLines, type TakeOffMemory } from './memory.ts';
import { purchasesOf } from './purchase.ts';
import { rowsOf, sameList } from './rows.ts';

export { type TakeOffMemory, takeOffMemory } from './memory.ts';

export interface TakeOff {
  /** In plan order. */
  readonly lines: readonly Line[];
  /** By the name of the work that installs them; a list is the same object while its lines are. */
  readonly byWork: ReadonlyMap<string, readonly Line[]>;
  /** What to buy, made when first asked for. */
  readonly purchases: () => readonly Purchase[];
  /** The lines of an element, a room or a level. */
  readonly linesOf: (slot: Slot) => readonly Line[];
}

export function takeOff(
  model: Model,
  memory: TakeOffMemory,
  work: Work,
): { readonly value: TakeOff; readonly findings: readonly Finding[] } {
  const rows = rowsOf(model, memory.rows);
  const lists: (readonly Line[])[] = [];
  const findings: Finding[] = [];
  for (const measuring of measurings(model, rows, memory)) {
    const part = partLines(measuring, rows, memory, work);
    if (part.lines.length > 0) lists.push(part.lines);
    for (const found of part.findings) findings.push(found);
  }
  if (!sameList(lists, memory.lists)) {
    memory.lists = lists;
    memory.lines = joined(lists);
    memory.byWork = grouped(memory.lines, memory.byWork);
  }
  return { value: takeOffOf(memory.lines, memory.byWork, model, memory), findings };
}

/** Many short lists in one, without the cost of flattening whatever may be in them. */
function joined(lists: readonly (readonly Line[])[]): readonly Line[] {
  const lines: Line[] = [];
  for (const list of lists) for (const line of list) lines.push(line);
  return lines;
}

function takeOffOf(
  lines: readonly Line[],
  byWork: ReadonlyMap<string, readonly Line[]>,
  model: Model,
  memory: TakeOffMemory,
): TakeOff {
  let purchases: readonly Purchase[] | undefined;
  let bySlot: ReadonlyMap<Slot, readonly Line[]> | undefined;
  return {
    lines,
    byWork,
    purchases: () => (purchases ??= purchasesOf(lines, worksDone(model, memory), systemOf(model), memory.purchases)),
    linesOf: (slot) => (bySlot ??= groupedBySlot(lines)).get(slot) ?? [],
  };
}

function systemOf({ settings: { units } }: Model): System {
  return units === 'feet' ? 'feet' : 'metric';
}

/** The same set while the works that tasks do are the same. */
function worksDone(model: Model, memory: TakeOffMemory): ReadonlySet<string> {
  const tasks = model.list('task');
  const { done } = memory;
  if (done?.tasks === tasks) return done.works;
  const works = new Set<string>();
  for (const task of tasks) for (const { value } of task.given.does?.value ?? []) works.add(value.work.name);
  const same = done !== undefined && done.works.size === works.size && [...works].every((work) => done.works.has(work));
  memory.done = { tasks, works: same ? done.works : works };
  return memory.done.works;
}

function grouped(lines: readonly Line[], before: ReadonlyMap<string, readonly Line[]>): ReadonlyMap<string, readonly Line[]> {
  const groups = new Map<WorkKind, Line[]>();
  for (const line of lines) {
    if (line.work === undefined) continue;
    const group = groups.get(line.work);
    if (group === undefined) groups.set(line.work, [line]);
    else group.push(line);
  }
  const byName = new Map<string, readonly Line[]>();
  for (const [{ name }, group] of groups) {
    const old = before.get(name);
    byName.set(name, old !== undefined && sameList(group, old) ? old : group);
  }
  return byName;
}

function groupedBySlot(lines: readonly Line[]): ReadonlyMap<Slot, readonly Line[]> {
  const groups = new Map<Slot, Line[]>();
  for (const line of lines) {
    const { element, room, level } = line.where;
    for (const slot of new Set([element, room, level])) {
      if (slot === undefined) continue;
      const group = groups.get(slot);
      if (group === undefined) groups.set(slot, [line]);
      else group.push(line);
    }
  }
  return groups;
}
