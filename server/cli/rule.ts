// `screed rule`: what the code of a finding means.
import { ruleCodes, rulePage } from '#answers/rule-page';
import { nearest } from '#kit/did-you-mean';
import { misuse } from './faults.ts';
import { planOfText } from './input.ts';
import { type Common, emit } from './output.ts';

export function rule(code: string, options: Common): number {
  const view = planOfText('');
  const page = rulePage(code.toLowerCase(), view);
  if (page === undefined) {
    const near = nearest(code, ruleCodes(view));
    throw misuse(`no finding has the code "${code}"${near.length === 0 ? '' : `; there is ${near.join(', ')}`}`);
  }
  emit(page, options);
  return 0;
}
