// As much of a house as the conditions of a row ask for: a floor on a level, a layer in a wall. Made from the examples of the
// vocabulary; where those cannot say it, the row must.
import type { Properties } from '#grammar/vocabulary/types';
import { kindOf, propertiesOf, propertyOf } from '#grammar/vocabulary/vocabulary';
import type { FollowedCondition } from '#model/model';

type Conditions = readonly { readonly value: FollowedCondition }[];

/** The lines, or the condition that no line could be made for. */
export function houseFor(
  when: Conditions,
  unless: Conditions,
): { readonly lines: readonly string[] } | { readonly lacks: string } {
  const asked = [
    ...when.filter(({ value }) => value.quantifier !== 'no').map(({ value }) => value),
    // "Unless no level has a floor" speaks up where one has; where nothing is known, nothing excuses.
    ...unless.filter(({ value }) => value.quantifier === 'no').map(({ value }) => value),
  ];
  const lines: string[] = [];
  for (const condition of asked) {
    const own = linesFor(condition);
    if (own === undefined) {
      const said = `${condition.subject}${condition.fact === undefined ? '' : `.${condition.fact}`}`;
      return { lacks: `say with "example" the lines of a plan that make its condition on ${said} hold` };
    }
    lines.push(...own);
  }
  return { lines };
}

function linesFor(condition: FollowedCondition): readonly string[] | undefined {
  const { subject, fact, test, words } = condition;
  const kind = kindOf(subject);
  if (kind === undefined) return undefined;
  const rows = propertiesOf(kind);
  const property = propertyLine(rows, test === 'has' ? words : fact === undefined ? [] : [fact, ...words], test);
  if (property === undefined) return undefined;
  if (subject === 'plan') return property;
  // Kind, name and label of the vocabulary's own example, without what it says of others.
  const [head] = /^[\w-]+(?: [a-z][\w-]*)?(?: "[^"]*")?/.exec(kind.example) ?? [];
  return head === undefined ? undefined : [kind.name === 'none' ? kind.word : head, ...property];
}

/** The property that a condition asks for, with a word that it wants; no line where the thing alone will do. */
function propertyLine(
  rows: Properties,
  [word, ...wanted]: readonly string[],
  test: FollowedCondition['test'],
): readonly string[] | undefined {
  if (word === undefined) return [];
  const row = propertyOf(rows, word);
  if (row === undefined) return undefined;
  switch (test) {
    case 'is':
    case 'has':
      return [wanted.length > 0 ? `${word} ${wanted[0]}` : row.example];
    case 'exists':
      return [row.example];
    default:
      return undefined;
  }
}
