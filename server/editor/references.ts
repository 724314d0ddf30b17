// Where a thing is used, in every file of its plans.
import type { Location, Position } from 'vscode-languageserver-types';
import type { Slot } from '#kit/place';
import { thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { type Occurrence, occurrencesOf } from './occurrences.ts';
import type { View } from './view.ts';

export const references: Feature = {
  method: 'textDocument/references',
  offers: () => ({ referencesProvider: true }),
  answer: (
    view,
    { position, context }: { readonly position: Position; readonly context?: { readonly includeDeclaration?: boolean } },
  ) => referencesAt(view, position, context?.includeDeclaration !== false),
};

function referencesAt(view: View, position: Position, withDeclaration: boolean): readonly Location[] | undefined {
  const slot = thereAt(view.file, view.plan.model, position)?.naming?.slot;
  if (slot === undefined) return undefined;
  return everywhere(view, slot)
    .filter(({ isDeclaration }) => withDeclaration || !isDeclaration)
    .map(({ path, range }) => ({ uri: view.addresses.uriOf(path), range }));
}

/** Of all plans that hold the file: a file of two plans is told once. */
export function everywhere(view: View, slot: Slot): readonly Occurrence[] {
  const seen = new Set<string>();
  return view.plans
    .flatMap((plan) => occurrencesOf(slot, plan))
    .filter(({ path, range }) => {
      const key = `${path}\n${range.start.line}:${range.start.character}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}
