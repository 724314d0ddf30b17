// DOOR: results → findings of every check, of the library's rules of order and its least values.
import type { Finding } from '#kit/finding';
import type { Results } from './check.ts';
import { minimumFindings } from './minimums.ts';
import { checks } from './rules.ts';
import { sequenceFindings } from './sequence.ts';

export function runChecks(results: Results): readonly Finding[] {
  return [...checks.flatMap((check) => check.run(results)), ...minimumFindings(results), ...sequenceFindings(results)];
}
