// Every feature, anywhere in any text: no throw, and every range of an answer lies inside the text it is about.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Range } from 'vscode-languageserver-types';
import { features } from '#editor/features';
import { memoryFiles } from '#host/memory-files';
import { workspace } from '#server/workspace';
import { viewOf } from './editing.ts';

const folder = join(import.meta.dirname, '../../../samples');
const samples = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.screed'))
  .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(folder, path), 'utf8') }));

const JUNK = [
  '"',
  "'",
  '(',
  '#',
  ',',
  ' x ',
  '\t',
  '\r',
  '\n',
  '\r\n',
  '😀',
  '\ud800',
  '\0',
  '<<<<<<< a\n',
  '=',
  '..',
  'after',
  '  ',
  '\ufeff',
  '9'.repeat(40),
];

/** A sample with some letters taken out and some put in. */
const spoiled = fc
  .record({
    sample: fc.constantFrom(...samples),
    spots: fc.array(fc.record({ at: fc.nat(), gone: fc.nat(30), put: fc.constantFrom(...JUNK, '') }), { maxLength: 6 }),
  })
  .map(({ sample, spots }) => ({
    path: sample.path,
    text: spots.reduce((text, { at, gone, put }) => {
      const from = text.length === 0 ? 0 : at % text.length;
      return text.slice(0, from) + put + text.slice(from + gone);
    }, sample.text),
  }));

test('in samples, whole and spoiled', () => {
  const files = Object.fromEntries(samples.map(({ path, text }) => [path, text]));
  fc.assert(
    fc.property(
      spoiled,
      fc.array(fc.tuple(fc.nat(400), fc.nat(120)), { minLength: 3, maxLength: 3 }),
      ({ path, text }, positions) => {
        const places = workspace(memoryFiles(files), 'library');
        places.setFolders(['']);
        places.open(path, 1, text);
        const view = viewOf(places, path);
        for (const [line, character] of positions) {
          const position = { line: line % (text.split('\n').length + 2), character };
          const range = { start: position, end: { line: position.line + 20, character: 0 } };
          const params = {
            textDocument: { uri: path },
            position,
            positions: [position],
            range,
            context: {},
            newName: 'other-name',
            previousResultId: '1',
            item: { name: 'walls', uri: path },
          };
          for (const { method, answer } of features) {
            let found: unknown;
            try {
              found = answer(view, params as never);
            } catch (error) {
              throw new Error(`${method} at ${position.line}:${position.character} of ${path}`, { cause: error });
            }
            // These repeat what they are asked.
            if (method === 'textDocument/selectionRange' || method === 'inlayHint/resolve') continue;
            for (const [uri, each] of rangesIn(found, path))
              expectInside(each, places.textOf(uri), `${method} ${JSON.stringify(each)}`);
          }
        }
      },
    ),
    { numRuns: 40 },
  );
});

/** Every range in an answer, with the file it is about. */
function rangesIn(answer: unknown, path: string): readonly (readonly [string, Range])[] {
  if (typeof answer !== 'object' || answer === null) return [];
  if (Array.isArray(answer)) return answer.flatMap((each) => rangesIn(each, path));
  const { uri, targetUri, changes, ...rest } = answer as {
    uri?: string;
    targetUri?: string;
    changes?: { [uri: string]: unknown };
  };
  const about = uri ?? targetUri ?? path;
  const edits = Object.entries(changes ?? {}).flatMap(([each, list]) => rangesIn(list, each));
  return [
    ...edits,
    ...Object.entries(rest).flatMap(([name, value]): readonly (readonly [string, Range])[] => {
      if (isRange(value)) return [[name === 'originSelectionRange' ? path : about, value]];
      return rangesIn(value, about);
    }),
  ];
}

function isRange(value: unknown): value is Range {
  return typeof value === 'object' && value !== null && 'start' in value && 'end' in value && typeof value.start === 'object';
}

function expectInside({ start, end }: Range, text: string | undefined, what: string): void {
  // The library's texts are not at hand here.
  if (text === undefined) return;
  const lines = text.split(/\r\n|\r|\n/);
  for (const { line, character } of [start, end]) {
    expect(line, what).toBeLessThan(lines.length);
    expect(character, what).toBeGreaterThanOrEqual(0);
    expect(character, what).toBeLessThanOrEqual(lines[line]!.length);
  }
  expect(start.line < end.line || (start.line === end.line && start.character <= end.character), what).toBe(true);
}
