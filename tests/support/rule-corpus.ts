// The plans that every rule is held against: samples, public cases, ordinary plans, the ordering chain, and the plans on the
// pages of the checks. A plan here is its texts and its root; to add more is one line in `rulePlans`.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hazardExample, minimumExample, needExample, ruleExample } from '#checks/row-examples';
import { checks } from '#checks/rules';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from './built-in.ts';

const root = join(import.meta.dirname, '../..');

export interface RulePlan {
  readonly name: string;
  readonly root: string;
  readonly texts: Readonly<Record<string, string>>;
}

/** In the order of the table. */
export function rulePlans(): readonly RulePlan[] {
  return [
    sample('cottage', 'plan'),
    sample('shed', 'shed'),
    sample('panel-cabin', 'cabin'),
    ...folder('samples/broken'),
    ...folder('tests/cases/ordinary'),
    ...folder('tests/cases'),
    single('tests/server/checks/ordering-chain', read('tests/server/checks/ordering-chain.screed')),
    ...rowPages(),
    ...checks.flatMap(({ code, wrong, right }) => page(code, wrong, right)),
  ];
}

/** A wrong and a right plan, as a page of the reference shows them. */
export function page(code: string, wrong: string, right: string): readonly RulePlan[] {
  return [single(`page of ${code}, wrong`, wrong), single(`page of ${code}, right`, right)];
}

function sample(name: string, file: string): RulePlan {
  return { name: `samples/${name}`, root: `samples/${name}/${file}.screed`, texts: sampleTexts(name) };
}

function folder(path: string): readonly RulePlan[] {
  return readdirSync(join(root, path))
    .filter((file) => file.endsWith('.screed'))
    .sort()
    .map((file) => single(`${path}/${file.replace(/\.screed$/, '')}`, read(`${path}/${file}`)));
}

function single(name: string, text: string): RulePlan {
  return { name, root: 'plan.screed', texts: { 'plan.screed': text } };
}

function read(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

function rowPages(): readonly RulePlan[] {
  const { model } = analyse({ root: 'plan.screed', texts: { 'plan.screed': '' }, library: builtIn() });
  const rows = [
    ...model.rows('rule').map((row) => [`sequence/${row.name}`, ruleExample(row, model)] as const),
    ...model.rows('need').map((row) => [`missing/${row.name}`, needExample(row, model)] as const),
    ...model.rows('hazard').map((row) => [`safety/${row.name}`, hazardExample(row, model)] as const),
    ...model.rows('minimum').map((row) => [`minimum/${row.name}`, minimumExample(row)] as const),
  ];
  return rows.flatMap(([code, example]) => ('lacks' in example ? [] : page(code, example.wrong, example.right)));
}
