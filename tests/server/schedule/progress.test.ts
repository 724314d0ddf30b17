// What the diary does to dates: what is done stands, what is left goes on from the next morning, work begun out of order
// waits or continues. The two ways of going on are those that texts on scheduling practice tell apart for progress out of
// order (from memory: AACE International, Recommended Practice 53R-06, "Schedule Update Review"); waiting is the usual one.
import { describe, expect, test } from 'vitest';
import { explain } from '#answers/explain';
import { viewOf } from '#answers/view';
import { dayOfFinish, dayOfStart, isoDate } from '#kit/dates';
import { emptyMemory, type Memory } from '#server/pipeline';
import { checked } from '#tests/support/checked';

const CODE = 'schedule/out-of-order';

function dates(text: string, memory?: Memory): Record<string, string> {
  const { timeline } = checked(text, memory === undefined ? {} : { memory }).plan;
  return Object.fromEntries(
    timeline.steps.list.map(({ name }, at) => [
      name,
      `${isoDate(dayOfStart(timeline.crews.start[at]!))}..${isoDate(dayOfFinish(timeline.crews.finish[at]!))}`,
    ]),
  );
}

// Monday 3 May: board 4 days, paint 2 days after it, trim 1 day after that.
const plan = (diary: string, more = ''): string => `plan p
  start 2027-05-03
${more}task board takes 4d
task paint takes 2d after board
task trim takes 1d after paint
${diary}`;

describe('the forward pass', () => {
  test('actual days stand, and nothing that is still to do lies before the diary’s day', () => {
    expect(dates(plan('progress 2027-05-12\n  board started 2027-05-04, finished 2027-05-10\n'))).toEqual({
      board: '2027-05-04..2027-05-10',
      paint: '2027-05-13..2027-05-14',
      trim: '2027-05-17..2027-05-17',
    });
  });

  test.each([
    ['left 1d', '2027-05-06', '2027-05-10'],
    ['25% done', '2027-05-10', '2027-05-12'],
    // Begun on Tuesday, two days of four are over on Wednesday evening.
    ['', '2027-05-07', '2027-05-11'],
    ['left 6d', '2027-05-13', '2027-05-17'],
  ])('begun on Tuesday, %s on Wednesday', (said, board, paint) => {
    const diary = `progress 2027-05-05\n  board started 2027-05-04${said === '' ? '' : `, ${said}`}\n`;
    const found = dates(plan(diary));
    expect(found.board).toBe(`2027-05-04..${board}`);
    expect(found.paint?.slice(-10)).toBe(paint);
  });

  test('a later block counts, and one after the day that is asked for does not', () => {
    const diary = 'progress 2027-05-05\n  board started 2027-05-04, left 3d\nprogress 2027-05-07\n  board finished 2027-05-07\n';
    expect(dates(plan(diary)).board).toBe('2027-05-04..2027-05-07');
    const asOf = Date.parse('2027-05-05') / 86_400_000;
    const { timeline } = checked(plan(diary), { asOf }).plan;
    expect(isoDate(dayOfFinish(timeline.crews.finish[0]!))).toBe('2027-05-10');
  });
});

test('how far it is by the last word, in days or as a share', () => {
  const first = 'progress 2027-05-04\n  board started 2027-05-03, left 3d\n';
  // A quarter of four days is left on Wednesday: Thursday.
  expect(dates(plan(`${first}progress 2027-05-05\n  board 75% done\n`)).board).toBe('2027-05-03..2027-05-06');
  // Said on Tuesday, with nothing more on Wednesday: Wednesday, Thursday, Friday.
  expect(dates(plan(`${first}progress 2027-05-05\n`)).board).toBe('2027-05-03..2027-05-07');
});

describe('begun before what it follows is done', () => {
  // Wednesday 5 May: two days of board are left (6 and 7 May); half of paint is done, one day is left.
  const diary = 'progress 2027-05-05\n  board started 2027-05-03, left 2d\n  paint started 2027-05-05, left 1d\n';

  test('what is left waits', () => {
    const found = dates(plan(diary));
    expect(found.paint).toBe('2027-05-05..2027-05-10');
    expect(found.trim).toBe('2027-05-11..2027-05-11');
    expect(checked(plan(diary)).messages(CODE)).toEqual([
      '"paint" is recorded as begun on 5 May, before "board" is done (7 May). What is left of it waits: it goes on 10 May and is done 10 May. That is one of two common practices, and the careful one; if the work goes on all the same, write "begun-early continues" below the plan, or take the link out.',
    ]);
  });

  test('what it waits for has no more days to spare than it has', () => {
    // Board, what is left of paint, trim: one chain to the end.
    const spare = (text: string): readonly number[] =>
      [...checked(text).plan.timeline.floats.totalFloat].map((each) => each / 480);
    expect(spare(plan(diary))).toEqual([0, 0, 0]);
    // Where paint continues, board ends on Friday, and so does trim: it holds nothing.
    expect(spare(plan(diary, '  begun-early continues\n'))).toEqual([0, 0, 0]);
    expect(spare(plan(`${diary}  board left 1d\n`, '  begun-early continues\n'))).toEqual([1, 0, 0]);
    expect(spare(plan(`${diary}  board left 1d\n`))).toEqual([0, 0, 0]);
  });

  test('or continues, where the plan says so', () => {
    const text = plan(diary, '  begun-early continues\n');
    expect(dates(text).paint).toBe('2027-05-05..2027-05-06');
    expect(checked(text).messages(CODE)[0]).toContain(
      'What is left of it continues, as "begun-early continues" says, and is done 6 May. If it has to wait, it goes on 10 May at the earliest',
    );
  });

  test('a wait on the link counts, and so does who waits for a step that waits', () => {
    const cured = plan(diary).replace('after board', 'after board + 3 days');
    // Board is done on Friday 7 May; three calendar days end on Monday 10 May.
    expect(dates(cured).paint).toBe('2027-05-05..2027-05-11');
    const both = plan(`${diary}  trim started 2027-05-05, left 4h\n`);
    expect(dates(both).trim).toBe('2027-05-05..2027-05-11');
  });

  test('a crew that waits is not taken while it waits', () => {
    const text = plan(diary)
      .replace('paint takes 2d', 'paint takes 2d by painter')
      .replace('progress', 'trade painter\ntask shed takes 2d by painter\nprogress');
    // The painter's other work is done while paint waits for the board.
    expect(dates(text).shed).toBe('2027-05-06..2027-05-07');
    expect(dates(text).paint).toBe('2027-05-05..2027-05-10');
  });

  test('both done: the days stand, and it is said', () => {
    const done = 'progress 2027-05-10\n  board finished 2027-05-07\n  paint started 2027-05-05, finished 2027-05-10\n';
    expect(checked(plan(done)).messages(CODE)[0]).toContain('Both dates stand as recorded');
  });

  test('done before what comes before it', () => {
    const done = 'progress 2027-05-05\n  board started 2027-05-03\n  paint finished 2027-05-05\n';
    expect(checked(plan(done)).messages(CODE)[0]).toContain('is recorded as done on 5 May, and "board", which comes before it');
  });

  test('the day of what is done is the day it was done', () => {
    const done = 'progress 2027-05-07\n  board started 2027-05-03, left 2d\n  paint started 2027-05-05, finished 2027-05-06\n';
    expect(checked(plan(done)).messages(CODE)[0]).toContain('"paint" is recorded as done on 6 May, and "board"');
  });

  describe('under a visit that has not passed', () => {
    const held = (diary: string): ReturnType<typeof checked> =>
      checked(
        plan('').replace('task trim', 'trade city\ninspection look of board before paint by city takes 1h\ntask trim') + diary,
      );
    const failed = 'progress 2027-05-10\n  board started 2027-05-03, finished 2027-05-06\n  look failed 2027-05-07 "nails"\n';

    test('begun: a warning that what it covers may be opened again', () => {
      const { told, messages } = held(`${failed}  paint started 2027-05-10\n`);
      expect(told).toContain(`warning ${CODE} paint`);
      expect(messages(CODE)).toEqual([
        '"paint" is recorded as begun on 10 May, and "look", which must pass before it, failed on 7 May and has not passed since (11 May by these dates). An inspector passes only what is in sight, so what "paint" has covered may have to be opened again. Stop there. Put right what failed, have it looked at again before more is covered, and ask the inspector what must be opened. What is left of it waits: it goes on 11 May and is done 12 May.',
      ]);
    });

    test('done', () => {
      const { told, messages } = held(`${failed}  paint started 2027-05-07, finished 2027-05-10\n`);
      expect(told).toContain(`warning ${CODE} paint`);
      expect(messages(CODE)[0]).toContain(
        '"paint" is recorded as done on 10 May, and "look", which must pass before it, failed on 7 May and has not passed since (11 May by these dates).',
      );
    });

    test('passed by now: a note that both days stand', () => {
      const { told } = held(`${failed}  paint started 2027-05-10\nprogress 2027-05-12\n  look passed 2027-05-12\n`);
      expect(told).toContain(`note ${CODE} paint`);
    });
  });

  test('typed line by line it comes to the same', () => {
    const memory = emptyMemory();
    const texts = [
      plan(''),
      plan(diary),
      plan(diary, '  begun-early continues\n'),
      plan(diary),
      plan(diary.replace('left 2d', 'left 3d')),
    ];
    for (const text of texts) expect(dates(text, memory)).toEqual(dates(text));
  });
});

test('a step that nobody wrote down is taken as done when all that follows it has begun', () => {
  const found = dates(plan('progress 2027-05-12\n  paint started 2027-05-10, left 1d\n'));
  expect(found.board?.slice(-10)).toBe('2027-05-07');
  expect(found.paint).toBe('2027-05-10..2027-05-13');
});

test.each([
  [
    'paint',
    'progress 2027-05-05\n  board started 2027-05-03, left 2d\n  paint started 2027-05-05, left 1d\n',
    'It was begun Wed 5 May 2027 as the diary says, and 1d of 2d is left, which is done Mon 10 May 2027; it cannot slip without moving the end.',
  ],
  [
    'board',
    'progress 2027-05-12\n  paint started 2027-05-10, left 1d\n',
    'It is taken as done by Fri 7 May 2027: all that follows it has begun, and the diary does not say when.',
  ],
])('said of %s', (name, diary, said) => {
  expect(explain(name, viewOf(checked(plan(diary)).plan)).found[0]?.why).toBe(said);
});
