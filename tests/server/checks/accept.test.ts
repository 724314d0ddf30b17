// Findings answered in the text, with a reason.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'sequence/board-before-dry';
const plan = (below = '', more = ''): string => `
plan p
  start 2027-04-05
trade framing crew of 3 at $52/h
trade drywall crew of 3 at $48/h
task windows does set-windows takes 5d by framing, to the end
task board does hang-board takes 4d by drywall, to the end
${below}${more}`;
const told = (text: string, asOf?: number): readonly string[] =>
  checked(text, asOf === undefined ? {} : { asOf }).told.filter((line) => /accept|board/.test(line));

test('unanswered it is told', () => expect(told(plan())).toEqual([`warning ${CODE} board`]));

describe('below the later step', () => {
  test('with a reason it is answered', () => expect(told(plan(`  accept ${CODE} "Tarped, inspector agreed"\n`))).toEqual([]));

  test('without one the reason is asked for', () => {
    expect(told(plan(`  accept ${CODE}\n`))).toEqual(['warning accept/no-reason board']);
  });

  test('capitals do not matter, another code does', () => {
    expect(told(plan('  accept Sequence/Board-Before-Dry "Tarped"\n'))).toEqual([]);
    expect(told(plan('  accept sequence/wires-before-dry "Tarped"\n'))).toEqual([
      `warning ${CODE} board`,
      'warning accept/unused board',
    ]);
  });

  test('a code that is misspelt is told with the one that is meant', () => {
    const [message] = checked(plan('  accept sequence/board-befor-dry "Tarped"\n')).messages('accept/unused');
    expect(message).toMatch(/What is found here is "sequence\/board-before-dry"/);
  });

  test('it is kept, with its reason and last day, for whoever asks', () => {
    const { accepted } = checked(plan(`  accept ${CODE} "Tarped" until 2027-05-01\n`)).plan;
    expect(accepted.map(({ finding, reason, until }) => [finding.code, reason, until])).toEqual([[CODE, 'Tarped', 20_939]]);
  });

  test('a second one for the same answers nothing', () => {
    expect(told(plan(`  accept ${CODE} "Tarped"\n  accept ${CODE} "Again"\n`))).toEqual(['warning accept/unused board']);
  });

  test('once nothing is found any more, the acceptance is', () => {
    const mended = plan(`  accept ${CODE} "Tarped"\n`).replace('by drywall', 'by drywall after windows');
    expect(told(mended)).toEqual(['warning accept/unused board']);
    expect(checked(mended).messages('accept/unused')[0]).toMatch(
      /Nothing here is found under "sequence\/board-before-dry" any more/,
    );
  });
});

describe('in the first column', () => {
  test('for a name', () => {
    expect(told(plan('', `accept ${CODE} for board "Tarped"\n`))).toEqual([]);
    expect(told(plan('', `accept ${CODE} for windows "Tarped"\n`))).toEqual([`warning ${CODE} board`, 'warning accept/unused 1']);
  });

  test('everywhere', () => expect(told(plan('', `accept ${CODE} everywhere "Tarped"\n`))).toEqual([]));

  test('neither: it forgives nothing', () => {
    expect(told(plan('', `accept ${CODE} "Tarped"\n`))).toEqual([`warning ${CODE} board`, 'error accept/unscoped 1']);
  });
});

describe('until a day', () => {
  // 2027-05-01 and 2027-05-02, counted from 1970-01-01.
  const [last, after] = [20_939, 20_940];
  const until = plan('', `accept ${CODE} for board "Tarped" until 2027-05-01\n`);

  test('it holds to the end of that day', () => expect(told(until, last)).toEqual([]));

  test('then the finding is back, and why', () => {
    expect(told(until, after)).toEqual([`warning ${CODE} board`, 'note accept/expired 1']);
  });

  test('without a status date no day has passed', () => expect(told(until)).toEqual([]));
});

test('any finding can be answered where it stands: of the drawing, too', () => {
  const rooms = (line: string): string => `
    level main
      partitions int-2x4
    room bed on main at 0', 0'
      size 10' x 10'
    room bath on main at 10'-4", 0'
      size 6' x 10'
      ${line}
  `;
  expect(checked(rooms('')).loud).toEqual(['warning rooms/gap bath']);
  expect(checked(rooms('accept rooms/gap "Measured on site"')).loud).toEqual([]);
});

test('findings are told by file, line, column and code', () => {
  const files = {
    'b.screed': `include "a.screed"\nlet one = 8' + 4 sf\nlet two = 8' + 4 sf\n`,
    'a.screed': `let three = 8' + 4 sf\n`,
  };
  const { plan: found } = checked(files);
  expect(found.findings.filter(({ code }) => code === 'units/mixed').map(({ place }) => place.slot.name)).toEqual([
    'one',
    'two',
    'three',
  ]);
});
