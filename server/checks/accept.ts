// Findings a person has answered in the text, with a reason: taken out in one place, after all phases. An acceptance that
// answers nothing any more is itself a finding.
import type { Finding } from '#kit/finding';
import { finding, findingSort } from '#kit/finding';
import type { Place, Slot } from '#kit/place';
import type { Results } from './check.ts';

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
}

export function accepted(found: readonly Finding[], results: Results): readonly Finding[] {
  const { model } = results;
  const acceptances: Acceptance[] = [];
  const added: Finding[] = [];
  for (const slot of model.names.order.keys()) {
    const declared = model.names.bySlot.get(slot)!.declaration;
    if (declared.given.accept === undefined) continue;
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
    acceptances.push({ code: takes.code, place: at, reason: takes.reason, until, covers, used: false });
  }
  if (acceptances.length === 0) return sorted([...found, ...added], results);
  const day = results.timeline.progress.asOf;
  const open = found.filter((each) => {
    const answer = acceptances.find(
      (one) =>
        one.code.toLowerCase() === each.code &&
        one.covers(each) &&
        (one.until === undefined || day === undefined || day <= one.until),
    );
    if (answer === undefined) return true;
    answer.used = true;
    return false;
  });
  for (const one of acceptances) {
    if (!one.used) added.push({ ...finding(unused, one.place, one.code) });
    else if (one.reason === undefined) added.push(finding(noReason, one.place, one.code));
  }
  return sorted([...open, ...added], results);
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

/** The line a place stands on, from 0. */
export function lineOf(place: Place, model: Results['model']): number {
  const declared = declaredOrStray(place.slot, model);
  if (declared === undefined) return 0;
  let { node, line } = declared;
  for (const step of place.spot.path) {
    const child = node.children[step];
    if (child === undefined) break;
    line += node.offsets[step] ?? 0;
    node = child;
  }
  return line;
}

function declaredOrStray(slot: Slot, model: Results['model']) {
  const declared = model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot);
  if (declared !== undefined) return declared;
  const file = model.files.find((each) => each.path === slot.file);
  return file?.strays.find((stray) => stray.slot === slot);
}
