// `screed takeoff`, `screed buy`, `screed layout`, `screed schedule`, `screed cost`: one plan as a table, as JSON, as comma-separated
// values or as a spreadsheet file.
import { buyAnswer, buySheet } from '#answers/buy-json';
import { buyTable } from '#answers/buy-table';
import type { CostGrouping } from '#answers/cost-groups';
import { costAnswer } from '#answers/cost-json';
import { costTable } from '#answers/cost-table';
import { layoutTables } from '#answers/layout/layout';
import { layoutAnswer, layoutRows } from '#answers/layout/layout-json';
import { proofsOf } from '#answers/layout/proofs';
import { scheduleAnswer } from '#answers/schedule-json';
import { scheduleTable } from '#answers/schedule-table';
import { type Sheet, sheetCells } from '#answers/sheet';
import { takeOffAnswer } from '#answers/takeoff-json';
import type { TakeOffGrouping } from '#answers/takeoff-lines';
import { takeOffSheet } from '#answers/takeoff-sheet';
import { takeOffTable } from '#answers/takeoff-table';
import type { View } from '#answers/view';
import { nearest } from '#kit/did-you-mean';
import { type Cell, writeCsv } from '#kit/table';
import { misuse } from './faults.ts';
import { readPlan } from './input.ts';
import { against, saveSchedule, writeSlippage } from './kept-schedule.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText } from './output.ts';

const FORMATS = ['table', 'json', 'csv'] as const;
const SHEET_FORMATS = [...FORMATS, 'xlsx'] as const;

export interface TableOptions extends Common {
  readonly by?: string;
  readonly trade?: string;
}

export interface ScheduleOptions extends TableOptions {
  readonly save?: string;
  /** A name; true for the latest. */
  readonly against?: string | true;
}

export function takeoff(path: string, options: TableOptions): number | Promise<number> {
  const by = grouping<TakeOffGrouping>(options.by, ['item', 'room', 'trade', 'element', 'part']);
  return answer(path, options, {
    table: (view) => drawTable(takeOffTable(by, view), options.quiet),
    json: takeOffAnswer,
    sheet: takeOffSheet,
  });
}

export function buy(path: string, options: TableOptions): number | Promise<number> {
  return answer(path, options, {
    table: (view) => drawTable(buyTable(view), options.quiet),
    json: buyAnswer,
    sheet: buySheet,
  });
}

export interface LayoutOptions extends Common {
  readonly prove?: true;
  readonly seconds?: string;
}

export async function layout(path: string, options: LayoutOptions): Promise<number> {
  const format = chosenFormat(options, FORMATS);
  const seconds = secondsOf(options);
  const view = readPlan(path, options.asOf);
  const proofs = options.prove === true ? proofsOf(view, await (await import('./solver.ts')).loadSolver(), seconds) : undefined;
  if (format === 'json') emit(jsonText(layoutAnswer(view, proofs)), options);
  else if (format === 'csv') emit(writeCsv(layoutRows(layoutAnswer(view, proofs))), options);
  else
    emit(
      layoutTables(view, proofs)
        .map((table) => drawTable(table, options.quiet))
        .join('\n'),
      options,
    );
  return 0;
}

function secondsOf({ seconds = '10' }: LayoutOptions): number {
  const value = Number(seconds);
  if (!(value > 0 && value <= 3600)) throw misuse(`--seconds takes a number of seconds up to 3600, not "${seconds}"`);
  return value;
}

export function schedule(path: string, options: ScheduleOptions): number {
  if (options.save !== undefined) return saveSchedule(readPlan(path, options.asOf), options.save, options);
  if (options.against !== undefined) {
    const format = chosenFormat(options, FORMATS);
    const view = readPlan(path, options.asOf);
    return writeSlippage(against(view, options.against), view, tradeOf(view, options), format, options);
  }
  return answer(path, options, {
    table: (view) => drawTable(scheduleTable(view, tradeOf(view, options)), options.quiet),
    json: (view) => scheduleAnswer(view, tradeOf(view, options)),
    csv: (view) => [
      [
        'name',
        'kind',
        'label',
        'phase',
        'trade',
        'start',
        'finish',
        'duration',
        'early start',
        'early finish',
        'late start',
        'late finish',
        'total float',
        'free float',
        'critical',
        'standing',
      ],
      ...scheduleAnswer(view, tradeOf(view, options)).tasks.map((step): readonly Cell[] => [
        step.name,
        step.kind,
        step.label,
        step.phase,
        step.trade,
        step.start,
        step.finish,
        step.duration,
        step.earlyStart,
        step.earlyFinish,
        step.lateStart,
        step.lateFinish,
        step.totalFloat,
        step.freeFloat,
        step.critical ? 'yes' : 'no',
        step.standing,
      ]),
    ],
  });
}

export function cost(path: string, options: TableOptions): number {
  const by = grouping<CostGrouping>(options.by, ['trade', 'task', 'room', 'element', 'part']);
  return answer(path, options, {
    table: (view) => drawTable(costTable(by, view), options.quiet),
    json: costAnswer,
    csv: (view) => [
      ['kind', 'basis', 'label', 'cents', 'task', 'trade', 'room', 'level', 'element', 'line', 'uniformat'],
      ...costAnswer(view).lines.map((line): readonly Cell[] => [
        line.kind,
        line.basis,
        line.label,
        line.cents,
        line.task,
        line.trade,
        line.room,
        line.level,
        line.element,
        line.line,
        line.uniformat?.map(({ code }) => code).join(' '),
      ]),
    ],
  });
}

interface Ways {
  readonly table: (view: View) => string;
  readonly json: (view: View) => unknown;
  readonly csv: (view: View) => readonly (readonly Cell[])[];
}

/** What is a sheet can be written for a spreadsheet, too. */
interface SheetWays extends Omit<Ways, 'csv'> {
  readonly sheet: (view: View) => Sheet;
}

function answer(path: string, options: Common, ways: Ways): number;
function answer(path: string, options: Common, ways: SheetWays): number | Promise<number>;
function answer(path: string, options: Common, ways: Ways | SheetWays): number | Promise<number> {
  const format = 'sheet' in ways ? chosenFormat(options, SHEET_FORMATS) : chosenFormat(options, FORMATS);
  const view = readPlan(path, options.asOf);
  switch (format) {
    case 'table':
      emit(ways.table(view), options);
      break;
    case 'json':
      emit(jsonText(ways.json(view)), options);
      break;
    case 'csv':
      emit(writeCsv('sheet' in ways ? sheetCells(ways.sheet(view)) : ways.csv(view)), options);
      break;
    case 'xlsx':
      return 'sheet' in ways ? spreadsheet(ways.sheet(view), options) : 0;
  }
  return 0;
}

async function spreadsheet(sheet: Sheet, options: Common): Promise<number> {
  const { xlsxBytes } = await import('./xlsx.ts');
  emit(await xlsxBytes(sheet), options);
  return 0;
}

/** The heading asked for, or the first. */
function grouping<G extends string>(by: string | undefined, groupings: readonly [G, ...G[]]): G {
  if (by === undefined) return groupings[0];
  const found = groupings.find((each) => each === by);
  if (found === undefined) throw misuse(`--by takes ${groupings.join(', ')}, not "${by}"`);
  return found;
}

function tradeOf(view: View, { trade }: TableOptions): string | undefined {
  return tradeNamed(view, trade);
}

/** The name of a trade of the plan as it was asked for. */
export function tradeNamed({ plan }: View, trade: string | undefined): string | undefined {
  if (trade === undefined) return undefined;
  const names = plan.model.list('trade').map(({ name }) => name);
  const wanted = trade.toLowerCase();
  if (names.includes(wanted)) return wanted;
  const [near] = nearest(wanted, names);
  throw misuse(`no trade of this plan is called "${trade}"${near === undefined ? '' : `; there is "${near}"`}`);
}
