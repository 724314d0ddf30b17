// Words of the language that could be written: kinds, properties and clauses not yet given, words of a value.
import { parse } from '#grammar/parse';
import { always } from '#grammar/vocabulary/house';
import type { Kind, Properties, Property } from '#grammar/vocabulary/types';
import { joiningWords, kindOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { kindHelp, propertyHelp } from '../hover.ts';
import { words } from '../prose.ts';
import { literally, type Suggestion } from './suggestion.ts';

/** Every kind, the plan's own before those of the library. */
export function allKinds(): readonly Suggestion[] {
  return kindSuggestions(Object.keys(vocabulary));
}

export function kindSuggestions(kinds: readonly string[]): readonly Suggestion[] {
  return kinds.flatMap((word, at) => {
    const kind = kindOf(word);
    if (kind === undefined) return [];
    return [
      {
        label: word,
        insert: `${word} `,
        snippet: kindSnippet(kind),
        detail: shortened(kind.help),
        help: kindHelp(kind),
        kind: 'kind' as const,
        rank: 100 + at,
      },
    ];
  });
}

/** Properties that may be added: those given already only where they may repeat. */
export function propertySuggestions(
  rows: Properties,
  given: ReadonlySet<string>,
  how: 'line' | 'clause' | 'after-word',
): readonly Suggestion[] {
  return Object.entries(rows).flatMap(([word, row], at): readonly Suggestion[] => {
    if (given.has(word) && row.repeats !== true) return [];
    if (row.trailing === true && how !== 'line') return [];
    const opensAnywhere = word.includes(' ') || joiningWords.has(word);
    return [
      {
        label: word,
        ...(row.trailing === true
          ? { insert: row.example, snippet: `\${1:${literally(row.example)}}` }
          : propertyInsert(word, row)),
        detail: shortened(row.help),
        help: propertyHelp(word, row),
        kind: 'property',
        // What every declaration takes comes last.
        rank: (Object.hasOwn(always, word) ? 900 : 200) + at,
        ...(how === 'after-word' && !opensAnywhere ? { afterComma: true } : {}),
      },
    ];
  });
}

export function wordSuggestions(choice: readonly string[]): readonly Suggestion[] {
  return choice.map((word, at) => ({ label: word, help: [words(`One of: ${choice.join(', ')}.`)], kind: 'word', rank: at }));
}

function propertyInsert(word: string, row: Property): Pick<Suggestion, 'insert' | 'snippet'> {
  if (row.takes.check.kind === 'flag') return { insert: word };
  const value = row.example.toLowerCase().startsWith(`${word.toLowerCase()} `) ? row.example.slice(word.length + 1).trim() : '';
  return value === '' ? { insert: `${word} ` } : { insert: `${word} `, snippet: `${literally(word)} \${1:${literally(value)}}` };
}

/** The example, with its name and what follows to be written over. */
function kindSnippet(kind: Kind): string {
  const [node] = parse(kind.example).nodes;
  const items = node?.line.statement.items ?? [];
  const text = kind.example.split('\n')[0]!;
  const named = kind.name === 'none' ? undefined : items[1];
  const rest = items[named === undefined ? 1 : 2];
  const name = named === undefined ? '' : ` \${1:${literally(text.slice(named.from, named.to))}}`;
  return `${kind.word}${name}${rest === undefined ? '' : ` \${2:${literally(text.slice(rest.from))}}`}`;
}

function shortened(help: string): string {
  return help.length > 60 ? `${help.slice(0, 58)}…` : help;
}
