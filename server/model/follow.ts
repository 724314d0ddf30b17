// A record as read → the same record with its names followed and its amounts evaluated. A value any part of which fails is
// left out (its finding says why), so that later rooms never meet half a value; a list keeps the items that are well.
import type { GivenLine, GivenProperties } from '#grammar/shape';
import type { Amount, Condition, GoodsNamed, Named, Pointed, Properties, StepNamed } from '#grammar/vocabulary/types';
import { NONE } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import type { Place, Slot, Spot } from '#kit/place';
import { type Evaluation, evaluate } from './evaluate.ts';
import type { Element } from './model.ts';
import { nearMiss } from './near-miss.ts';
import { unknownGoods, unknownName } from './problems.ts';

/** What following needs from the snapshot; every answer is remembered by the one who asks. */
export interface Following extends Evaluation {
  readonly lookUp: (space: string, name: string) => Slot | undefined;
  readonly element: (slot: Slot) => Element | undefined;
}

const FAILED = Symbol('failed');
type Failed = typeof FAILED;

/** Lines below a declaration, followed; properties that repeat are lists, empty where nothing is given. */
export function followProperties(given: GivenProperties, rows: Properties, at: Following): Record<string, unknown> {
  const followed: Record<string, unknown> = {};
  for (const word of Object.keys(rows)) {
    const row = rows[word]!;
    const lines = given[word];
    if (row.repeats === true) {
      followed[word] = lines === undefined ? NONE : followLines(lines as readonly GivenLine[], row.deeper, at);
    } else if (lines !== undefined) {
      const line = followLine(lines as GivenLine, row.deeper, at);
      if (line !== undefined) followed[word] = line;
    }
  }
  return followed;
}

export function followLine(line: GivenLine, rows: Properties | undefined, at: Following): FollowedLine | undefined {
  const value = follow(line.value, at);
  if (value === FAILED) return undefined;
  const deeper = rows === undefined ? NO_PROPERTIES : followProperties(line.deeper, rows, at);
  return { value, place: placeOfValue(value, line.spot, at), deeper };
}

interface FollowedLine {
  readonly value: unknown;
  readonly place: Place;
  readonly deeper: unknown;
}
const NO_PROPERTIES = Object.freeze({});

/** Those that are well. Of exactly their number: such lists stay for as long as the element. */
export function followLines(lines: readonly GivenLine[], rows: Properties | undefined, at: Following): readonly FollowedLine[] {
  const followed: FollowedLine[] = [];
  for (const line of lines) {
    const one = followLine(line, rows, at);
    if (one !== undefined) followed.push(one);
  }
  return followed.length === 0 ? NONE : followed.slice();
}

/** The value's own place where it is all that stands there, so that both are one object. */
function placeOfValue(value: unknown, spot: Spot, { slot }: Following): Place {
  const own = typeof value === 'object' && value !== null ? (value as { readonly place?: Place }).place : undefined;
  return own !== undefined && own.spot === spot && own.slot === slot ? own : { slot, spot };
}

/** A lone value (what stands after the name); undefined where it fails. */
export function followValue(value: unknown, at: Following): unknown {
  const followed = follow(value, at);
  return followed === FAILED ? undefined : followed;
}

function follow(value: unknown, at: Following): unknown | Failed {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    if (!isGivenList(value)) return value;
    const items: unknown[] = [];
    for (const item of value) {
      const followed = follow(item.value, at);
      if (followed !== FAILED) items.push({ value: followed, place: placeOfValue(followed, item.spot, at) });
    }
    return items.slice();
  }
  switch ((value as { kind?: string }).kind) {
    case 'amount':
      return evaluate(value as Amount, at) ?? FAILED;
    case 'named':
      return followName(value as Named, at);
    case 'pointed':
      return followPointer(value as Pointed, at);
    case 'goods':
      return followGoods(value as GoodsNamed, at);
    case 'step':
      return followStep(value as StepNamed, at);
    case 'condition':
      return followCondition(value as Condition, at);
    case 'any-name': {
      const { name, spot } = value as { name: string; spot: Spot };
      return { name, place: { slot: at.slot, spot } };
    }
    case 'quantity':
    case 'nominal':
    case 'bar':
    case 'ratio':
    case 'date':
    case 'clock':
    case 'weekdays':
    case 'door':
      return value;
    default: {
      const parts: Record<string, unknown> = {};
      for (const [name, part] of Object.entries(value)) {
        const followed = follow(part, at);
        if (followed === FAILED) return FAILED;
        parts[name] = followed;
      }
      return parts;
    }
  }
}

function isGivenList(value: readonly unknown[]): value is readonly { value: unknown; spot: Spot }[] {
  return value.every((item) => typeof item === 'object' && item !== null && 'spot' in item && 'value' in item);
}

function followName(named: Named, at: Following): Element | Failed {
  const slot = at.lookUp(named.of, named.name);
  if (slot === undefined) {
    at.findings.push(unknown(named.of, named.name, named.spot, at));
    return FAILED;
  }
  return at.element(slot) ?? FAILED;
}

function followPointer(pointed: Pointed, at: Following): Slot | Failed {
  const slot = at.lookUp(pointed.of, pointed.name);
  if (slot !== undefined) return slot;
  at.findings.push(unknown(pointed.of, pointed.name, pointed.spot, at));
  return FAILED;
}

function unknown(space: string, name: string, spot: Spot, at: Following): Finding {
  return finding(unknownName, { slot: at.slot, spot }, name, space, nearMiss(space, name));
}

/** Words that say there is nothing there: `base none`, `walls bare`. */
const NOTHING: ReadonlySet<string> = new Set(['none', 'bare']);

function followGoods(named: GoodsNamed, at: Following): unknown {
  const slot = at.lookUp(named.space, named.name);
  const place = { slot: at.slot, spot: named.spot };
  if (slot === undefined && !NOTHING.has(named.name)) {
    at.findings.push(finding(unknownGoods, place, named.name, nearMiss(named.space, named.name)));
  }
  const row = slot === undefined ? undefined : at.element(slot);
  // A second name ('plasterboard') stands for the row's own.
  return { name: row?.name ?? named.name, of: row, sizes: named.sizes, place };
}

function followStep(named: StepNamed, at: Following): unknown {
  const step = followPointer(named.step, at);
  if (step === FAILED) return FAILED;
  const lag = named.lag === undefined ? undefined : evaluate(named.lag, at);
  if (named.lag !== undefined && lag === undefined) return FAILED;
  return {
    step,
    from: named.from,
    place: { slot: at.slot, spot: named.step.spot },
    ...(named.share === undefined ? {} : { share: named.share }),
    ...(lag === undefined ? {} : { lag }),
    ...(named.lead === undefined ? {} : { lead: named.lead }),
  };
}

function followCondition(condition: Condition, at: Following): unknown {
  const { amount, spot, kind: _, ...rest } = condition;
  const place = { slot: at.slot, spot };
  if (amount === undefined) return { ...rest, place };
  const value = evaluate(amount, at);
  return value === undefined ? FAILED : { ...rest, amount: value, place };
}
