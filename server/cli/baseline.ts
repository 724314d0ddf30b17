// `screed check --write-baseline`: sets down what is found today, so that only what is new is told from then on; and, at every
// check, what a baseline holds that is no longer found, so that it can shrink.
import { writeFileSync } from 'node:fs';
import { baselineOf, leftOver, type PlanAsked, type Wanted } from '#answers/checked';
import { counted } from '#answers/table';
import { misuse } from './faults.ts';
import { readPlans, shownFromHere, wholePath } from './input.ts';
import { type Common, remark } from './output.ts';

/** What names a hazard is left out: somebody has to answer it in the plan, with a reason. */
export function writeBaseline(paths: readonly string[], path: string, wanted: Wanted, options: Common): void {
  const { text, entries, hazards } = baselineOf(readPlans(paths, options.asOf, false), wanted, wholePath(path));
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw misuse(`${path} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  remark(`${counted(entries, 'finding')} written to ${path}; from now on only what is new is told.`, options);
  if (hazards > 0)
    remark(
      `${counted(hazards, 'finding')} that ${hazards === 1 ? 'names' : 'name'} a hazard left out: mend the plan, or accept with a reason there.`,
      options,
    );
}

const MOST_TOLD = 20;

export function tellLeftOver(asked: readonly PlanAsked[], options: Common): void {
  const left = leftOver(asked);
  for (const file of new Set(left.map(({ baseline }) => baseline))) {
    const own = left.filter(({ baseline }) => baseline === file).map(({ entry }) => entry);
    const shown = shownFromHere(file);
    const are = own.length === 1 ? 'is' : 'are';
    remark(
      `${shown}: ${counted(own.length, 'entry', 'entries')} ${are} no longer found; --write-baseline ${shown} leaves them out:`,
      options,
    );
    for (const { code, file: where, thing, word, count } of own.slice(0, MOST_TOLD))
      remark(`  ${where}: ${thing}${word === undefined ? '' : `, ${word}`}: ${code}${count === 1 ? '' : ` (${count})`}`, options);
    if (own.length > MOST_TOLD) remark(`  and ${own.length - MOST_TOLD} more`, options);
  }
}
