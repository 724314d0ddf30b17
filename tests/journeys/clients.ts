// What two real editors sent with `initialize`, recorded from Neovim 0.7.2 and from Emacs 28.2 with eglot 1.9, lists of
// numbers shortened to ranges; and one editor that can do everything the server has a use for.
const upTo = (last: number): readonly number[] => Array.from({ length: last }, (_, at) => at + 1);

export const neovim = {
  trace: 'off',
  capabilities: {
    callHierarchy: { dynamicRegistration: false },
    window: {
      showDocument: { support: false },
      workDoneProgress: true,
      showMessage: { messageActionItem: { additionalPropertiesSupport: false } },
    },
    workspace: {
      applyEdit: true,
      workspaceFolders: true,
      workspaceEdit: { resourceOperations: ['rename', 'create', 'delete'] },
      symbol: { hierarchicalWorkspaceSymbolSupport: true, symbolKind: { valueSet: upTo(26) }, dynamicRegistration: false },
    },
    textDocument: {
      hover: { contentFormat: ['markdown', 'plaintext'], dynamicRegistration: false },
      signatureHelp: {
        signatureInformation: {
          parameterInformation: { labelOffsetSupport: true },
          documentationFormat: ['markdown', 'plaintext'],
          activeParameterSupport: true,
        },
        dynamicRegistration: false,
      },
      completion: {
        contextSupport: false,
        completionItem: {
          preselectSupport: false,
          deprecatedSupport: false,
          documentationFormat: ['markdown', 'plaintext'],
          snippetSupport: false,
          commitCharactersSupport: false,
        },
        dynamicRegistration: false,
        completionItemKind: { valueSet: upTo(25) },
      },
      declaration: { linkSupport: true },
      implementation: { linkSupport: true },
      documentHighlight: { dynamicRegistration: false },
      synchronization: { didSave: true, dynamicRegistration: false, willSave: false, willSaveWaitUntil: false },
      rename: { prepareSupport: true, dynamicRegistration: false },
      documentSymbol: {
        symbolKind: { valueSet: upTo(26) },
        hierarchicalDocumentSymbolSupport: true,
        dynamicRegistration: false,
      },
      references: { dynamicRegistration: false },
      publishDiagnostics: { tagSupport: { valueSet: [1, 2] }, relatedInformation: true },
      codeAction: {
        dataSupport: true,
        dynamicRegistration: false,
        codeActionLiteralSupport: {
          codeActionKind: { valueSet: ['', 'Empty', 'QuickFix', 'quickfix', 'refactor', 'source', 'source.organizeImports'] },
        },
        resolveSupport: { properties: ['edit'] },
      },
      definition: { linkSupport: true },
      typeDefinition: { linkSupport: true },
    },
  },
  clientInfo: { name: 'Neovim', version: '0.7.2' },
};

export const eglot = {
  initializationOptions: {},
  capabilities: {
    workspace: {
      applyEdit: true,
      executeCommand: { dynamicRegistration: false },
      workspaceEdit: { documentChanges: true },
      didChangeWatchedFiles: { dynamicRegistration: true },
      symbol: { dynamicRegistration: false },
      configuration: true,
      workspaceFolders: true,
    },
    textDocument: {
      synchronization: { dynamicRegistration: false, willSave: true, willSaveWaitUntil: true, didSave: true },
      completion: {
        dynamicRegistration: false,
        completionItem: { snippetSupport: false, deprecatedSupport: true, tagSupport: { valueSet: [1] } },
        contextSupport: true,
      },
      hover: { dynamicRegistration: false, contentFormat: ['plaintext'] },
      signatureHelp: {
        dynamicRegistration: false,
        signatureInformation: { parameterInformation: { labelOffsetSupport: true }, activeParameterSupport: true },
      },
      references: { dynamicRegistration: false },
      definition: { dynamicRegistration: false, linkSupport: true },
      declaration: { dynamicRegistration: false, linkSupport: true },
      implementation: { dynamicRegistration: false, linkSupport: true },
      typeDefinition: { dynamicRegistration: false, linkSupport: true },
      documentSymbol: {
        dynamicRegistration: false,
        hierarchicalDocumentSymbolSupport: true,
        symbolKind: { valueSet: upTo(26) },
      },
      documentHighlight: { dynamicRegistration: false },
      codeAction: {
        dynamicRegistration: false,
        codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source'] } },
        isPreferredSupport: true,
      },
      formatting: { dynamicRegistration: false },
      rangeFormatting: { dynamicRegistration: false },
      rename: { dynamicRegistration: false },
      publishDiagnostics: { relatedInformation: false, codeDescriptionSupport: false, tagSupport: { valueSet: [1, 2] } },
    },
    experimental: {},
  },
};

export const able = {
  capabilities: {
    workspace: {
      workspaceFolders: true,
      didChangeWatchedFiles: { dynamicRegistration: true },
      inlayHint: { refreshSupport: true },
      workspaceEdit: { documentChanges: true },
    },
    textDocument: {
      hover: { contentFormat: ['markdown'] },
      publishDiagnostics: { versionSupport: true, relatedInformation: true },
      definition: { linkSupport: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
    },
  },
};

export const pulling = {
  capabilities: {
    workspace: { diagnostics: { refreshSupport: true } },
    textDocument: { diagnostic: { dynamicRegistration: false }, publishDiagnostics: {} },
  },
};
