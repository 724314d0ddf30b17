// Elements: names followed, values evaluated, the same objects while nothing they read changed.
import { describe, expect, test } from 'vitest';
import { INCH, METRE, MILLIMETRE } from '#kit/dimension';
import { noWork } from '#kit/work';
import { factsOf } from '#model/facts';
import { modelMemory, readLibrary } from '#model/resolve';
import { look, lookWith } from './look.ts';

const house = `plan p
level main
  footprint 28' x 32'
  height 8'-1"
room bath on main
  size 8' x 5'-6"
  floor vinyl
room hall on main
  size 16' x 3'-5"
`;
const rows = 'material vinyl "Vinyl"\n  source "common practice"\n';

describe('values', () => {
  test('a room has its level, its size in exact units and its facts', () => {
    const { model, findings } = look(house, rows);
    expect(findings).toEqual([]);
    const [bath] = model.list('room');
    expect(bath?.given.on?.value.name).toBe('main');
    expect(bath?.given.size?.value.right.value).toBe(66 * INCH);
    const facts = factsOf(bath!);
    expect(facts['floor-area']?.value).toBe(96 * INCH * 66 * INCH);
    expect(facts.perimeter?.value).toBe(2 * (96 + 66) * INCH);
    expect(facts['wall-area']?.value).toBe(2 * (96 + 66) * INCH * 97 * INCH);
  });

  test('a value may be named, in any order, and used in another file', () => {
    const { model, findings } = look({
      'plan.screed': 'plan p\ninclude "more.screed"\nlevel main\n  height clear + 1 1/8"\n',
      'more.screed': `let clear = 8'-0"\n`,
    });
    expect(findings).toEqual([]);
    expect(model.list('level')[0]?.given.height?.value.value).toBe(97.125 * INCH);
  });

  test('a fact of a thing may stand where a quantity may', () => {
    const { model, findings } = look(`${house}room copy on main\n  size bath.width x hall.depth\n`, rows);
    expect(findings).toEqual([]);
    expect(model.list('room')[2]?.given.size?.value.left.value).toBe(96 * INCH);
  });

  test('with units mm a bare length is millimetres; otherwise a unit is asked for', () => {
    expect(look('plan p\n  units mm\nlevel main\n  height 2400\n').model.list('level')[0]?.given.height?.value.value).toBe(
      2400 * MILLIMETRE,
    );
    expect(look('plan p\nlevel main\n  height 2400\n').codes).toEqual(['units/missing']);
    expect(look('plan p\nlevel main\n  height 2.4 m\n').model.list('level')[0]?.given.height?.value.value).toBe(2.4 * METRE);
  });

  test('feet and square feet cannot be added', () => {
    expect(look(`plan p\nlet odd = 8' + 20 sf\n`).findings).toEqual([
      'units/mixed: A length and an area cannot be added. Bring both to one kind of unit.',
    ]);
  });

  test('working time follows the hours of the plan; a wait runs as it is spelled', () => {
    const text = (week: string): string =>
      `plan p\n  workweek ${week}\ntask a takes 3 days\ntask b takes 1w after a + 2 days\ntask c takes 1d after b + 2d\n`;
    const steps = look(text('mon-fri 8h')).model.list('task');
    expect(steps[0]?.given.takes?.value.time.value).toBe(3 * 480);
    expect(steps[1]?.given.takes?.value.time.value).toBe(5 * 480);
    expect(steps[1]?.given.after?.value[0]?.value.lag?.value).toBe(2 * 1440);
    expect(steps[2]?.given.after?.value[0]?.value.lag?.value).toBe(2 * 480);
    expect(look(text('mon-thu 7:00-17:30, lunch 30 min')).model.list('task')[0]?.given.takes?.value.time.value).toBe(3 * 600);
  });
});

describe('names', () => {
  test('an unknown name offers the near miss', () => {
    expect(look(`${house}room den on mian\n`, rows).findings).toEqual([
      'names/unknown: No level is named "mian", so whatever depends on it is not counted. Did you mean "main"?',
    ]);
  });

  test('two of one name: the second is told, the first is used', () => {
    const { model, codes } = look(`${house}room bath on main\n  size 1' x 1'\n`, rows);
    expect(codes).toEqual(['names/declared-twice']);
    expect(model.list('room').map((room) => room.name)).toEqual(['bath', 'hall']);
  });

  test('a task and an inspection share the space of steps; a level and a roof do not', () => {
    expect(look('plan p\ntask check takes 1d\ninspection check\n').codes).toEqual(['names/declared-twice']);
    expect(look('plan p\nlevel main\nroof main over main\n').codes).toEqual([]);
  });

  test('a ring of values has no value, wherever it is entered', () => {
    const { findings } = look(`plan p\nlet a = b + 1'\nlet b = c + 1'\nlet c = a + 1'\nlevel main\n  height b\n`);
    expect(findings.filter((each) => each.startsWith('names/loop'))).toEqual([
      'names/loop: These depend on each other in a ring, so none has a value: a, then b, then c, then a. Give one of them a value of its own.',
    ]);
  });

  test('a plan overrides a row of the library property by property', () => {
    const { model } = look(
      'plan p\nmaterial vinyl\n  waste 12% added\n',
      'material vinyl "Vinyl" laid rolls\n  waste 5% added\n  source "common practice"\n',
    );
    const [vinyl] = model.rows('material');
    expect(vinyl?.label).toBe('Vinyl');
    expect(vinyl?.given.laid?.value).toBe('rolls');
    expect(vinyl?.given.waste?.value.rate.value).toBe(0.12);
    expect(vinyl?.given.waste?.place.slot.file).toBe('plan.screed');
    expect(vinyl?.given.laid?.place.slot.file).toBe('library/rows.screed');
  });

  test('a missing include and a ring of includes are findings', () => {
    expect(look('plan p\ninclude "no.screed"\n').codes).toEqual(['names/include-missing']);
    expect(look({ 'a.screed': 'plan p\ninclude "b.screed"\n', 'b.screed': 'include "a.screed"\n' }).codes).toEqual([
      'names/include-ring',
    ]);
  });
});

describe('the file as a whole', () => {
  test('tabs among blanks, an outdent that fits nothing and marks of a conflict are told where they stand', () => {
    const { codes, model } = look('plan p\n  units feet\n\tfrost 30"\n<<<<<<< ours\nlevel main\n    height 8\'\n  walls x\n');
    expect(codes).toEqual(expect.arrayContaining(['syntax/mixed-indent', 'syntax/conflict-marker', 'syntax/odd-outdent']));
    expect(model.list('level')[0]?.given.height).toBeDefined();
  });
});

describe('what stays', () => {
  test('a keystroke in one room computes one element; everything else is the same object', () => {
    const library = readLibrary([{ path: 'l', text: rows }], noWork());
    const memory = modelMemory();
    const before = lookWith({ 'plan.screed': house }, library, memory);
    const after = lookWith({ 'plan.screed': house.replace(`8' x 5'-6"`, `8' x 6'-6"`) }, library, memory);
    expect(after.work).toMatchObject({ linesParsed: 1, recordsChecked: 1, elementsComputed: 1 });
    expect(after.model.list('room')[0]).not.toBe(before.model.list('room')[0]);
    expect(after.model.list('room')[1]).toBe(before.model.list('room')[1]);
    expect(after.model.list('level')).toBe(before.model.list('level'));
  });

  test('a comment, and another way to write the same length, stop at the element', () => {
    const library = readLibrary([{ path: 'l', text: rows }], noWork());
    const memory = modelMemory();
    const before = lookWith({ 'plan.screed': house }, library, memory);
    const after = lookWith({ 'plan.screed': house.replace(`8' x 5'-6"`, `8' x 5'-6"   # clear`) }, library, memory);
    expect(after.model.list('room')).toBe(before.model.list('room'));
  });

  test('a level’s height reaches its rooms and no one else', () => {
    const library = readLibrary([{ path: 'l', text: rows }], noWork());
    const memory = modelMemory();
    lookWith({ 'plan.screed': `${house}level attic\nroom store on attic\n` }, library, memory);
    const after = lookWith(
      { 'plan.screed': `${house.replace(`8'-1"`, `9'-1"`)}level attic\nroom store on attic\n` },
      library,
      memory,
    );
    expect(after.work.elementsComputed).toBe(3);
  });
});
