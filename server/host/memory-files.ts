// Files in memory, by path: for tests and the browser.
import type { Entry, Files } from './files.ts';

/** The record is looked at each time, so that whoever holds it can change the files. */
export function memoryFiles(texts: { readonly [path: string]: string | undefined }): Files {
  return {
    read: (path) => (Object.hasOwn(texts, path) ? texts[path] : undefined),
    list: (folder) => entries(texts, folder === '' || folder.endsWith('/') ? folder : `${folder}/`),
    real: (path) => path,
    tooWide: () => false,
  };
}

function entries(texts: { readonly [path: string]: string | undefined }, start: string): readonly Entry[] {
  const kinds = new Map<string, Entry['kind']>();
  for (const [path, text] of Object.entries(texts)) {
    if (text === undefined || !path.startsWith(start)) continue;
    const [name = '', ...below] = path.slice(start.length).split('/');
    if (name !== '') kinds.set(name, below.length > 0 ? 'folder' : 'file');
  }
  return [...kinds].map(([name, kind]) => ({ name, kind })).sort((a, b) => (a.name < b.name ? -1 : 1));
}
