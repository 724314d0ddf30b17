// What is found in one or more plans, once each, for whoever reads it: what is told, what the plan answers, what was known,
// how much is not shown to this reader, and what a baseline no longer needs.
import { type BaselineEntry, baselineText, entryOf, keyText, pathBeside } from '#checks/baseline';
import { isHazardous } from '#checks/hazard';
import { isoDate } from '#kit/dates';
import type { Finding } from '#kit/finding';
import { type ListedFinding, listedFinding } from './findings-list.ts';
import { isShown, type ProfileName, profileOf } from './profiles.ts';
import type { View } from './view.ts';

/** A plan, and those of its files whose findings count; all where none are named. */
export interface PlanAsked {
  readonly view: View;
  readonly only: ReadonlySet<string> | undefined;
}

/** A finding with the plan in which it was found. */
export interface FoundIn {
  readonly finding: Finding;
  readonly view: View;
  readonly listed: ListedFinding;
}

export interface AcceptedIn extends FoundIn {
  readonly reason: string | undefined;
  /** '2027-06-30', the last day. */
  readonly until: string | undefined;
}

export interface Checked {
  readonly views: readonly View[];
  /** Those looked at, by name. */
  readonly files: readonly string[];
  readonly findings: readonly FoundIn[];
  readonly accepted: readonly AcceptedIn[];
  readonly known: readonly FoundIn[];
  /** How many notes the profile keeps from this reader. */
  readonly hushed: number;
  /** The one profile of all; undefined where plans differ. */
  readonly profile: ProfileName | undefined;
}

export interface Wanted {
  /** Codes, or areas: the part before the slash. */
  readonly only?: readonly string[] | undefined;
  readonly skip?: readonly string[] | undefined;
  readonly profile?: ProfileName | undefined;
}

/** By file, line, column and code; what two plans say of a file that both include is said once. */
export function checkedPlans(asked: readonly PlanAsked[], wanted: Wanted): Checked {
  const told = inOrder(asked, wanted, ({ plan }) => plan.findings.map((finding) => ({ finding })));
  const findings = told.filter(({ finding, view }) => isShown(finding, profileOf(view.plan, wanted.profile)));
  return {
    views: asked.map(({ view }) => view),
    files: [...new Set(asked.flatMap(filesLookedAt))].sort(),
    findings,
    accepted: inOrder(asked, wanted, ({ plan }) =>
      plan.accepted.map(({ finding, reason, until }) => ({
        finding,
        reason,
        until: until === undefined ? undefined : isoDate(until),
      })),
    ),
    known: inOrder(asked, wanted, ({ plan }) => plan.known.map(({ finding }) => ({ finding }))),
    hushed: told.length - findings.length,
    profile: allOne(asked.map(({ view }) => profileOf(view.plan, wanted.profile))),
  };
}

function allOne<T>([first, ...others]: readonly T[]): T | undefined {
  return others.every((each) => each === first) ? first : undefined;
}

function filesLookedAt({ view: { plan, fileName }, only }: PlanAsked): readonly string[] {
  return [...(only ?? plan.model.files.map(({ path }) => path))].map(fileName);
}

function inOrder<T extends { readonly finding: Finding }>(
  asked: readonly PlanAsked[],
  wanted: Wanted,
  partOf: (view: View) => readonly T[],
): readonly (T & FoundIn)[] {
  const seen = new Set<string>();
  const found: (T & FoundIn)[] = [];
  for (const { view, only } of asked)
    for (const each of partOf(view)) {
      if (only?.has(each.finding.place.slot.file) === false || !isWanted(each.finding.code, wanted)) continue;
      const listed = listedFinding(each.finding, view);
      const key = JSON.stringify([listed.file, listed.start, listed.code, listed.message]);
      if (seen.has(key)) continue;
      seen.add(key);
      found.push({ ...each, view, listed });
    }
  return found.sort(
    ({ listed: a }, { listed: b }) =>
      compare(a.file, b.file) || a.start.line - b.start.line || a.start.column - b.start.column || compare(a.code, b.code),
  );
}

function isWanted(code: string, { only = [], skip = [] }: Wanted): boolean {
  const isIn = (wanted: readonly string[]): boolean => wanted.some((each) => code === each || code.startsWith(`${each}/`));
  return (only.length === 0 || isIn(only)) && !isIn(skip);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The text of a baseline at a path; what names a hazard is left out, and counted. For plans seen without a baseline. */
export function baselineOf(
  asked: readonly PlanAsked[],
  wanted: Wanted,
  path: string,
): { readonly text: string; readonly entries: number; readonly hazards: number } {
  const found = inOrder(asked, wanted, ({ plan }) => plan.single.map((finding) => ({ finding })));
  const kept = found.filter(({ finding }) => !isHazardous(finding));
  return {
    text: baselineText(kept.map(({ finding, view }) => entryOf(finding, path, view.plan.model))),
    entries: kept.length,
    hazards: found.length - kept.length,
  };
}

export interface LeftOver {
  /** The path of the baseline. */
  readonly baseline: string;
  /** With the count that is no longer found. */
  readonly entry: BaselineEntry;
}

/** What the plans' baselines hold that is no longer found, of the files that were looked at. */
export function leftOver(asked: readonly PlanAsked[]): readonly LeftOver[] {
  const left = new Map<string, LeftOver>();
  for (const { view, only } of asked) {
    const { baseline, known, model } = view.plan;
    if (baseline === undefined) continue;
    const files = new Set([...(only ?? model.files.map(({ path }) => path))].map((path) => pathBeside(baseline.file, path)));
    const used = new Map<string, number>();
    for (const { key } of known) used.set(key, (used.get(key) ?? 0) + 1);
    for (const entry of baseline.entries) {
      if (!files.has(entry.file)) continue;
      const count = entry.count - (used.get(keyText(entry)) ?? 0);
      const name = `${baseline.file}\n${keyText(entry)}`;
      // A file of several plans: what one of them finds is found.
      left.set(name, {
        baseline: baseline.file,
        entry: { ...entry, count: Math.min(count, left.get(name)?.entry.count ?? count) },
      });
    }
  }
  return [...left.values()].filter(({ entry }) => entry.count > 0);
}
