// What the tests of the editor share: files from a fixture as an editor has them open, and an answer of one feature.
import type { Position, TextEdit } from 'vscode-languageserver-types';
import { type Client, clientOf } from '#editor/client';
import type { Feature } from '#editor/features';
import { fileIn, type View } from '#editor/view';
import { memoryFiles } from '#host/memory-files';
import { lineStarts, offsetAt } from '#kit/text';
import { type Workspace, workspace } from '#server/workspace';
import { type Fixture, readFixture } from '#tests/support/fixture';

export interface Editing {
  readonly fixture: Fixture;
  readonly places: Workspace;
  readonly view: View;
  readonly textOf: (path: string) => string;
  /** Where the cursor was marked. */
  readonly position: Position;
  /** The answer to a request at the cursor, in the cursor's file (or the first). */
  readonly ask: <T>(feature: Feature, params?: { readonly [name: string]: unknown }) => T;
}

/** An editor that can do all that matters here. */
export const able: Client = clientOf({
  workspace: {
    workspaceEdit: { documentChanges: false },
    inlayHint: { refreshSupport: true },
  },
  textDocument: {
    hover: { contentFormat: ['plaintext'] },
    completion: { completionItem: { snippetSupport: false, documentationFormat: ['plaintext'] } },
    definition: { linkSupport: false },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
    publishDiagnostics: { relatedInformation: true, versionSupport: true, tagSupport: { valueSet: [1] } },
  },
});

/** Opens every file of a fixture. */
export function editing(source: string, client: Client = able): Editing {
  const fixture = readFixture(source);
  const texts = Object.fromEntries(fixture.files.map(({ path, text }) => [path, text]));
  const places = workspace(memoryFiles(texts), 'library');
  places.setFolders(['']);
  for (const { path, text } of fixture.files) places.open(path, 1, text);
  const path = fixture.cursor?.file ?? fixture.stretch?.from.file ?? fixture.files[0]!.path;
  const view = viewOf(places, path, client);
  const position = { line: fixture.cursor?.line ?? 0, character: fixture.cursor?.column ?? 0 };
  const textDocument = { uri: path };
  return {
    fixture,
    places,
    view,
    position,
    textOf: (each) => texts[each] ?? '',
    ask: <T>(feature: Feature, params: { readonly [name: string]: unknown } = {}) =>
      feature.answer(view, { textDocument, position, ...params } as never) as T,
  };
}

export function viewOf(places: Workspace, path: string, client: Client = able): View {
  const plans = places.plansOf(path);
  const plan = plans[0]!;
  const addresses = { uriOf: (each: string) => each, versionOf: places.versionOf, isInLibrary: places.isInLibrary };
  return { file: fileIn(plan, path)!, plan, plans, client, addresses, coloursSent: new Map() };
}

/** A text after edits, which must lie apart and inside it. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  const starts = lineStarts(text);
  const placed = edits
    .map(({ range, newText }) => ({ from: offsetAt(text, starts, range.start), to: offsetAt(text, starts, range.end), newText }))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  placed.forEach(({ from }, at) => {
    if (at > 0 && from < placed[at - 1]!.to) throw new Error('edits overlap');
  });
  return placed.reduceRight((done, { from, to, newText }) => done.slice(0, from) + newText + done.slice(to), text);
}

/** The letters that a range covers, on one line. */
export function covered(text: string, { start, end }: { readonly start: Position; readonly end: Position }): string {
  const starts = lineStarts(text);
  return text.slice(offsetAt(text, starts, start), offsetAt(text, starts, end));
}
