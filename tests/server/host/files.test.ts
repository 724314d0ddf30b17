// Files on disk and in memory: the same answers to the same questions.
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { type Files, folderOf, isWithin, projectFolder } from '#host/files';
import { memoryFiles } from '#host/memory-files';
import { nodeFiles, plainPath } from '#host/node-files';

const TEXTS = { 'a.screed': 'plan a\n', 'sub/b.screed': '\ufeffroom b\n', 'sub/.git/HEAD': 'ref' };
const disk = nodeFiles();
const folder = disk.real(mkdtempSync(join(tmpdir(), 'screed-files-')));
for (const [path, text] of Object.entries(TEXTS)) {
  mkdirSync(join(folder, folderOf(path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}
symlinkSync(join(folder, 'sub'), join(folder, 'link'), 'dir');
symlinkSync(join(folder, 'gone'), join(folder, 'broken'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each<readonly [string, Files, (path: string) => string]>([
  ['on disk', disk, (path) => (path === '' ? folder : `${folder}/${path}`)],
  ['in memory', memoryFiles(TEXTS), (path) => path],
])('%s', (_, files, at) => {
  test('texts', () => {
    expect(files.read(at('a.screed'))).toBe('plan a\n');
    expect(files.read(at('nothing.screed'))).toBeUndefined();
    expect(files.read(at('sub'))).toBeUndefined();
  });

  test('folders, in the order of names', () => {
    expect(files.list(at('sub'))).toEqual([
      { name: '.git', kind: 'folder' },
      { name: 'b.screed', kind: 'file' },
    ]);
    expect(files.list(at('nowhere'))).toEqual([]);
  });

  test('the folder under version control, else the file’s own', () => {
    expect(projectFolder(at('sub/deep/c.screed'), files)).toBe(at('sub'));
    expect(files === disk ? at('') : '').toBe(files === disk ? folder : projectFolder(at('a.screed'), files));
  });
});

test('a mark of byte order on disk is no part of the text', () => {
  expect(disk.read(`${folder}/sub/b.screed`)).toBe('room b\n');
});

test('links are followed, also of what is yet to be', () => {
  expect(disk.real(`${folder}/link/b.screed`)).toBe(`${folder}/sub/b.screed`);
  expect(disk.real(`${folder}/link/new/file.screed`)).toBe(`${folder}/sub/new/file.screed`);
  expect(disk.list(folder).map(({ name, kind }) => `${kind} ${name}`)).toEqual(['file a.screed', 'folder link', 'folder sub']);
});

test('a disk’s root and a home are too wide to be looked through', () => {
  expect(disk.tooWide('/')).toBe(true);
  expect(disk.tooWide(homedir())).toBe(true);
  expect(disk.tooWide(folder)).toBe(false);
});

test('paths', () => {
  expect(isWithin('/a/b/c', '/a/b')).toBe(true);
  expect(isWithin('/a/bc', '/a/b')).toBe(false);
  expect(isWithin('/a', '/')).toBe(true);
  expect(isWithin('a', '')).toBe(true);
  expect([folderOf('/a/b'), folderOf('/a'), folderOf('a')]).toEqual(['/a', '/', '']);
  expect(plainPath('c:/x')).toBe('C:/x');
});
