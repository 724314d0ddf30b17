// `screed look-ahead`: the next weeks by trade and whom to call, as tables, messages, calendar files, JSON or comma-separated
// values.
import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type LookAhead, lookAhead } from '#answers/look-ahead';
import { lookAheadAnswer, lookAheadRows } from '#answers/look-ahead-json';
import { lookAheadTables } from '#answers/look-ahead-table';
import { messagesText } from '#answers/look-ahead-words';
import type { View } from '#answers/view';
import { readIsoDate } from '#kit/dates';
import { writeCsv } from '#kit/table';
import { misuse } from './faults.ts';
import { readPlan } from './input.ts';
import { type Common, chosenFormat, drawTable, emit, jsonText, remark } from './output.ts';
import { wholeNumber } from './risk.ts';
import { tradeNamed } from './tables.ts';

export interface LookAheadOptions extends Common {
  readonly from?: string;
  readonly weeks?: string;
  readonly trade?: string;
  readonly stamp?: string;
}

export function printLookAhead(path: string, options: LookAheadOptions): number | Promise<number> {
  const format = chosenFormat(options, ['table', 'text', 'ics', 'json', 'csv']);
  const weeks = wholeNumber(options.weeks ?? '3', 'weeks', 1, 520);
  const from = options.from === undefined ? undefined : readIsoDate(options.from);
  if (options.from !== undefined && from === undefined)
    throw misuse(`--from takes a date such as 2027-06-18, not "${options.from}"`);
  const view = readPlan(path, options.asOf);
  if (!view.plan.timeline.dated) throw misuse('the plan gives no first day, so nothing falls on a date: give it a "start"');
  const ahead = lookAhead(view, weeks, from, tradeNamed(view, options.trade));
  switch (format) {
    case 'table':
      emit(
        lookAheadTables(ahead, view)
          .map((table) => drawTable(table, options.quiet))
          .join('\n'),
        options,
      );
      return 0;
    case 'text':
      emit(messagesText(ahead, view), options);
      return 0;
    case 'json':
      emit(jsonText(lookAheadAnswer(ahead, view)), options);
      return 0;
    case 'csv':
      emit(writeCsv(lookAheadRows(ahead, view)), options);
      return 0;
    case 'ics':
      return calendars(ahead, view, options);
  }
}

/** One calendar of all trades asked for; or into a folder, one for each and one of what to call. */
async function calendars(ahead: LookAhead, view: View, options: LookAheadOptions): Promise<number> {
  const { callsCalendar, tradeCalendar } = await import('./calendar-file.ts');
  const stamp = stampOf(options.stamp);
  const { output } = options;
  if (output === undefined || !isFolder(output)) {
    emit(tradeCalendar(ahead.trades, view, stamp), options);
    return 0;
  }
  const files: (readonly [string, string])[] = ahead.trades.map(
    (trade) => [`${trade.trade.name}.ics`, tradeCalendar([trade], view, stamp)] as const,
  );
  if (options.trade === undefined) files.push(['to-call.ics', callsCalendar(ahead, view, stamp)]);
  try {
    mkdirSync(output, { recursive: true });
    for (const [name, text] of files) writeFileSync(join(output, name), text);
  } catch (error) {
    throw misuse(`${output} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  remark(`${files.length} calendar files in ${output}: ${files.map(([name]) => name).join(', ')}.`, options);
  return 0;
}

function isFolder(path: string): boolean {
  return /[\\/]$/.test(path) || (existsSync(path) && statSync(path).isDirectory());
}

/** When the file is made, in minutes: the one thing here that looks at the clock, unless it is said. */
function stampOf(text: string | undefined): number {
  if (text === undefined) return Math.floor(Date.now() / 60_000);
  const [, day, hours, minutes] = /^(\d{4}-\d\d-\d\d)(?:T(\d\d):(\d\d)Z?)?$/.exec(text) ?? [];
  const known = day === undefined ? undefined : readIsoDate(day);
  if (known === undefined) throw misuse(`--stamp takes a moment of universal time such as 2027-05-07T06:30, not "${text}"`);
  return known * 1440 + Number(hours ?? 0) * 60 + Number(minutes ?? 0);
}
