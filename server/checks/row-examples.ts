// The example of a row of the library: a small plan that the row speaks up about and one that it does not. An order makes
// both from what it names; a least value, and an order that hangs on more of the house, say the lines that they need.
import { format } from '#grammar/format';
import { parse } from '#grammar/parse';
import { kindOf, propertiesOf, propertyOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import type { ElementOf, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import { houseFor } from './example-house.ts';
import { hazardSteps, needSteps, orderSteps } from './example-steps.ts';

export interface Example {
  readonly wrong: string;
  readonly right: string;
}

/** A row without an example, and what to write into it. */
export interface NoExample {
  readonly lacks: string;
}

/** Both plans of a rule of order. Where the row says none of their own lines, they are made from its two sides. */
export function ruleExample(rule: Rule, model: Model): Example | NoExample {
  const house = houseOf(rule);
  if ('lacks' in house) return house;
  const said = saidLines(rule);
  if (said !== undefined) return plansOf(house.lines, said);
  const steps = orderSteps(rule, model);
  if (steps === undefined)
    return { lacks: 'say the lines of both plans with "wrong" and "right": the two sides name no work, state or inspection' };
  return plansOf(house.lines, steps);
}

/** Both plans of a least or greatest value: one that misses it by a little, and one that meets it. */
export function minimumExample(row: ElementOf<'minimum'>): Example | NoExample {
  const house = houseOf(row);
  if ('lacks' in house) return house;
  const said = saidLines(row);
  if (said === undefined)
    return {
      lacks: 'say the line that misses the value by a little with "wrong", and the one that meets it exactly with "right"',
    };
  const editions = row.given.section.flatMap(({ value }) => value).map(({ value }) => value.edition);
  // A row about an edition that it lists no section of says the edition itself.
  const saysCode = [...house.lines, ...said.wrong, ...said.right].some((line) => firstWord(line) === 'code');
  return plansOf([...(saysCode ? [] : [`code ${editions[editions.length - 1] ?? 'irc-2021'}`]), ...house.lines], said);
}

/** Both plans of work that is called for: one in which nobody does it, and one in which a step does. */
export function needExample(need: ElementOf<'need'>, model: Model): Example | NoExample {
  return answeredExample(need, needSteps(need, model));
}

/** Both plans of a hazard: one that carries it, and one in which a step or a property sees to it. */
export function hazardExample(hazard: ElementOf<'hazard'>, model: Model): Example | NoExample {
  return answeredExample(hazard, hazardSteps(hazard, model));
}

function answeredExample(row: ElementOf<'need'> | ElementOf<'hazard'>, steps: Sides | undefined): Example | NoExample {
  const house = houseOf(row);
  if ('lacks' in house) return house;
  const said = saidLines(row);
  if (said !== undefined && said.wrong.length > 0) return plansOf(house.lines, said);
  if (steps === undefined)
    return { lacks: 'say the lines of both plans with "wrong" and "right": no work calls for it, or none answers' };
  // Where a row says only what answers, that stands before the steps that call.
  return plansOf(house.lines, said === undefined ? steps : { wrong: steps.wrong, right: [...said.right, ...steps.wrong] });
}

type Row = Pick<Rule, 'given'> | Pick<ElementOf<'need' | 'hazard'>, 'given'> | Pick<ElementOf<'minimum'>, 'given'>;

interface Sides {
  readonly wrong: readonly string[];
  readonly right: readonly string[];
}

function saidLines({ given: { wrong, right } }: Row): Sides | undefined {
  if (wrong.length === 0 && right.length === 0) return undefined;
  return { wrong: wrong.map(({ value }) => value), right: right.map(({ value }) => value) };
}

/** What stands in both plans: the row's own lines, else what its conditions ask for. */
function houseOf(row: Row): { readonly lines: readonly string[] } | NoExample {
  const said = row.given.example.map(({ value }) => value);
  if (said.length > 0) return { lines: said };
  const house = houseFor(row.given.when, row.given.unless);
  // Both plans may say all that the conditions ask for themselves.
  return 'lacks' in house && row.given.wrong.length > 0 && row.given.right.length > 0 ? { lines: [] } : house;
}

function plansOf(shared: readonly string[], { wrong, right }: Sides): Example {
  return { wrong: planOf([...shared, ...wrong]), right: planOf([...shared, ...right]) };
}

type AnyKind = NonNullable<ReturnType<typeof kindOf>>;

/**
 * Lines in the usual layout: what is a property of the thing above stands below it, the rest begins a thing. A plan is declared
 * only where something is said of it.
 */
function planOf(lines: readonly string[]): string {
  const text: string[] = [];
  let above: AnyKind = vocabulary.plan;
  const ofPlan = lines.filter(isOfPlan);
  if (ofPlan.length > 0) text.push('plan example', ...ofPlan.map((line) => `  ${line}`));
  for (const line of lines) {
    if (isOfPlan(line)) continue;
    const word = firstWord(line);
    const kind = kindOf(word);
    if (kind === undefined || propertyOf(propertiesOf(above), word) !== undefined) text.push(`  ${line}`);
    else {
      // Steps stand together, and so do trades; a thing with lines below it stands apart.
      const last = text[text.length - 1];
      if (last !== undefined && (last.startsWith(' ') || groupOf(kind) !== groupOf(above))) text.push('');
      text.push(line);
      above = kind;
    }
  }
  return format(parse(`${text.join('\n')}\n`)).text;
}

function groupOf(kind: AnyKind): string {
  return kind.space ?? kind.word;
}

/** What only the plan itself says: its code, its start, its frost. */
function isOfPlan(line: string): boolean {
  return PLAN_WORDS.has(firstWord(line));
}

const PLAN_WORDS: ReadonlySet<string> = new Set([
  'air-intake',
  'air-leakage',
  'built',
  'code',
  'designed',
  'fresh-air',
  'frost',
  'loads',
  'plumbing-code',
  'start',
  'water-pressure',
  'weather',
  'zone',
]);

function firstWord(line: string): string {
  return /^[\w-]+/.exec(line)?.[0]?.toLowerCase() ?? '';
}
