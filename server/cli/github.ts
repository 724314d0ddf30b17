// Findings as workflow commands of GitHub Actions: lines that the runner turns into remarks on the changed files. Forms and
// escapes: GitHub Docs, "Workflow commands for GitHub Actions", setting a notice, warning and error message.
import { plainPath } from '#answers/addresses';
import type { ListedFinding } from '#answers/findings-list';
import type { Severity } from '#kit/finding';

const COMMANDS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', note: 'notice' };

/** '::error file=plan.screed,line=3,endLine=3,col=6,endColumn=9,title=rooms/overlap::Rooms …'. */
export function githubLine({ severity, file, start, end, code, message }: ListedFinding): string {
  // Without a width, the end would be taken as missing.
  const width = end.line === start.line && end.column > start.column ? { endColumn: end.column } : {};
  const properties = { file: plainPath(file), line: start.line, endLine: end.line, col: start.column, ...width, title: code };
  const said = Object.entries(properties).map(([name, value]) => `${name}=${escapedProperty(String(value))}`);
  return `::${COMMANDS[severity]} ${said.join(',')}::${escaped(message)}`;
}

/** A line of plain words: a label in it must not be taken for a command. */
export function githubSummary(text: string): string {
  return `Screed: ${text.replaceAll(/[\r\n]+/g, ' ')}`;
}

function escaped(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapedProperty(text: string): string {
  return escaped(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
