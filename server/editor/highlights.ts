// The same name elsewhere in the file: where it is declared counts as written, where it is used as read.
import type { DocumentHighlight, Position } from 'vscode-languageserver-types';
import { thereAt } from './at-position.ts';
import type { Feature } from './features.ts';
import { occurrencesIn } from './occurrences.ts';
import type { View } from './view.ts';

export const highlights: Feature = {
  method: 'textDocument/documentHighlight',
  offers: () => ({ documentHighlightProvider: true }),
  answer: ({ file, plan }: View, { position }: { readonly position: Position }): readonly DocumentHighlight[] | undefined => {
    const slot = thereAt(file, plan.model, position)?.naming?.slot;
    if (slot === undefined) return undefined;
    return occurrencesIn(slot, file, plan).map(({ range, isDeclaration }) => ({ range, kind: isDeclaration ? 3 : 2 }));
  },
};
