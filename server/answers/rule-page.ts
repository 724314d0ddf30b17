// What the code of a finding means: what is looked for and why, where it comes from, how to answer it; with a plan that is
// wrong and one that is right. `screed rule` prints it, the reference is made of it, and other tools are told in its words.
import type { Check } from '#checks/check';
import { type Example, minimumExample, type NoExample, ruleExample } from '#checks/row-examples';
import { checks } from '#checks/rules';
import type { ElementOf, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import { example, type Page, type Part, pageMarkdown, pageText, paragraph, rows } from './page.ts';
import { ABOUT, HAZARDS } from './rule-about.ts';
import { ABOUT_EXAMPLES } from './rule-about-examples.ts';
import { type View, write } from './view.ts';

/** A code in the words of its page, for whoever tells of it elsewhere. */
export interface RuleHelp {
  readonly code: string;
  /** A few words, or a sentence without its full stop. */
  readonly title: string;
  /** What it is about and why it matters, in a few sentences. */
  readonly about: string;
  /** The whole page. */
  readonly text: string;
  readonly markdown: string;
  /** Where its page lies below the folder of the reference: 'sequence/board-before-dry.md'. */
  readonly path: string;
}

/** Undefined where no finding has the code. */
export function ruleHelp(code: string, view: View): RuleHelp | undefined {
  const page = pageOf(code, view);
  if (page === undefined) return undefined;
  return {
    code,
    title: page.title,
    about: page.about,
    text: pageText(page),
    markdown: pageMarkdown(page),
    path: pagePath(code),
  };
}

/** The page of a code as text; undefined where no finding has it. */
export function rulePage(code: string, view: View): string | undefined {
  const page = pageOf(code, view);
  return page === undefined ? undefined : pageText(page);
}

/** Every code that a finding can have, each once. */
export function ruleCodes({ plan: { model } }: View): readonly string[] {
  return [
    ...new Set([
      ...checks.map(({ code }) => code),
      ...model.rows('rule').map(({ name }) => `sequence/${name}`),
      ...model.rows('minimum').map(({ name }) => `minimum/${name}`),
      ...Object.keys(ABOUT),
    ]),
  ];
}

/** Where the page of a code lies below the folder of the reference. */
export function pagePath(code: string): string {
  return `${code}.md`;
}

/** Whether the reference has a page for a code. A plan's own rules have none: their code leads to the plan. */
export function isInReference(code: string, { library }: Model): boolean {
  if (checkCodes.has(code) || Object.hasOwn(ABOUT, code)) return true;
  const at = code.indexOf('/');
  const kind = ROW_KINDS[code.slice(0, at)];
  return kind !== undefined && library.first.has(`${kind}/${code.slice(at + 1)}`);
}

const checkCodes: ReadonlySet<string> = new Set(checks.map(({ code }) => code));
const ROW_KINDS: Readonly<Record<string, 'rule' | 'minimum' | undefined>> = { sequence: 'rule', minimum: 'minimum' };

function pageOf(code: string, view: View): Page | undefined {
  const check = checks.find((each) => each.code === code);
  if (check !== undefined) return checkPage(check);
  const [area, name] = code.split('/');
  const { model } = view.plan;
  const rule = area === 'sequence' ? model.rows('rule').find((each) => each.name === name) : undefined;
  if (rule !== undefined) return sequencePage(rule, view);
  const minimum = area === 'minimum' ? model.rows('minimum').find((each) => each.name === name) : undefined;
  if (minimum !== undefined) return minimumPage(minimum, view);
  const about = Object.hasOwn(ABOUT, code) ? ABOUT[code] : undefined;
  return about === undefined ? undefined : aboutPage(code, about);
}

/** The first sentence is the title. */
function checkPage({ code, about, wrong, right }: Check): Page {
  return { code, title: firstSentence(about), about, parts: [...example({ wrong, right }), answer(code)] };
}

function aboutPage(code: string, about: string): Page {
  const shown = ABOUT_EXAMPLES[code];
  const parts = shown === undefined ? [] : example(shown);
  const last = HAZARDS.has(code) ? [paragraph(WHO_DECIDES)] : [];
  return { code, title: firstSentence(about), about, parts: [...parts, answer(code), ...last] };
}

const WHO_DECIDES = 'Rules help to plan. The adopted local code, the inspector, and licensed people decide.';

function firstSentence(text: string): string {
  return /^(.*?)[.?](?=\s|$)/s.exec(text)?.[1] ?? text;
}

function answer(code: string): Part {
  return paragraph(
    `To answer it, mend the plan; or accept it, with a reason, below the declaration it is found at: \`accept ${code} "reason"\`.`,
  );
}

function sequencePage(rule: Rule, view: View): Page {
  const { given } = rule;
  const code = `sequence/${rule.name}`;
  return {
    code,
    title: rule.label,
    about: reasons(rule),
    parts: [
      rows(['First', namesText(given.first, view)], ['Then', namesText(given.then, view)], ...conditions(rule, view)),
      paragraph(relationText(rule, view)),
      ...exampleParts(ruleExample(rule, view.plan.model), rule),
      rows(['Severity', severityText(rule)], ['Source', given.source?.value ?? 'not named'], ['Row', writtenAt(rule, view)]),
      paragraph(
        'Links hold an order: `after`, `also after`, the order of a phase, an inspection that holds, a delivery that brings. Dates that merely happen to be right are luck.',
      ),
      answer(code),
      paragraph(WHO_DECIDES),
    ],
  };
}

function minimumPage(row: ElementOf<'minimum'>, view: View): Page {
  const { given } = row;
  const code = `minimum/${row.name}`;
  const bound =
    given['at least'] === undefined ? `at most \`${given['at most']?.value ?? '?'}\`` : `at least \`${given['at least'].value}\``;
  const sections = given.section.flatMap((each) => each.value).map(({ value }) => value);
  const severity = given.severity?.value ?? 'note';
  return {
    code,
    title: row.label,
    about: reasons(row),
    parts: [
      rows(
        [
          'Looked at',
          `\`${given.fact?.value ?? ''}\` of ${given.for?.value === 'plan' ? 'the plan' : `each ${given.for?.value ?? 'thing'}`}`,
        ],
        ['Model code', bound],
        ...conditions(row, view),
      ),
      ...exampleParts(minimumExample(row), row),
      rows(
        ['Section', sections.map(({ edition, section }) => `${section} (${edition})`).join(', ')],
        [
          'Severity',
          severity === 'note' || sections.length === 0
            ? 'note.'
            : `${severity} in ${sections.map(({ edition }) => edition).join(', ')}; note in any other edition.`,
        ],
        ['Source', given.source?.value ?? 'not named'],
        ['Row', writtenAt(row, view)],
      ),
      paragraph('Looked at only where the plan names its code, and only where the value is known.'),
      answer(code),
      paragraph('Model codes are amended by towns. The adopted local code and the inspector decide.'),
    ],
  };
}

type LibraryRow = Rule | ElementOf<'minimum'>;

/** Why it matters, a hazard's name first, and what to do. */
function reasons({ label, given: { because, remedy } }: LibraryRow): string {
  return [because?.value ?? `${label}.`, remedy?.value].filter((part) => part !== undefined).join(' ');
}

function conditions({ given }: LibraryRow, view: View): readonly (readonly [word: string, text: string])[] {
  return [
    ...given.when.map(({ value }) => ['Only when', `\`${textAt(value.place, view)}\``] as const),
    ...given.unless.map(({ value }) => ['Not when', `\`${textAt(value.place, view)}\``] as const),
  ];
}

function exampleParts(shown: Example | NoExample, row: LibraryRow): readonly Part[] {
  if ('lacks' in shown) return [];
  const { wrong, right } = row.given;
  if (row.kind === 'minimum' && wrong.length > 0 && right.length > 0)
    return example(shown, `a little ${row.given['at least'] === undefined ? 'over' : 'under'}`, 'just met');
  if (row.kind === 'minimum' || wrong.length > 0 || right.length > 0) return example(shown);
  switch (row.given.relation?.value ?? 'before') {
    case 'before':
    case 'hold':
      return example(shown, 'nothing makes the second wait', 'the second waits for the first');
    default:
      return example(shown, 'no step sees to it', 'a step sees to it, and comes first');
  }
}

/** How it is told, by what becomes of the order. */
function severityText({ given }: Rule): string {
  const severity = given.severity?.value ?? 'note';
  const luck = severity === 'error' ? 'warning' : severity;
  const broken = `${severity} when the order is broken`;
  const both =
    luck === severity
      ? `${severity} when the order is broken or right only by luck`
      : `${broken}, ${luck} when it is right only by luck`;
  switch (given.relation?.value ?? 'before') {
    case 'before':
    case 'hold':
      return `${both}.`;
    case 'once':
      return `${broken}; note where no step sees to it.`;
    default:
      return `${both}; note where no step sees to it.`;
  }
}

/** The names on a side, each with what it is. */
function namesText(list: Rule['given']['first'], { plan: { model } }: View): string {
  return (list?.value ?? [])
    .map(({ value: { name } }) => {
      const named = (['work', 'inspection', 'state'] as const)
        .flatMap((kind) => model.rows(kind))
        .find((row) => row.name === name);
      return named === undefined ? `\`${name}\`` : `\`${name}\` (${named.label})`;
    })
    .join(', ');
}

/** The file that the row stands in. Its line would change with every row above it. */
function writtenAt(row: LibraryRow, view: View): string {
  return `\`${row.kind} ${row.name}\` in \`${view.fileName(row.place.slot.file)}\`; a row of that name in a plan says it otherwise`;
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
      return `The second is held until the first is done and passed${where}.${wait}`;
    case 'while':
      return `The first is in place before the second begins, and stays while it goes on${where}.${wait}`;
    case 'once':
      return `The first is owed once, before the second is over.${wait}`;
  }
}

/** The words of the text at a place. */
function textAt(place: Rule['place'], { plan: { model } }: View): string {
  const declared = model.library.bySlot.get(place.slot) ?? model.names.bySlot.get(place.slot);
  let node = declared?.node;
  for (const step of place.spot.path) node = node?.children[step] ?? node;
  return node?.line.statement.text.slice(place.spot.from, place.spot.to) ?? '';
}
