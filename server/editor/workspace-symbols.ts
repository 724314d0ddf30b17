// Finds declarations by a part of their name or label, in all plans that are open.
import type { SymbolInformation } from 'vscode-languageserver-types';
import type { WideFeature } from './features.ts';
import { stretchOf } from './places.ts';
import { symbolKind } from './symbols.ts';
import type { WideView } from './view.ts';

/** No more than this are sent; whoever wants fewer types more. */
const MOST = 500;

export const workspaceSymbols: WideFeature = {
  method: 'workspace/symbol',
  offers: () => ({ workspaceSymbolProvider: true }),
  answer: (view, { query }: { readonly query: string }) => found(view, query.toLowerCase()),
};

function found({ plans, addresses }: WideView, query: string): readonly SymbolInformation[] {
  const ranked: { readonly rank: number; readonly symbol: SymbolInformation }[] = [];
  const seen = new Set<string>();
  for (const file of plans.flatMap(({ model }) => model.files)) {
    if (seen.has(file.path)) continue;
    seen.add(file.path);
    for (const [at, { declaration, node, parent }] of file.declared.entries()) {
      const { name, nameSpot, label } = declaration;
      if (name === '') continue;
      const rank = rankOf(name, label?.value.toLowerCase() ?? '', query);
      if (rank === undefined) continue;
      const range = stretchOf({ line: file.lines[at]!, node }, nameSpot.from, nameSpot.to);
      const symbol: SymbolInformation = {
        name,
        kind: symbolKind(declaration.kind.word),
        location: { uri: addresses.uriOf(file.path), range },
        containerName: parent?.name ?? label?.value ?? declaration.kind.word,
      };
      ranked.push({ rank, symbol });
    }
  }
  // Equal ranks stay in the order of the plan.
  return ranked
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ symbol }) => symbol);
}

/** 0 the name itself, 1 its start, 2 a part, 3 a part of the label, 4 the letters in that order. */
function rankOf(name: string, label: string, query: string): number | undefined {
  if (name === query) return 0;
  if (name.startsWith(query)) return 1;
  if (name.includes(query)) return 2;
  if (label.includes(query)) return 3;
  let at = 0;
  for (const letter of name) if (letter === query[at]) at += 1;
  return at === query.length ? 4 : undefined;
}
