// A section is printed only of the edition that the plan names and the row lists. Published: Bluefield, West Virginia,
// Required Inspections (International Residential Code R109.1.1); 2018 International Residential Code, p. 157, R406.1.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const source = (code: string, steps: string, finding: string): string | undefined =>
  checked(
    `plan p\n  start 2027-05-03\n${code}trade us crew of 2 at $50/h\ntrade others crew of 2 at $50/h\n${steps}`,
  ).plan.findings.find((each) => each.code === finding)?.source;

const pour = `task other-work takes 1d by us, to the end
task forms does form-footings takes 1d by us
inspection footing-check of forms before other-work by others, not before 2027-06-01
task pour does pour-footings takes 1d by us after forms, to the end
`;

test('a rule of order leads its source with the section of the plan’s edition', () => {
  const at = (code: string): string | undefined => source(code, pour, 'sequence/pour-before-footing-check');
  const published = 'Bluefield, West Virginia, Required Inspections (International Residential Code R109.1.1)';
  expect(at('  code irc-2021\n')).toBe(`irc-2021 R109.1.1; ${published}`);
  expect(at('  code irc-2024\n')).toBe(published);
  expect(at('')).toBe(published);
});

test('so does a need', () => {
  const at = (code: string): string | undefined =>
    source(
      code,
      'foundation base\n  footing 20" x 8"\n  wall 8" x 8\'\ntask fill does backfill-foundation takes 1d by us\n',
      'missing/damp-proofing',
    );
  expect(at('  code irc-2018\n')).toMatch(/^irc-2018 R406\.1, R406\.2; 2018 International Residential Code/);
  expect(at('  code irc-2021\n')).toMatch(/^2018 International Residential Code/);
});
