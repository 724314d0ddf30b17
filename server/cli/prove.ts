// Asks the solver HiGHS whether an order of work can be done sooner.
import type { Proof } from '#answers/improve';
import { MOST_VARIABLES, proofModel } from '#schedule/search/proof-model';
import { type Proposal, partsOf, proposalOf } from '#schedule/search/proposal';
import type { Timeline } from '#schedule/timeline';

/** Seconds for each question. */
const PATIENCE = 60;
/** Each answer is a better schedule, or the last. */
const MOST_QUESTIONS = 50;

export async function prove(timeline: Timeline, proposal: Proposal): Promise<readonly [Proposal, Proof]> {
  const solver = await (await import('./solver.ts')).loaded();
  let best = proposal;
  for (let question = 0; question < MOST_QUESTIONS; question++) {
    const model = proofModel(partsOf(timeline), best.end);
    if (model === undefined) return [best, { kind: 'solver' }];
    if (typeof model === 'number') {
      const why = `For a proof the plan is too large: over ${MOST_VARIABLES} moments at which steps could begin.`;
      return [best, { kind: 'unanswered', why }];
    }
    const { Status, Columns } = solver.solve(model.text, { output_flag: false, time_limit: PATIENCE });
    if (Status === 'Infeasible') return [best, { kind: 'solver' }];
    const found = Status === 'Optimal' ? model.endOf((name) => primal(Columns[name])) : undefined;
    if (found === undefined || found.end >= best.end) break;
    best = proposalOf(timeline, { ...best, ...found });
    if (best.end <= best.lowerBound) return [best, { kind: 'bound' }];
  }
  return [best, { kind: 'unanswered', why: `The solver did not come to an end within ${PATIENCE} seconds.` }];
}

function primal(column: object | undefined): number {
  return column !== undefined && 'Primal' in column ? Number(column.Primal) : 0;
}
