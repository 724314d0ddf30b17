// Findings as a report of tests in JUnit's XML, which most build servers show: a suite for each file, a case for each
// finding, named by code and thing so that it keeps its name when lines move. What fails is what the exit status fails for;
// warnings that are allowed, and what is accepted or known, are skipped with their words; notes pass.
import { plainPath } from '#answers/addresses';
import type { Checked } from '#answers/checked';
import type { ListedFinding } from '#answers/findings-list';

interface Case {
  readonly listed: ListedFinding;
  readonly outcome: 'failure' | 'skipped' | 'passed';
  /** Why it is skipped. */
  readonly why?: string;
}

/** `warningsFail`: there are more warnings than allowed. */
export function junitReport({ files, findings, accepted, known }: Checked, warningsFail: boolean): string {
  const cases: readonly Case[] = [
    ...findings.map(({ listed }): Case => {
      if (listed.severity === 'note') return { listed, outcome: 'passed' };
      if (listed.severity === 'error' || warningsFail) return { listed, outcome: 'failure' };
      return { listed, outcome: 'skipped', why: `warning: ${listed.message}` };
    }),
    ...accepted.map(({ listed, reason }): Case => {
      const why = `accepted${reason === undefined ? '' : ` ("${reason}")`}: ${listed.message}`;
      return { listed, outcome: 'skipped', why };
    }),
    ...known.map(({ listed }): Case => ({ listed, outcome: 'skipped', why: `in the baseline: ${listed.message}` })),
  ];
  const byFile = files.map((file) => ({ file, own: cases.filter(({ listed }) => listed.file === file) }));
  const tests = byFile.reduce((sum, { own }) => sum + Math.max(1, own.length), 0);
  const suites = byFile.map(({ file, own }) => suite(file, own));
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="screed"${counts(cases, tests)}>\n${suites.join('')}</testsuites>\n`;
}

function suite(file: string, cases: readonly Case[]): string {
  const name = plainPath(file);
  const nth = new Map<string, number>();
  const said = cases.map((each) => testCase(name, each, nth));
  // A suite without a case would be taken for tests that never ran.
  if (said.length === 0)
    said.push(`    <testcase${attributes({ classname: name, name: 'no findings', file: name, time: '0' })}/>\n`);
  return `  <testsuite${attributes({ name })}${counts(cases, Math.max(1, cases.length))}>\n${said.join('')}  </testsuite>\n`;
}

function testCase(file: string, { listed, outcome, why }: Case, nth: Map<string, number>): string {
  const { code, thing, word, start, message, severity } = listed;
  const called = `${code}: ${thing}${word === undefined ? '' : `, ${word}`}`;
  const number = (nth.get(called) ?? 0) + 1;
  nth.set(called, number);
  const name = number === 1 ? called : `${called} (${number})`;
  const opened = `    <testcase${attributes({ classname: file, name, file, line: String(start.line), time: '0' })}>\n`;
  const where = `${file}:${start.line}:${start.column}`;
  const body =
    outcome === 'failure'
      ? `      <failure${attributes({ type: severity, message })}>${escaped(`${where}: ${severity}: ${message} [${code}]`)}</failure>\n`
      : outcome === 'skipped'
        ? `      <skipped${attributes({ message: why ?? message })}/>\n`
        : `      <system-out>${escaped(`${where}: ${severity}: ${message} [${code}]`)}</system-out>\n`;
  return `${opened}${body}    </testcase>\n`;
}

function counts(cases: readonly Case[], tests: number): string {
  const of = (outcome: Case['outcome']): string => String(cases.filter((each) => each.outcome === outcome).length);
  return attributes({ tests: String(tests), failures: of('failure'), errors: '0', skipped: of('skipped'), time: '0' });
}

function attributes(values: Readonly<Record<string, string>>): string {
  return Object.entries(values)
    .map(([name, value]) => ` ${name}="${escaped(value)}"`)
    .join('');
}

function escaped(text: string): string {
  let said = '';
  for (const letter of text) said += ENTITIES[letter] ?? (isInXml(letter.codePointAt(0)!) ? letter : told(letter));
  return said;
}

/** The letters that XML 1.0 has a place for (production 2, Char): most control characters have none, however they are written. */
function isInXml(code: number): boolean {
  return code >= 0x20 && !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}

/** A letter that cannot be written, by its number: '\\u0007'. */
function told(letter: string): string {
  return `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};
