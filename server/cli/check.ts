// `screed check`: findings of every plan asked for, and one line that sums them up; for people, programs and build servers.
import { checkAnswer, filesOf } from '#answers/check-json';
import { type Checked, checkedPlans, type PlanAsked, type Wanted } from '#answers/checked';
import type { ListedFinding } from '#answers/findings-list';
import { type ProfileName, profileNamed, profiles } from '#answers/profiles';
import { sarifLog } from '#answers/sarif';
import { countsOf, countsText, planSummary } from '#answers/summary';
import { counted, listed } from '#answers/table';
import type { Severity } from '#kit/finding';
import { tellLeftOver, writeBaseline } from './baseline.ts';
import { misuse } from './faults.ts';
import { githubLine, githubSummary } from './github.ts';
import { readPlans } from './input.ts';
import { junitReport } from './junit.ts';
import { type Colour, type Common, chosenFormat, emit, jsonText, type Paint, painter } from './output.ts';
import { version } from './version.ts';

export interface CheckOptions extends Common {
  readonly maxWarnings?: string;
  readonly only?: readonly string[];
  readonly skip?: readonly string[];
  readonly profile?: string;
  /** The path of one, or false for none. */
  readonly baseline?: string | false;
  readonly writeBaseline?: string;
}

export const CHECK_FORMATS = ['text', 'json', 'sarif', 'github', 'junit'] as const;

/** Gives the exit status. */
export function check(given: readonly string[], options: CheckOptions): number {
  const format = chosenFormat(options, CHECK_FORMATS);
  const most = options.maxWarnings === undefined ? undefined : wholeNumber(options.maxWarnings);
  const wanted: Wanted = { only: options.only, skip: options.skip, profile: askedProfile(options) };
  const paths = given.length === 0 ? ['.'] : given;
  if (options.writeBaseline !== undefined) writeBaseline(paths, options.writeBaseline, wanted, options);
  const asked = readPlans(paths, options.asOf, options.writeBaseline ?? options.baseline);
  const checked = checkedPlans(asked, wanted);
  const findings = checked.findings.map((found) => found.listed);
  const { errors, warnings } = countsOf(findings);
  const tooMany = most !== undefined && warnings > most;
  const summary = options.quiet === true ? undefined : summaryLine(asked, checked);
  switch (format) {
    case 'json':
      emit(jsonText(checkAnswer(checked)), options);
      break;
    case 'sarif':
      emit(jsonText(sarifLog(checked, version)), options);
      break;
    case 'junit':
      emit(junitReport(checked, tooMany), options);
      break;
    case 'github':
      emitLines([...findings.map(githubLine), ...(summary === undefined ? [] : [githubSummary(summary)])], options);
      break;
    case 'text': {
      const paint = painter(options);
      const lines = findings.map((found) => findingLine(found, paint));
      emitLines([...lines, ...(summary === undefined ? [] : [paint(summary, 'bold')])], options);
    }
  }
  tellLeftOver(asked, options);
  return errors > 0 || tooMany ? 1 : 0;
}

function emitLines(lines: readonly string[], options: Common): void {
  emit(lines.map((line) => `${line}\n`).join(''), options);
}

function askedProfile({ profile }: CheckOptions): ProfileName | undefined {
  if (profile === undefined) return undefined;
  const found = profileNamed(profile);
  if (found === undefined) throw misuse(`there is no profile "${profile}"; there is ${Object.keys(profiles).join(', ')}`);
  return found;
}

const COLOURS: Readonly<Record<Severity, Colour>> = { error: 'red', warning: 'yellow', note: 'blue' };

/** 'plan.screed:12:8: error: Board goes up … [sequence/board-before-dry]'. */
function findingLine({ file, start, severity, message, code }: ListedFinding, paint: Paint): string {
  return `${file}:${start.line}:${start.column}: ${paint(severity, COLOURS[severity])}: ${message} ${paint(`[${code}]`, 'faint')}`;
}

/** Sentences in one line: when the plan is done and what it costs, then what there is to answer. */
function summaryLine(asked: readonly PlanAsked[], checked: Checked): string {
  const [only] = asked;
  const files = counted(filesOf(checked.views).length, 'file');
  const said = countsText(countsOf(checked.findings.map((found) => found.listed)));
  const tail = `${said[0]!.toUpperCase()}${said.slice(1)} in ${files}${apartText(checked)}.`;
  if (asked.length === 1 && only !== undefined) return [planSummary(only.view), tail].filter((part) => part !== '').join(' ');
  return `${asked.length} plans. ${tail}`;
}

/** '; 2 accepted, 14 known and 3 notes not shown (profile builder)': what is found and not told, never left unsaid. */
function apartText({ accepted, known, hushed, profile }: Checked): string {
  const parts = [
    accepted.length === 0 ? '' : `${accepted.length} accepted`,
    known.length === 0 ? '' : `${known.length} known`,
    hushed === 0 ? '' : `${counted(hushed, 'note')} not shown${profile === undefined ? '' : ` (profile ${profile})`}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `; ${listed(parts)}`;
}

function wholeNumber(text: string): number {
  if (!/^\d+$/.test(text)) throw misuse(`--max-warnings takes a whole number, not "${text}"`);
  return Number(text);
}
