// Asks the solver HiGHS whether an order of work can be done sooner.
import type { Proof } from '#answers/improve';
import { MOST_VARIABLES, proofModel } from '#schedule/search/proof-model';
import { type Proposal, partsOf, proposalOf } from '#schedule/search/proposal';
import type { Timeline } from '#schedule/timeline';
import { loaded } from './solver.ts';

/** Seconds for each question. */
const PATIENCE = 60;
/** Each answer is a better schedule, or the last. */
const MOST_QUESTIONS = 50;

export async function prove(timeline: Timeline, proposal: Proposal): Promise<readonly [Proposal, Proof]> {
  let best = proposal;
  for (let question = 0; question < MOST_QUESTIONS; question++) {
    const model = proofModel(partsOf(timeline), best.end);
    if (model === undefined) return [best, { kind: 'solver' }];
    if (typeof model === 'number') {
      const why = `For a proof the plan is too large: over ${MOST_VARIABLES} moments at which steps could begin.`;
      return [best, { kind: 'unanswered', why }];
    }
    // A new one for each question: one that ran out of time answers no more.
    const solver: Solver = await loaded();
    const { Status, Columns } = answerOf(solver, model.text);
    // Every variable is 0 or 1, so nothing is without bounds.
    if (Status === 'Infeasible' || Status === 'Primal infeasible or unbounded') return [best, { kind: 'solver' }];
    const found = Status === 'Optimal' ? model.endOf((name) => primal(Columns[name])) : undefined;
    if (found === undefined || found.end >= best.end) break;
    best = proposalOf(timeline, { ...best, ...found });
    if (best.end <= best.lowerBound) return [best, { kind: 'bound' }];
  }
  return [best, { kind: 'unanswered', why: `The solver came to no answer within ${PATIENCE} seconds.` }];
}

interface Answer {
  readonly Status: string;
  readonly Columns: { readonly [name: string]: object };
}

interface Solver {
  readonly solve: (
    model: string,
    options: { readonly time_limit: number; readonly output_flag: false; readonly presolve?: 'off' },
  ) => Answer;
}

/** The solver gives up on some models that it first makes smaller; as they are, it answers them. */
function answerOf(solver: Solver, model: string): Answer {
  try {
    return solver.solve(model, { output_flag: false, time_limit: PATIENCE });
  } catch {
    try {
      return solver.solve(model, { output_flag: false, time_limit: PATIENCE, presolve: 'off' });
    } catch {
      return { Status: 'Error', Columns: {} };
    }
  }
}

function primal(column: object | undefined): number {
  return column !== undefined && 'Primal' in column ? Number(column.Primal) : 0;
}
