// The only file that holds a connection to an editor. It keeps the open texts in step, runs the analysis on the turn after
// a change, tells what changed and nothing else, and fences every request: an answer or nothing, never an end.
import {
  type Connection,
  type Diagnostic,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  type InitializeParams,
  type InitializeResult,
  LSPErrorCodes,
  ResponseError,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import { type Client, clientOf } from '#editor/client';
import { diagnosticsOf, sentences } from '#editor/diagnostics';
import { features, offeredTo, wideFeatures } from '#editor/features';
import { shownHints } from '#editor/inlay-hints';
import { type Settings, settingsOf } from '#editor/settings';
import { type Addresses, fileIn, isRefusal, type View } from '#editor/view';
import type { Files } from '#host/files';
import { type TextChange, type Workspace, workspace } from './workspace.ts';

export interface Surroundings {
  readonly files: Files;
  /** Where the library's texts lie. */
  readonly libraryFolder: string;
  /** Where the pages of the rule reference lie; absent where there are none to open. */
  readonly pagesFolder?: string;
  readonly version: string;
  /** Called in the midst of long work. */
  readonly onLongWork?: () => void;
}

interface Sent {
  /** The list as it was sent last, and for which version. */
  json: string;
  version: number | undefined;
}

/** Plans, and what was found in them before. */
const WATCHED = [{ globPattern: '**/*.screed' }, { globPattern: '**/.screed-baseline.json' }];

/** Hints are compared, and asked for again, at most this often. */
const REFRESH_EVERY = 250;

export function serve(connection: Connection, { files, libraryFolder, pagesFolder, version, onLongWork }: Surroundings): void {
  const places = workspace(files, libraryFolder, { onLongWork });
  const addresses = addressBook(files, places, pagesFolder);
  let client: Client = clientOf(undefined);
  let settings: Settings = settingsOf(undefined);
  let folders: readonly string[] = [];
  let asked = 0;
  const sent = new Map<string, Sent>();
  const coloursSent: View['coloursSent'] = new Map();

  connection.onInitialize((params): InitializeResult => {
    client = clientOf(params.capabilities);
    settings = settingsOf(params.initializationOptions);
    folders = foldersOf(params).map(addresses.pathOf);
    places.setFolders(folders);
    return {
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        ...(client.workspaceFolders ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } } : {}),
        ...(client.pullsDiagnostics
          ? { diagnosticProvider: { identifier: 'screed', interFileDependencies: true, workspaceDiagnostics: false } }
          : {}),
        ...offeredTo(client),
      },
      serverInfo: { name: 'screed', version },
    };
  });

  connection.onInitialized(() => {
    setImmediate(places.prepare);
    if (client.watchesFiles)
      connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: WATCHED }).catch(() => undefined);
  });

  // ---- texts ----

  connection.onDidOpenTextDocument(({ textDocument: { uri, version: number, text } }) => {
    const path = addresses.opened(uri);
    // Editors that watch no files tell of changes on disk only by opening and saving.
    if (!client.watchesFiles) places.diskChanged();
    places.open(path, number, text);
    sent.delete(path);
    later();
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri, version: number }, contentChanges }) => {
    const path = addresses.pathOf(uri);
    try {
      if (places.change(path, number, contentChanges as readonly TextChange[])) later(path);
      else connection.console.warn(`${uri} was changed before it was opened.`);
    } catch (error) {
      // A text that may be wrong is worse than none: it is forgotten until it is opened again.
      places.close(path);
      connection.console.error(
        `A change of ${uri} could not be applied (${messageOf(error)}). Close the file and open it again.`,
      );
    }
  });

  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    const path = addresses.pathOf(uri);
    places.close(path);
    clear(path, uri);
    later();
  });

  connection.onDidSaveTextDocument(() => {
    if (!client.watchesFiles) places.diskChanged();
    later();
  });

  connection.onDidChangeWatchedFiles(() => {
    places.diskChanged();
    later();
  });

  connection.onDidChangeConfiguration(({ settings: sent }) => {
    // Some editors send what they are set to, others only that it changed.
    if (sent !== null && sent !== undefined) set(sent);
    else if (client.answersConfiguration) connection.workspace.getConfiguration('screed').then(set, () => undefined);
  });

  function set(sent: unknown): void {
    const before = settings;
    settings = settingsOf(sent, before);
    if (settings.profile === before.profile) return;
    if (client.pullsDiagnostics && client.refreshesDiagnostics) connection.languages.diagnostics.refresh().catch(() => undefined);
    later();
  }

  connection.onNotification(
    'workspace/didChangeWorkspaceFolders',
    ({ event }: { event: { added: readonly { uri: string }[]; removed: readonly { uri: string }[] } }) => {
      const removed = new Set(event.removed.map(({ uri }) => addresses.pathOf(uri)));
      folders = [...folders.filter((folder) => !removed.has(folder)), ...event.added.map(({ uri }) => addresses.pathOf(uri))];
      places.setFolders(folders);
      later();
    },
  );

  // ---- what is told unasked ----

  /** Looks again on the next turn, unless another change comes before. */
  function later(edited?: string): void {
    const mine = ++asked;
    // A change that waits in the queue is handed over between the two turns.
    setImmediate(() =>
      setImmediate(() => {
        if (mine === asked) look(edited);
      }),
    );
  }

  function look(edited: string | undefined): void {
    try {
      sentences.made = 0;
      const plans = places.plans();
      let published = 0;
      let othersChanged = false;
      for (const path of places.openPaths()) {
        const list = listFor(path);
        if (client.pullsDiagnostics) {
          const before = sent.get(path);
          const json = JSON.stringify(list);
          if (before !== undefined && before.json !== json && path !== edited) othersChanged = true;
          sent.set(path, { json, version: places.versionOf(path) });
        } else if (publish(path, list)) published += 1;
      }
      if (othersChanged && client.refreshesDiagnostics) connection.languages.diagnostics.refresh().catch(() => undefined);
      for (const plan of plans) {
        plan.work.messagesMade = sentences.made;
        plan.work.filesPublished = published;
      }
      if (client.refreshesHints) hintsLater(edited);
    } catch (error) {
      connection.console.error(`The plan could not be worked out: ${stackOf(error)}`);
    }
  }

  function listFor(path: string): readonly Diagnostic[] {
    return diagnosticsOf(path, places.plansOf(path), client, addresses, settings.profile);
  }

  /** Equal lists are not sent again, but an empty one is sent for each version: a clearing must never get lost. */
  function publish(path: string, diagnostics: readonly Diagnostic[]): boolean {
    const number = places.versionOf(path);
    const json = JSON.stringify(diagnostics);
    const before = sent.get(path);
    const same = before?.json === json && (diagnostics.length > 0 || before.version === number);
    if (same) return false;
    sent.set(path, { json, version: number });
    const versioned = client.diagnosticVersions && number !== undefined ? { version: number } : {};
    connection.sendDiagnostics({ uri: addresses.uriOf(path), ...versioned, diagnostics: [...diagnostics] });
    return true;
  }

  function clear(path: string, uri: string): void {
    sent.delete(path);
    coloursSent.delete(path);
    if (!client.pullsDiagnostics) connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  // ---- hints that changed elsewhere ----

  const hints = new Map<string, { range: Parameters<typeof shownHints>[1]; labels: readonly string[] }>();

  /** Looked at once nobody types: what stands beside the text is not worth a keystroke's time. */
  let looking: NodeJS.Timeout | undefined;
  function hintsLater(edited: string | undefined): void {
    clearTimeout(looking);
    looking = setTimeout(() => {
      try {
        if (hintsChanged(edited)) connection.languages.inlayHint.refresh().catch(() => undefined);
      } catch (error) {
        connection.console.error(`Hints could not be compared: ${stackOf(error)}`);
      }
    }, REFRESH_EVERY);
    looking.unref();
  }

  /** Whether what an editor shows beside the text of a file it did not edit, or beside other blocks, is no longer so. */
  function hintsChanged(edited: string | undefined): boolean {
    let changed = false;
    for (const [path, shown] of hints) {
      const view = viewOf(path);
      if (view === undefined) {
        hints.delete(path);
        continue;
      }
      const labels = shownHints(view, shown.range);
      const differ = labels.length !== shown.labels.length ? 2 : labels.filter((label, at) => label !== shown.labels[at]).length;
      // One label of the edited file is that of the edited block; the editor asks for it again by itself.
      if (differ > (path === edited ? 1 : 0)) changed = true;
      hints.set(path, { range: shown.range, labels });
    }
    return changed;
  }

  // ---- requests ----

  function viewOf(path: string): View | undefined {
    const plans = places.plansOf(path);
    const [plan] = plans;
    const file = plan === undefined ? undefined : fileIn(plan, path);
    return plan === undefined || file === undefined
      ? undefined
      : { file, plan, plans, client, profile: settings.profile, addresses, coloursSent };
  }

  for (const { method, answer } of features) {
    connection.onRequest(method, (params: AboutAFile) =>
      fenced(method, () => {
        const path = addresses.pathOf(addressIn(params));
        const view = viewOf(path);
        if (view === undefined) return undefined;
        if (method === 'textDocument/inlayHint' && params.range !== undefined)
          hints.set(path, { range: params.range, labels: shownHints(view, params.range) });
        return answer(view, params as never);
      }),
    );
  }
  for (const { method, answer } of wideFeatures) {
    connection.onRequest(method, (params: unknown) =>
      fenced(method, () => answer({ plans: places.plans(), client, addresses }, params as never)),
    );
  }
  connection.onRequest('textDocument/diagnostic', (params: { textDocument: { uri: string }; previousResultId?: string }) =>
    fenced('textDocument/diagnostic', () => {
      const path = addresses.pathOf(params.textDocument.uri);
      const items = listFor(path);
      const resultId = fingerprint(JSON.stringify(items));
      return params.previousResultId === resultId ? { kind: 'unchanged', resultId } : { kind: 'full', resultId, items };
    }),
  );
  connection.onRequest('screed/work', () =>
    fenced('screed/work', () =>
      places
        .plans()
        .map(({ work }) => work)
        .reduce<Record<string, number>>(added, {}),
    ),
  );

  function fenced(method: string, answer: () => unknown): unknown {
    let result: unknown;
    try {
      result = answer();
    } catch (error) {
      connection.console.error(`${method} could not be answered: ${stackOf(error)}`);
      return new ResponseError(ErrorCodes.InternalError, `${method} could not be answered: ${messageOf(error)}`);
    }
    if (isRefusal(result)) return new ResponseError(LSPErrorCodes.RequestFailed, result.refused);
    return result ?? null;
  }
}

/** A request about one file says which in one of three ways. */
interface AboutAFile {
  readonly textDocument?: { readonly uri: string };
  readonly item?: { readonly uri: string };
  readonly data?: { readonly uri: string };
  readonly range?: Parameters<typeof shownHints>[1];
}

function addressIn({ textDocument, item, data }: AboutAFile): string {
  return (textDocument ?? item ?? data)?.uri ?? '';
}

/** Addresses of an editor to paths and back, in the editor's own spelling for what it has opened. */
function addressBook(files: Files, places: Workspace, pagesFolder: string | undefined) {
  const spelled = new Map<string, string>();
  const known = new Map<string, string>();
  const pathOf = (uri: string): string => {
    let path = known.get(uri);
    if (path === undefined) {
      path = pathOfAddress(uri, files);
      if (known.size > 10_000) known.clear();
      known.set(uri, path);
    }
    return path;
  };
  return {
    pathOf,
    opened: (uri: string): string => {
      known.delete(uri);
      const path = pathOf(uri);
      spelled.set(path, uri);
      return path;
    },
    uriOf: (path: string): string => spelled.get(path) ?? addressOfPath(path),
    versionOf: places.versionOf,
    isInLibrary: places.isInLibrary,
    ...(pagesFolder === undefined ? {} : { pageOf: (path: string): string => addressOfPath(`${pagesFolder}/${path}`) }),
  } satisfies Addresses & { readonly [name: string]: unknown };
}

/** The path of a file; what is no file of this machine keeps its address as its path. */
function pathOfAddress(uri: string, files: Files): string {
  try {
    const parsed = URI.parse(uri, true);
    if (parsed.scheme !== 'file') return uri;
    const path = parsed.authority === '' ? decodedPath(parsed) : `//${parsed.authority}${parsed.path}`;
    return files.real(path);
  } catch {
    return uri;
  }
}

function decodedPath({ path }: URI): string {
  return /^\/[A-Za-z]:/.test(path) ? path.charAt(1).toUpperCase() + path.slice(2) : path;
}

function addressOfPath(path: string): string {
  if (/^[a-z][a-z\d+.-]+:/i.test(path)) return path;
  return path.startsWith('//')
    ? URI.from({ scheme: 'file', authority: path.slice(2).split('/')[0]!, path: path.slice(path.indexOf('/', 2)) }).toString()
    : URI.from({ scheme: 'file', path: path.startsWith('/') ? path : `/${path}` }).toString();
}

function foldersOf({ workspaceFolders, rootUri, rootPath }: InitializeParams): readonly string[] {
  if (workspaceFolders !== undefined && workspaceFolders !== null && workspaceFolders.length > 0)
    return workspaceFolders.map(({ uri }) => uri);
  if (typeof rootUri === 'string') return [rootUri];
  return typeof rootPath === 'string' && rootPath !== '' ? [addressOfPath(rootPath.replace(/(?<=.)\/$/, ''))] : [];
}

/** A short name for a list: equal lists have equal names. */
function fingerprint(json: string): string {
  let hash = 0;
  for (let at = 0; at < json.length; at++) hash = (Math.imul(hash, 31) + json.charCodeAt(at)) | 0;
  return `${json.length}-${(hash >>> 0).toString(36)}`;
}

function added(sum: Record<string, number>, work: object): Record<string, number> {
  for (const [name, count] of Object.entries(work)) sum[name] = (sum[name] ?? 0) + (count as number);
  return sum;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function stackOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
