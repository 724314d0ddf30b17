// The checks, in the order that reads best. One file each, below rules/; the path is the code the user sees.
import type { Check } from './check.ts';

export const checks: readonly Check[] = [];
