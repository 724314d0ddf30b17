// The page of a row of the library: an order, work that other work calls for, a least value, a hazard. What it looks for and why, where
// it comes from, with a plan that is wrong and one that is right.
import { sectionsText } from '#checks/editions';
import { type Example, hazardExample, minimumExample, type NoExample, needExample, ruleExample } from '#checks/row-examples';
import { spelled } from '#checks/sequence-messages';
import type { ElementOf, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import { answer, example, type Page, type Part, paragraph, rows, WHO_DECIDES } from './page.ts';
import { type View, write } from './view.ts';

/** Kinds of rows that findings come from, by the area of their codes. */
export const ROW_KINDS: Readonly<Record<string, 'rule' | 'need' | 'minimum' | 'hazard' | undefined>> = {
  sequence: 'rule',
  missing: 'need',
  minimum: 'minimum',
  safety: 'hazard',
};

/** Every code that a row gives, with its row. */
export function codedRows(model: Model): readonly (readonly [code: string, row: LibraryRow])[] {
  return Object.entries(ROW_KINDS).flatMap(([area, kind]) =>
    (model.rows(kind!) as readonly LibraryRow[]).map((row) => [`${area}/${row.name}`, row] as const),
  );
}

/** Undefined where no row gives the code. */
export function rowPage(code: string, view: View): Page | undefined {
  const at = code.indexOf('/');
  const kind = ROW_KINDS[code.slice(0, at)];
  const row = kind === undefined ? undefined : view.plan.model.rows(kind).find(({ name }) => name === code.slice(at + 1));
  switch (row?.kind) {
    case 'rule':
      return pageOf(code, row, view, ofRule(row, view));
    case 'need':
      return pageOf(code, row, view, ofNeed(row, view));
    case 'minimum':
      return pageOf(code, row, view, ofMinimum(row, view));
    case 'hazard':
      return pageOf(code, row, view, ofHazard(row, view));
    default:
      return undefined;
  }
}

/** What the page of one kind of row says in its own way. */
interface Own {
  /** What it looks at, and when. */
  readonly asked: readonly (readonly [word: string, text: string])[];
  readonly relation?: string;
  readonly shown: Example | NoExample;
  /** How badly it is told, and where it stands. */
  readonly weight: readonly (readonly [word: string, text: string])[];
  /** When it is told, and who decides. */
  readonly told: string;
  readonly decides: string;
}

function pageOf(code: string, row: LibraryRow, view: View, { asked, relation, shown, weight, told, decides }: Own): Page {
  return {
    code,
    title: row.label,
    about: reasons(row),
    parts: [
      rows(...asked),
      ...(relation === undefined ? [] : [paragraph(relation)]),
      ...exampleParts(shown, row),
      rows(...weight, ['Source', row.given.source?.value ?? 'not named'], ['Row', writtenAt(row, view)]),
      paragraph(told),
      answer(code),
      paragraph(decides),
    ],
  };
}

function ofRule(rule: Rule, view: View): Own {
  const { given } = rule;
  return {
    asked: [
      ['First', namesText(given.first, view)],
      ['Then', namesText(given.then, view)],
      ['Renewed by', namesText(given['renewed by'], view)],
      ...conditions(rule, view),
    ],
    relation: relationText(rule, view),
    shown: ruleExample(rule, view.plan.model),
    weight: [
      ['Severity', severityText(rule)],
      ['Section', sectionsText(given.section)],
    ],
    told: howTold(rule),
    decides: WHO_DECIDES,
  };
}

function howTold({ given }: Rule): string {
  if (given['renewed by'] !== undefined)
    return 'Told by the dates that are shown, once: at the first step that begins when the time is over.';
  return given.within === undefined ? HELD_BY_LINKS : TOLD_BY_DATES;
}

const TOLD_BY_DATES =
  'Told by the dates that are shown. No link keeps a step from being late: what holds is that nothing else than the first keeps the second back. What else it waits for may make it late, and is named where it is done after the first and little time is left.';

const HELD_BY_LINKS =
  'Links hold an order: `after`, `also after`, the order of a phase, an inspection that holds, a delivery that brings. Dates that merely happen to be right are luck.';

function ofMinimum(row: ElementOf<'minimum'>, view: View): Own {
  const { given } = row;
  const bound =
    given['at least'] === undefined ? `at most \`${given['at most']?.value ?? '?'}\`` : `at least \`${given['at least'].value}\``;
  const sections = given.section.flatMap((each) => each.value).map(({ value }) => value);
  const severity = given.severity?.value ?? 'note';
  return {
    asked: [
      [
        'Looked at',
        given.fact === undefined
          ? 'only whether it is said; a reminder, once'
          : `\`${given.fact.value}\` of ${kindText(given.for)}`,
      ],
      [given.local === undefined ? 'Model code' : given.local.value, given.fact === undefined ? '' : bound],
      ...conditions(row, view),
      ...given.or.map(({ value }) => ['Or', value.map((each) => `\`${textAt(each.value.place, view)}\``).join(' and ')] as const),
    ],
    shown: minimumExample(row),
    weight: [
      ['Section', sectionsText(given.section)],
      [
        'Severity',
        severity === 'note' || sections.length === 0
          ? 'note.'
          : `${severity} in ${sections.map(({ edition }) => edition).join(', ')}; note in any other edition.`,
      ],
    ],
    told: 'Looked at only where the plan names its code, and only where the value is known.',
    decides: 'Model codes are amended by towns. The adopted local code and the inspector decide.',
  };
}

function ofNeed(need: Need, view: View): Own {
  const { given } = need;
  return {
    asked: [
      ...given['called by'].map((list) => ['Called for by', namesText(list, view)] as const),
      ['Answered by', namesText(given['answered by'], view)],
      ['Looked at', given.for === undefined ? '' : kindText(given.for)],
      ...conditions(need, view),
    ],
    shown: needExample(need, view.plan.model),
    weight: [
      ['Severity', `${given.severity?.value ?? 'note'}.`],
      ['Section', sectionsText(given.section)],
    ],
    told: 'Told only where some task does the work that calls, and where nothing measured says already that nobody does it.',
    decides: 'It reminds. The drawings, the adopted local code, the inspector, and licensed people decide.',
  };
}

function ofHazard(row: Hazard, view: View): Own {
  const { given } = row;
  return {
    asked: [
      ['Lies in', given.for === undefined ? '' : kindText(given.for)],
      ['Carried by', namesText(given.during, view)],
      ...conditions(row, view),
      ['Seen to by', namesText(given['met by'], view)],
    ],
    shown: hazardExample(row, view.plan.model),
    weight: [['Severity', `${given.severity?.value ?? 'note'}.`]],
    told: 'Told once: for each thing where the plan itself says something dangerous, once for the plan where its work carries it.',
    decides: 'Reminders help to plan. A competent person on site, licensed people and local rules decide.',
  };
}

/** 'each room', 'the plan'. */
function kindText(kind: { readonly value: string } | undefined): string {
  return kind?.value === 'plan' ? 'the plan' : `each ${kind?.value ?? 'thing'}`;
}

type Need = ElementOf<'need'>;
type Hazard = ElementOf<'hazard'>;
type LibraryRow = Rule | Need | Hazard | ElementOf<'minimum'>;

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
  if (row.kind === 'need' || row.kind === 'hazard') return example(shown, 'no step sees to it', 'a step sees to it');
  if (row.kind === 'rule' && row.given.within !== undefined)
    return example(shown, 'the second begins too late', 'the second follows in time');
  if (row.kind === 'minimum' || wrong.length > 0 || right.length > 0) return example(shown);
  switch (row.given.relation?.value ?? 'before') {
    case 'before':
    case 'hold':
    case 'while':
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
  if (given['renewed by'] !== undefined) return `${severity}.`;
  if (given.within !== undefined)
    return severity === 'note'
      ? 'note, when too long passes and when it is in time only by luck.'
      : `${severity} when too long passes; ${severity === 'error' ? 'warning' : 'note'} when it is in time only by luck.`;
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
  if (given['renewed by'] !== undefined) {
    const goodFor = given['good for'];
    const lasts =
      goodFor === undefined
        ? 'What the first gets is good for as long as its step says with `good for`'
        : `What the first gets is good for ${spelled(goodFor.value)}, or as long as its step says with \`good for\``;
    return `${lasts}; the second begins before it runs out. Their order is not asked for here.`;
  }
  if (given.within !== undefined)
    return `The second begins no more than ${spelled(given.within.value)} after the first is done, or after the visit that sees it has passed${where}. Their order is not asked for here.`;
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
