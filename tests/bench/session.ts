// One editing session: opens a plan of so many lines, makes the eight kinds of edit by turns, and takes the time from
// writing each change to the stream until the diagnostics arrive that hold the finding it must change.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { type LanguageClient, startLanguageServer } from '../support/language-client.ts';
import { EDITS, type Edit, signature } from './edits.ts';
import { type Figures, figures, hundredths } from './figures.ts';
import { bigPlan } from './plan/big-plan.ts';

type Work = { readonly [counter: string]: number };

export interface Session {
  readonly lines: number;
  readonly tasks: number;
  readonly rooms: number;
  readonly findings: number;
  /** From writing `didOpen` to the first diagnostics. */
  readonly open: number;
  readonly keystroke: Figures;
  readonly hints: Figures;
  readonly hover: Figures;
  readonly byKind: { readonly [kind: string]: Figures & { readonly work?: Work } };
  /** Kinds whose finding did not change in time: their times are missing above. */
  readonly unanswered: readonly string[];
  /** The most memory the process ever held, where the system says (Linux). */
  readonly peakMegabytes?: number;
}

const URI = 'file:///street/plan.screed';
/** As long as between two keys of a fast typist's. */
const BETWEEN = 40;

export async function measureSession(server: string, lines: number, rounds: number): Promise<Session> {
  const text = bigPlan(lines);
  const client = startLanguageServer(process.execPath, [server, '--stdio'], { patience: 5000 });
  await client.initialize({ capabilities: { textDocument: { publishDiagnostics: { versionSupport: true } } } });
  const from = performance.now();
  client.open(URI, text);
  const first = await client.waitForDiagnostics(URI);
  const open = hundredths(performance.now() - from);

  const times = new Map<Edit, number[]>(EDITS.map((edit) => [edit, []]));
  const works = new Map<Edit, Work>();
  const unanswered = new Set<Edit>();
  const hints: number[] = [];
  const hovers: number[] = [];
  let shown = first.diagnostics;
  // A first round that does not count: the engine is not yet warm.
  for (let round = -1; round < rounds; round++) {
    for (const edit of EDITS) {
      if (unanswered.has(edit)) continue;
      for (const [before, after] of [
        [edit.there, edit.back],
        [edit.back, edit.there],
      ] as const) {
        const was = signature(edit, shown);
        const moment = client.replace(URI, before, after);
        try {
          const published = await client.waitForDiagnostics(URI, (diagnostics) => signature(edit, diagnostics) !== was);
          if (round >= 0) times.get(edit)!.push(performance.now() - moment);
          shown = published.diagnostics;
        } catch {
          unanswered.add(edit);
          continue;
        }
        const work = await client.request<Work>('screed/work').catch(() => undefined);
        if (work !== undefined && round >= 0) works.set(edit, work);
        const line = lineOf(client.textOf(URI), edit.there);
        hints.push(
          await timed(() => client.request('textDocument/inlayHint', { textDocument: { uri: URI }, range: screenful(line) })),
        );
        hovers.push(
          await timed(() =>
            client.request('textDocument/hover', { textDocument: { uri: URI }, position: { line, character: 12 } }),
          ),
        );
        await pause(BETWEEN);
      }
    }
  }
  const peak = peakMegabytes(client);
  client.kill();
  return {
    lines,
    tasks: count(text, /^ *task /gm),
    rooms: count(text, /^room /gm),
    findings: first.diagnostics.length,
    open,
    keystroke: figures([...times.values()].flat()),
    hints: figures(hints),
    hover: figures(hovers),
    byKind: Object.fromEntries(
      EDITS.map((edit) => {
        const work = works.get(edit);
        return [edit.kind, { ...figures(times.get(edit)!), ...(work === undefined ? {} : { work }) }];
      }),
    ),
    unanswered: [...unanswered].map(({ kind }) => kind),
    ...(peak === undefined ? {} : { peakMegabytes: peak }),
  };
}

async function timed(request: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await request();
  return performance.now() - from;
}

function screenful(line: number) {
  return { start: { line: Math.max(0, line - 30), character: 0 }, end: { line: line + 30, character: 0 } };
}

function lineOf(text: string, part: string): number {
  const at = text.indexOf(part.split('\n')[0]!);
  return count(text.slice(0, Math.max(0, at)), /\n/g);
}

function count(text: string, what: RegExp): number {
  return text.match(what)?.length ?? 0;
}

function peakMegabytes(client: LanguageClient): number | undefined {
  try {
    const kilobytes = /VmHWM:\s*(\d+)/.exec(readFileSync(`/proc/${client.pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? undefined : hundredths(Number(kilobytes) / 1024);
  } catch {
    return undefined;
  }
}
