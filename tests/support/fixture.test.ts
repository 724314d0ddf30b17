// The marks of fixtures are read as they are meant.
import { describe, expect, test } from 'vitest';
import { dedent, readFixture, readMarks } from '#tests/support/fixture';

describe('a fixture', () => {
  test('files, cursor, expected findings', () => {
    const fixture = readFixture(`
      #- plan.screed
      plan a
      include "house.screed"
      #- sub/house.screed
      room ba<|>th on main
           ^^^^^^^ error rooms/no-door: "bath" has no door: nobody can enter.
      #         ^^ note
        size 8'
             ^^: A size is two lengths.
    `);
    expect(fixture.files).toEqual([
      { path: 'plan.screed', text: 'plan a\ninclude "house.screed"' },
      { path: 'sub/house.screed', text: "room bath on main\n  size 8'\n" },
    ]);
    expect(fixture.cursor).toEqual({ file: 'sub/house.screed', line: 0, column: 7 });
    expect(fixture.marks).toEqual([
      {
        file: 'sub/house.screed',
        line: 0,
        from: 5,
        to: 9,
        severity: 'error',
        code: 'rooms/no-door',
        message: '"bath" has no door: nobody can enter.',
      },
      { file: 'sub/house.screed', line: 0, from: 7, to: 9, severity: 'note' },
      { file: 'sub/house.screed', line: 1, from: 7, to: 9, message: 'A size is two lengths.' },
    ]);
  });

  test('a stretch', () => {
    const { files, stretch } = readFixture('task a\n  <|takes 3d\n  by me|>');
    expect(files).toEqual([{ path: 'plan.screed', text: 'task a\n  takes 3d\n  by me' }]);
    expect(stretch).toEqual({
      from: { file: 'plan.screed', line: 1, column: 2 },
      to: { file: 'plan.screed', line: 2, column: 7 },
    });
  });

  test('nothing marked, nothing lost', () => {
    expect(readFixture('')).toEqual({ files: [{ path: 'plan.screed', text: '' }], marks: [] });
    expect(readFixture('# a comment\n\nroom a\n').files[0]!.text).toBe('# a comment\n\nroom a\n');
  });
});

test('marks that stay in a text are about the last line above that is none', () => {
  const text =
    'room a\n#    ^ warning rooms/no-door\n#    ^ note\n\ntask b\n#    ^ error sequence/board-before-dry: Board goes up early.\n';
  expect(readMarks('a.screed', text)).toEqual([
    { file: 'a.screed', line: 0, from: 5, to: 6, severity: 'warning', code: 'rooms/no-door' },
    { file: 'a.screed', line: 0, from: 5, to: 6, severity: 'note' },
    {
      file: 'a.screed',
      line: 4,
      from: 5,
      to: 6,
      severity: 'error',
      code: 'sequence/board-before-dry',
      message: 'Board goes up early.',
    },
  ]);
});

test('indentation that all lines share goes', () => {
  expect(dedent('\n    a\n      b\n\n    c\n  ')).toBe('a\n  b\n\nc\n');
});
