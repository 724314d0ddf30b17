// Every row of the built-in library reads and evaluates: no word that does not fit, no name that is not there, no unit mixed.
import { expect, test } from 'vitest';
import { messageOf } from '#kit/finding';
import { element, elementFindings } from '#model/elements';
import { lineOf } from '#model/standing';
import { analyse } from '#server/pipeline';
import { packagesOf } from '#takeoff/goods';
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

test('the packages of goods measure the same way, in feet and in metres', () => {
  const { model } = analyse({ root: 'plan.screed', texts: { 'plan.screed': 'plan p\n' }, library: builtIn() });
  const mixed = model.rows('material').flatMap((material) => {
    const ways = [...packagesOf(material, []).map(({ holds }) => holds), ...material.given.rounds.map(({ value }) => value)];
    return new Set(ways.map(({ dimension }) => dimension)).size > 1 ? [material.name] : [];
  });
  expect(mixed).toEqual([]);
});
