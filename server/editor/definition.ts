// From a name to where it is declared, in the plan or in the library; from an included file's name to the file; from an
// accepted code to the rule behind it.
import type { Location, LocationLink, Position, Range } from 'vscode-languageserver-types';
import type { Slot } from '#kit/place';
import { firstLineOf } from '#model/standing';
import { thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { includeAt } from './links.ts';
import { blockRange, stretchOf } from './places.ts';
import { fileIn, type View } from './view.ts';

export const definition: Feature = {
  method: 'textDocument/definition',
  offers: () => ({ definitionProvider: true }),
  answer: (view, { position }: { readonly position: Position }) => definitionAt(view, position),
};

function definitionAt(view: View, position: Position): readonly Location[] | readonly LocationLink[] | undefined {
  const { file, plan, client, addresses } = view;
  const included = includeAt(view, position);
  if (included !== undefined) {
    const start = { line: 0, character: 0 };
    return answer(
      client.definitionLinks,
      addresses.uriOf(included.path),
      { start, end: start },
      { start, end: start },
      included.range,
    );
  }
  const there = thereAt(file, plan.model, position);
  if (there?.naming?.slot === undefined) return undefined;
  const target = declarationOf(there.naming.slot, view);
  if (target === undefined) return undefined;
  const origin = stretchOf(there, there.naming.spot.from, there.naming.spot.to);
  return answer(client.definitionLinks, target.uri, target.range, target.name, origin);
}

/** Where a thing is declared: its file, its block and its name there. */
export function declarationOf(
  slot: Slot,
  { plan: { model }, plan, addresses }: View,
): { readonly uri: string; readonly range: Range; readonly name: Range } | undefined {
  const declared = model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot);
  const file = fileIn(plan, slot.file);
  if (declared === undefined || file === undefined) return undefined;
  const { nameSpot } = declared.declaration;
  const line = firstLineOf(slot, model);
  return {
    uri: addresses.uriOf(slot.file),
    range: blockRange(declared.node, line, file),
    name: stretchOf({ node: declared.node, line }, nameSpot.from, nameSpot.to),
  };
}

function answer(
  links: boolean,
  uri: string,
  block: Range,
  name: Range,
  origin: Range,
): readonly Location[] | readonly LocationLink[] {
  return links
    ? [{ originSelectionRange: origin, targetUri: uri, targetRange: block, targetSelectionRange: name }]
    : [{ uri, range: name }];
}
