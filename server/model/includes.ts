// Which files make one plan: the root and all that it includes, each once. A missing file and a ring of includes are findings.
import type { Finding } from '#kit/finding';
import { finding, findingSort } from '#kit/finding';
import type { FileNames } from './file-names.ts';

export const includeMissing = findingSort<[path: string]>({
  code: 'names/include-missing',
  severity: 'error',
  say: (path) =>
    `"${path}" is not there, so nothing it declares is counted. Mend the path; it is counted from this file's folder and stays within the workspace.`,
});

export const includeRing = findingSort<[path: string]>({
  code: 'names/include-ring',
  severity: 'error',
  say: (path) =>
    `"${path}" is already part of this plan by another include of itself. Remove this line; every file of a plan sees every other.`,
});

export interface Included {
  readonly files: readonly FileNames[];
  readonly findings: readonly Finding[];
}

/** Root first, then what each file includes, depth first. `read` gives undefined for a file that is not there. */
export function includedFiles(root: string, read: (path: string) => FileNames | undefined): Included {
  const files: FileNames[] = [];
  const findings: Finding[] = [];
  const open: string[] = [];
  const seen = new Set<string>();
  const visit = (file: FileNames): void => {
    seen.add(file.path);
    files.push(file);
    open.push(file.path);
    for (const { slot, declaration } of file.includes) {
      if (declaration.takes === undefined) continue;
      const said = String(declaration.takes.value);
      const path = joinPath(file.path, said);
      const place = { slot, spot: declaration.takes.spot };
      if (open.includes(path)) findings.push(finding(includeRing, place, said));
      else if (!seen.has(path)) {
        const next = read(path);
        if (next === undefined) findings.push(finding(includeMissing, place, said));
        else visit(next);
      }
    }
    open.pop();
  };
  const first = read(root);
  if (first !== undefined) visit(first);
  return { files, findings };
}

/** A path said in a file, counted from that file's folder; '/' between parts on every machine. */
export function joinPath(file: string, said: string): string {
  const parts = file.split('/').slice(0, -1);
  for (const part of said.replaceAll('\\', '/').split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}
