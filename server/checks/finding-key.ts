// What a finding is called whatever line it stands on: the file, the declaration, and the name in it that it is about. By
// these a finding is found again when lines move: in a baseline, and by whoever compares two runs.
import type { Finding } from '#kit/finding';
import type { Model } from '#model/resolve';
import { standingOf } from '#model/standing';

export interface FindingKey {
  /** The whole path. */
  readonly file: string;
  /** The declaration: 'task board', 'room bath (2)' for the second of a name; of what has no name, its own line. */
  readonly thing: string;
  /** The one name that the finding marks, where it is not the declaration's own. */
  readonly word: string | undefined;
}

/** A name alone, as in lists of names. */
const NAME = /^[a-z][\w-]*$/i;

export function findingKey({ place }: Pick<Finding, 'place'>, model: Model): FindingKey {
  const { slot, spot } = place;
  const marked = standingOf(place, model)?.node.line.statement.text.slice(spot.from, spot.to) ?? '';
  const isWord = NAME.test(marked) && marked.toLowerCase() !== slot.name && marked.toLowerCase() !== slot.kind;
  return { file: slot.file, thing: thingOf(place, model), word: isWord ? marked.toLowerCase() : undefined };
}

function thingOf({ slot }: Finding['place'], model: Model): string {
  const { kind, name, again } = slot;
  if (kind !== '' && NAME.test(name)) return `${kind} ${name}${again === 0 ? '' : ` (${again + 1})`}`;
  // A number is no name: it changes when something is written above.
  const line = standingOf({ slot, spot: { path: [], from: 0, to: 0 } }, model)?.node.line.statement.text ?? '';
  return line.replace(/\s+/g, ' ').trim().slice(0, 80);
}
