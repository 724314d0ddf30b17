// `screed rule`: what the code of a finding means; without a code, which codes there are.
import { type Area, ruleAreas, ruleList } from '#answers/rule-index';
import { ruleCodes, rulePage } from '#answers/rule-page';
import { nearest } from '#kit/did-you-mean';
import { misuse } from './faults.ts';
import { planOfText } from './input.ts';
import { type Common, emit } from './output.ts';

/** `asked`: a code, the name after its slash where one code alone has it, an area, or nothing for all of them. */
export function rule(asked: string | undefined, options: Common): number {
  const view = planOfText('');
  const wanted = asked?.toLowerCase().replace(/\/$/, '');
  if (wanted === undefined) {
    emit(ruleList(ruleAreas(view)), options);
    return 0;
  }
  const codes = ruleCodes(view);
  const named = codes.filter((code) => code === wanted || code.endsWith(`/${wanted}`));
  const page = named.length === 1 ? rulePage(named[0]!, view) : undefined;
  const area = page === undefined ? ruleAreas(view).find(({ word }) => word === wanted) : undefined;
  if (page === undefined && area === undefined) throw misuse(unknown(asked!, named.length > 0 ? named : meant(wanted, codes)));
  emit(page ?? ruleList([area!] satisfies readonly Area[]), options);
  return 0;
}

/** Codes and areas that may have been meant: misspelled, without their area, or in a part of their words. */
function meant(wanted: string, codes: readonly string[]): readonly string[] {
  const areas = [...new Set(codes.map((code) => code.slice(0, code.indexOf('/'))))];
  const near = nearest(wanted, [...codes, ...areas]);
  if (near.length > 0) return near;
  const name = wanted.slice(wanted.indexOf('/') + 1);
  const byName = nearest(
    name,
    codes.map((code) => code.slice(code.indexOf('/') + 1)),
  );
  const found = byName.flatMap((each) => codes.filter((code) => code.endsWith(`/${each}`)));
  return (found.length > 0 ? found : codes.filter((code) => code.includes(name))).slice(0, MOST_OFFERED);
}

const MOST_OFFERED = 5;

function unknown(asked: string, near: readonly string[]): string {
  const or = near.length < 2 ? near.join('') : `${near.slice(0, -1).join(', ')} or ${near[near.length - 1]}`;
  return `no finding has the code "${asked}"; ${near.length === 0 ? '"screed rule" lists all' : `perhaps ${or} is meant`}`;
}
