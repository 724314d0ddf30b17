// DOOR: results → findings of every check, and of the library's rules of order.
import type { Finding } from '#kit/finding';
import type { Results } from './check.ts';
import { checks } from './rules.ts';
import { sequenceFindings } from './sequence.ts';

export function runChecks(results: Results): readonly Finding[] {
  return [...checks.flatMap((check) => check.run(results)), ...sequenceFindings(results)];
}
