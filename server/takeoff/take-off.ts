// DOOR: model → take-off: every line with its working, by work, and what to buy. Geometry of each element gives portions,
// the library's rows make lines of them; both are kept while what they came from is the same.
import { alike } from '#kit/differing';
import type { Finding } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { System } from '#kit/units';
import type { Work } from '#kit/work';
import type { Model } from '#model/resolve';
import { doSameWorks } from '#model/same-works';
import { measurings } from './elements.ts';
import { type Grouping, groupedBy, type PartLines, type Sort } from './grouping.ts';
import type { Line, Purchase } from './lines.ts';
import { measuredParts, type TakeOffMemory } from './memory.ts';
import { purchasesOf } from './purchase.ts';
import { rowsOf } from './rows.ts';

export { type TakeOffMemory, takeOffMemory } from './memory.ts';

export interface TakeOff {
  /** In plan order; made when first asked for. */
  readonly lines: readonly Line[];
  /** The same lines by the parts that are measured on their own. */
  readonly parts: readonly PartLines[];
  /** By the name of the work that installs them; a list is the same object while its lines are. */
  readonly byWork: ReadonlyMap<string, readonly Line[]>;
  /** What to buy, made when first asked for. */
  readonly purchases: () => readonly Purchase[];
  /** What would be bought for some of its lines alone; not kept. */
  readonly boughtFor: (lines: readonly Line[]) => readonly Purchase[];
  /** The lines of an element, a room or a level. */
  readonly linesOf: (slot: Slot) => readonly Line[];
}

export function takeOff(
  model: Model,
  memory: TakeOffMemory,
  work: Work,
): { readonly value: TakeOff; readonly findings: readonly Finding[] } {
  const rows = rowsOf(model, memory.rows);
  const { parts, findings } = measuredParts(measurings(model, rows, memory), rows, memory, work);
  memory.works = groupedBy(BY_WORK, parts, memory.works);
  if (memory.byWork.groups !== memory.works.groups)
    memory.byWork = { groups: memory.works.groups, lines: linesOfWorks(memory.works) };
  const does = worksDone(model, memory);
  const system = systemOf(model);
  const { last } = memory;
  const same = last !== undefined && last.value.parts === parts && last.does === does && last.system === system;
  if (!same) memory.last = { does, system, value: takeOffOf(parts, memory.byWork.lines, does, system, memory) };
  return { value: memory.last!.value, findings };
}

const BY_WORK: Sort = { keyOf: ({ work }) => work?.name };

function linesOfWorks({ groups }: Grouping): ReadonlyMap<string, readonly Line[]> {
  const lines = new Map<string, readonly Line[]>();
  for (const [name, group] of groups) lines.set(name, group.lines);
  return lines;
}

function takeOffOf(
  parts: readonly PartLines[],
  byWork: ReadonlyMap<string, readonly Line[]>,
  does: ReadonlySet<string>,
  system: System,
  memory: TakeOffMemory,
): TakeOff {
  let lines: readonly Line[] | undefined;
  let purchases: readonly Purchase[] | undefined;
  let bySlot: ReadonlyMap<Slot, readonly number[]> | undefined;
  return {
    get lines() {
      return (lines ??= joined(parts));
    },
    parts,
    byWork,
    purchases: () => (purchases ??= purchasesOf(parts, does, system, memory.purchases)),
    boughtFor: (some) => purchasesOf([some], new Set(some.map(({ work }) => work?.name ?? '')), system),
    linesOf: (slot) => {
      bySlot ??= partsBySlot(parts);
      return (bySlot.get(slot) ?? []).flatMap((part) => parts[part]!.filter((line) => isAt(slot, line)));
    },
  };
}

/** Many short lists in one, without the cost of flattening whatever may be in them. */
function joined(parts: readonly PartLines[]): readonly Line[] {
  const lines: Line[] = [];
  for (const part of parts) for (const line of part) lines.push(line);
  return lines;
}

function systemOf({ settings: { units } }: Model): System {
  return units === 'feet' ? 'feet' : 'metric';
}

/** The same set while the works that tasks do are the same. */
function worksDone(model: Model, memory: TakeOffMemory): ReadonlySet<string> {
  const tasks = model.list('task');
  const { done } = memory;
  if (done?.tasks === tasks) return done.works;
  if (done !== undefined && alike(tasks, done.tasks, doSameWorks)) {
    memory.done = { tasks, works: done.works };
    return done.works;
  }
  const works = new Set<string>();
  for (const task of tasks) for (const { value } of task.given.does?.value ?? []) works.add(value.work.name);
  const same = done !== undefined && done.works.size === works.size && [...works].every((work) => done.works.has(work));
  memory.done = { tasks, works: same ? done.works : works };
  return memory.done.works;
}

/** Numbers of the parts in which an element, a room or a level has lines. */
function partsBySlot(parts: readonly PartLines[]): ReadonlyMap<Slot, readonly number[]> {
  const numbers = new Map<Slot, number[]>();
  for (let part = 0; part < parts.length; part++)
    for (const slot of slotsOf(parts[part]!)) {
      addTo(numbers, slot, part);
    }
  return numbers;
}

const slotsKept = new WeakMap<PartLines, readonly Slot[]>();
function slotsOf(lines: PartLines): readonly Slot[] {
  let known = slotsKept.get(lines);
  if (known === undefined) {
    const slots = new Set<Slot>();
    for (const { where } of lines)
      for (const slot of [where.element, where.room, where.level]) if (slot !== undefined) slots.add(slot);
    slotsKept.set(lines, (known = [...slots]));
  }
  return known;
}

function isAt(slot: Slot, { where }: Line): boolean {
  return where.element === slot || where.room === slot || where.level === slot;
}
