// Findings as workflow commands. The form, and what is escaped in values and in messages: GitHub Docs, "Workflow commands for
// GitHub Actions" (setting a notice, warning and error message), and escapeData and escapeProperty of the toolkit
// actions/toolkit, packages/core/src/command.ts (from memory).
import { expect, test } from 'vitest';
import type { ListedFinding } from '#answers/findings-list';
import { githubLine, githubSummary } from '#cli/github';

const found: ListedFinding = {
  code: 'rooms/overlap',
  severity: 'error',
  message: 'Two rooms.',
  file: 'house.screed',
  start: { line: 3, column: 6 },
  end: { line: 3, column: 10 },
  related: [],
  thing: 'room bath',
};

/** What a runner reads back: splits as its parser does. */
function readBack(line: string): { command: string; properties: Record<string, string>; message: string } {
  const [, command, said, message] = /^::(\w+) (.*?)::(.*)$/s.exec(line)!;
  const plain = (text: string): string =>
    text.replaceAll('%3A', ':').replaceAll('%2C', ',').replaceAll('%0D', '\r').replaceAll('%0A', '\n').replaceAll('%25', '%');
  const properties = Object.fromEntries(
    said!.split(',').map((each) => [each.slice(0, each.indexOf('=')), plain(each.slice(each.indexOf('=') + 1))]),
  );
  return { command: command!, properties, message: plain(message!) };
}

test('an error', () => {
  expect(githubLine(found)).toBe('::error file=house.screed,line=3,endLine=3,col=6,endColumn=10,title=rooms/overlap::Two rooms.');
});

test.each([
  ['error', 'error'],
  ['warning', 'warning'],
  ['note', 'notice'],
] as const)('%s is a command %s', (severity, command) => {
  expect(readBack(githubLine({ ...found, severity })).command).toBe(command);
});

test('a stretch without a width has no end column', () => {
  expect(githubLine({ ...found, end: found.start })).not.toContain('endColumn');
});

test('nothing in a name or a message ends the command', () => {
  const message = 'One 100%::\r\nTwo, three ::error::x';
  const file = 'C:\\my plans\\50% a,b:c.screed';
  const line = githubLine({ ...found, message, file });
  expect(line).not.toMatch(/[\r\n]/);
  expect(readBack(line)).toMatchObject({ message, properties: { file: 'C:/my plans/50% a,b:c.screed', line: '3' } });
});

test('the summary is never taken for a command', () => {
  expect(githubSummary('::error::house: done.\n::stop')).toBe('Screed: ::error::house: done. ::stop');
});
