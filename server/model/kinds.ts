// The words of the kinds, for rooms that may not look at the grammar.
export type { KindWord } from '#grammar/vocabulary/vocabulary';
