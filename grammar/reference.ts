// The tables of language.md, made of the vocabulary: what each kind of thing is, and every word that may stand under it.
// Kept fresh by its test; `npm run reference` writes the page anew.
import { UNITS } from '#kit/units/table';
import { measureDimensions } from './vocabulary/measures.ts';
import { sayShape } from './vocabulary/say-shape.ts';
import type { Kind, Properties, Property } from './vocabulary/types.ts';
import { joiningWords, kindSpellings, propertiesOf, vocabulary } from './vocabulary/vocabulary.ts';

/** Kinds in the order of the page. */
export const CHAPTERS: readonly (readonly [title: string, kinds: readonly (keyof typeof vocabulary)[]])[] = [
  ['The plan and its values', ['plan', 'include', 'let', 'measure', 'accept']],
  ['The ground', ['site', 'trench', 'dry-well', 'foundation', 'crawl']],
  ['The house', ['level', 'assembly', 'stair', 'roof', 'deck', 'panels', 'extra']],
  ['Rooms and openings', ['window', 'door', 'room', 'wall']],
  ['Who', ['trade', 'firm', 'supplier', 'machine']],
  ['Order of work', ['phase', 'task', 'inspection', 'milestone', 'delivery']],
  ['Money', ['price', 'allowance', 'bid', 'money', 'loan', 'paid', 'invoice', 'alternate', 'change']],
  ['How it went', ['progress', 'as-planned', 'punch']],
  [
    'Building knowledge',
    [
      'material',
      'convention',
      'item',
      'fixture',
      'work',
      'element',
      'state',
      'rule',
      'need',
      'minimum',
      'calculation',
      'hazard',
      'holiday',
      'climate',
    ],
  ],
];

const SECTIONS: { readonly [name: string]: () => string } = { kinds, always, units, measures, joining };

/** The page with everything between its marks made anew. */
export function withTables(page: string): string {
  return page.replace(MARKED, (whole, name: string) => {
    const make = Object.hasOwn(SECTIONS, name) ? SECTIONS[name] : undefined;
    return make === undefined ? whole : `<!-- generated: ${name} -->\n\n${make()}\n\n<!-- end -->`;
  });
}

function kinds(): string {
  return CHAPTERS.map(([title, words]) =>
    [`## ${title}`, ...words.map((word) => kindSection(vocabulary[word]))].join('\n\n'),
  ).join('\n\n');
}

function kindSection(kind: Kind): string {
  const parts = [`### ${kind.word}`, kind.help, `\`\`\`\n${kind.example}\n\`\`\``, headerSentence(kind)];
  const rows = tableRows(kind.properties, '');
  const entries = kind.entries === undefined ? [] : entryRows(kind.entries);
  if (rows.length + entries.length > 0) parts.push(table([...rows, ...entries]));
  const facts = Object.entries(kind.facts);
  if (facts.length > 0) {
    const said = facts.map(([fact, dimension]) => `${code(fact)} (${dimension})`).join(', ');
    parts.push(`Facts: ${said}.`);
  }
  return parts.join('\n\n');
}

/** How the first line of a kind goes, and what may be declared below it. */
function headerSentence(kind: Kind): string {
  const spellings = Object.entries(kindSpellings).flatMap(([word, meant]) => (meant === kind.word ? [word] : []));
  const takes = kind.takes === undefined ? '' : `; then ${sayShape(kind.takes)}`;
  const name = { required: 'A name', optional: 'A name, which may be left out', none: 'No name' }[kind.name];
  const space = kind.space === undefined ? '' : ` among the ${kind.space === 'step' ? 'steps' : 'goods'}`;
  const below = kind.declares === undefined ? '' : ` Below it may stand: ${kind.declares.map(code).join(', ')}.`;
  const also = spellings.length === 0 ? '' : ` Also written ${spellings.map(code).join(', ')}.`;
  return `${name}${space}${takes}.${below}${also}`;
}

function always(): string {
  return table(tableRows(propertiesOf(vocabulary.include), ''));
}

function tableRows(rows: Properties, above: string): readonly (readonly string[])[] {
  return Object.entries(rows).flatMap(([word, row]) => [
    [`${above}${code(word)}`, sayShape(row.takes), placeOf(row, above !== ''), row.help, code(row.example)],
    ...tableRows(row.deeper ?? {}, `${above}${code(word)} `),
  ]);
}

/** Lines that begin with a name, and their clauses. */
function entryRows(entries: Property): readonly (readonly string[])[] {
  const own = ['*name*', sayShape(entries.takes), 'below', entries.help, code(entries.example)];
  return [own, ...tableRows(entries.deeper ?? {}, '*name* ')];
}

/** Where a property may stand. */
function placeOf(row: Property, clause: boolean): string {
  const place = clause ? 'clause' : row.inHeader === true ? 'either' : 'below';
  const behind = row.trailing === true ? ', behind' : '';
  return `${place}${behind}${row.repeats === true ? ', again' : ''}`;
}

function units(): string {
  const measured = new Map<string, string[]>();
  for (const { words, also, dimension } of UNITS) {
    const [usual, ...others] = [...words, ...(also ?? [])];
    if (usual === undefined) continue;
    const said = others.length === 0 ? code(usual) : `${code(usual)} (${others.map(code).join(', ')})`;
    measured.set(dimension, [...(measured.get(dimension) ?? []), said]);
  }
  return grid(
    ['Measures', 'Units, with other spellings'],
    [...measured].map(([what, said]) => [what, said.join('; ')]),
  );
}

function measures(): string {
  const byDimension = new Map<string, string[]>();
  for (const [word, dimension] of Object.entries(measureDimensions))
    byDimension.set(dimension, [...(byDimension.get(dimension) ?? []), code(word)]);
  return grid(
    ['Gives', 'Measures'],
    [...byDimension].map(([dimension, words]) => [dimension, words.join(', ')]),
  );
}

function joining(): string {
  return [...joiningWords].sort().map(code).join(', ');
}

function table(rows: readonly (readonly string[])[]): string {
  return grid(['Word', 'Takes', 'Where', 'What for', 'Example'], rows);
}

function grid(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(heads), `|${heads.map(() => '---|').join('')}`, ...rows.map(line)].join('\n');
}

function code(text: string): string {
  return `\`${text}\``;
}

const MARKED = /<!-- generated: (\w+) -->\n[\s\S]*?<!-- end -->/g;
