// Findings a person has answered in the text, with a reason: taken out in one place, after all phases, before those of one
// sort are told together. An acceptance that answers nothing any more is itself a finding.
import { isoDate } from '#kit/dates';
import type { Finding } from '#kit/finding';
import { finding, findingSort } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Declared } from '#model/declared';
import type { Model } from '#model/resolve';
import { lineOf } from '#model/standing';
import type { Results } from './check.ts';
import { gathered } from './gather.ts';
import { remindersTogether } from './hazard-messages.ts';
import { asBefore } from './lasting.ts';
import { gathers } from './rules.ts';

export const unused = findingSort<[code: string]>({
  code: 'accept/unused',
  severity: 'warning',
  say: (code) => `Nothing here is found under "${code}" any more, so this acceptance answers nothing. Remove it.`,
});

export const noReason = findingSort<[code: string]>({
  code: 'accept/no-reason',
  severity: 'warning',
  say: (code) => `"${code}" is accepted without a reason. Whoever reads this later needs one: add it in quotes.`,
});

export const expired = findingSort<[code: string, day: string]>({
  code: 'accept/expired',
  severity: 'note',
  say: (code, day) =>
    `"${code}" was accepted until ${day}, which is past, so it is told again. Answer it, or accept it anew with a later day.`,
});

export const unscoped = findingSort<[code: string]>({
  code: 'accept/unscoped',
  severity: 'error',
  say: (code) => `This does not say where "${code}" is accepted, so nothing is. Add "for NAME", or "everywhere".`,
});

interface Acceptance {
  readonly code: string;
  readonly place: Place;
  readonly reason: string | undefined;
  /** Last day it holds. */
  readonly until: number | undefined;
  readonly covers: (found: Finding) => boolean;
  used: boolean;
  /** It would have answered something, had it not run out. */
  missed: boolean;
}

export interface AcceptMemory {
  /** Which declarations accept something. */
  accepting: { readonly declared: readonly Declared[]; readonly slots: readonly Slot[] } | undefined;
  last: readonly Finding[];
}
export function acceptMemory(): AcceptMemory {
  return { accepting: undefined, last: [] };
}

/** Findings in the order of the text; those that say what one of the last look said are that one. */
export function accepted(found: readonly Finding[], results: Results, memory: AcceptMemory = acceptMemory()): readonly Finding[] {
  memory.last = asBefore(open(found, results, memory), memory.last);
  return memory.last;
}

function open(found: readonly Finding[], results: Results, memory: AcceptMemory): readonly Finding[] {
  const { model } = results;
  const acceptances: Acceptance[] = [];
  const added: Finding[] = [];
  for (const slot of acceptingIn(model, memory)) {
    const lines = model.element(slot)?.given.accept ?? [];
    for (const { value, deeper, place } of lines) {
      const until = (deeper as { until?: { value: number } }).until?.value;
      acceptances.push({
        code: value.code,
        place,
        reason: value.reason,
        until,
        covers: (each) => each.place.slot === slot,
        used: false,
        missed: false,
      });
    }
  }
  for (const { takes, given, place } of model.list('accept')) {
    if (takes === undefined) continue;
    const at = { slot: place.slot, spot: place.spot };
    const until = given.until?.value;
    if (takes.for === undefined) {
      added.push(finding(unscoped, at, takes.code));
      continue;
    }
    const names = takes.for === 'everywhere' ? undefined : takes.for.map(({ value }) => value.name);
    const covers = (each: Finding): boolean => names === undefined || names.includes(each.place.slot.name);
    acceptances.push({ code: takes.code, place: at, reason: takes.reason, until, covers, used: false, missed: false });
  }
  if (acceptances.length === 0) return told([...found, ...added], results);
  const day = results.timeline.progress.asOf;
  const left = found.filter((each) => {
    const answers = acceptances.filter((one) => one.code.toLowerCase() === each.code && one.covers(each));
    const answer = answers.find((one) => one.until === undefined || day === undefined || day <= one.until);
    for (const one of answers) if (answer === undefined) one.missed = true;
    if (answer === undefined) return true;
    answer.used = true;
    return false;
  });
  for (const one of acceptances) {
    if (!one.used)
      added.push(one.missed ? finding(expired, one.place, one.code, isoDate(one.until!)) : finding(unused, one.place, one.code));
    else if (one.reason === undefined) added.push(finding(noReason, one.place, one.code));
  }
  return told([...left, ...added], results);
}

function acceptingIn({ names: { declared } }: Model, memory: AcceptMemory): readonly Slot[] {
  const before = memory.accepting;
  if (before?.declared === declared) return before.slots;
  const same = before !== undefined && before.declared.length === declared.length && noneAccepts(before.declared, declared);
  const slots = same ? before.slots : declared.filter(accepts).map(({ slot }) => slot);
  memory.accepting = { declared, slots };
  return slots;
}

/** Whether of what stands in another's place now, neither the one nor the other accepts anything. */
function noneAccepts(before: readonly Declared[], now: readonly Declared[]): boolean {
  for (let at = 0; at < now.length; at++) {
    const [old, each] = [before[at]!, now[at]!];
    if (old === each || (old.declaration === each.declaration && old.slot === each.slot)) continue;
    if (accepts(old) || accepts(each)) return false;
  }
  return true;
}

function accepts({ declaration }: Declared): boolean {
  return declaration.given.accept !== undefined;
}

function told(findings: readonly Finding[], results: Results): readonly Finding[] {
  return remindersTogether(gathered(sorted(findings, results), gathers));
}

/** By file, line, column and code, so that the same plan gives the same list. */
function sorted(findings: readonly Finding[], { model }: Results): readonly Finding[] {
  const fileOrder = new Map(model.files.map((file, at) => [file.path, at]));
  const keyed = findings.map((each) => ({
    each,
    file: fileOrder.get(each.place.slot.file) ?? fileOrder.size,
    line: lineOf(each.place, model),
    column: each.place.spot.from,
  }));
  keyed.sort(
    (a, b) =>
      a.file - b.file ||
      a.line - b.line ||
      a.column - b.column ||
      (a.each.code < b.each.code ? -1 : a.each.code > b.each.code ? 1 : 0),
  );
  return keyed.map(({ each }) => each);
}
