// One ladder decides which money counts for a step: paid or invoiced, an accepted bid, a given cost, a unit price, hours at a rate.
import { expect, test } from 'vitest';
import { analyse } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

function costs(text: string): { readonly lines: readonly string[]; readonly net: number } {
  const { budget } = analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library: builtIn() });
  return { lines: budget.lines.map(({ rung, kind, cents }) => `${rung} ${kind} ${cents / 100}`), net: budget.net / 100 };
}

const plan = (step: string, more = ''): string => `plan p
  start 2027-05-03
trade me "Us" crew of 2 at $50/h
firm ruiz "Ruiz" does me
task dig takes 1d by me${step}
${more}`;

test('hours at the rate of the trade', () => expect(costs(plan(''))).toEqual({ lines: ['rate labour 800'], net: 800 }));

test('a given cost counts before hours; a fee beside it', () =>
  expect(costs(plan(' costs $700 fee $50')).lines).toEqual(['given fee 50', 'given work 700']));

test('an accepted bid counts before a given cost; one not accepted does not', () => {
  const bid = 'bid ruiz-bid by ruiz for me $650, with materials';
  expect(costs(plan(' costs $700', `${bid}, accepted 2027-04-20\n`))).toEqual({ lines: ['bid work 650'], net: 650 });
  expect(costs(plan(' costs $700', `${bid}\n`)).net).toBe(700);
});

test('what was paid for a step that is done counts before what was planned; a part paid on the way does not', () => {
  const paid = 'paid ruiz $720 on 2027-05-05 for dig\n';
  const done = 'progress 2027-05-05\n  dig finished 2027-05-03\n';
  expect(costs(plan(' costs $700', paid)).net).toBe(700);
  expect(costs(plan(' costs $700 fee $50', paid + done))).toEqual({ lines: ['given fee 50', 'paid work 720'], net: 770 });
});

test('an invoice and its payment are one bill: the greater counts', () => {
  const bills = 'invoice ruiz $740 on 2027-05-04 for dig\npaid ruiz $400 on 2027-05-05 for dig\n';
  expect(costs(plan('', `${bills}progress 2027-05-05\n  dig finished 2027-05-03\n`)).net).toBe(740);
});
