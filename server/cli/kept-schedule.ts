// `screed schedule --save NAME` and `--against [NAME]`: a schedule kept as text beside the plan, and today's against it.
import { existsSync } from 'node:fs';
import { asPlannedText, dayOfPlan } from '#answers/as-planned-text';
import { type Slippage, slippageOf } from '#answers/slippage';
import { slippageAnswer } from '#answers/slippage-json';
import { slippageTable } from '#answers/slippage-table';
import type { View } from '#answers/view';
import { type Cell, writeCsv } from '#kit/table';
import { misuse } from './faults.ts';
import { type Common, drawTable, emit, jsonText, remark } from './output.ts';

/** A name as the language takes it. */
const NAME = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

/** Writes it beside the plan, or where `-o` says. What was kept is history: it is never written over. */
export function saveSchedule(view: View, name: string, options: Common): number {
  if (!NAME.test(name)) throw misuse(`--save takes a name such as "bank" or "as-signed", not "${name}"`);
  if (view.plan.model.list('as-planned').some((each) => each.name === name))
    throw misuse(`the plan keeps a schedule "${name}" already; give another name`);
  const text = asPlannedText(name, dayOfPlan(view), view);
  if (text === undefined) throw misuse('only a plan with a "start" and with steps has dates to keep');
  const root = view.plan.root;
  const output = options.output ?? `${root.slice(0, root.lastIndexOf('/') + 1)}${name}.screed`;
  if (existsSync(output)) throw misuse(`${view.fileName(output)} is there already; give another name, or a file with -o`);
  emit(text, { ...options, output });
  remark(`Kept in ${view.fileName(output)}. Add to the plan: include "${output.slice(output.lastIndexOf('/') + 1)}"`, options);
  return 0;
}

/** The slippage asked for: against the schedule of that name, or (`true`) the latest. */
export function against(view: View, name: string | true): Slippage {
  const slipped = slippageOf(view, name === true ? undefined : name);
  if (slipped !== undefined) return slipped;
  const names = view.plan.model.list('as-planned').map((each) => each.name);
  if (names.length === 0) throw misuse('the plan keeps no schedule to compare with; --save NAME writes one');
  if (name !== true && !names.includes(name.toLowerCase()))
    throw misuse(`the plan keeps no schedule "${name}"; there is ${names.join(', ')}`);
  throw misuse('only a plan with a "start" and with steps has dates to compare');
}

export function writeSlippage(
  slipped: Slippage,
  view: View,
  trade: string | undefined,
  format: 'table' | 'json' | 'csv',
  options: Common,
): number {
  switch (format) {
    case 'table':
      emit(drawTable(slippageTable(slipped, view, trade), options.quiet), options);
      break;
    case 'json':
      emit(jsonText(slippageAnswer(slipped, view, trade)), options);
      break;
    case 'csv':
      emit(writeCsv(sheet(slipped, view, trade)), options);
      break;
  }
  return 0;
}

function sheet(slipped: Slippage, view: View, trade: string | undefined): readonly (readonly Cell[])[] {
  return [
    ['name', 'since', 'planned start', 'planned finish', 'start', 'finish', 'days later', 'of its own', 'after', 'why'],
    ...slippageAnswer(slipped, view, trade).tasks.map((step): readonly Cell[] => [
      step.name,
      step.since,
      step.plannedStart,
      step.plannedFinish,
      step.start,
      step.finish,
      step.days,
      step.own,
      step.after,
      step.why,
    ]),
  ];
}
