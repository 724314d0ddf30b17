// DOOR: results → findings of every check, of the library's rules of order, its needs, least values and hazards.
import { sameList } from '#kit/differing';
import type { Finding } from '#kit/finding';
import type { Check, Results } from './check.ts';
import { type HazardsMemory, hazardFindings, hazardsMemory } from './hazards.ts';
import { type MinimumsMemory, minimumFindings, minimumsMemory } from './minimums.ts';
import { missingWork, type NeedsMemory, needsMemory } from './needs.ts';
import { checks } from './rules.ts';
import { type SequenceMemory, sequenceFindings, sequenceMemory } from './sequence.ts';

export interface ChecksMemory {
  /** What each check looked at last, and what it found. */
  readonly last: Map<Check, { readonly reads: readonly unknown[]; readonly findings: readonly Finding[] }>;
  readonly minimums: MinimumsMemory;
  readonly needs: NeedsMemory;
  readonly sequence: SequenceMemory;
  readonly hazards: HazardsMemory;
}
export function checksMemory(): ChecksMemory {
  return {
    last: new Map(),
    minimums: minimumsMemory(),
    needs: needsMemory(),
    sequence: sequenceMemory(),
    hazards: hazardsMemory(),
  };
}

export function runChecks(results: Results, memory: ChecksMemory = checksMemory()): readonly Finding[] {
  const findings: Finding[] = [];
  for (const check of checks) for (const each of found(check, results, memory)) findings.push(each);
  for (const each of minimumFindings(results, memory.minimums)) findings.push(each);
  const missing = missingWork(results, memory.needs);
  for (const each of missing.findings) findings.push(each);
  for (const each of sequenceFindings(results, memory.sequence, missing.works)) findings.push(each);
  for (const each of hazardFindings(results, memory.hazards)) findings.push(each);
  return findings;
}

function found(check: Check, results: Results, { last }: ChecksMemory): readonly Finding[] {
  if (check.reads === undefined) return check.run(results);
  const reads = check.reads(results);
  const before = last.get(check);
  if (before !== undefined && sameList(before.reads, reads)) return before.findings;
  const findings = check.run(results);
  last.set(check, { reads, findings });
  return findings;
}
