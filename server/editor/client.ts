// What the editor at the other end said it can do, as plain yes and no. Nothing is sent that it did not offer to take.

/** The part of an editor's capabilities that matters here, as loosely as editors send it. */
interface Offered {
  readonly [name: string]: unknown;
}

export interface Client {
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly relatedPlaces: boolean;
  readonly diagnosticVersions: boolean;
  readonly diagnosticLinks: boolean;
  readonly diagnosticNotes: boolean;
  readonly unnecessaryTag: boolean;
  readonly markdownHover: boolean;
  readonly markdownCompletion: boolean;
  readonly snippets: boolean;
  readonly definitionLinks: boolean;
  readonly symbolTree: boolean;
  readonly codeActionRecords: boolean;
  readonly versionedEdits: boolean;
  readonly refreshesHints: boolean;
  readonly watchesFiles: boolean;
  readonly workspaceFolders: boolean;
  readonly answersConfiguration: boolean;
}

export function clientOf(capabilities: unknown): Client {
  const at = (...path: readonly string[]): unknown =>
    path.reduce<unknown>(
      (value, name) => (typeof value === 'object' && value !== null ? (value as Offered)[name] : undefined),
      capabilities,
    );
  const says = (...path: readonly string[]): boolean => at(...path) === true;
  const lists = (wanted: unknown, ...path: readonly string[]): boolean => {
    const list = at(...path);
    return Array.isArray(list) && list.includes(wanted);
  };
  const tags = at('textDocument', 'publishDiagnostics', 'tagSupport') ?? at('textDocument', 'diagnostic', 'tagSupport');
  const pulls = at('textDocument', 'diagnostic') !== undefined && at('textDocument', 'diagnostic') !== null;
  const told = pulls ? 'diagnostic' : 'publishDiagnostics';
  return {
    pullsDiagnostics: pulls,
    refreshesDiagnostics: says('workspace', 'diagnostics', 'refreshSupport'),
    relatedPlaces:
      says('textDocument', 'publishDiagnostics', 'relatedInformation') || says('textDocument', told, 'relatedInformation'),
    diagnosticVersions: says('textDocument', 'publishDiagnostics', 'versionSupport'),
    diagnosticLinks:
      says('textDocument', 'publishDiagnostics', 'codeDescriptionSupport') ||
      says('textDocument', told, 'codeDescriptionSupport'),
    diagnosticNotes: says('textDocument', 'publishDiagnostics', 'dataSupport') || says('textDocument', told, 'dataSupport'),
    unnecessaryTag:
      tags === true ||
      (Array.isArray((tags as { valueSet?: unknown } | undefined)?.valueSet) &&
        (tags as { valueSet: readonly unknown[] }).valueSet.includes(1)),
    markdownHover: lists('markdown', 'textDocument', 'hover', 'contentFormat'),
    markdownCompletion: lists('markdown', 'textDocument', 'completion', 'completionItem', 'documentationFormat'),
    snippets: says('textDocument', 'completion', 'completionItem', 'snippetSupport'),
    definitionLinks: says('textDocument', 'definition', 'linkSupport'),
    symbolTree: says('textDocument', 'documentSymbol', 'hierarchicalDocumentSymbolSupport'),
    codeActionRecords: at('textDocument', 'codeAction', 'codeActionLiteralSupport') !== undefined,
    versionedEdits: says('workspace', 'workspaceEdit', 'documentChanges'),
    refreshesHints: says('workspace', 'inlayHint', 'refreshSupport'),
    watchesFiles: says('workspace', 'didChangeWatchedFiles', 'dynamicRegistration'),
    workspaceFolders: says('workspace', 'workspaceFolders'),
    answersConfiguration: says('workspace', 'configuration'),
  };
}
