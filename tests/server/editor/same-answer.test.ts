// An editor says of a plan what the command line says of it: same findings, same places, same words.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { listFindings } from '#answers/findings-list';
import { viewOf as answersView } from '#answers/view';
import { diagnosticsOf } from '#editor/diagnostics';
import { memoryFiles } from '#host/memory-files';
import { noWork } from '#kit/work';
import { libraryTexts } from '#library/library';
import { analyse, readLibrary } from '#server/pipeline';
import { workspace } from '#server/workspace';
import { able } from './editing.ts';

const folder = join(import.meta.dirname, '../../../samples');
const texts = Object.fromEntries(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.screed'))
    .map((path) => [path.replaceAll('\\', '/'), readFileSync(join(folder, path), 'utf8')]),
);
const roots = Object.keys(texts).filter((path) => /^plan\b/m.test(texts[path]!));
const library = readLibrary(libraryTexts, noWork());

test.each(roots)('%s', (root) => {
  const view = answersView(analyse({ root, texts, library }));
  const listed = listFindings(view).map(({ code, severity, message, file, start, end }) => [
    file,
    code,
    severity,
    message,
    start,
    end,
  ]);
  const places = workspace(memoryFiles(texts), 'library');
  places.setFolders(['']);
  for (const { path } of view.plan.model.files) places.open(path, 1, texts[path]!);
  const addresses = { uriOf: (path: string) => path, versionOf: places.versionOf, isInLibrary: places.isInLibrary };
  const shown = view.plan.model.files.flatMap(({ path }) =>
    diagnosticsOf(path, places.plansOf(path), able, addresses).map(({ code, severity, message, range }) => [
      path,
      code,
      ['', 'error', 'warning', 'note'][severity!],
      message,
      { line: range.start.line + 1, column: range.start.character + 1 },
      { line: range.end.line + 1, column: range.end.character + 1 },
    ]),
  );
  expect(shown).toEqual(listed);
});
