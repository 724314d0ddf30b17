// A schedule that was kept, and today's against it: every day of slip by hand.
import { describe, expect, test } from 'vitest';
import { asPlannedText } from '#answers/as-planned-text';
import { explain } from '#answers/explain';
import { causesOf, moneyEffects, slippageOf, whyEnd, whySlip } from '#answers/slippage';
import { slippageAnswer } from '#answers/slippage-json';
import { slippageTable } from '#answers/slippage-table';
import { type View, viewOf } from '#answers/view';
import { parse } from '#grammar/parse';
import { lastSlip } from '#schedule/slippage';
import { checked } from '#tests/support/checked';

// Monday 3 May 2027. Windows come with Friday 14 May; walls are up on Friday 7 May, roofed on Wednesday 12 May.
const PLAN = `plan p "Cottage"
  start 2027-05-03
  carrying $350/week
trade me crew of 1 at $50/h
task walls takes 5d by me
task roof takes 3d by me after walls
delivery windows not before 2027-05-14
task set takes 2d by me after roof, windows
task board takes 4d by me after set
milestone moved-in after board
`;
// Set 14 and 17 May, board 18 to 21 May.
const KEPT = asPlannedText('bank', Date.parse('2027-04-30') / 86_400_000, viewOf(checked(PLAN).plan))!;

function now(text: string): View {
  return viewOf(checked({ 'plan.screed': `${text}include "bank.screed"\n`, 'bank.screed': KEPT }).plan);
}
const dayLater = (view: View): Record<string, number | undefined> =>
  Object.fromEntries(slippageAnswer(slippageOf(view)!, view).tasks.map(({ name, days }) => [name, days]));

test('what is kept is text of the language, to the cent', () => {
  expect(KEPT).toBe(`# Cottage: the schedule as it stood on 2027-04-30. Kept to compare with, so it is not edited.

as-planned bank on 2027-04-30, costs $5,600.00
  walls    begins 2027-05-03, done 2027-05-07, costs $2,000.00
  roof     begins 2027-05-10, done 2027-05-12, costs $1,200.00
  windows  done 2027-05-14
  set      begins 2027-05-14, done 2027-05-17, costs $800.00
  board    begins 2027-05-18, done 2027-05-21, costs $1,600.00
  moved-in done 2027-05-21
`);
  expect(parse(KEPT).lines.length).toBeGreaterThan(0);
  const { told } = checked({ 'plan.screed': `${PLAN}include "bank.screed"\n`, 'bank.screed': KEPT });
  expect(told.filter((each) => /words|names|units|syntax|later/.test(each))).toEqual([]);
});

test('other money than dollars is read back, too', () => {
  const euro = PLAN.replace('  carrying $350/week\n', '  currency EUR\n').replace('at $50/h', 'at €50/h');
  const kept = asPlannedText('bank', 20_000, viewOf(checked(euro).plan))!;
  const { told } = checked({ 'plan.screed': `${euro}include "bank.screed"\n`, 'bank.screed': kept });
  expect(told.filter((each) => /words|names|units|syntax/.test(each))).toEqual([]);
});

test('a plan without a first day has nothing to keep', () => {
  expect(asPlannedText('bank', 0, viewOf(checked(PLAN.replace('  start 2027-05-03\n', '')).plan))).toBeUndefined();
});

test('nothing slipped', () => {
  const view = now(PLAN);
  expect(whyEnd(slippageOf(view)!, view)).toBe(
    'The end is neither later nor earlier than as planned on Fri 30 Apr 2027 (Fri 21 May 2027).',
  );
  expect(Object.values(dayLater(view))).toEqual([0, 0, 0, 0, 0, 0]);
  expect(moneyEffects(slippageOf(view)!, view).map(({ cents }) => cents)).toEqual([0]);
});

describe('windows three weeks late', () => {
  // Friday 4 June: set 4 and 7 June, board 8 to 11 June. 31 May is a working day here: no holidays are kept.
  const view = now(PLAN.replace('not before 2027-05-14', 'not before 2027-06-04'));
  const slipped = slippageOf(view)!;

  test('each step by its days; the roof has none', () => {
    expect(dayLater(view)).toEqual({ walls: 0, roof: 0, windows: 15, set: 15, board: 15, 'moved-in': 15 });
  });

  test('the end in one sentence: which step, how many days, through which chain', () => {
    expect(whyEnd(slipped, view)).toBe(
      'The end is 15 working days later than as planned on Fri 30 Apr 2027 (Fri 11 Jun 2027 instead of Fri 21 May 2027): "windows" comes 15 days later, through set → board → moved-in.',
    );
  });

  test('so does a step, in explain', () => {
    expect(whySlip(3, slipped, view)).toBe(
      'It is done 15 working days later than as planned on Fri 30 Apr 2027 (7 Jun instead of 17 May): "windows" comes 15 days later, through set.',
    );
    const reasons = explain('set', view).found[0]!.reasons;
    expect(reasons.find(({ label }) => label === 'against the plan')?.text).toBe(whySlip(3, slipped, view));
    expect(explain('plan', view).found[0]!.reasons.find(({ label }) => label === 'against the plan')?.text).toBe(
      whyEnd(slipped, view),
    );
  });

  test('three weeks of carrying come on top: $1,050', () => {
    expect(moneyEffects(slipped, view)).toEqual([
      { cents: 0, text: 'It costs the same: $5,600.00.' },
      { cents: 105_000, text: '21 calendar days of carrying it come on top: $1,050.00.' },
    ]);
  });
});

describe('several causes', () => {
  // Walls take 8 days (3 more), the roof 2 (one less): roof 13 and 14 May, set 17 and 18 May, board 5 days to 25 May.
  const text = PLAN.replace('walls takes 5d', 'walls takes 8d').replace('roof takes 3d', 'roof takes 2d').replace('4d', '5d');
  const view = now(text);
  const slipped = slippageOf(view)!;
  const own = causesOf(lastSlip(slipped).step, slipped, view);

  test('what each adds to the chain comes to the slip of the end', () => {
    expect(own.map(({ step, days, text }) => [slipped.slips[step]!.step, days, text])).toEqual([
      [0, 3, 'takes 3 days longer'],
      [1, -1, 'takes 1 day less'],
      // There was a day between roof and windows.
      [3, -1, 'makes good 1 day'],
      [4, 1, 'takes 1 day longer'],
    ]);
    expect(own.reduce((sum, { days }) => sum + days, 0)).toBe(slipped.end.days);
    expect(slipped.end.days).toBe(2);
  });
});

describe('steps that come and go', () => {
  const text = PLAN.replace('task roof takes 3d by me after walls', 'task lid takes 4d by me after walls').replace(
    'after roof,',
    'after lid,',
  );
  const view = now(text.replace('walls takes 5d', 'walls takes 7d'));
  const slipped = slippageOf(view)!;

  test('one that was added hands on what it was handed; one that is gone is listed', () => {
    expect(slipped.gone).toEqual(['roof']);
    // Walls to 11 May (+2), lid 12 to 17 May, set 18 and 19 May (+2), board to 25 May.
    expect(dayLater(view)).toEqual({ walls: 2, lid: undefined, windows: 0, set: 2, board: 2, 'moved-in': 2, roof: undefined });
    const causes = causesOf(lastSlip(slipped).step, slipped, view);
    expect(causes.map(({ days, text: said }) => [days, said])).toEqual([
      [2, 'takes 2 days longer'],
      [0, 'was added since'],
    ]);
    const { rows, remarks } = slippageTable(slipped, view);
    expect(rows.at(-1)).toContain('gone since');
    expect(remarks).toEqual(['1 step added since, and so without slip.', '1 step gone since.']);
  });
});

describe('recorded work', () => {
  // Walls were done two days late, and the roof was begun one more day after that.
  const diary = 'progress 2027-05-13\n  walls started 2027-05-03, finished 2027-05-11\n  roof started 2027-05-13, left 2d\n';
  const view = now(PLAN + diary);
  const slipped = slippageOf(view)!;

  test('what had begun keeps its place in the chain', () => {
    // Roof 13, then 14 and 17 May (+3); set 18 and 19 May (+2); board to 25 May.
    expect(dayLater(view)).toEqual({ walls: 2, roof: 3, windows: 0, set: 2, board: 2, 'moved-in': 2 });
    expect(whyEnd(slipped, view)).toContain(
      '"walls" takes 2 days longer, "roof" begins 1 day later and "set" makes good 1 day, through roof → set → board → moved-in',
    );
  });
});

test('of several that are kept, the latest; or the one that is named', () => {
  const two = `${KEPT}as-planned old on 2027-01-01\n  moved-in done 2027-05-14\n`;
  const view = viewOf(checked({ 'plan.screed': `${PLAN}include "bank.screed"\n`, 'bank.screed': two }).plan);
  expect(slippageOf(view)?.end.days).toBe(0);
  expect(slippageOf(view, 'old')?.end.days).toBe(5);
  expect(slippageOf(view, 'none')).toBeUndefined();
});

test('waiting for a crew is said with where the crew is', () => {
  const text = PLAN.replace('milestone', 'task shed takes 3d by me after windows, deadline 2027-05-14\nmilestone');
  const view = now(text);
  const slipped = slippageOf(view)!;
  const set = slipped.slips[3]!;
  expect(set.days).toBeGreaterThan(0);
  expect(whySlip(3, slipped, view)).toContain('more for its crew, which is at "shed"');
});

describe('a diary that stands past the day of what has not begun', () => {
  // Walls were done on Friday 7 May; now they take to Tuesday 11 May (+2). The diary stands on Thursday 13 May, and the roof,
  // which could have begun on the 12th, has not: Friday 14 May at the earliest, two days more. Set 19 and 20 May instead of
  // 14 and 17 May: the windows gave one day of room between.
  const view = now(`${PLAN}progress 2027-05-13\n  walls started 2027-05-03, finished 2027-05-11\n`);
  const slipped = slippageOf(view)!;

  test('hands on what came before, and says that it is still open', () => {
    expect(whySlip(1, slipped, view)).toBe(
      'It is done 4 working days later than as planned on Fri 30 Apr 2027 (18 May instead of 12 May): "walls" takes 2 days longer and "roof" begins 2 days later (the diary stands on 13 May, and it has not begun), through roof.',
    );
    expect(slipped.slips[1]).toMatchObject({ days: 4, own: 2, after: 0 });
  });

  test('own days add up to the slip of the end', () => {
    const own = causesOf(lastSlip(slipped).step, slipped, view);
    expect(own.reduce((sum, { days }) => sum + days, 0)).toBe(slipped.end.days);
    expect(own[0]).toMatchObject({ step: 0, days: 2 });
  });
});
