// Every link of the cottage, taken away one at a time: the plan then still reads well, and may still have the right dates. Where
// an order that a rule asks for is held no more, something must be said at once. What is lost is counted without the checks, by
// walking the plan's own links (support/held-pairs.ts): where no path leads from one step to the other, some longer duration
// puts them the wrong way round.
import { expect, test } from 'vitest';
import { firesIn } from '#checks/conditions';
import type { Finding } from '#kit/finding';
import { analyse, emptyMemory, type Plan } from '#server/pipeline';
import { builtIn, sampleTexts } from './support/built-in.ts';
import { heldPairs, orderedPairs } from './support/held-pairs.ts';
import { type Removal, removals } from './support/link-removals.ts';

const WORK = 'samples/cottage/work.screed';
// The diary is left out: what is done is a fact, and no link need hold it.
const texts: Readonly<Record<string, string>> = { ...sampleTexts('cottage'), 'samples/cottage/diary.screed': '' };
const memory = emptyMemory();
const look = (work: string): Plan =>
  analyse({ root: 'samples/cottage/plan.screed', texts: { ...texts, [WORK]: work }, library: builtIn() }, memory);

const whole = look(texts[WORK]!);
const isAbout = (rule: Parameters<typeof firesIn>[0]): boolean => firesIn(rule, whole.model);
const heldBefore = heldPairs(whole, isAbout);
const orderedBefore = orderedPairs(whole);
const toldBefore = new Set(whole.findings.map(key));

function key({ code, place, severity }: Finding): string {
  return `${severity} ${code} ${place.slot.name}`;
}

/** What an inspection holds by the library, of the works that the plan does. */
function held(name: string): readonly string[] {
  const done = new Set(
    whole.timeline.steps.list.flatMap((step) => [
      step.name,
      ...(step.kind === 'task' ? (step.given.does?.value ?? []).map(({ value }) => value.work.name) : []),
    ]),
  );
  const row = whole.model.rows('inspection').find((each) => each.name === name);
  return (row?.given.before?.value ?? []).map(({ value }) => value.name).filter((each) => done.has(each));
}

interface Tried extends Removal {
  readonly lost: readonly string[];
  readonly slips: readonly string[];
  readonly told: readonly string[];
}

const tried: readonly Tried[] = removals(texts[WORK]!, held).map((removal) => {
  const plan = look(removal.text);
  const ordered = orderedPairs(plan);
  const now = heldPairs(plan, isAbout);
  return {
    ...removal,
    slips: [...orderedBefore].filter((pair) => !ordered.has(pair)),
    lost: [...heldBefore].filter((pair) => !now.has(pair)),
    told: plan.findings.map(key).filter((each) => !toldBefore.has(each)),
  };
});

test('a removal that lets an order of the rules slip is noticed, nine times in ten at the least', () => {
  const harmful = tried.filter(({ lost }) => lost.length > 0);
  const unnoticed = harmful.filter(({ told }) => told.length === 0);
  const listed = unnoticed
    .map(({ line, what, lost }) => `line ${line + 1}: ${what}\n    lets slip: ${lost.join('; ')}`)
    .join('\n');
  expect(harmful.length).toBeGreaterThan(60);
  expect(unnoticed.length / harmful.length, listed).toBeLessThanOrEqual(0.1);
});

test('what slips without a word is a matter of choice: the list, to be looked at when it changes', async () => {
  const slipping = tried.filter(({ slips }) => slips.length > 0);
  const quiet = slipping.filter(({ told }) => told.length === 0);
  const lines = [
    `Of ${tried.length} links of the cottage taken away one at a time, ${tried.length - slipping.length} change the order of no two steps:`,
    `others hold it. Of the ${slipping.length} that do, ${slipping.length - quiet.length} are noticed, and these are not: no rule asks for them.`,
    '',
    ...quiet.map(({ what }) => what),
    '',
  ];
  await expect(lines.join('\n')).toMatchFileSnapshot('golden/removed-links.txt');
});
