// Types of the grammar that later rooms may use: the words of the kinds and measures, and sizes as written. Those rooms
// never look at the grammar itself.
export type { Literal } from '#grammar/tree';
export type { Measure } from '#grammar/vocabulary/measures';
export type { KindWord } from '#grammar/vocabulary/vocabulary';
