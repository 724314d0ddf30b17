// A baseline: what was found in a plan on the day somebody began to check it. What stands in it is known; what is new, or has
// become more severe, is told. Entries go by code, file and the names of things, never by line numbers.
import type { Finding, Severity } from '#kit/finding';
import type { Model } from '#model/resolve';
import { findingKey } from './finding-key.ts';
import { isHazardous } from './hazard.ts';

export interface BaselineEntry {
  readonly code: string;
  /** From the folder of the baseline, '/' between its parts. */
  readonly file: string;
  readonly thing: string;
  readonly word?: string;
  readonly severity: Severity;
  /** How many of them. */
  readonly count: number;
}

export interface Baseline {
  /** Its own whole path. */
  readonly file: string;
  readonly entries: readonly BaselineEntry[];
  /** Its text is no baseline: nothing is known by it. */
  readonly broken?: true;
}

/** What is found beside a plan without being asked for. */
export const BASELINE_FILE = '.screed-baseline.json';

const SEVERITIES: readonly Severity[] = ['note', 'warning', 'error'];

/** A finding that an entry answers, and that entry's key. */
export interface Known {
  readonly finding: Finding;
  readonly key: string;
}

/** In the order of the findings: those that no entry answers, and those that one does. */
export function splitKnown(
  findings: readonly Finding[],
  baseline: Baseline,
  model: Model,
): { readonly fresh: readonly Finding[]; readonly known: readonly Known[] } {
  const left = new Map<string, number>();
  const codes = new Set<string>();
  for (const entry of baseline.entries) {
    const key = keyText(entry);
    left.set(key, (left.get(key) ?? 0) + entry.count);
    codes.add(entry.code);
  }
  const fresh: Finding[] = [];
  const known: Known[] = [];
  for (const each of findings) {
    const key = codes.has(each.code) ? answeringKey(each, left, baseline, model) : undefined;
    if (key === undefined || isHazardous(each)) fresh.push(each);
    else {
      left.set(key, left.get(key)! - 1);
      known.push({ finding: each, key });
    }
  }
  return { fresh, known };
}

/** Of entries that still have one left: of the finding's own severity, else of a worse one. */
function answeringKey(found: Finding, left: ReadonlyMap<string, number>, baseline: Baseline, model: Model): string | undefined {
  const entry = entryOf(found, baseline.file, model);
  for (const severity of SEVERITIES.slice(SEVERITIES.indexOf(found.severity))) {
    const key = keyText({ ...entry, severity });
    if ((left.get(key) ?? 0) > 0) return key;
  }
  return undefined;
}

/** What a finding is called in a baseline of that path. */
export function entryOf(found: Finding, baseline: string, model: Model): BaselineEntry {
  const { file, thing, word } = findingKey(found, model);
  const named = { code: found.code, file: pathBeside(baseline, file), thing };
  return { ...named, ...(word === undefined ? {} : { word }), severity: found.severity, count: 1 };
}

export function keyText({ code, file, thing, word, severity }: BaselineEntry): string {
  return JSON.stringify([file, thing, word ?? '', code, severity]);
}

/** A path from the folder of another file, '/' between its parts; whole where the two have nothing in common. */
export function pathBeside(other: string, path: string): string {
  const from = other
    .split('/')
    .slice(0, -1)
    .filter((part) => part !== '');
  const to = path.split('/').filter((part) => part !== '');
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same += 1;
  if (same === 0 && from.length > 0 && /^(?:\/|[A-Za-z]:)/.test(path)) return path;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}

/** `file`: where the text lies. */
export function readBaseline(text: string, file: string): Baseline {
  const { 'screed-baseline': version, findings } = (jsonOf(text) ?? {}) as { 'screed-baseline'?: unknown; findings?: unknown };
  if (version !== 1 || !Array.isArray(findings) || !findings.every(isEntry)) return { file, entries: [], broken: true };
  return { file, entries: summed(findings) };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isEntry(value: unknown): value is BaselineEntry {
  if (typeof value !== 'object' || value === null) return false;
  const { code, file, thing, word, severity, count } = value as { readonly [name in keyof BaselineEntry]?: unknown };
  return (
    [code, file, thing].every((each) => typeof each === 'string') &&
    (word === undefined || typeof word === 'string') &&
    SEVERITIES.some((each) => each === severity) &&
    typeof count === 'number' &&
    Number.isInteger(count) &&
    count > 0
  );
}

/** Sorted, one entry a line, like ones counted: so that version control shows what went and came. */
export function baselineText(entries: readonly BaselineEntry[]): string {
  const lines = summed(entries).map(({ code, file, thing, word, severity, count }) => {
    const named = { code, file, thing, ...(word === undefined ? {} : { word }) };
    return `    ${JSON.stringify({ ...named, severity, count })}`;
  });
  const list = lines.length === 0 ? '[]' : `[\n${lines.join(',\n')}\n  ]`;
  return `{\n  "screed-baseline": 1,\n  "findings": ${list}\n}\n`;
}

function summed(entries: readonly BaselineEntry[]): readonly BaselineEntry[] {
  const byKey = new Map<string, BaselineEntry>();
  for (const entry of entries) {
    const known = byKey.get(keyText(entry));
    byKey.set(keyText(entry), known === undefined ? entry : { ...known, count: known.count + entry.count });
  }
  return [...byKey].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, entry]) => entry);
}
