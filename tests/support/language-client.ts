// A small language server protocol client over stdio for tests and for the benchmark: it starts a command, speaks to it
// as an editor would, keeps its own copy of the open texts, and waits for what it is told to wait for.
import { spawn } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import type { Diagnostic, Range } from 'vscode-languageserver-types';
import { lineStarts, offsetAt, positionAt } from '#kit/text';
import { type Message, messageReader, writeMessage } from './messages.ts';

export interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
}

export interface Change {
  /** Absent: the whole text. */
  readonly range?: Range;
  readonly text: string;
}

export interface Options {
  readonly folder?: string;
  readonly environment?: { readonly [name: string]: string };
  /** How long anything may take before it fails with what was seen so far. */
  readonly patience?: number;
  /** Answers to requests of the server's; without one, they are answered with null (a list of nulls for configuration). */
  readonly answers?: { readonly [method: string]: (params: unknown) => unknown };
}

export interface LanguageClient {
  readonly pid: number;
  /** Sends a request and gives its result; fails with the server's message where it answers with an error. */
  request<T = unknown>(method: string, params?: unknown): Promise<T>;
  /** The same, with the number by which it can be cancelled. */
  begin<T = unknown>(method: string, params?: unknown): { readonly id: number; readonly answer: Promise<T> };
  cancel(id: number): void;
  notify(method: string, params?: unknown): void;
  /** `initialize` and `initialized`; gives the server's answer. */
  initialize<T = unknown>(params?: { readonly [name: string]: unknown }): Promise<T>;
  open(uri: string, text: string, version?: number): void;
  /** Applies the changes in order to our copy and sends them. Gives the moment just before they were written, in ms. */
  change(uri: string, ...changes: readonly Change[]): number;
  /** Replaces the first place where `search` stands, sending only what differs; fails where there is none. */
  replace(uri: string, search: string, text: string): number;
  close(uri: string): void;
  textOf(uri: string): string;
  /** The first publication for a text since it was last opened or changed that satisfies the predicate, come or to come. */
  waitForDiagnostics(uri: string, predicate?: (diagnostics: readonly Diagnostic[]) => boolean): Promise<Published>;
  /** The next notification (from now on) that satisfies the predicate. */
  next<T = unknown>(method: string, predicate?: (params: T) => boolean): Promise<T>;
  /** Everything the server has sent unasked, in order. */
  readonly received: readonly Message[];
  readonly standardError: () => string;
  /** `shutdown` and `exit`; gives the exit status. */
  end(): Promise<number | undefined>;
  /** Ends the process at once. */
  kill(): void;
  readonly exited: Promise<number | undefined>;
}

interface Waiting {
  readonly wants: (message: Message) => boolean;
  readonly resolve: (message: Message) => void;
  readonly reject: (error: Error) => void;
}

/** Starts a language server and speaks with it over its standard streams. */
export function startLanguageServer(command: string, parameters: readonly string[], options: Options = {}): LanguageClient {
  const child = spawn(command, [...parameters], {
    stdio: ['pipe', 'pipe', 'pipe'],
    ...(options.folder === undefined ? {} : { cwd: options.folder }),
    env: { ...process.env, ...options.environment },
  });
  const patience = options.patience ?? 20_000;
  const received: Message[] = [];
  const texts = new Map<string, { text: string; version: number; published: Published[] }>();
  let waiting: Waiting[] = [];
  let lastId = 0;
  let standardError = '';
  let gone: string | undefined;

  const fail = (why: string) => {
    gone = why;
    for (const { reject } of waiting) reject(new Error(`${why}\n${standardError.slice(-2000)}`));
    waiting = [];
  };
  const send = (message: { readonly [name: string]: unknown }) => {
    if (gone === undefined) writeMessage(child.stdin, { jsonrpc: '2.0', ...message });
  };
  const wait = (what: string, wants: (message: Message) => boolean): Promise<Message> =>
    new Promise((resolve, reject) => {
      if (gone !== undefined) return reject(new Error(gone));
      const patienceEnds = setTimeout(() => {
        waiting = waiting.filter((other) => other !== entry);
        const seen = received.slice(-5).map(({ method, params }) => `  ${method} ${JSON.stringify(params).slice(0, 300)}`);
        reject(new Error(`waited ${patience} ms for ${what}; last seen:\n${seen.join('\n')}\n${standardError.slice(-2000)}`));
      }, patience);
      const done =
        <T>(use: (value: T) => void) =>
        (value: T) => {
          clearTimeout(patienceEnds);
          use(value);
        };
      const entry: Waiting = { wants, resolve: done(resolve), reject: done(reject) };
      waiting.push(entry);
    });

  const take = (message: Message) => {
    if (message.method !== undefined && message.id !== undefined) return answer(message);
    if (message.method !== undefined) received.push(message);
    if (message.method === 'textDocument/publishDiagnostics') {
      const published = message.params as Published;
      texts.get(published.uri)?.published.push(published);
    }
    for (const entry of waiting.filter(({ wants }) => wants(message))) {
      waiting = waiting.filter((other) => other !== entry);
      entry.resolve(message);
    }
  };
  const answer = ({ id, method, params }: Message) => {
    received.push({ method, params } as Message);
    const known = options.answers?.[method!];
    const items = (params as { items?: readonly unknown[] } | undefined)?.items ?? [];
    send({
      id,
      result: known !== undefined ? known(params) : method === 'workspace/configuration' ? items.map(() => null) : null,
    });
  };

  child.stdout.on('data', messageReader(take, fail));
  child.stderr.on('data', (chunk: Buffer) => {
    standardError += chunk.toString('utf8');
  });
  child.stdin.on('error', () => undefined);
  child.on('error', (error) => fail(`could not start ${command}: ${error.message}`));
  const exited = new Promise<number | undefined>((resolve) => {
    child.on('exit', (status, signal) => {
      fail(`the server ended with ${status ?? signal}`);
      resolve(status ?? undefined);
    });
  });

  const begin = <T>(method: string, params?: unknown) => {
    const id = ++lastId;
    const answered = wait(`the answer to ${method}`, (message) => message.method === undefined && message.id === id);
    send({ id, method, params });
    const result = answered.then(({ error, result }) => {
      if (error !== undefined) throw new Error(`${method}: ${error.code} ${error.message}`);
      return result as T;
    });
    return { id, answer: result };
  };
  const request = <T>(method: string, params?: unknown) => begin<T>(method, params).answer;
  const notify = (method: string, params?: unknown) => send({ method, params });
  const opened = (uri: string) => {
    const document = texts.get(uri);
    if (document === undefined) throw new Error(`${uri} is not open`);
    return document;
  };
  const change = (uri: string, ...changes: readonly Change[]) => {
    const document = opened(uri);
    document.text = changes.reduce(applied, document.text);
    document.version++;
    document.published.length = 0;
    const contentChanges = changes.map(({ range, text }) => (range === undefined ? { text } : { range, text }));
    const params = { textDocument: { uri, version: document.version }, contentChanges };
    const moment = performance.now();
    notify('textDocument/didChange', params);
    return moment;
  };

  return {
    pid: child.pid ?? 0,
    begin,
    request,
    notify,
    received,
    exited,
    change,
    cancel: (id) => notify('$/cancelRequest', { id }),
    initialize: async <T>(params: { readonly [name: string]: unknown } = {}) => {
      const result = await request<T>('initialize', { processId: process.pid, rootUri: null, capabilities: {}, ...params });
      notify('initialized', {});
      return result;
    },
    open: (uri, text, version = 1) => {
      texts.set(uri, { text, version, published: [] });
      notify('textDocument/didOpen', { textDocument: { uri, languageId: 'screed', version, text } });
    },
    replace: (uri, search, text) => {
      const before = opened(uri).text;
      const from = before.indexOf(search);
      if (from < 0) throw new Error(`'${search}' does not stand in ${uri}`);
      const starts = lineStarts(before);
      const [same, sameEnd] = commonEnds(search, text);
      const start = positionAt(before, starts, from + same);
      const end = positionAt(before, starts, from + search.length - sameEnd);
      return change(uri, { range: { start, end }, text: text.slice(same, text.length - sameEnd) });
    },
    close: (uri) => {
      texts.delete(uri);
      notify('textDocument/didClose', { textDocument: { uri } });
    },
    textOf: (uri) => opened(uri).text,
    waitForDiagnostics: async (uri, predicate = () => true) => {
      const come = opened(uri).published.find(({ diagnostics }) => predicate(diagnostics));
      if (come !== undefined) return come;
      const fits = ({ method, params }: Message) =>
        method === 'textDocument/publishDiagnostics' &&
        (params as Published).uri === uri &&
        predicate((params as Published).diagnostics);
      return (await wait(`diagnostics of ${uri}`, fits)).params as Published;
    },
    next: async <T>(method: string, predicate: (params: T) => boolean = () => true) => {
      const message = await wait(method, (each) => each.method === method && predicate(each.params as T));
      return message.params as T;
    },
    standardError: () => standardError,
    end: async () => {
      await request('shutdown');
      notify('exit');
      return exited;
    },
    kill: () => void child.kill('SIGKILL'),
  };
}

function applied(text: string, { range, text: inserted }: Change): string {
  if (range === undefined) return inserted;
  const starts = lineStarts(text);
  return text.slice(0, offsetAt(text, starts, range.start)) + inserted + text.slice(offsetAt(text, starts, range.end));
}

/** How many letters two texts share at their beginning, and at their end beyond that; never half a pair. */
function commonEnds(one: string, other: string): readonly [number, number] {
  const most = Math.min(one.length, other.length);
  let start = 0;
  while (start < most && one[start] === other[start]) start++;
  if (start > 0 && /[\ud800-\udbff]/.test(one[start - 1]!)) start--;
  let end = 0;
  while (end < most - start && one[one.length - 1 - end] === other[other.length - 1 - end]) end++;
  if (end > 0 && /[\udc00-\udfff]/.test(one[one.length - end]!)) end--;
  return [start, end];
}
