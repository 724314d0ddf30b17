// The files that a plan includes, as links.
import type { DocumentLink, Position, Range } from 'vscode-languageserver-types';
import { joinPath } from '#model/includes';
import type { Feature } from './features.ts';
import { stretchOf } from './places.ts';
import type { View } from './view.ts';

export const links: Feature = {
  method: 'textDocument/documentLink',
  offers: () => ({ documentLinkProvider: { resolveProvider: false } }),
  answer: (view): readonly DocumentLink[] =>
    includes(view)
      .filter(({ path }) => view.plan.model.files.some((file) => file.path === path))
      .map(({ path, range }) => ({ range, target: view.addresses.uriOf(path) })),
};

interface Include {
  readonly path: string;
  /** Inside the quotes. */
  readonly range: Range;
}

export function includeAt(view: View, position: Position): Include | undefined {
  return includes(view).find(
    ({ path, range }) =>
      range.start.line === position.line &&
      position.character >= range.start.character - 1 &&
      position.character <= range.end.character + 1 &&
      view.plan.model.files.some((file) => file.path === path),
  );
}

function includes({ file }: View): readonly Include[] {
  return file.declared.flatMap(({ declaration, node }, at) => {
    if (declaration.kind.word !== 'include' || declaration.takes === undefined) return [];
    const { spot, value } = declaration.takes;
    return [
      { path: joinPath(file.path, String(value)), range: stretchOf({ line: file.lines[at]!, node }, spot.from + 1, spot.to - 1) },
    ];
  });
}
