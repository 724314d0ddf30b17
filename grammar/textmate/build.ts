// The colouring file for editors without a language server: made of the token rows and the vocabulary, never by hand.
// Kept fresh by its test (run with -u it writes the file).
import { TOKEN_ROWS, type TokenRow, WORD_PATTERN } from '../tokens.ts';
import type { Kind } from '../vocabulary/types.ts';
import { joiningWords, vocabulary } from '../vocabulary/vocabulary.ts';

interface Pattern {
  readonly name?: string;
  readonly match: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
}

/** The text of screed.tmLanguage.json. */
export function textmateGrammar(): string {
  const [comment, ...rest] = TOKEN_ROWS.map(patternOf);
  const patterns = [comment, ...lineStarts(), ...rest, ...words()];
  const grammar = { name: 'Screed', scopeName: 'source.screed', fileTypes: ['screed'], patterns };
  return `${JSON.stringify(grammar, undefined, 2)}\n`;
}

/** The first word of a line: a kind with its name, a step with its name, or a property. */
function lineStarts(): readonly Pattern[] {
  const nested = [...new Set(Object.values<Kind>(vocabulary).flatMap((kind) => kind.declares ?? []))].sort();
  const name = `(?:\\s+(${WORD_PATTERN}))?`;
  const kind = { '1': { name: scope('storage.type') }, '2': { name: scope('entity.name') } };
  return [
    { match: `^(${WORD_PATTERN})${name}`, captures: kind },
    ...(nested.length === 0 ? [] : [{ match: `^\\s+(${nested.join('|')})(?=\\s)${name}`, captures: kind }]),
    { match: `^\\s+(${WORD_PATTERN})`, captures: { '1': { name: scope('support.type.property-name') } } },
  ];
}

/** Joining words, then whatever else is a word: a name, or a word that a property takes. */
function words(): readonly Pattern[] {
  const joining = [...joiningWords].sort().join('|');
  return [
    { name: scope('keyword.control'), match: `(?<![\\p{L}\\p{N}_.-])(?:${joining})(?![\\p{L}\\p{N}_.-])` },
    { name: scope('variable.other'), match: WORD_PATTERN },
  ];
}

function patternOf(row: TokenRow): Pattern {
  const whole = { name: scope(row.scope), match: row.pattern };
  if (row.parts === undefined) return whole;
  return { ...whole, captures: Object.fromEntries(row.parts.map((part, index) => [String(index + 1), { name: scope(part) }])) };
}

function scope(name: string): string {
  return `${name}.screed`;
}
