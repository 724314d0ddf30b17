// `screed explain`: the working behind one number, date or sum, as a tree.
import { explain as explained, explanationText } from '#answers/explain';
import { misuse } from './faults.ts';
import { readPlan } from './input.ts';
import { type Common, chosenFormat, emit, jsonText } from './output.ts';

export function explain(path: string, name: string, options: Common): number {
  const format = chosenFormat(options, ['text', 'json']);
  const view = readPlan(path, options.asOf);
  const { found, near } = explained(name, view);
  if (found.length === 0)
    throw misuse(
      `nothing in this plan is called "${name}"${near.length === 0 ? '' : `; there is ${near.map((each) => `"${each}"`).join(', ')}`}`,
    );
  emit(format === 'json' ? jsonText({ screed: 1, explained: found }) : found.map(explanationText).join('\n'), options);
  return 0;
}
