// The outline of a file: its declarations, steps within their phases; flat for editors that know no tree.
import type { DocumentSymbol, SymbolInformation } from 'vscode-languageserver-types';
import type { Declared } from '#model/declared';
import type { FileNames } from '#model/file-names';
import type { Feature } from './features.ts';
import { blockRange, stretchOf } from './places.ts';
import type { View } from './view.ts';

export const symbols: Feature = {
  method: 'textDocument/documentSymbol',
  offers: () => ({ documentSymbolProvider: true }),
  answer: (view) => (view.client.symbolTree ? tree(view.file) : flat(view)),
};

function tree(file: FileNames): readonly DocumentSymbol[] {
  const top: DocumentSymbol[] = [];
  let phase: DocumentSymbol | undefined;
  for (const [at, declared] of file.declared.entries()) {
    const symbol = symbolOf(declared, file.lines[at]!, file);
    if (declared.parent !== undefined && phase !== undefined) phase.children!.push(symbol);
    else {
      if (declared.declaration.kind.declares !== undefined) symbol.children = [];
      phase = symbol;
      top.push(symbol);
    }
  }
  return top;
}

function symbolOf(declared: Declared, line: number, file: FileNames): DocumentSymbol {
  const { declaration, node } = declared;
  const range = blockRange(node, line, file);
  const own = stretchOf({ line, node }, declaration.nameSpot.from, declaration.nameSpot.to);
  return {
    name: symbolName(declared),
    detail: detailOf(declared),
    kind: symbolKind(declaration.kind.word),
    range,
    selectionRange: own,
  };
}

function flat({ file, addresses }: View): readonly SymbolInformation[] {
  const uri = addresses.uriOf(file.path);
  return file.declared.map((declared, at) => ({
    name: symbolName(declared),
    kind: symbolKind(declared.declaration.kind.word),
    location: { uri, range: blockRange(declared.node, file.lines[at]!, file) },
    ...(declared.parent === undefined ? {} : { containerName: declared.parent.name }),
  }));
}

/** The name; of what has none, the first words of its line. Never empty: editors refuse that. */
export function symbolName({ declaration, node }: Pick<Declared, 'declaration' | 'node'>): string {
  if (declaration.name !== '') return declaration.name;
  const { statement } = node.line;
  return statement.text.slice(0, Math.min(statement.end, 60)).trim() || declaration.kind.word;
}

function detailOf({ declaration }: Declared): string {
  const { word } = declaration.kind;
  if (declaration.name === '') return '';
  return declaration.label === undefined ? word : `${word}, ${declaration.label.value}`;
}

/** The nearest of the protocol's kinds, which were made for programs. */
export function symbolKind(word: string): SymbolKindNumber {
  return KINDS[word] ?? OBJECT;
}

type SymbolKindNumber = 1 | 2 | 3 | 4 | 5 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 16 | 18 | 19 | 22 | 23 | 24;
const OBJECT = 19;
const KINDS: { readonly [word: string]: SymbolKindNumber } = {
  plan: 2,
  include: 1,
  let: 14,
  measure: 16,
  phase: 3,
  task: 12,
  inspection: 24,
  milestone: 24,
  delivery: 24,
  room: 23,
  level: 23,
  assembly: 5,
  material: 5,
  item: 5,
  fixture: 5,
  window: 5,
  door: 5,
  work: 11,
  rule: 11,
  minimum: 11,
  state: 11,
  trade: 10,
  firm: 10,
  supplier: 10,
  machine: 10,
  price: 8,
  bid: 8,
};
