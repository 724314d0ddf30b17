// The disk as Node gives it. The only file below the command line that reads one.
import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, dirname, join, resolve, sep } from 'node:path';
import type { Entry, Files } from './files.ts';

export function nodeFiles(): Files {
  return { read, list, real, tooWide };
}

/** A path with '/' between its parts, and a drive's letter upper case. */
export function plainPath(path: string): string {
  const plain = sep === '/' ? path : path.split(sep).join('/');
  return /^[a-z]:/.test(plain) ? plain.charAt(0).toUpperCase() + plain.slice(1) : plain;
}

function read(path: string): string | undefined {
  try {
    const text = readFileSync(path, 'utf8');
    return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  } catch {
    return undefined;
  }
}

function list(folder: string): readonly Entry[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .flatMap((entry): Entry[] => {
        if (entry.isDirectory()) return [{ name: entry.name, kind: 'folder' }];
        if (entry.isFile()) return [{ name: entry.name, kind: 'file' }];
        const kind = entry.isSymbolicLink() ? kindAt(join(folder, entry.name)) : undefined;
        return kind === undefined ? [] : [{ name: entry.name, kind }];
      })
      .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  } catch {
    return [];
  }
}

function kindAt(path: string): Entry['kind'] | undefined {
  try {
    const found = statSync(path);
    return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : undefined;
  } catch {
    return undefined;
  }
}

function real(path: string): string {
  const whole = resolve(path);
  const rest: string[] = [];
  for (let at = whole; ; at = dirname(at)) {
    try {
      return plainPath(join(realpathSync.native(at), ...rest));
    } catch {
      if (dirname(at) === at) return plainPath(whole);
      rest.unshift(basename(at));
    }
  }
}

function tooWide(folder: string): boolean {
  const whole = resolve(folder);
  return dirname(whole) === whole || whole === resolve(homedir());
}
