// The cottage against its own schedule of the day before: windows three weeks late, the plumber away for a week. Days by hand
// from its calendar: Monday to Friday, closed 2 to 6 July 2027 (the 5th is the holiday kept for the 4th).
import { expect, test } from 'vitest';
import { asPlannedText } from '#answers/as-planned-text';
import { causesOf, moneyEffects, slippageOf, whyEnd, whySlip } from '#answers/slippage';
import { viewOf } from '#answers/view';
import { chainTo, lastSlip } from '#schedule/slippage';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';

const root = 'samples/cottage/plan.screed';
const texts = sampleTexts('cottage');
const look = (of: Record<string, string>) => viewOf(analyse({ root, texts: of, library: builtIn() }));
const kept = asPlannedText('before', Date.parse('2027-05-07') / 86_400_000, look(texts))!;

/** As the diary has it: Monday 28 June is the day in the middle, by which dates go. */
const EXPECTED = 'now 2027-06-21..2027-07-05';

function changed(file: string, from: string, to: string) {
  const path = `samples/cottage/${file}`;
  expect(texts[path]).toContain(from);
  const view = look({ ...texts, [path]: texts[path]!.replace(from, to), 'samples/cottage/promised.screed': kept });
  const slipped = slippageOf(view)!;
  const slip = (name: string) => slipped.slips[view.plan.timeline.steps.byName.get(name)!]!;
  return { view, slipped, slip };
}

test('nothing changed: no step has slipped, to the day and to the cent', () => {
  const { slipped, view } = changed('diary.screed', EXPECTED, EXPECTED);
  expect(slipped.slips.filter(({ days }) => days !== 0)).toEqual([]);
  expect(moneyEffects(slipped, view).map(({ cents }) => cents)).toEqual([0]);
});

test('windows three weeks late: twelve working days, handed on as far as the end', () => {
  const { view, slipped, slip } = changed('diary.screed', EXPECTED, 'now 2027-07-19');
  // 29 and 30 June, 1, 7, 8, 9, 12 to 16 and 19 July.
  expect(slip('windows-here').days).toBe(12);
  expect(slip('windows-in')).toMatchObject({ days: 12, own: 0 });
  expect(slip('trusses').days).toBe(0);
  expect(slipped.end.days).toBeGreaterThan(0);
  expect(slipped.end.days).toBeLessThanOrEqual(12);
  expect(whyEnd(slipped, view)).toContain('"windows-here" comes 12 days later');
  expect(whySlip(view.plan.timeline.steps.byName.get('windows-in')!, slipped, view)).toContain(
    '"windows-here" comes 12 days later, through windows-in.',
  );
  // What the chain gained and lost comes to the end's own slip, and each week of it costs $310.
  const last = lastSlip(slipped);
  const sum = causesOf(last.step, slipped, view).reduce((all, { days }) => all + days, 0);
  expect(sum).toBe(slipped.end.days);
  expect(chainTo(last.step, slipped.slips).map(({ step }) => step)).toContain(slip('windows-here').step);
  const carried = moneyEffects(slipped, view).at(-1)!;
  expect(carried.cents).toBe(Math.round(((slipped.end.now - slipped.end.planned) * 31_000) / 7));
});

test('the plumber away for five working days in the midst of the drains', () => {
  const from = 'trade plumbing    "Plumbing"           crew of 2 at $78/h\n';
  const { view, slipped, slip } = changed('work.screed', from, `${from}  away 2027-07-07..2027-07-13\n`);
  // Begun on Thursday 1 July as before; the hours of the 7th are worked on the 14th.
  expect(slip('drains')).toMatchObject({ days: 5, own: 5, longer: 5 });
  expect(whySlip(slip('drains').step, slipped, view)).toContain('"drains" takes 5 days longer.');
  expect(slip('wires').days).toBe(5);
});
