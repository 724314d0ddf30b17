// `screed risk`: what may become of the dates, by many runs of the plan, as tables, as JSON or as comma-separated values.
import { type RiskAnswer, riskAnswer } from '#answers/risk';
import { riskTables } from '#answers/risk-table';
import { readIsoDate } from '#kit/dates';
import { type Cell, writeCsv } from '#kit/table';
import { misuse } from './faults.ts';
import { readPlan } from './input.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText } from './output.ts';

export interface RiskOptions extends Common {
  readonly runs?: string;
  readonly seed?: string;
  readonly shape?: string;
  readonly by?: string;
}

const MOST_RUNS = 1_000_000;

export function risk(path: string, options: RiskOptions): number {
  const format = chosenFormat(options, ['table', 'json', 'csv']);
  const runs = wholeNumber(options.runs ?? '10000', 'runs', 1, MOST_RUNS);
  const seed = wholeNumber(options.seed ?? '1', 'seed', 0, 0xffffffff);
  const by = options.by === undefined ? undefined : readIsoDate(options.by);
  if (options.by !== undefined && by === undefined) throw misuse(`--by takes a date such as 2027-06-18, not "${options.by}"`);
  const view = readPlan(path, options.asOf);
  const answer = riskAnswer(view, { runs, seed, shape: shapeOf(options.shape) }, by);
  switch (format) {
    case 'table':
      emit(
        riskTables(answer, view)
          .map((table) => drawTable(table, options.quiet))
          .join('\n'),
        options,
      );
      break;
    case 'json':
      emit(jsonText(answer), options);
      break;
    case 'csv':
      emit(writeCsv(stepRows(answer)), options);
      break;
  }
  return 0;
}

function stepRows({ steps }: RiskAnswer): readonly (readonly Cell[])[] {
  return [
    ['name', 'label', 'trade', 'on chain', 'range of', 'range from', 'least', 'likely', 'most', 'expected', 'deviation', 'fails'],
    ...steps.map(({ name, label, trade, onChain, range, fails }): readonly Cell[] => [
      name,
      label,
      trade,
      onChain,
      range?.of,
      range?.from,
      range?.least,
      range?.likely,
      range?.most,
      range?.expected,
      range?.deviation,
      fails,
    ]),
  ];
}

function shapeOf(shape = 'beta-pert'): RiskAnswer['shape'] {
  if (shape === 'beta-pert' || shape === 'triangular') return shape;
  throw misuse(`--shape takes beta-pert or triangular, not "${shape}"`);
}

export function wholeNumber(text: string, option: string, least: number, most: number): number {
  const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  throw misuse(`--${option} takes a whole number from ${least} to ${most}, not "${text}"`);
}
