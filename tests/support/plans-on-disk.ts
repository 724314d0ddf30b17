// Folders of plans on disk for tests: each plan with its comments, its marks, and what the checker says of it. A plan of
// several files is a folder whose root file is named.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lineOf } from '#model/standing';
import { type Checked, checked } from './checked.ts';
import { type Mark, readMarks } from './fixture.ts';

const root = join(import.meta.dirname, '../..');

export interface PlanOnDisk {
  /** From the repository: 'tests/cases/no-shoe-moulding.screed'. */
  readonly path: string;
  readonly text: string;
  readonly marks: readonly Mark[];
  /** Codes that its comments promise to be silent: "# silent about area/name, area/name". */
  readonly silent: readonly string[];
}

/** The plans of one folder, each a file of its own, by name. */
export function plansIn(folder: string): readonly PlanOnDisk[] {
  return readdirSync(join(root, folder))
    .filter((file) => file.endsWith('.screed'))
    .sort()
    .map((file) => {
      const path = `${folder}/${file}`;
      const text = readFileSync(join(root, path), 'utf8');
      const silent = [...text.matchAll(/^# silent about (.+)$/gm)].flatMap(([, codes]) => codes!.split(/,\s*/));
      return { path, text, marks: readMarks(path, text), silent };
    });
}

/** What the checker says of a plan: 'line 12, 4-9: error sequence/loop', as the marks say it. */
export function foundIn({ path, text }: PlanOnDisk): { readonly checked: Checked; readonly found: readonly Found[] } {
  const result = checked({ [path]: text });
  const lines = text.split('\n');
  const found = result.plan.findings.map(({ code, severity, place }): Found => {
    const line = lineOf(place, result.plan.model);
    const indent = /^ */.exec(lines[line] ?? '')![0].length;
    return { code, severity, line, says: told(line, indent + place.spot.from, indent + place.spot.to, severity, code) };
  });
  return { checked: result, found };
}

export interface Found {
  readonly code: string;
  readonly severity: string;
  readonly line: number;
  readonly says: string;
}

/** A mark in the same words as a finding. */
export function saysMark({ line, from, to, severity, code }: Mark): string {
  return told(line, from, to, severity ?? '', code ?? '');
}

function told(line: number, from: number, to: number, severity: string, code: string): string {
  // A comment's own # takes the first column, so a mark cannot begin there.
  return `line ${line + 1}, ${Math.max(1, from)}-${to}: ${severity} ${code}`;
}
