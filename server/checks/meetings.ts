// Who meets whom under a rule of order: the later steps, each with the earlier ones that work in the same room, on the same
// thing, or in the same building. It hangs on places of work alone, so it outlives every edit of links and dates; where a
// few steps moved, only they are asked again.
import { sameList } from '#kit/differing';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import { type Scope, type Scopes, scopeOf } from './scopes.ts';
import type { Side } from './sides.ts';

/** By which of its places a step meets others. */
export type Sort = keyof Scope;

export interface Meeting {
  readonly step: number;
  /** In plan order. */
  readonly meets: readonly number[];
}

export interface Meetings {
  readonly first: readonly Side[];
  readonly then: readonly Side[];
  /** Steps that stand on both sides, which a state's own works do. */
  readonly both: ReadonlySet<number>;
  /** Earlier steps that are no later ones. */
  readonly earlier: readonly number[];
  /** The later steps; the same object for one that meets whom it met. */
  readonly later: readonly Meeting[];
}

/** More steps than this that moved, and all are asked again. */
const FEW = 16;

/** `before` are the meetings of another look, at places in the order of the same steps; the same object while they are. */
export function meetingsOf(
  sort: Sort,
  first: readonly Side[],
  then: readonly Side[],
  scopes: Scopes,
  before: { readonly meetings: Meetings; readonly scopes: Scopes } | undefined,
): Meetings {
  if (before === undefined || before.meetings.first !== first || before.meetings.then !== then)
    return meetingsAnew(sort, first, then, scopes);
  const moved = new Set<number>();
  if (before.scopes !== scopes)
    for (const list of [first, then])
      for (const { step } of list) if (scopes.since[sort][step]! > before.scopes.stamp) moved.add(step);
  if (moved.size === 0 || before.meetings.later.length === 0) return before.meetings;
  return moved.size > FEW ? meetingsAnew(sort, first, then, scopes) : patched(before.meetings, moved, sort, scopes);
}

function meetingsAnew(sort: Sort, first: readonly Side[], then: readonly Side[], scopes: Scopes): Meetings {
  const laterSteps = new Set<number>();
  for (const { step } of then) laterSteps.add(step);
  const both = new Set<number>();
  const earlier: number[] = [];
  const sides: Side[] = [];
  for (const side of first) {
    if (laterSteps.has(side.step)) both.add(side.step);
    else {
      sides.push(side);
      if (earlier[earlier.length - 1] !== side.step) earlier.push(side.step);
    }
  }
  const later: Meeting[] = [];
  if (sides.length > 0) {
    const meetingsWith = candidatesOf(sides, earlier, sort, scopes);
    eachStep(then, (step, from, to) => later.push({ step, meets: meetingsWith(then, from, to) }));
  }
  return { first, then, both, earlier, later };
}

/** The sides of one step stand together. */
function eachStep(sides: readonly Side[], visit: (step: number, from: number, to: number) => void): void {
  for (let at = 0; at < sides.length; ) {
    const from = at;
    const { step } = sides[from]!;
    while (at < sides.length && sides[at]!.step === step) at += 1;
    visit(step, from, at);
  }
}

/** Of the earlier steps those that meet some of a later step's sides. */
function candidatesOf(
  sides: readonly Side[],
  earlier: readonly number[],
  sort: Sort,
  scopes: Scopes,
): (then: readonly Side[], from: number, to: number) => readonly number[] {
  const everywhere: number[] = [];
  const bySlot = new Map<Slot, number[]>();
  for (const side of sides) {
    const places = scopeOf(side, scopes)[sort];
    if (places === undefined) everywhere.push(side.step);
    else
      for (const slot of places) {
        addTo(bySlot, slot, side.step);
      }
  }
  return (then, from, to) => {
    const meets = everywhere.slice();
    for (let at = from; at < to; at++) {
      const places = scopeOf(then[at]!, scopes)[sort];
      if (places === undefined) return earlier;
      for (const slot of places) for (const step of bySlot.get(slot) ?? NOBODY) meets.push(step);
    }
    return sortedOnce(meets);
  };
}

const NOBODY: readonly number[] = [];

/** Numbers in order, each once. */
function sortedOnce(numbers: number[]): readonly number[] {
  numbers.sort((a, b) => a - b);
  let length = 0;
  for (const number of numbers) if (length === 0 || number !== numbers[length - 1]) numbers[length++] = number;
  numbers.length = length;
  return numbers;
}

/** A later step that moved is held against all earlier ones, any other against those that moved. */
function patched(before: Meetings, moved: ReadonlySet<number>, sort: Sort, scopes: Scopes): Meetings {
  const { first, then, both } = before;
  const sides = first.filter(({ step }) => !both.has(step));
  const movedSides = sides.filter(({ step }) => moved.has(step));
  const later: Meeting[] = [];
  eachStep(then, (step, from, to) => {
    const old = before.later[later.length]!;
    const hasMoved = moved.has(step);
    const asked = hasMoved ? sides : movedSides;
    if (asked.length === 0) {
      later.push(old);
      return;
    }
    const meets = hasMoved ? [] : old.meets.filter((each) => !moved.has(each));
    for (const side of asked)
      for (let at = from; at < to; at++)
        if (meetAt(scopeOf(side, scopes)[sort], scopeOf(then[at]!, scopes)[sort])) meets.push(side.step);
    const sorted = sortedOnce(meets);
    later.push(sameList(sorted, old.meets) ? old : { step, meets: sorted });
  });
  return sameList(later, before.later) ? before : { ...before, later };
}

/** Whether two share a place. Undefined is anywhere. */
export function meetAt(a: ReadonlySet<Slot> | undefined, b: ReadonlySet<Slot> | undefined): boolean {
  if (a === undefined || b === undefined) return true;
  for (const slot of a) if (b.has(slot)) return true;
  return false;
}
