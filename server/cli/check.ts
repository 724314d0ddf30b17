// `screed check`: findings of every plan asked for, and one line that sums them up.
import { checkAnswer, filesOf } from '#answers/check-json';
import { type ListedFinding, listFindings } from '#answers/findings-list';
import { countsOf, countsText, planSummary } from '#answers/summary';
import { counted } from '#answers/table';
import type { Severity } from '#kit/finding';
import { misuse } from './faults.ts';
import { type Asked, readPlans } from './input.ts';
import { type Colour, type Common, chosenFormat, emit, jsonText, type Paint, painter } from './output.ts';

export interface CheckOptions extends Common {
  readonly maxWarnings?: string;
  readonly only?: readonly string[];
  readonly skip?: readonly string[];
}

/** Gives the exit status. */
export function check(paths: readonly string[], options: CheckOptions): number {
  const format = chosenFormat(options, ['text', 'json']);
  const most = options.maxWarnings === undefined ? undefined : wholeNumber(options.maxWarnings);
  const asked = readPlans(paths.length === 0 ? ['.'] : paths, options.asOf);
  const findings = findingsOf(asked).filter((found) => isAsked(found, options));
  const { errors, warnings } = countsOf(findings);
  const views = asked.map(({ view }) => view);
  if (format === 'json') emit(jsonText(checkAnswer(views, findings)), options);
  else {
    const paint = painter(options);
    const lines = findings.map((found) => findingLine(found, paint));
    if (options.quiet !== true) lines.push(paint(summaryLine(asked, findings), 'bold'));
    emit(lines.map((line) => `${line}\n`).join(''), options);
  }
  return errors > 0 || (most !== undefined && warnings > most) ? 1 : 0;
}

/** By file, line, column and code; what two plans say of a file that both include is said once. */
function findingsOf(asked: readonly Asked[]): readonly ListedFinding[] {
  const seen = new Set<string>();
  const findings = asked.flatMap(({ view, only }) => {
    const names = only === undefined ? undefined : new Set([...only].map(view.fileName));
    return listFindings(view).filter((found) => {
      const key = JSON.stringify([found.file, found.start, found.code, found.message]);
      if (seen.has(key) || names?.has(found.file) === false) return false;
      seen.add(key);
      return true;
    });
  });
  return findings.sort(
    (a, b) =>
      compare(a.file, b.file) || a.start.line - b.start.line || a.start.column - b.start.column || compare(a.code, b.code),
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A code, or the area before its slash. */
function isAsked({ code }: ListedFinding, { only = [], skip = [] }: CheckOptions): boolean {
  const isIn = (wanted: readonly string[]): boolean => wanted.some((each) => code === each || code.startsWith(`${each}/`));
  return (only.length === 0 || isIn(only)) && !isIn(skip);
}

const COLOURS: Readonly<Record<Severity, Colour>> = { error: 'red', warning: 'yellow', note: 'blue' };

/** 'plan.screed:12:8: error: Board goes up … [sequence/board-before-dry]'. */
function findingLine({ file, start, severity, message, code }: ListedFinding, paint: Paint): string {
  return `${file}:${start.line}:${start.column}: ${paint(severity, COLOURS[severity])}: ${message} ${paint(`[${code}]`, 'faint')}`;
}

/** Sentences in one line: when the plan is done and what it costs, then what there is to answer. */
function summaryLine(asked: readonly Asked[], findings: readonly ListedFinding[]): string {
  const [only] = asked;
  const views = asked.map(({ view }) => view);
  const files = counted(filesOf(views).length, 'file');
  const said = countsText(countsOf(findings));
  const tail = `${said[0]!.toUpperCase()}${said.slice(1)} in ${files}.`;
  if (asked.length === 1 && only !== undefined) return [planSummary(only.view), tail].filter((part) => part !== '').join(' ');
  return `${asked.length} plans. ${tail}`;
}

function wholeNumber(text: string): number {
  if (!/^\d+$/.test(text)) throw misuse(`--max-warnings takes a whole number, not "${text}"`);
  return Number(text);
}
