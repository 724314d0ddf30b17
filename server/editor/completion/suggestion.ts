// Something that could be written at the caret, before it is told in an editor's terms.
import type { Block } from '../prose.ts';

export interface Suggestion {
  readonly label: string;
  /** What is written: the label unless said. */
  readonly insert?: string;
  /** The same with stops to fill in, for editors that know such; braces and dollars of its own are escaped. */
  readonly snippet?: string;
  /** A word or two behind the label. */
  readonly detail?: string;
  readonly help: readonly Block[];
  readonly kind: 'word' | 'property' | 'name' | 'library-name' | 'unit' | 'fact' | 'kind';
  /** Small ones first; equal ones by the alphabet. */
  readonly rank: number;
  /** A comma is wanted after what stands before, or the word would not open a clause. */
  readonly afterComma?: true;
}

/** Text as it stands inside a snippet. */
export function literally(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}
