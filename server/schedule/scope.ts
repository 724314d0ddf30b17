// What part of its work a task takes, as its words say: in rooms, on levels, of things, all but some, one coat, a share.
import type { Slot } from '#kit/place';
import type { Task } from '#model/model';
import type { Line } from '#takeoff/lines';

export interface Scope {
  /** Whether any word narrows it; `except` alone still takes the rest. */
  readonly scoped: boolean;
  /** The rooms it names, so that only their lines need be looked at. */
  readonly rooms: readonly Slot[] | undefined;
  /** Its share hangs on how much there is: `does hang-board 2,150 sf`. */
  readonly byQuantity: boolean;
  readonly holds: (line: Line) => boolean;
  /** The share of each line, given all lines the scope holds. */
  readonly share: (lines: readonly Line[]) => (line: Line) => number;
}

interface Amount {
  readonly value: number;
  readonly dimension: string;
}

export function scopeOf(task: Task, amount: Amount | undefined): Scope {
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
    rooms,
    byQuantity: amount !== undefined && amount.dimension !== 'number',
    holds,
    share: (lines) => {
      const part = amount === undefined ? 1 : amount.dimension === 'number' ? amount.value : partOf(amount, lines);
      return (line) => (coat === undefined ? part : part / line.coats);
    },
  };
}

/** A given quantity as a share of what is there of its dimension. */
function partOf(amount: Amount, lines: readonly Line[]): number {
  const first = lines.find((line) => line.net.dimension === amount.dimension);
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
