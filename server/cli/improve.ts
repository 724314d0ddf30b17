// `screed schedule PATH --improve`: looks for an order of work that is done sooner, and tells on standard error how it
// goes. `--prove` asks a general solver whether there is any better.
import { finishDay } from '#answers/days';
import { improveAnswer, improveTable, type Proof } from '#answers/improve';
import type { View } from '#answers/view';
import { type Cell, writeCsv } from '#kit/table';
import { improve, type Proposal } from '#schedule/search/proposal';
import { misuse } from './faults.ts';
import { readPlan } from './input.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText, remark } from './output.ts';
import { prove } from './prove.ts';

export interface ImproveOptions extends Common {
  readonly improve?: string | true;
  readonly seed?: string;
  readonly prove?: true;
}

const USUAL_SCHEDULES = 5000;

export async function improved(path: string, options: ImproveOptions): Promise<number> {
  const format = chosenFormat(options, ['table', 'json', 'csv'] as const);
  const schedules = whole('--improve', options.improve === true ? undefined : options.improve, USUAL_SCHEDULES);
  const seed = whole('--seed', options.seed, 1);
  const view = readPlan(path, options.asOf);
  const { timeline } = view.plan;
  let proposal = improve(timeline, {
    schedules,
    seed,
    report: ({ schedules: done, end, lowerBound }) =>
      remark(
        `${done} of ${schedules} schedules: done ${finishDay(end, timeline)}; none is done before ${finishDay(lowerBound, timeline)}`,
        options,
      ),
  });
  let proof: Proof = { kind: proposal.end <= proposal.lowerBound ? 'bound' : 'open' };
  if (options.prove === true && proof.kind === 'open') [proposal, proof] = await prove(timeline, proposal);
  write(view, proposal, proof, format, options);
  return 0;
}

function write(view: View, proposal: Proposal, proof: Proof, format: 'table' | 'json' | 'csv', options: Common): void {
  const answer = improveAnswer(view, proposal, proof);
  switch (format) {
    case 'table':
      emit(drawTable(improveTable(view, proposal, proof)), options);
      return;
    case 'json':
      emit(jsonText(answer), options);
      return;
    case 'csv':
      emit(
        writeCsv([
          ['name', 'trade', 'start now', 'finish now', 'start', 'finish'],
          ...answer.moved.map((step): readonly Cell[] => [
            step.name,
            step.trade,
            step.startNow,
            step.finishNow,
            step.start,
            step.finish,
          ]),
        ]),
        options,
      );
  }
}

function whole(option: string, text: string | undefined, usual: number): number {
  if (text === undefined) return usual;
  const number = Number(text);
  if (!(Number.isInteger(number) && number > 0 && number <= 10_000_000)) {
    throw misuse(`${option} takes a whole number from 1 on, not "${text}"`);
  }
  return number;
}
