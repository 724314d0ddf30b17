// Every row of the built-in library reads and evaluates: no word that does not fit, no name that is not there, no unit mixed.
import { expect, test } from 'vitest';
import { lineOf } from '#checks/accept';
import { messageOf } from '#kit/finding';
import { element, elementFindings } from '#model/elements';
import { analyse } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

test('every row of the library is read and evaluated with nothing to say', () => {
  const library = builtIn();
  const { model } = analyse({ root: 'plan.screed', texts: { 'plan.screed': 'plan p\n' }, library });
  for (const slot of model.library.slots) element(slot, model.now);
  const findings = [...library.findings, ...elementFindings(model.library, model.now)];
  expect(
    findings.map((each) => `${each.place.slot.file}:${lineOf(each.place, model) + 1} ${each.code} ${messageOf(each)}`),
  ).toEqual([]);
});
