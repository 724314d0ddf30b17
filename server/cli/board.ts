// `screed board`: several plans that share trades, week by week.
import { boardOf } from '#answers/board';
import { boardAnswer } from '#answers/board-json';
import { boardTable } from '#answers/board-table';
import { type Cell, writeCsv } from '#kit/table';
import { readPlans } from './input.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText } from './output.ts';

const FORMATS = ['table', 'json', 'csv'] as const;

export function board(paths: readonly string[], options: Common): number {
  const format = chosenFormat(options, FORMATS);
  // A file without a plan of its own, such as the trades that all share, is no house.
  const plans = readPlans(paths.length === 0 ? ['.'] : paths, options.asOf).map(({ view }) => view);
  const found = boardOf(plans.filter((view) => plans.length === 1 || view.plan.model.plan !== undefined));
  switch (format) {
    case 'table':
      emit(drawTable(boardTable(found), options.quiet), options);
      break;
    case 'json':
      emit(jsonText(boardAnswer(found)), options);
      break;
    case 'csv': {
      const { plans: named, trades } = boardAnswer(found);
      emit(
        writeCsv([
          ['trade', 'crews', 'week', 'plan', 'step', 'day', 'asked for twice'],
          ...trades.flatMap(({ name, crews, weeks }) =>
            weeks.flatMap(({ week, steps, askedTwice }) =>
              steps.flatMap(({ plan, step, days }) =>
                days.map((day): readonly Cell[] => [
                  name,
                  crews,
                  week,
                  named[plan]!.file,
                  step,
                  day,
                  askedTwice.includes(day) ? 'yes' : 'no',
                ]),
              ),
            ),
          ),
        ]),
        options,
      );
      break;
    }
  }
  return 0;
}
