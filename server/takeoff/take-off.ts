// DOOR: model → take-off: every line with its working, by work, and what to buy. Geometry of each element gives portions,
// the library's rows make lines of them; both are kept while what they came from is the same.
import type { Finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Work } from '#kit/work';
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
  const lines: Line[] = [];
  const findings: Finding[] = [];
  for (const measuring of measurings(model, rows, memory)) {
    const part = partLines(measuring, rows, memory, work);
    lines.push(...part.lines);
    findings.push(...part.findings);
  }
  memory.byWork = sameList(lines, memory.lines) ? memory.byWork : grouped(lines, memory.byWork);
  memory.lines = sameList(lines, memory.lines) ? memory.lines : lines;
  return { value: takeOffOf(memory.lines, memory.byWork, model, memory), findings };
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
    purchases: () => (purchases ??= purchasesOf(lines, worksDone(model), memory.purchases)),
    linesOf: (slot) => (bySlot ??= groupedBySlot(lines)).get(slot) ?? [],
  };
}

function worksDone(model: Model): ReadonlySet<string> {
  return new Set(model.list('task').flatMap((task) => (task.given.does?.value ?? []).map(({ value }) => value.work.name)));
}

function grouped(lines: readonly Line[], before: ReadonlyMap<string, readonly Line[]>): ReadonlyMap<string, readonly Line[]> {
  const groups = new Map<string, Line[]>();
  for (const line of lines) {
    if (line.work === undefined) continue;
    const group = groups.get(line.work.name);
    if (group === undefined) groups.set(line.work.name, [line]);
    else group.push(line);
  }
  return new Map([...groups].map(([name, group]) => [name, sameList(group, before.get(name) ?? []) ? before.get(name)! : group]));
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
