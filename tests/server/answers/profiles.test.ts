// Who reads decides which notes are shown; errors, warnings and hazards reach everyone.
import { describe, expect, test } from 'vitest';
import { checkedPlans } from '#answers/checked';
import { type ProfileName, profiles } from '#answers/profiles';
import { namesHazard } from '#checks/hazard';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { dedent } from '#tests/support/fixture';
import { asked } from './plans.ts';

/** A note of common practice, one of a plan's own source, a hazard at note level, a warning. */
const PLAN = dedent(`
  plan p
    start 2027-04-05
  trade us crew of 2 at $50/h
  task windows does set-windows takes 1d by us, to the end
  task board does hang-board takes 1d by us after windows, to the end
  task paint does paint-walls takes 1d by us after board, to the end
  rule tidy "Windows go in before board"
    first board
    then windows
    severity note
    because "It is done so."
    source "common practice"
  rule sourced "Paint comes before board"
    first paint-walls
    then hang-board
    severity note
    because "A book says so."
    source "A published book; common practice"
  rule deadly "Board before glass"
    first hang-board
    then set-windows
    severity note
    because "Falling glass: people stand below."
    source "common practice"
  rule loud "Paint before glass"
    first paint-walls
    then set-windows
    severity warning
    because "It costs."
    source "common practice"
`);

const OURS = new Set(['sequence/tidy', 'sequence/sourced', 'sequence/deadly', 'sequence/loud']);
function shown(profile?: ProfileName, text = PLAN) {
  const { findings, hushed } = checkedPlans([asked(text)], { profile });
  return { codes: [...new Set(findings.map(({ listed }) => listed.code))].filter((code) => OURS.has(code)).sort(), hushed };
}

test('an owner sees all', () => {
  expect(shown('owner')).toMatchObject({ codes: [...OURS].filter((code) => code !== 'sequence/tidy').sort(), hushed: 0 });
});

test('a builder sees no notes that rest on common practice alone, unless they name a hazard', () => {
  const { codes } = shown('builder');
  expect(codes).toEqual(['sequence/deadly', 'sequence/loud', 'sequence/sourced']);
});

test('ci sees errors, warnings and hazards', () => {
  const { codes, hushed } = shown('ci');
  expect(codes).toEqual(['sequence/deadly', 'sequence/loud']);
  expect(hushed).toBeGreaterThan(0);
});

describe('the more specific wins', () => {
  const of = (line: string): string => PLAN.replace('start 2027-04-05', `start 2027-04-05\n  ${line}`);

  test('what the plan says, where nothing is asked', () => {
    expect(shown(undefined, of('profile ci')).codes).toEqual(shown('ci').codes);
    expect(shown(undefined).codes).toEqual(shown('owner').codes);
  });

  test('what is asked, before what the plan says', () => {
    expect(shown('owner', of('profile ci')).codes).toEqual(shown('owner').codes);
  });
});

test('the vocabulary knows the same profiles', () => {
  const { check } = vocabulary.plan.properties.profile.takes;
  expect(check).toEqual({ kind: 'word', words: Object.keys(profiles) });
});

test.each([
  ['Cave-in: fill pushes an unbraced wall over.', true],
  ['Dust, heat and falls through the ceiling: a mask.', true],
  ['Wet board comes out again.', false],
  ['These steps wait for each other in a ring, so none can begin: a → b.', false],
  ['The plan ends on Tue 11 May 2027, after its target of 30 Apr: "finish" ends last.', false],
  ['"bath" is small: 5 sf.', false],
])('%s names a hazard: %s', (sentence, is) => expect(namesHazard(sentence)).toBe(is));
