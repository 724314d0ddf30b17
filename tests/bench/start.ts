// How long it takes from starting the process to the answer to `initialize`, beside bare Node in the same minute.
import { spawn } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { startLanguageServer } from '../support/language-client.ts';
import { type Figures, figures, hundredths } from './figures.ts';

export interface Start {
  readonly bareNode: Figures;
  readonly initialize: Figures;
  /** The difference of the middle values. */
  readonly over: number;
}

/** By turns, so that a busy minute burdens both alike. */
export async function measureStart(server: string, rounds: number): Promise<Start> {
  const bare: number[] = [];
  const ours: number[] = [];
  for (let round = 0; round < rounds; round++) {
    bare.push(await bareNode());
    ours.push(await initialized(server));
  }
  const [bareFigures, ourFigures] = [figures(bare), figures(ours)];
  return { bareNode: bareFigures, initialize: ourFigures, over: hundredths(ourFigures.p50 - bareFigures.p50) };
}

function bareNode(): Promise<number> {
  const from = performance.now();
  return new Promise((resolve) => {
    spawn(process.execPath, ['-e', '0'], { stdio: 'ignore' }).on('exit', () => resolve(performance.now() - from));
  });
}

async function initialized(server: string): Promise<number> {
  const from = performance.now();
  const client = startLanguageServer(process.execPath, [server, '--stdio']);
  await client.request('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  const time = performance.now() - from;
  client.kill();
  await client.exited;
  return time;
}
