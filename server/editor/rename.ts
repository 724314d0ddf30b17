// Gives a thing another name wherever it stands. Refuses words that are no names and names that are taken.
import type { Position, Range, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { parse } from '#grammar/parse';
import { readDeclaration } from '#grammar/shape';
import { joiningWords, kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import { thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { stretchOf } from './places.ts';
import { everywhere } from './references.ts';
import { type Refusal, refusal, type View } from './view.ts';

export const rename: Feature = {
  method: 'textDocument/rename',
  offers: () => ({ renameProvider: { prepareProvider: true } }),
  answer: (view, { position, newName }: { readonly position: Position; readonly newName: string }) =>
    renamed(view, position, newName),
};

export const prepareRename: Feature = {
  method: 'textDocument/prepareRename',
  offers: () => ({}),
  answer: (view, { position }: { readonly position: Position }) => nameAt(view, position),
};

function nameAt({ file, plan }: View, position: Position): { readonly range: Range; readonly placeholder: string } | undefined {
  const there = thereAt(file, plan.model, position);
  const { naming } = there ?? {};
  if (there === undefined || naming?.slot === undefined || isOfLibrary(naming.slot, plan)) return undefined;
  const { from, to } = naming.spot;
  return { range: stretchOf(there, from, to), placeholder: there.node.line.statement.text.slice(from, to) };
}

function renamed(view: View, position: Position, wanted: string): WorkspaceEdit | Refusal | undefined {
  const { file, plan, addresses, client } = view;
  const naming = thereAt(file, plan.model, position)?.naming;
  if (naming?.slot === undefined) return refusal('No name stands here.');
  const { slot } = naming;
  if (isOfLibrary(slot, plan))
    return refusal(`"${slot.name}" is a row of the library: a plan can change what it says, but not what it is called.`);
  const name = wanted.trim().toLowerCase();
  const why = name === slot.name ? undefined : whyNot(name, slot, view);
  if (why !== undefined) return refusal(why);
  const edits = new Map<string, TextEdit[]>();
  if (name !== slot.name) {
    for (const { path, range, text } of everywhere(view, slot)) {
      // A second name of the thing stays.
      if (text.toLowerCase() !== slot.name) continue;
      addTo(edits, path, { range, newText: name });
    }
  }
  if (!client.versionedEdits)
    return { changes: Object.fromEntries([...edits].map(([path, list]) => [addresses.uriOf(path), list])) };
  const documentChanges = [...edits].map(
    ([path, list]): TextDocumentEdit => ({
      textDocument: { uri: addresses.uriOf(path), version: addresses.versionOf(path) ?? null },
      edits: list,
    }),
  );
  return { documentChanges };
}

/** A row of the library, or one that a plan changes: under another name it would no longer be that row. */
function isOfLibrary(slot: Slot, { model }: View['plan']): boolean {
  return model.library.first.has(`${slot.kind}/${slot.name}`) || model.names.bySlot.get(slot) === undefined;
}

function whyNot(name: string, slot: Slot, { plans }: View): string | undefined {
  if (!/^[a-z][a-z0-9_]*(?:-[a-z0-9_]+)*$/.test(name))
    return `"${name}" is no name: a name is one word of letters, digits and hyphens, and begins with a letter.`;
  if (joiningWords.has(name)) return `"${name}" opens a clause and cannot be a name.`;
  const [node] = parse(`${slot.kind} ${name}`).nodes;
  const declaration = node === undefined ? undefined : readDeclaration(node);
  if (declaration?.name !== name || node!.line.statement.problems.length > 0)
    return `"${name}" reads as something else and cannot be a name here.`;
  for (const { model } of plans) {
    const taken = rivals(slot.kind).find(
      (kind) => model.names.first.has(`${kind}/${name}`) || model.library.first.has(`${kind}/${name}`),
    );
    if (taken !== undefined) {
      const whose = model.names.first.has(`${taken}/${name}`) ? `a ${taken} of this plan` : `a ${taken} of the library`;
      return `"${name}" is already the name of ${whose}.`;
    }
  }
  return undefined;
}

/** The kinds whose names share a space with this one's. */
function rivals(kind: string): readonly string[] {
  const { space } = vocabulary[kind as keyof typeof vocabulary] as { readonly space?: string };
  return space === undefined ? [kind] : kindsOf(space);
}
