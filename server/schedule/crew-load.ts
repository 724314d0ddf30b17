// Who has which crew when, while steps are being placed: whether a crew is free now, or was over a stretch of the past.
import type { Crews } from './crews.ts';

export interface CrewLoad {
  readonly crews: Crews;
  /** Units of each crew at work at the present moment. */
  readonly inUse: Int32Array;
  /** The latest start of anything placed with each crew: where it lies ahead, the present does not tell enough. */
  readonly latestStart: Float64Array;
  /** Spans placed with each crew, the last placed first: a chain through `next`. */
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly units: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** How many spans there are: a step adds one for each crew that it takes, once. */
  spans: number;
}

/** Further back than this nobody looks for an unused stretch. */
const LOOK_BACK = 2000;

export function crewLoad(crews: Crews): CrewLoad {
  const latestStart = new Float64Array(crews.count).fill(Number.NEGATIVE_INFINITY);
  const head = new Int32Array(crews.count).fill(-1);
  const most = crews.crew.length;
  return {
    crews,
    inUse: new Int32Array(crews.count),
    latestStart,
    head,
    next: new Int32Array(most),
    units: new Int32Array(most),
    start: new Float64Array(most),
    end: new Float64Array(most),
    spans: 0,
  };
}

/** What a step takes of a crew: never more than there is. A step asking for more has the whole crew. */
export function unitsAt(crews: Crews, slot: number): number {
  return Math.max(0, Math.min(crews.units[slot]!, crews.capacity[crews.crew[slot]!]!));
}

/** The first crew of a step that it takes anything of, or -1. */
export function firstCrew(crews: Crews, task: number): number {
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    if (unitsAt(crews, slot) > 0) return crews.crew[slot]!;
  }
  return -1;
}

/** Adds a step's spans. Those at work at `now` are to be counted by `count`. */
export function addSpans(load: CrewLoad, task: number, start: number, end: number): void {
  const { crews } = load;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    const units = unitsAt(crews, slot);
    if (units === 0) continue;
    const crew = crews.crew[slot]!;
    const span = load.spans++;
    load.next[span] = load.head[crew]!;
    load.head[crew] = span;
    load.units[span] = units;
    load.start[span] = start;
    load.end[span] = end;
    load.latestStart[crew] = Math.max(load.latestStart[crew]!, start);
  }
}

/** Takes a step's units into use (1) or out of it (-1). */
export function countUnits(load: CrewLoad, task: number, sign: 1 | -1): void {
  const { crews, inUse } = load;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    inUse[crews.crew[slot]!]! += sign * unitsAt(crews, slot);
  }
}

/** The crew that cannot do a step from `now` to `end`, or -1 where all can. */
export function missingNow(load: CrewLoad, task: number, now: number, end: number): number {
  const { crews, inUse } = load;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    const crew = crews.crew[slot]!;
    const units = unitsAt(crews, slot);
    if (units === 0) continue;
    if (inUse[crew]! + units > crews.capacity[crew]!) return crew;
    if (load.latestStart[crew]! > now && peak(load, crew, now, end) + units > crews.capacity[crew]!) return crew;
  }
  return -1;
}

/**
 * Where a step that takes crews could begin at or after `start` in time already passed: the end of what stands in its
 * way there, or `start` itself where nothing does.
 */
export function clearedBy(load: CrewLoad, task: number, start: number, end: number): number {
  const { crews } = load;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    const crew = crews.crew[slot]!;
    const units = unitsAt(crews, slot);
    if (units === 0 || peak(load, crew, start, end) + units <= crews.capacity[crew]!) continue;
    let cleared = Number.POSITIVE_INFINITY;
    for (let span = load.head[crew]!, steps = 0; span >= 0 && steps < LOOK_BACK; span = load.next[span]!, steps++) {
      if (load.start[span]! < end && load.end[span]! > start) cleared = Math.min(cleared, load.end[span]!);
    }
    return cleared;
  }
  return start;
}

/** The same looking back: by when a step must end to be out of the way of what stands there, or `end` where nothing does. */
export function clearedBefore(load: CrewLoad, task: number, start: number, end: number): number {
  const { crews } = load;
  for (let slot = crews.taskStart[task]!; slot < crews.taskStart[task + 1]!; slot++) {
    const crew = crews.crew[slot]!;
    const units = unitsAt(crews, slot);
    if (units === 0 || peak(load, crew, start, end) + units <= crews.capacity[crew]!) continue;
    let cleared = Number.NEGATIVE_INFINITY;
    for (let span = load.head[crew]!, steps = 0; span >= 0 && steps < LOOK_BACK; span = load.next[span]!, steps++) {
      if (load.start[span]! < end && load.end[span]! > start) cleared = Math.max(cleared, load.start[span]!);
    }
    return cleared;
  }
  return end;
}

/** The most units of a crew in use at once from `start` to `end`. */
function peak(load: CrewLoad, crew: number, start: number, end: number): number {
  const met: number[] = [];
  let sum = 0;
  let steps = 0;
  for (let span = load.head[crew]!; span >= 0; span = load.next[span]!) {
    if (++steps > LOOK_BACK) return Number.POSITIVE_INFINITY;
    if (load.start[span]! >= end || load.end[span]! <= start) continue;
    met.push(span);
    sum += load.units[span]!;
  }
  if (met.length < 2) return sum;
  let most = 0;
  for (const one of met) {
    const moment = Math.max(start, load.start[one]!);
    let used = 0;
    for (const other of met) if (load.start[other]! <= moment && load.end[other]! > moment) used += load.units[other]!;
    most = Math.max(most, used);
  }
  return most;
}
