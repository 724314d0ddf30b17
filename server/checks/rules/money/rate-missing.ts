// Trades whose hours are in the dates but not in the cost.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Check } from '../../check.ts';

export const noRate = findingSort<[trade: string]>({
  code: 'money/rate-missing',
  severity: 'note',
  say: (trade) =>
    `The hours of "${trade}" have no rate, so the total leaves them out. Add "at $50/h", a price for the step, or an accepted bid.`,
});

export const rateMissing: Check = {
  code: 'money/rate-missing',
  about:
    'A trade that names its crew needs a rate, unless a bid or a given cost pays for its steps. A trade without a crew (a permit desk, a power company) is taken to be paid by fees.',
  wrong: `trade framing crew of 3 at $52/h
trade roofing crew of 2
task frame takes 5d by framing
task cover takes 2d by roofing after frame
`,
  right: `trade framing crew of 3 at $52/h
trade roofing crew of 2 at $55/h
task frame takes 5d by framing
task cover takes 2d by roofing after frame
`,
  run: ({ model, budget }) => {
    const told = new Set<Slot>();
    const findings: Finding[] = [];
    for (const { kind, trade } of budget.missing) {
      if (kind !== 'rate' || trade === undefined || told.has(trade)) continue;
      told.add(trade);
      const element = model.element(trade);
      if (element?.kind !== 'trade' || element.given['crew of'] === undefined) continue;
      findings.push(finding(noRate, element.place, element.name));
    }
    return findings;
  },
};
