// What the code of a finding means: what is looked for and why, where it comes from, how to answer it; with a plan that is
// wrong and one that is right, where the check has them.
import type { Check } from '#checks/check';
import { checks } from '#checks/rules';
import type { ElementOf, Rule } from '#model/model';
import { positionOf } from './position.ts';
import { ABOUT } from './rule-about.ts';
import { type View, write } from './view.ts';

/** The page of a code as text; undefined where no finding has it. */
export function rulePage(code: string, view: View): string | undefined {
  const check = checks.find((each) => each.code === code);
  if (check !== undefined) return checkPage(check);
  const [area, name] = code.split('/');
  const rule = area === 'sequence' ? view.plan.model.rows('rule').find((each) => each.name === name) : undefined;
  if (rule !== undefined) return sequencePage(rule, view);
  const minimum = area === 'minimum' ? view.plan.model.rows('minimum').find((each) => each.name === name) : undefined;
  if (minimum !== undefined) return minimumPage(minimum, view);
  const hazard = area === 'safety' ? view.plan.model.rows('hazard').find((each) => each.name === name) : undefined;
  if (hazard !== undefined) return hazardPage(hazard, view);
  const about = Object.hasOwn(ABOUT, code) ? ABOUT[code] : undefined;
  return about === undefined ? undefined : `${code}\n\n${about}\n\n${ANSWER}\n`;
}

/** Every code that a finding can have. */
export function ruleCodes(view: View): readonly string[] {
  return [
    ...checks.map(({ code }) => code),
    ...view.plan.model.rows('rule').map(({ name }) => `sequence/${name}`),
    ...view.plan.model.rows('minimum').map(({ name }) => `minimum/${name}`),
    ...view.plan.model.rows('hazard').map(({ name }) => `safety/${name}`),
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
  const names = (list: Rule['given']['first']): string => (list?.value ?? []).map(({ value }) => value.name).join(', ');
  const { file, line } = positionOf(rule.place, view);
  const conditions = [
    ...given.when.map(({ value }) => ['Only when', value] as const),
    ...given.unless.map(({ value }) => ['Not when', value] as const),
  ];
  const first = names(given.first);
  return `${[
    `sequence/${rule.name}`,
    '',
    `${rule.label}.`,
    '',
    ...(first === '' ? [] : [`First:  ${first}`]),
    `Then:   ${names(given.then)}`,
    '',
    relationText(rule, view),
    ...conditions.map(([word, { place }]) => `${word} ${textAt(place, view)}.`),
    ...(given.because === undefined ? [] : ['', `Why: ${given.because.value}`]),
    ...(given.remedy === undefined ? [] : [`What to do: ${given.remedy.value}`]),
    '',
    `Severity: ${given.severity?.value ?? 'note'} when the order is broken, never more than a warning when it is right only by luck.`,
    `Source: ${given.source?.value ?? 'not named'} (${file}:${line}).`,
    '',
    'An order is held where a chain of links leads from the first to the second: "after", "also after", the order of a phase,',
    'an inspection that holds, a delivery that brings. Dates that merely happen to be right are luck.',
    ANSWER,
    'Rules help to plan. The adopted local code, the inspector, and licensed people decide.',
  ].join('\n')}\n`;
}

function minimumPage(row: ElementOf<'minimum'>, view: View): string {
  const { given } = row;
  const { file, line } = positionOf(row.place, view);
  const bound =
    given['at least'] === undefined ? `at most ${given['at most']?.value ?? '?'}` : `at least ${given['at least'].value}`;
  const sections = given.section.flatMap((each) => each.value).map(({ value }) => `${value.edition} ${value.section}`);
  return `${[
    `minimum/${row.name}`,
    '',
    `${row.label}: ${given.fact?.value ?? ''} ${bound}.`,
    '',
    ...given.when.map(({ value }) => `Only when ${textAt(value.place, view)}.`),
    ...given.unless.map(({ value }) => `Not when ${textAt(value.place, view)}.`),
    ...(given.because === undefined ? [] : ['', `Why: ${given.because.value}`]),
    ...(given.remedy === undefined ? [] : [`What to do: ${given.remedy.value}`]),
    '',
    `Severity: ${given.severity?.value ?? 'note'} in ${sections.length === 0 ? 'no edition' : sections.join(', ')}; a note in any other.`,
    `Source: ${given.source?.value ?? 'not named'} (${file}:${line}).`,
    '',
    'Looked at only where the plan names its code, and only where the value is known.',
    ANSWER,
    'Model codes are amended by towns. The adopted local code and the inspector decide.',
  ].join('\n')}\n`;
}

function hazardPage(row: ElementOf<'hazard'>, view: View): string {
  const { given } = row;
  const { file, line } = positionOf(row.place, view);
  const names = (list: typeof given.during): string => (list?.value ?? []).map(({ value }) => value.name).join(', ');
  return `${[
    `safety/${row.name}`,
    '',
    `${row.label}.`,
    '',
    ...(given.for === undefined ? [] : [`Lies in: ${given.for.value === 'plan' ? 'the plan' : `each ${given.for.value}`}.`]),
    ...(given.during === undefined ? [] : [`Carried by: ${names(given.during)}.`]),
    ...given.when.map(({ value }) => `Only when ${textAt(value.place, view)}.`),
    ...given.unless.map(({ value }) => `Not when ${textAt(value.place, view)}.`),
    ...(given['met by'] === undefined ? [] : [`Seen to by: ${names(given['met by'])}.`]),
    ...(given.because === undefined ? [] : ['', `Why: ${given.because.value}`]),
    ...(given.remedy === undefined ? [] : [`What to do: ${given.remedy.value}`]),
    '',
    `Severity: ${given.severity?.value ?? 'note'}.`,
    `Source: ${given.source?.value ?? 'not named'} (${file}:${line}).`,
    '',
    'Told once: for each thing where the plan itself says something dangerous, once for the plan where its work carries it.',
    ANSWER,
    'Reminders help to plan. A competent person on site, licensed people and local rules decide.',
  ].join('\n')}\n`;
}

/** How the two stand to each other, where, and how long between. */
function relationText({ given }: Rule, view: View): string {
  const where =
    given.scope?.value === 'same room'
      ? ', in the same room'
      : given.scope?.value === 'same element'
        ? ', on the same part of the house'
        : '';
  const wait = given.wait === undefined ? '' : ` ${write(given.wait.value, view.style)} must pass between.`;
  switch (given.relation?.value ?? 'before') {
    case 'before':
      return `The first is done before the second begins${where}.${wait}`;
    case 'hold':
      return `The first is an approval: it has passed before the second begins${where}.${wait}`;
    case 'while':
      return `The first is in place before the second begins, and stays while it goes on${where}.${wait}`;
    case 'once':
      return `It is owed once, before the second is over.${wait}`;
  }
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
