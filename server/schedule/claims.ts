// Who does what part of which work: the take-off's lines shared out among the tasks. A scoped task takes what its words
// say; an unscoped one takes what no other task of that work has claimed. A work is shared out again only when its lines
// or its tasks are others than before.
import type { Slot } from '#kit/place';
import type { Task } from '#model/model';
import type { Line } from '#takeoff/lines';
import { type Scope, scopeOf } from './scope.ts';

export interface Claim {
  readonly line: Line;
  /** 0 to 1 of the line. */
  readonly share: number;
}

export interface WorkClaims {
  readonly work: string;
  readonly tasks: readonly Task[];
  /** Tasks that claim the whole of what is left, beyond the first: an error. */
  readonly rivals: readonly Task[];
  /** Lines with their unclaimed or overclaimed share. */
  readonly open: readonly Claim[];
  readonly twice: readonly Claim[];
  /** Names of the goods it installs: the same list while they are. */
  readonly goods: readonly string[];
}

/** The same object while every work's claims are. */
export interface Claims {
  /** The same list while the task's claims are. */
  readonly byTask: ReadonlyMap<Task, readonly Claim[]>;
  readonly byWork: ReadonlyMap<string, WorkClaims>;
}

interface Doer {
  readonly task: Task;
  readonly scope: Scope;
}
type Does = NonNullable<Task['given']['does']>['value'][number]['value'];

interface SharedOut {
  readonly lines: readonly Line[];
  readonly doers: readonly Doer[];
  readonly claims: WorkClaims;
  readonly byTask: ReadonlyMap<Task, readonly Claim[]>;
  /** Who claims each line: one task, or several, or nobody. */
  readonly owners: readonly (Task | readonly Task[] | undefined)[];
}

export interface ClaimsMemory {
  /** The works of each task list, with who does them. */
  doers: { readonly tasks: readonly Task[]; readonly byWork: ReadonlyMap<string, readonly Doer[]> } | undefined;
  works: ReadonlyMap<string, SharedOut>;
  claims: Claims | undefined;
}
export function claimsMemory(): ClaimsMemory {
  return { doers: undefined, works: new Map(), claims: undefined };
}

const EXACT = 1e-9;

/** Tasks and lines in plan order. */
export function claimLines(
  tasks: readonly Task[],
  linesByWork: ReadonlyMap<string, readonly Line[]>,
  memory: ClaimsMemory,
): Claims {
  const doers = memory.doers?.tasks === tasks ? memory.doers.byWork : doersOf(tasks, memory.doers?.byWork);
  memory.doers = { tasks, byWork: doers };
  const works = new Map<string, SharedOut>();
  let same = memory.claims !== undefined;
  for (const work of new Set([...linesByWork.keys(), ...doers.keys()])) {
    const lines = linesByWork.get(work) ?? NO_LINES;
    const list = doers.get(work) ?? NO_DOERS;
    const before = memory.works.get(work);
    const kept = before !== undefined && before.lines === lines && before.doers === list;
    same &&= kept;
    works.set(
      work,
      kept ? before : ((before === undefined ? undefined : replaced(before, list, lines)) ?? shareOut(work, list, lines, before)),
    );
  }
  same &&= works.size === memory.works.size;
  memory.works = works;
  if (!same || memory.claims === undefined)
    memory.claims = {
      byTask: byTaskOf(works, memory.claims),
      byWork: new Map([...works].map(([work, { claims }]) => [work, claims])),
    };
  return memory.claims;
}

const NO_LINES: readonly Line[] = [];
const NO_DOERS: readonly Doer[] = [];

/** Who does each work; a work's list stays the same object while its tasks do. */
function doersOf(
  tasks: readonly Task[],
  before: ReadonlyMap<string, readonly Doer[]> | undefined,
): ReadonlyMap<string, readonly Doer[]> {
  const doers = new Map<string, Doer[]>();
  for (const task of tasks) {
    for (const { value } of task.given.does?.value ?? []) {
      const doer = doerOf(task, value);
      const list = doers.get(value.work.name);
      if (list === undefined) doers.set(value.work.name, [doer]);
      else list.push(doer);
    }
  }
  const kept = new Map<string, readonly Doer[]>();
  for (const [work, list] of doers) {
    const old = before?.get(work);
    kept.set(work, old !== undefined && old.length === list.length && old.every((each, at) => each === list[at]) ? old : list);
  }
  return kept;
}

const doersKept = new WeakMap<object, Doer>();

/** The same object for the same word of the same task. */
function doerOf(task: Task, does: Does): Doer {
  let doer = doersKept.get(does);
  if (doer === undefined) doersKept.set(does, (doer = { task, scope: scopeOf(task, does.amount) }));
  return doer;
}

/** Each task's claims over all its works, in the order of the works. */
function byTaskOf(works: ReadonlyMap<string, SharedOut>, before: Claims | undefined): ReadonlyMap<Task, readonly Claim[]> {
  const parts = new Map<Task, (readonly Claim[])[]>();
  for (const { byTask } of works.values()) {
    for (const [task, claims] of byTask) {
      const list = parts.get(task);
      if (list === undefined) parts.set(task, [claims]);
      else list.push(claims);
    }
  }
  const all = new Map<Task, readonly Claim[]>();
  for (const [task, lists] of parts) {
    if (lists.length === 1) {
      all.set(task, lists[0]!);
      continue;
    }
    const joined = lists.flat();
    const old = before?.byTask.get(task);
    all.set(
      task,
      old !== undefined && old.length === joined.length && old.every((each, at) => each === joined[at]) ? old : joined,
    );
  }
  return all;
}

function shareOut(work: string, doers: readonly Doer[], lines: readonly Line[], before: SharedOut | undefined): SharedOut {
  const left = new Float64Array(lines.length).fill(1);
  const byTask = new Map<Task, Claim[]>();
  const owners: (Task | readonly Task[] | undefined)[] = new Array(lines.length).fill(undefined);
  const add = (task: Task, index: number, share: number): void => {
    const claim = { line: lines[index]!, share };
    const claims = byTask.get(task);
    if (claims === undefined) byTask.set(task, [claim]);
    else claims.push(claim);
    left[index]! -= share;
    const others = owners[index];
    owners[index] = others === undefined ? task : Array.isArray(others) ? [...others, task] : [others as Task, task];
  };
  const rooms = doers.some(({ scope }) => scope.rooms !== undefined) ? linesByRoom(lines) : undefined;
  for (const { task, scope } of doers) {
    if (!scope.scoped) continue;
    const within =
      (scope.rooms === undefined ? undefined : scope.rooms.flatMap((room) => rooms?.get(room) ?? [])) ??
      lines.map((_, index) => index);
    const held = within.filter((index) => scope.holds(lines[index]!));
    const share = scope.share(held.map((index) => lines[index]!));
    for (const index of held) add(task, index, share(lines[index]!));
  }
  const takers = doers.filter(({ scope }) => !scope.scoped);
  const [taker] = takers;
  if (taker !== undefined) {
    for (let index = 0; index < lines.length; index++) {
      if (left[index]! > EXACT && taker.scope.holds(lines[index]!)) add(taker.task, index, left[index]!);
    }
  }
  const open: Claim[] = [];
  const twice: Claim[] = [];
  lines.forEach((line, index) => {
    const rest = left[index]!;
    if (rest > EXACT) open.push({ line, share: rest });
    else if (rest < -EXACT) twice.push({ line, share: -rest });
  });
  const claims: WorkClaims = {
    work,
    tasks: doers.map(({ task }) => task),
    rivals: takers.slice(1).map(({ task }) => task),
    open,
    twice,
    goods: goodsOf(lines, before?.claims.goods),
  };
  return { lines, doers, claims, byTask: before === undefined ? byTask : settled(byTask, before.byTask), owners };
}

/** A task whose claims are the same keeps the list it had. */
function settled(
  now: ReadonlyMap<Task, readonly Claim[]>,
  before: ReadonlyMap<Task, readonly Claim[]>,
): ReadonlyMap<Task, readonly Claim[]> {
  const all = new Map<Task, readonly Claim[]>();
  for (const [task, claims] of now) {
    const old = before.get(task);
    const same =
      old !== undefined &&
      old.length === claims.length &&
      old.every((each, at) => each.line === claims[at]!.line && each.share === claims[at]!.share);
    all.set(task, same ? old : claims);
  }
  return all;
}

/**
 * The same shares with some lines in place of others that stand at the same places of the house: a room grew, and nothing
 * else. Undefined where more than that changed, or where a share hangs on the quantities themselves.
 */
function replaced(before: SharedOut, doers: readonly Doer[], lines: readonly Line[]): SharedOut | undefined {
  if (before.doers !== doers || before.lines.length !== lines.length || doers.some(({ scope }) => scope.byQuantity))
    return undefined;
  const changed = new Map<Line, Line>();
  const tasks = new Set<Task>();
  for (let index = 0; index < lines.length; index++) {
    const [old, now] = [before.lines[index]!, lines[index]!];
    if (old === now) continue;
    if (!samePlace(old, now)) return undefined;
    changed.set(old, now);
    const owner = before.owners[index];
    if (Array.isArray(owner)) for (const each of owner as readonly Task[]) tasks.add(each);
    else if (owner !== undefined) tasks.add(owner as Task);
  }
  const renewed = (claims: readonly Claim[]): readonly Claim[] =>
    claims.map((claim) => {
      const line = changed.get(claim.line);
      return line === undefined ? claim : { line, share: claim.share };
    });
  const byTask = new Map(before.byTask);
  for (const task of tasks) byTask.set(task, renewed(before.byTask.get(task)!));
  const { open, twice } = before.claims;
  const claims = {
    ...before.claims,
    open: open.length === 0 ? open : renewed(open),
    twice: twice.length === 0 ? twice : renewed(twice),
  };
  return { lines, doers, claims, byTask, owners: before.owners };
}

function samePlace(a: Line, b: Line): boolean {
  const [from, to] = [a.where, b.where];
  return (
    from.room === to.room &&
    from.element === to.element &&
    from.level === to.level &&
    a.coats === b.coats &&
    a.goods?.name === b.goods?.name
  );
}

function goodsOf(lines: readonly Line[], before: readonly string[] | undefined): readonly string[] {
  const names = new Set<string>();
  for (const { goods } of lines) if (goods !== undefined) names.add(goods.name);
  const goods = [...names];
  return before !== undefined && before.length === goods.length && goods.every((name, at) => name === before[at])
    ? before
    : goods;
}

const roomLines = new WeakMap<readonly Line[], ReadonlyMap<Slot, readonly number[]>>();
function linesByRoom(lines: readonly Line[]): ReadonlyMap<Slot, readonly number[]> {
  const known = roomLines.get(lines);
  if (known !== undefined) return known;
  const rooms = new Map<Slot, number[]>();
  lines.forEach(({ where }, index) => {
    if (where.room === undefined) return;
    const list = rooms.get(where.room);
    if (list === undefined) rooms.set(where.room, [index]);
    else list.push(index);
  });
  roomLines.set(lines, rooms);
  return rooms;
}
