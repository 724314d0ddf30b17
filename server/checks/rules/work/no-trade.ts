// Tasks that no trade does: nobody to phone, no crew in the dates, no labour in the cost.
import { finding, findingSort } from '#kit/finding';
import type { Task } from '#model/model';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';

export const noTradeFor = findingSort<[task: string]>({
  code: 'work/no-trade',
  severity: 'warning',
  say: (task) =>
    `Nobody is to do "${task}": no crew limits its dates, no labour is in its cost, and nobody gets a call. Add "by" and a trade.`,
});

export const noTradesYet = findingSort<[task: string, others: number]>({
  code: 'work/no-trade',
  severity: 'note',
  say: (task, others) =>
    `No trades are named yet, so nobody is to do "${task}"${others > 0 ? ` and ${others} more` : ''}: the dates know no crews, and the cost no labour. Add a trade, and "by" to each task.`,
});

export const noTrade: Check = {
  code: 'work/no-trade',
  gathers: true,
  about: 'A task should name the trade that does it. Before a plan names any trade, one note says so for all.',
  wrong: `trade framing crew of 3 at $52/h
task frame takes 5d by framing
task sweep takes 1d after frame
`,
  right: `trade framing crew of 3 at $52/h
task frame takes 5d by framing
task sweep takes 1d by framing after frame
`,
  run: ({ model }) => {
    // A misspelled trade is a finding of its own.
    const open = withoutTrade(model.list('task')).filter(
      ({ slot }) => model.names.bySlot.get(slot)?.declaration.given.by === undefined,
    );
    const [first] = open;
    if (first === undefined) return [];
    if (model.list('trade').length === 0) return [finding(noTradesYet, first.place, first.name, open.length - 1)];
    return open.map((task) => finding(noTradeFor, task.place, task.name));
  },
};

/** What stands from one step to another is hired, and nobody does it. */
const withoutTrade = keptFor((tasks: readonly Task[]): readonly Task[] =>
  tasks.filter(({ given }) => given.by === undefined && given.stands === undefined),
);
