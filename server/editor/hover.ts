// What stands under the pointer: a thing with its figures and their working, a value with its own, or a word of the
// language with its help.
import type { Hover, Position } from 'vscode-languageserver-types';
import { leastValues } from '#answers/least-values';
import { listedReason, treeLines } from '#answers/listed-reason';
import { viewOf, write } from '#answers/view';
import type { Kind, Property } from '#grammar/vocabulary/types';
import { kindOf } from '#grammar/vocabulary/vocabulary';
import { shortDate } from '#kit/dates';
import { factsOf } from '#model/facts';
import type { Element } from '#model/model';
import { firstLineOf } from '#model/standing';
import { type NameThere, type There, thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { stretchOf } from './places.ts';
import { asIs, type Block, markup, title, words } from './prose.ts';
import { quantityAt, shallow } from './quantities.ts';
import { DEEPEST, tellBriefly } from './things.ts';
import type { View } from './view.ts';

export const hover: Feature = {
  method: 'textDocument/hover',
  offers: () => ({ hoverProvider: true }),
  answer: (view, { position }: { readonly position: Position }) => hoverAt(view, position),
};

/** No more lines than this are shown; `explain` shows all of them. */
const MOST_LINES = 30;

function hoverAt(view: View, position: Position): Hover | undefined {
  const there = thereAt(view.file, view.plan.model, position);
  if (there === undefined) return undefined;
  const found = aboutName(there, view) ?? aboutValue(there, view) ?? aboutWord(there) ?? aboutKind(there);
  if (found === undefined) return undefined;
  const { blocks, from, to } = found;
  return { contents: markup(blocks, view.client.markdownHover), range: stretchOf(there, from, to) };
}

interface About {
  readonly blocks: readonly Block[];
  readonly from: number;
  readonly to: number;
}

// ---- names ----

function aboutName({ naming }: There, view: View): About | undefined {
  if (naming?.slot === undefined) return undefined;
  const element = view.plan.model.element(naming.slot);
  const { from, to } = naming.spot;
  if (element === undefined) return undefined;
  const fact = factOf(naming, element, view);
  if (fact !== undefined) return { blocks: fact, from, to: to + 1 + (naming.use?.fact?.length ?? 0) };
  return { blocks: aboutThing(element, naming, view), from, to };
}

function factOf({ use, name }: NameThere, element: Element, view: View): readonly Block[] | undefined {
  if (use?.fact === undefined) return undefined;
  const value = factsOf(element)[use.fact];
  if (value === undefined) return undefined;
  const seen = answersView(view);
  return [title(name, write(value, seen.style)), asIs(cut(treeLines(listedReason(shallow(value, DEEPEST), seen), DEEPEST)))];
}

function aboutThing(element: Element, naming: NameThere, view: View): readonly Block[] {
  const { slot, kind, name, label } = element;
  const called = label === name ? '' : `"${label}"`;
  const head = title(`${kind} ${name}`, called);
  const { model } = view.plan;
  const fromLibrary = model.names.bySlot.get(slot) === undefined;
  const overridden = !fromLibrary && model.library.first.has(`${kind}/${name}`);
  if (LISTED_ONLY.has(kind)) return [head, ...textOf(naming, view), ...origin(fromLibrary, overridden)];
  const { why, reasons } = tellBriefly(element, answersView(view));
  const working = cut(reasons.flatMap((reason) => treeLines(reason, DEEPEST)));
  return [
    head,
    words(why),
    asIs(working),
    ...aboutLeastValues(element, view),
    ...(fromLibrary ? textOf(naming, view) : []),
    ...origin(fromLibrary, overridden),
  ];
}

/** What it has against the least values that it meets; the findings say what it does not. */
function aboutLeastValues(element: Element, { plan: { model } }: View): readonly Block[] {
  const values = leastValues(element, model);
  return values === undefined ? [] : [words(values.why), asIs(values.lines)];
}

/** Rows that say all there is to know of them themselves. */
const LISTED_ONLY: ReadonlySet<string> = new Set([
  'rule',
  'need',
  'minimum',
  'hazard',
  'element',
  'state',
  'holiday',
  'supplier',
  'firm',
  'price',
  'machine',
]);

function origin(fromLibrary: boolean, overridden: boolean): readonly Block[] {
  if (fromLibrary) return [words('From the library.')];
  return overridden ? [words('A row of the library, as this plan changes it.')] : [];
}

/** The lines it is declared by. */
function textOf({ slot }: NameThere, { plan: { model } }: View): readonly Block[] {
  const declared = slot === undefined ? undefined : (model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot));
  const file = [...model.files, ...model.library.files].find(({ path }) => path === slot?.file);
  if (declared === undefined || file === undefined) return [];
  const first = firstLineOf(declared.slot, model);
  const lines = file.tree.lines
    .slice(first, first + declared.node.height)
    .map(({ indent, statement }) => `${' '.repeat(Math.max(0, indent - declared.node.line.indent))}${statement.text}`);
  return [asIs(cut(lines), 'screed')];
}

function cut(lines: readonly string[]): readonly string[] {
  return lines.length <= MOST_LINES
    ? lines
    : [...lines.slice(0, MOST_LINES - 1), `… ${lines.length - MOST_LINES + 1} lines more`];
}

function answersView({ plan }: View) {
  return viewOf(plan, (path) => path.slice(path.lastIndexOf('/') + 1));
}

// ---- values ----

function aboutValue(there: There, view: View): About | undefined {
  const { declared, path, column, item } = there;
  if (item === undefined || item.kind !== 'value') return undefined;
  const { from, to } = item;
  const { expression } = item;
  if (expression.kind === 'literal' && expression.literal.kind === 'date') {
    const day = title(shortDate(expression.literal.day));
    return { blocks: [day, ...helpOf(there)], from, to };
  }
  const element = view.plan.model.element(declared.slot);
  const quantity = element === undefined ? undefined : quantityAt(element, path, column);
  if (quantity === undefined) return undefined;
  const seen = answersView(view);
  const { spot } = quantity.place!;
  const working = quantity.inputs.length === 0 ? [] : cut(treeLines(listedReason(shallow(quantity, DEEPEST), seen), DEEPEST));
  const value = title(write(quantity, seen.style), quantity.inputs.length === 0 ? quantity.form.label : '');
  return { blocks: [value, asIs(working), ...helpOf(there)], from: spot.from, to: spot.to };
}

// ---- words of the language ----

function aboutWord(there: There): About | undefined {
  const { clause, onWords, item, node } = there;
  if (clause?.row === undefined || clause.key === undefined || item === undefined) return undefined;
  if (!onWords) return { blocks: propertyHelp(clause.key, clause.row), from: item.from, to: item.to };
  const { items } = node.line.statement;
  const [first, last] = [items[clause.keyFrom], items[clause.keyTo - 1]];
  return { blocks: propertyHelp(clause.key, clause.row), from: first?.from ?? item.from, to: last?.to ?? item.to };
}

function helpOf({ clause }: There): readonly Block[] {
  return clause?.row === undefined || clause.key === undefined ? [] : [words(`${clause.key}: ${clause.row.help}`)];
}

export function propertyHelp(word: string, row: Property): readonly Block[] {
  const form = row.trailing === true ? `${row.takes.form} ${word}` : `${word} ${row.takes.form}`;
  return [title(word), words(row.help), asIs([form.trim(), ...(row.example === form.trim() ? [] : [`e.g.  ${row.example}`])])];
}

function aboutKind({ item, itemIndex, path, declared }: There): About | undefined {
  if (item?.kind !== 'word' || itemIndex !== 0 || path.length > 0) return undefined;
  const kind = kindOf(item.word) ?? declared.declaration.kind;
  return { blocks: kindHelp(kind), from: item.from, to: item.to };
}

export function kindHelp(kind: Kind): readonly Block[] {
  const facts = Object.keys(kind.facts);
  const known = facts.length === 0 ? [] : [words(`Figures of it that can be used elsewhere: ${facts.join(', ')}.`)];
  return [title(kind.word), words(kind.help), asIs([kind.example], 'screed'), ...known];
}
