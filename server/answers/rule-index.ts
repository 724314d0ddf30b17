// The codes of all findings by area, each with its title: as a list for a terminal, and as the index of the reference.
import { addTo } from '#kit/gathered';
import { codedRows } from './row-page.ts';
import { pagePath, ruleCodes, ruleHelp } from './rule-page.ts';
import type { View } from './view.ts';

export interface Area {
  /** What stands before the slash. */
  readonly word: string;
  readonly title: string;
  readonly codes: readonly Listed[];
}

export interface Listed {
  readonly code: string;
  readonly title: string;
  /** What the file of its row says that it is about. Absent for what is no row. */
  readonly group: string | undefined;
}

/** In the order in which a builder looks for them. An area without a title of its own goes by its word, after the others. */
const TITLES: Readonly<Record<string, string>> = {
  sequence: 'What comes before what',
  missing: 'Work that is missing',
  safety: 'What can hurt someone',
  minimum: 'Least and greatest values of the model code',
  inspections: 'Inspections',
  work: 'Who does what',
  schedule: 'Steps and their links',
  waits: 'Waits',
  dates: 'Days',
  money: 'Money',
  rooms: 'Rooms',
  doors: 'Doors',
  openings: 'Windows and doors in their walls',
  measures: 'Dimensions',
  takeoff: 'Counting what is drawn',
  names: 'Names',
  words: 'Words',
  units: 'Units',
  syntax: 'How values are written',
  accept: 'Accepted findings',
  screed: 'The list of findings',
};

/** Every code that a finding can have, in the order of its area and, within it, of the sources. */
export function ruleAreas(view: View): readonly Area[] {
  const byArea = new Map<string, Listed[]>(Object.keys(TITLES).map((word) => [word, []]));
  const groups = groupsOf(view);
  for (const code of ruleCodes(view)) {
    const word = code.slice(0, code.indexOf('/'));
    const listed = { code, title: ruleHelp(code, view)?.title ?? '', group: groups.get(code) };
    const area = byArea.get(word);
    if (area === undefined) byArea.set(word, [listed]);
    else area.push(listed);
  }
  return [...byArea].flatMap(([word, codes]) => (codes.length === 0 ? [] : [{ word, title: TITLES[word] ?? word, codes }]));
}

/** Rows by the file that they stand in: the library keeps together what belongs together on site. */
function groupsOf({ plan: { model } }: View): ReadonlyMap<string, string> {
  const headings = new Map(
    model.library.files.map(({ path, tree }) => [path, HEADING.exec(tree.lines[0]?.statement.text ?? '')?.[1] ?? path]),
  );
  return new Map(
    codedRows(model).flatMap(([code, { place }]) => {
      const heading = headings.get(place.slot.file);
      return heading === undefined ? [] : [[code, heading]];
    }),
  );
}

/** The first sentence of a file's first comment. */
const HEADING = /^# (.+?)\.?(?:\s|$)(?=[A-Z]|$)/;

/** The codes of an area with those of one group together, in the order in which they come. */
function grouped({ codes }: Area): readonly (readonly [group: string | undefined, codes: readonly Listed[]])[] {
  const byGroup = new Map<string | undefined, Listed[]>();
  for (const each of codes) addTo(byGroup, each.group, each);
  return [...byGroup];
}

/** Areas as text, each under its title. */
export function ruleList(areas: readonly Area[]): string {
  return areas
    .map((area) => {
      const width = Math.max(...area.codes.map(({ code }) => code.length)) + 2;
      const lists = grouped(area).map(
        ([group, codes]) =>
          `${group === undefined ? '' : `  ${group}\n`}${codes.map(({ code, title }) => `    ${code.padEnd(width)}${title}\n`).join('')}`,
      );
      return `${area.title}\n\n${lists.join('\n')}`;
    })
    .join('\n');
}

/** A page of the reference, by its path below the reference's folder. */
export interface ReferencePage {
  readonly path: string;
  readonly text: string;
}

/** The index first, then a page for each code. */
export function referencePages(view: View): readonly ReferencePage[] {
  const areas = ruleAreas(view);
  const pages = areas.flatMap(({ codes }) =>
    codes.map(({ code }) => ({ path: pagePath(code), text: ruleHelp(code, view)?.markdown ?? '' })),
  );
  return [{ path: 'README.md', text: indexPage(areas) }, ...pages];
}

function indexPage(areas: readonly Area[]): string {
  const lists = areas.flatMap((area) => [
    `## ${area.title}`,
    `\`${area.word}/…\``,
    ...grouped(area).flatMap(([group, codes]) => [
      ...(group === undefined ? [] : [`### ${group}`]),
      codes.map(({ code, title }) => `- [${title}](${pagePath(code)})`).join('\n'),
    ]),
  ]);
  return `${[
    '# What findings mean',
    'One page for each code that a finding can have: what is looked for and why, where it comes from, a plan that is wrong and one that is right. The same words are printed by `screed rule CODE`. The pages are made by `npm run reference`; do not edit them.',
    ...lists,
    'These pages help to plan. Where work can hurt someone they name the usual caution; the adopted local code, the inspector and licensed people decide.',
  ].join('\n\n')}\n`;
}
