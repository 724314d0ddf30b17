// Examples for the codes that have no check or row of their own, by code. What cannot be shown in a few lines is told in words.
import type { Shown } from './examples-kit.ts';
import { COUNTING_EXAMPLES } from './examples-of-counting.ts';
import { SPELLING_EXAMPLES } from './examples-of-spelling.ts';
import { WORDS_EXAMPLES } from './examples-of-words.ts';

export const ABOUT_EXAMPLES: Shown = { ...SPELLING_EXAMPLES, ...WORDS_EXAMPLES, ...COUNTING_EXAMPLES };
