// What the code of a finding means: what is looked for and why, where it comes from, how to answer it; with a plan that is
// wrong and one that is right, where the check has them.

import type { Check } from '#checks/check';
import { checks } from '#checks/rules';
import type { Rule } from '#model/model';
import { positionOf } from './position.ts';
import { ABOUT } from './rule-about.ts';
import { listed } from './table.ts';
import { type View, write } from './view.ts';

/** The page of a code as text; undefined where no finding has it. */
export function rulePage(code: string, view: View): string | undefined {
  const check = checks.find((each) => each.code === code);
  if (check !== undefined) return checkPage(check);
  const [area, name] = code.split('/');
  const rule = area === 'sequence' ? view.plan.model.rows('rule').find((each) => each.name === name) : undefined;
  if (rule !== undefined) return sequencePage(rule, view);
  const about = Object.hasOwn(ABOUT, code) ? ABOUT[code] : undefined;
  return about === undefined ? undefined : `${code}\n\n${about}\n\n${ANSWER}\n`;
}

/** Every code that a finding can have. */
export function ruleCodes(view: View): readonly string[] {
  return [
    ...checks.map(({ code }) => code),
    ...view.plan.model.rows('rule').map(({ name }) => `sequence/${name}`),
    ...Object.keys(ABOUT),
  ];
}

const ANSWER =
  'To answer it, mend the line; or accept it with a reason, below the declaration it is found at: accept CODE "reason".';

function checkPage({ code, about, wrong, right }: Check): string {
  return `${code}\n\n${about}\n\nWrong:\n\n${indented(wrong)}\n\nRight:\n\n${indented(right)}\n\n${ANSWER}\n`;
}

function sequencePage(rule: Rule, view: View): string {
  const { given } = rule;
  const names = (list: Rule['given']['first']): string => listed((list?.value ?? []).map(({ value }) => value.name));
  const { file, line } = positionOf(rule.place, view);
  const wait = given.wait === undefined ? '' : `, and ${write(given.wait.value, view.style)} must pass between`;
  const conditions = [
    ...given.when.map(({ value }) => ['Only when', value] as const),
    ...given.unless.map(({ value }) => ['Not when', value] as const),
  ];
  return `${[
    `sequence/${rule.name}`,
    '',
    `${rule.label}.`,
    '',
    `${relationText(rule, names(given.first), names(given.then))}${wait}.`,
    ...conditions.map(([word, { place }]) => `${word} ${textAt(place, view)}.`),
    ...(given.because === undefined ? [] : ['', `Why: ${given.because.value}`]),
    ...(given.remedy === undefined ? [] : [`What to do: ${given.remedy.value}`]),
    '',
    `Severity: ${given.severity?.value ?? 'note'} when the order is broken, one rung less when it is right only by luck.`,
    `Source: ${given.source?.value ?? 'not named'} (${file}:${line}).`,
    '',
    `An order is held where a chain of links leads from the first to the second: "after", "also after", the order of a phase, an inspection that holds, a delivery that brings. Dates that merely happen to be right are luck. ${ANSWER}`,
    'Rules help to plan. The adopted local code, the inspector, and licensed people decide.',
  ].join('\n')}\n`;
}

function relationText(rule: Rule, first: string, then: string): string {
  const where =
    rule.given.scope === undefined || rule.given.scope.value === 'house'
      ? ''
      : `, in the ${rule.given.scope.value}`.replace('in the same element', 'on the same part of the house');
  switch (rule.given.relation?.value ?? 'before') {
    case 'before':
      return `${sentenceCase(first)} comes before ${then}${where}`;
    case 'hold':
      return `${sentenceCase(first)} must have passed before ${then}${where}`;
    case 'while':
      return `${sentenceCase(first)} is in place while ${then} goes on${where}`;
    case 'once':
      return first === '' ? `Owed before ${then} is over` : `${sentenceCase(first)} is done once before ${then} is over`;
  }
}

function sentenceCase(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}

/** The words of the text at a place. */
function textAt(place: Rule['place'], { plan: { model } }: View): string {
  const declared = model.library.bySlot.get(place.slot) ?? model.names.bySlot.get(place.slot);
  let node = declared?.node;
  for (const step of place.spot.path) node = node?.children[step] ?? node;
  return node?.line.statement.text.slice(place.spot.from, place.spot.to) ?? '';
}

function indented(text: string): string {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `    ${line}`))
    .join('\n');
}
