// What the diary says of the steps, up to the status date: begun, done, failed, expected. Later blocks win.
import { DAY_MINUTES } from '#kit/dates';
import { sameList } from '#kit/differing';
import type { ElementOf } from '#model/model';
import type { Model } from '#model/resolve';
import type { Steps } from './steps.ts';

export interface Record {
  readonly started?: number;
  readonly finished?: number;
  /** Days of failed visits, in order. */
  readonly failed: readonly number[];
  /** Working minutes left. */
  readonly left?: number;
  /** Share that is done, 0 to 1. */
  readonly done?: number;
  /** The day on which `left` or `done` was said. */
  readonly saidOn?: number;
  readonly notBefore?: number;
  /** From when to when it is expected, where the diary does not know the day; `notBefore` is its middle. */
  readonly expected?: { readonly first: number; readonly last: number } | undefined;
}

export interface Progress {
  /** The status date; undefined where the plan has no diary and none was asked for. */
  readonly asOf: number | undefined;
  readonly records: ReadonlyMap<number, Record>;
}

export interface ProgressMemory {
  readonly from: readonly unknown[];
  readonly progress: Progress;
}

/** The same progress while the diary, the order of the steps and the status date are. */
export function keptProgress(
  model: Model,
  steps: Steps,
  asOf: number | undefined,
  before: ProgressMemory | undefined,
): ProgressMemory {
  const from = [model.list('progress'), steps.index, asOf];
  if (before !== undefined && sameList(from, before.from)) return before;
  return { from, progress: progressOf(model, steps, asOf) };
}

type Block = ElementOf<'progress'>;

/** Days since 1970-01-01 throughout. */
function progressOf(model: Model, steps: Steps, asOf: number | undefined): Progress {
  const blocks = model.list('progress').filter((block) => block.takes !== undefined);
  const latest = blocks.reduce<number | undefined>(
    (last, block) => (last === undefined ? block.takes : Math.max(last, block.takes!)),
    undefined,
  );
  const status = asOf ?? latest;
  const records = new Map<number, Record>();
  if (status === undefined) return { asOf: undefined, records };
  const known = blocks.filter((block) => block.takes! <= status).sort((a, b) => a.takes! - b.takes!);
  for (const block of known) read(block, steps, status, records);
  return { asOf: status, records };
}

function read(block: Block, steps: Steps, status: number, records: Map<number, Record>): void {
  for (const entry of block.entries) {
    const number = steps.index.get(entry.value);
    if (number === undefined) continue;
    const { deeper } = entry;
    const before = withoutShare(records.get(number) ?? { failed: [] }, deeper.left !== undefined || deeper.done !== undefined);
    const day = (given: { readonly value: number } | undefined): number | undefined =>
      given !== undefined && given.value <= status ? given.value : undefined;
    const finished = day(deeper.finished) ?? day(deeper.passed);
    const started = day(deeper.started);
    const failed = deeper.failed !== undefined && deeper.failed.value.date <= status ? deeper.failed.value.date : undefined;
    const expected = deeper.now?.value;
    const notBefore = expected === undefined ? deeper['not before']?.value : middleOf(expected);
    records.set(number, {
      ...before,
      failed: failed === undefined ? before.failed : [...before.failed, failed],
      ...(started === undefined ? {} : { started }),
      ...(finished === undefined ? {} : { finished }),
      ...(deeper.left === undefined ? {} : { left: deeper.left.value.value }),
      ...(deeper.done === undefined ? {} : { done: deeper.done.value.value }),
      ...(deeper.left === undefined && deeper.done === undefined ? {} : { saidOn: block.takes! }),
      ...(notBefore === undefined ? {} : { notBefore, expected }),
    });
  }
}

/** What an earlier block said of how far it is goes where a later one says it anew, in days or as a share. */
function withoutShare(record: Record, isSaidAnew: boolean): Record {
  if (!isSaidAnew) return record;
  const { left: _, done: __, saidOn: ___, ...others } = record;
  return others;
}

/** The first moment of the day after. */
export function nextMorning(day: number): number {
  return (day + 1) * DAY_MINUTES;
}

/** The day in the middle; of two, the later. */
function middleOf({ first, last }: { readonly first: number; readonly last: number }): number {
  return first + Math.ceil((last - first) / 2);
}
