// What the paths of a command stand for: files, folders or `-`, read into plans by the same workspace that editors use, so
// that both give the same answers.
import { readFileSync, statSync } from 'node:fs';
import { posix, resolve } from 'node:path';
import type { PlanAsked } from '#answers/checked';
import { type View, viewOf } from '#answers/view';
import { type Files, holdsPlans } from '#host/files';
import { nodeFiles } from '#host/node-files';
import { readIsoDate } from '#kit/dates';
import { workspace } from '#server/workspace';
import { misuse } from './faults.ts';

/** Where the built-in library's files are said to lie. */
const LIBRARY = 'library';
/** The path that text from standard input has, below the working folder. */
export const STANDARD_INPUT = '-';

/**
 * Reads every plan that the paths name, in the order of their paths. `baseline`: the one to use, or false for none. Throws a
 * misuse where there is nothing to read.
 */
export function readPlans(paths: readonly string[], asOf?: string, baseline?: string | false): readonly PlanAsked[] {
  const day = asOf === undefined ? undefined : readIsoDate(asOf);
  if (asOf !== undefined && day === undefined) throw misuse(`--as-of takes a date such as 2027-06-18, not "${asOf}"`);
  const files = nodeFiles();
  const here = files.real('.');
  const known = baseline === false ? 'none' : baseline === undefined ? undefined : files.real(resolve(baseline));
  if (typeof baseline === 'string' && files.read(known!) === undefined) throw misuse(`${baseline} cannot be read`);
  const space = workspace(files, LIBRARY, { asOf: day, baseline: known });
  const { found, folders } = lookUp(paths, files);
  space.setFolders(folders);
  for (const path of found) {
    const text = path === posix.join(here, STANDARD_INPUT) ? textFromInput() : files.read(path);
    if (text === undefined) throw misuse(`${shown(path, here)} cannot be read`);
    space.open(path, 0, text);
  }
  const asked = new Set(found);
  const plans = space.plans();
  const broken = plans.find((plan) => plan.baseline?.broken === true)?.baseline;
  if (broken !== undefined) throw misuse(`${shown(broken.file, here)} is no baseline; write it anew with --write-baseline`);
  return [...plans]
    .sort((a, b) => (a.root < b.root ? -1 : 1))
    .map((plan) => ({
      view: viewOf(plan, (path) => shown(path, here)),
      only: asked.has(plan.root)
        ? undefined
        : new Set(plan.model.files.map(({ path }) => path).filter((path) => asked.has(path))),
    }));
}

/** The plan files that the paths name, and how they are shown. */
export function planFiles(paths: readonly string[]): readonly { readonly path: string; readonly shown: string }[] {
  const files = nodeFiles();
  const here = files.real('.');
  return lookUp(paths, files).found.map((path) => ({ path, shown: shown(path, here) }));
}

/** Whole paths of the files named and of those below the folders named, each once; and the folders. */
function lookUp(
  paths: readonly string[],
  files: Files,
): { readonly found: readonly string[]; readonly folders: readonly string[] } {
  const found = new Set<string>();
  const folders: string[] = [];
  for (const path of paths) {
    const whole = files.real(resolve(path));
    if (path === STANDARD_INPUT || kindOf(whole, path) === 'file') found.add(whole);
    else {
      folders.push(whole);
      for (const each of plansBelow(whole, path, files)) found.add(each);
    }
  }
  return { found: [...found], folders };
}

/** The one plan that a command is about. */
export function readPlan(path: string, asOf?: string): View {
  const asked = readPlans([path], asOf);
  if (asked.length === 1) return asked[0]!.view;
  const roots = asked.map(({ view }) => view.fileName(view.plan.root));
  throw misuse(
    `${path} holds ${asked.length} plans; name one of them: ${roots.slice(0, 8).join(', ')}${roots.length > 8 ? ' …' : ''}`,
  );
}

/** A plan of a text that stands in no file. */
export function planOfText(text: string): View {
  const space = workspace(nodeFiles(), LIBRARY);
  space.open('/plan.screed', 0, text);
  return viewOf(space.plans()[0]!);
}

function kindOf(whole: string, path: string): 'file' | 'folder' {
  try {
    return statSync(whole).isDirectory() ? 'folder' : 'file';
  } catch {
    throw misuse(`there is nothing at ${path}`);
  }
}

function plansBelow(folder: string, path: string, files: Files): readonly string[] {
  const found: string[] = [];
  const waiting = [folder];
  for (const each of waiting) {
    for (const { name, kind } of files.list(each)) {
      if (kind === 'file' && name.endsWith('.screed')) found.push(posix.join(each, name));
      // What links lead to may lie outside, or in a ring.
      else if (kind === 'folder' && holdsPlans(name) && files.real(posix.join(each, name)) === posix.join(each, name))
        waiting.push(posix.join(each, name));
    }
  }
  if (found.length === 0) throw misuse(`there is no .screed file in ${path}`);
  return found;
}

/** A byte order mark left out. */
export function textFromInput(): string {
  try {
    return readFileSync(0, 'utf8').replace(/^\ufeff/, '');
  } catch {
    throw misuse('nothing can be read from standard input');
  }
}

/** A path as a person here would write it, and back. */
export function shownFromHere(path: string): string {
  return shown(path, nodeFiles().real('.'));
}
export function wholePath(path: string): string {
  return nodeFiles().real(resolve(path));
}

/** A path from the working folder, '/' between its parts; the library's, and standard input, as they are. */
function shown(path: string, here: string): string {
  if (!posix.isAbsolute(path) && !/^[A-Z]:\//.test(path)) return path;
  return posix.relative(here, path) || path;
}
