// Examples for findings that come from reading and computing a plan: by code, a plan that is wrong and one that is right. Both
// run as tests.
import type { Example } from '#checks/row-examples';

export const ABOUT_EXAMPLES: Readonly<Record<string, Example | undefined>> = {};
