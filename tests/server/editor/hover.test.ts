// Hover: things with their figures, values with their working, words with their help.
import { describe, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-types';
import { hover } from '#editor/hover';
import { covered, editing } from './editing.ts';

function hovered(source: string): { readonly text: string; readonly on: string } {
  const { ask, textOf, view } = editing(source);
  const found = ask<Hover | undefined>(hover);
  const on = found?.range === undefined ? '' : covered(textOf(view.file.path), found.range);
  return { text: (found?.contents as MarkupContent | undefined)?.value ?? '', on };
}

const HOUSE = `
level main "Main floor"
  footprint 28' x 32'
  height 8'
room bath "Bath" on main
  size 8' x 5'
`;

describe('names', () => {
  test('a room where it is declared', () => {
    const { text, on } = hovered(HOUSE.replace('room bath', 'room ba<|>th'));
    expect(on).toBe('bath');
    expect(text).toContain('room bath "Bath"');
    expect(text).toContain('40 sf');
    expect(text).toContain("size  8'  (plan.screed:5)");
  });

  test('a room: the least values it meets, with the caution', () => {
    const { text } = hovered("plan p\n  code irc-2021\nroom ha<|>ll\n  use passage\n  size 4' x 10'\n  height 7'\n");
    expect(text).toContain('Meets the model minimum of irc-2021 in what is listed; local code governs.');
    expect(text).toContain('least width 48": at least 36" (R311.6)');
    const low = hovered("plan p\n  code irc-2021\nroom ha<|>ll\n  use passage\n  size 4' x 10'\n  height 6'\n").text;
    expect(low).toContain('local code governs. It misses 1 other: the findings say which.');
    expect(hovered(HOUSE.replace('room bath', 'room ba<|>th')).text).not.toContain('model minimum');
  });

  test('a stair with winders: its flights, and how deep they are where people walk', () => {
    const lines = 'rise 109 1/4"\n  risers 15\n  tread 10"\n  width 36"\n  narrow 6"\n  turn after 6, 3 winders\n';
    const { text } = hovered(`stair u<|>p "Stair"\n  ${lines}`);
    expect(text).toContain('flights  1');
    expect(text).toContain(`winder-tread  1'-0 5/16"`);
  });

  test('the level a room is on', () => {
    const { text, on } = hovered(HOUSE.replace('on main', 'on ma<|>in'));
    expect(on).toBe('main');
    expect(text).toContain('level main');
    expect(text).toContain('896 sf');
  });

  test('a figure of a thing, with its working', () => {
    const { text, on } = hovered(`${HOUSE}let tiles = bath.floor-<|>area * 1.1\n`);
    expect(on).toBe('bath.floor-area');
    expect(text).toMatch(/^bath\.floor-area 40 sf/);
  });

  test('a task: its length by the rate, its dates, what holds it', () => {
    const { text } = hovered(`
      plan a
        start 2027-04-05
      trade crew "Us" crew of 2 at $50/h
      task dig "Dig" takes 2d by crew
      task pour "Pour" takes 1d by crew after di<|>g
    `);
    expect(text).toContain('task dig "Dig"');
    expect(text).toContain('2d');
    expect(text).toContain('Mon 5 Apr');
  });

  test('a task: what can hurt, before its figures', () => {
    const { text } = hovered('task fe<|>lt does lay-underlayment takes 1d\n');
    expect(text).toMatch(/hazards\n\s+Falls: {2}tie off or guard from 6 feet/);
    expect(text.indexOf('hazards')).toBeLessThan(text.indexOf('given  1d'));
  });

  test('a task: the rules of order that govern it, with the links that hold it', () => {
    const { text } = hovered(`
      task fence does place-silt-fence takes 1d
      task stakes does stake-out takes 1d after fence
      task cl<|>ear does clear-and-strip takes 1d after stakes
    `);
    expect(text).toContain('rules of order  1 of 1 held by links');
    expect(text).toContain('sequence/strip-before-silt-fence  held: fence → stakes (after) → clear (after)');
  });

  test('a row of the library, with its own text', () => {
    const { text } = hovered('room bath\n  walls dry<|>wall\n');
    expect(text).toContain('material drywall');
    expect(text).toContain('sold by');
    expect(text).toContain('From the library.');
  });

  test('nothing has that name', () => {
    expect(hovered('room bath on nowh<|>ere\n').text).not.toContain('nowhere');
  });
});

describe('values', () => {
  test('a sum with its working', () => {
    const { text, on } = hovered("let a = 3'\nroom bath\n  size a <|>+ 2' x 5'\n");
    expect(on).toBe("a + 2'");
    expect(text).toContain('5\'-0"');
  });

  test('a date is a day of the week', () => {
    expect(hovered('plan a\n  start 2027-<|>04-05\n').text).toContain('Mon 5 Apr 2027');
  });
});

describe('words', () => {
  test('a property', () => {
    const { text, on } = hovered(HOUSE.replace('  size', '  si<|>ze'));
    expect(on).toBe('size');
    expect(text).toContain('Clear size');
  });

  test('a property of two words, also on a line that is not right', () => {
    const { text, on } = hovered('task a also aft<|>er 12\n');
    expect(on).toBe('also after');
    expect(text).toContain('Besides the line above it');
  });

  test('a kind', () => {
    const { text, on } = hovered('ro<|>om bath\n');
    expect(on).toBe('room');
    expect(text).toContain('A space with a floor');
    expect(text).toContain('floor-area');
  });

  test('nothing on a comment, on a blank line, past the end', () => {
    expect(hovered('# com<|>ment\nroom bath\n').text).toBe('');
    expect(hovered('room bath\n<|>\n').text).toBe('');
    const { ask } = editing('room bath\n');
    expect(ask(hover, { position: { line: 1000, character: 1000 } })).toBeUndefined();
    expect(ask(hover, { position: { line: 0, character: 1000 } })).toBeUndefined();
  });
});

test('every column of a line with letters of two units is answered', () => {
  const { ask } = editing('room é😀 "😀" on main # 😀\n  size 8\' x 5\'\n');
  for (let character = 0; character < 40; character++)
    for (const line of [0, 1, 2]) expect(() => ask(hover, { position: { line, character } })).not.toThrow();
});
