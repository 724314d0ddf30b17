// Which rule speaks up in which plan, how often and how loudly: a table in tests/golden/rules.txt, so that a change of the
// library shows where it is felt. After a change that is meant, `vitest -u` writes it anew; read the difference.
import { expect, test } from 'vitest';
import { checks } from '#checks/rules';
import { analyse } from '#server/pipeline';
import { builtIn } from './support/built-in.ts';
import { rulePlans } from './support/rule-corpus.ts';

const plans = rulePlans();

/** By code and plan: '2 errors, 1 note'. */
const table = new Map<string, Map<string, string>>();
for (const { name, root, texts } of plans) {
  const counts = new Map<string, Map<string, number>>();
  for (const { code, severity } of analyse({ root, texts, library: builtIn() }).findings) {
    const own = counts.get(code) ?? new Map<string, number>();
    counts.set(code, own.set(severity, (own.get(severity) ?? 0) + 1));
  }
  for (const [code, own] of counts) {
    const row = table.get(code) ?? new Map<string, string>();
    const words = ['error', 'warning', 'note'].flatMap((severity) => {
      const count = own.get(severity) ?? 0;
      return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
    });
    table.set(code, row.set(name, words.join(', ')));
  }
}

/** Every code that a check, an order or a least value has. */
const { model } = analyse({ root: 'plan.screed', texts: { 'plan.screed': '' }, library: builtIn() });
const codes: readonly string[] = [
  ...checks.map(({ code }) => code),
  ...model.rows('rule').map(({ name }) => `sequence/${name}`),
  ...model.rows('minimum').map(({ name }) => `minimum/${name}`),
].sort();

test('the table of rules and plans', async () => {
  const lines = [...new Set([...codes, ...table.keys()])].sort().flatMap((code) => {
    const row = table.get(code);
    return row === undefined ? [] : [code, ...[...row].map(([plan, words]) => `  ${plan}: ${words}`), ''];
  });
  const nowhere = codes.filter((code) => !table.has(code));
  const heading = `${plans.length} plans, ${codes.length} rules, of which ${nowhere.length} speak up in none of them.`;
  await expect([heading, '', ...lines, 'In no plan:', ...nowhere.map((code) => `  ${code}`), ''].join('\n')).toMatchFileSnapshot(
    'golden/rules.txt',
  );
});

test('no fewer than forty plans', () => expect(plans.length).toBeGreaterThanOrEqual(40));

test('every check speaks up somewhere, and no rule everywhere', () => {
  expect(checks.filter(({ code }) => !table.has(code)).map(({ code }) => code)).toEqual([]);
  for (const [code, row] of table) expect(row.size, code).toBeLessThan(plans.length / 2);
});
