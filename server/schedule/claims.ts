// Who does what part of which work: the take-off's lines shared out among the tasks. A scoped task takes what its words
// say; an unscoped one takes what no other task of that work has claimed.
import type { Slot } from '#kit/place';
import type { Task } from '#model/model';
import type { Line } from '#takeoff/lines';

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
}

export interface Claims {
  readonly byTask: ReadonlyMap<Task, readonly Claim[]>;
  readonly byWork: ReadonlyMap<string, WorkClaims>;
}

const EXACT = 1e-9;

/** Tasks and lines in plan order. */
export function claimLines(tasks: readonly Task[], linesByWork: ReadonlyMap<string, readonly Line[]>): Claims {
  const doers = new Map<string, { task: Task; scope: Scope }[]>();
  for (const task of tasks) {
    const does = task.given.does?.value ?? [];
    for (const { value } of does) {
      let list = doers.get(value.work.name);
      if (list === undefined) doers.set(value.work.name, (list = []));
      list.push({ task, scope: scopeOf(task, value.amount) });
    }
  }
  const byTask = new Map<Task, Claim[]>();
  const byWork = new Map<string, WorkClaims>();
  for (const [work, lines] of linesByWork)
    if (!doers.has(work)) byWork.set(work, { work, tasks: [], rivals: [], open: whole(lines), twice: [] });
  for (const [work, list] of doers) byWork.set(work, shareOut(work, list, linesByWork.get(work) ?? [], byTask));
  return { byTask, byWork };
}

function whole(lines: readonly Line[]): readonly Claim[] {
  return lines.map((line) => ({ line, share: 1 }));
}

function shareOut(
  work: string,
  doers: readonly { task: Task; scope: Scope }[],
  lines: readonly Line[],
  byTask: Map<Task, Claim[]>,
): WorkClaims {
  const left = new Float64Array(lines.length).fill(1);
  const add = (task: Task, index: number, share: number): void => {
    let claims = byTask.get(task);
    if (claims === undefined) byTask.set(task, (claims = []));
    claims.push({ line: lines[index]!, share });
    left[index]! -= share;
  };
  for (const { task, scope } of doers) {
    if (!scope.scoped) continue;
    const within = lines.flatMap((line, index) => (scope.holds(line) ? [index] : []));
    const share = scope.share(within.map((index) => lines[index]!));
    for (const index of within) add(task, index, share(lines[index]!));
  }
  const takers = doers.filter(({ scope }) => !scope.scoped);
  const [taker] = takers;
  if (taker !== undefined)
    lines.forEach((line, index) => {
      if (left[index]! > EXACT && taker.scope.holds(line)) add(taker.task, index, left[index]!);
    });
  const open: Claim[] = [];
  const twice: Claim[] = [];
  lines.forEach((line, index) => {
    const rest = left[index]!;
    if (rest > EXACT) open.push({ line, share: rest });
    else if (rest < -EXACT) twice.push({ line, share: -rest });
  });
  return { work, tasks: doers.map(({ task }) => task), rivals: takers.slice(1).map(({ task }) => task), open, twice };
}

interface Scope {
  readonly scoped: boolean;
  readonly holds: (line: Line) => boolean;
  /** The share of each line, given all lines the scope holds. */
  readonly share: (lines: readonly Line[]) => (line: Line) => number;
}

function scopeOf(task: Task, amount: { readonly value: number; readonly dimension: string } | undefined): Scope {
  const { given } = task;
  const rooms = given.in?.value.map(({ value }) => value);
  const levels = given.on?.value.map(({ value }) => value);
  const things = given.of?.value.map(({ value }) => value.name);
  const except = given.except?.value.map(({ value }) => value.name);
  const coat = given.coat?.value;
  const holds = (line: Line): boolean =>
    (rooms === undefined || isOne(line.where.room, rooms)) &&
    (levels === undefined || isOne(line.where.level, levels)) &&
    (things === undefined || things.some((name) => isNamed(line, name))) &&
    (except === undefined || !except.some((name) => isNamed(line, name))) &&
    (coat === undefined || coat <= line.coats);
  return {
    scoped: rooms !== undefined || levels !== undefined || things !== undefined || coat !== undefined || amount !== undefined,
    holds,
    share: (lines) => {
      const part = amount === undefined ? 1 : amount.dimension === 'number' ? amount.value : partOf(amount, lines);
      return (line) => (coat === undefined ? part : part / line.coats);
    },
  };
}

/** A given quantity as a share of what is there of its dimension. */
function partOf(amount: { readonly value: number; readonly dimension: string }, lines: readonly Line[]): number {
  const [first] = lines.filter((line) => line.net.dimension === amount.dimension);
  const there = lines.reduce((sum, line) => (line.measure === first?.measure ? sum + line.net.value : sum), 0);
  return there > 0 ? amount.value / there : 0;
}

function isOne(slot: Slot | undefined, slots: readonly Slot[]): boolean {
  return slot !== undefined && slots.includes(slot);
}

function isNamed(line: Line, name: string): boolean {
  const { element, room, level } = line.where;
  return element.name === name || room?.name === name || level?.name === name || line.goods?.name === name;
}
