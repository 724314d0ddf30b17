// Lines against the vocabulary: what is taken from them, and what is said where something does not fit.
import { describe, expect, test } from 'vitest';
import type { GivenLine } from '#grammar/shape';
import { declarationsOf, marksOf, remarksOf } from '#tests/support/remarks';

const only = (text: string) => declarationsOf(text)[0]!;
const given = (text: string, word: string): GivenLine => only(text).given[word] as GivenLine;
const names = (line: GivenLine): readonly string[] =>
  (line.value as readonly { value: { name: string } }[]).map(({ value }) => value.name);

describe('what is taken', () => {
  test('kind, name and label; names and words without case', () => {
    const { kind, name, label } = only('ROOM Bath "Bath upstairs" ON main\n  SIZE 8\' x 5\'\n');
    expect([kind.word, name, label?.value]).toEqual(['room', 'bath', 'Bath upstairs']);
    expect(remarksOf("ROOM Bath ON main\n  SIZE 8' x 5'\n")).toEqual([]);
  });

  test('a clause stands in the header or below, with the same result', () => {
    const above = given('task dig does dig-foundation by excavation', 'by');
    const below = given('task dig does dig-foundation\n  by excavation', 'by');
    expect(above.value).toMatchObject({ kind: 'pointed', of: 'trade', name: 'excavation' });
    expect(below.value).toMatchObject({ kind: 'pointed', of: 'trade', name: 'excavation' });
    expect([above.word.path, below.word.path]).toEqual([[], [0]]);
  });

  test('commas before clauses may be left out or put in', () => {
    for (const text of ['task dig takes 3d by excavation', 'task dig, takes 3d, by excavation']) {
      expect(remarksOf(text)).toEqual([]);
      expect(Object.keys(only(text).given)).toEqual(['takes', 'by']);
    }
  });

  test('a name may be left out where the kind allows it', () => {
    expect([only('crawl under main').name, only('crawl space under main').name]).toEqual(['', 'space']);
    expect(only('site "Lot 14"').label?.value).toBe('Lot 14');
  });

  test('a list goes on below, its lines ended by a comma or not', () => {
    const text = 'bid b by c for d $3\n  includes dig, pour,\n    strip, patch\n    seed,\n  leaves out drive\n';
    expect(remarksOf(text)).toEqual([]);
    expect(names(given(text, 'includes'))).toEqual(['dig', 'pour', 'strip', 'patch', 'seed']);
  });

  test('clauses of a property stand on its line or below it', () => {
    const flat = 'assembly a for wall\n  layer stud 2x6 at 16" oc, filled with r21-batt\n';
    const deep = 'assembly a for wall\n  layer stud 2x6\n    at 16" oc\n    filled with r21-batt\n';
    for (const text of [flat, deep]) {
      const [layer] = only(text).given.layer as readonly GivenLine[];
      expect(Object.keys(layer!.deeper)).toEqual(['at', 'filled with']);
      expect(remarksOf(text)).toEqual([]);
    }
  });

  test('words that follow their value, in the header, as a line and as a clause', () => {
    expect(Object.keys(only('trench t 62\' long, 42" deep, 12" wide').given)).toEqual(['long', 'deep', 'wide']);
    expect(Object.keys(only("foundation p\n  318' long").given)).toEqual(['long']);
    expect(Object.keys(given("level main\n  partitions int-2x4, 86' long", 'partitions').deeper)).toEqual(['long']);
    expect(Object.keys(given("level main\n  partitions int-2x4\n    86' long", 'partitions').deeper)).toEqual(['long']);
  });

  test('lines of a diary begin with a name, and with what happened straight after it', () => {
    const { entries, given: rest } = only(
      'progress 2027-06-18\n  walls-up started 2027-06-07, 80% done, left 2d\n  rain 2027-06-14..2027-06-15\n',
    );
    expect(entries.map(({ value }) => (value as { name: string }).name)).toEqual(['walls-up']);
    expect(Object.keys(entries[0]!.deeper)).toEqual(['started', 'done', 'left']);
    expect(Object.keys(rest)).toEqual(['rain']);
  });

  test('a step with a property’s word for its name', () => {
    expect(only('progress 2027-06-18\n  start started 2027-06-07\n').entries).toHaveLength(1);
  });

  test('codes are taken as they are spelled, whatever the reader makes of them', () => {
    for (const code of ['5A', '4C', 'B-27-0418', 'irc-2021', '12-345', '1/2/3', "7'8", '12']) {
      const text = `plan p\n  permit ${code}\n`;
      expect(given(text, 'permit').value, code).toBe(code);
      expect(remarksOf(text), code).toEqual([]);
    }
    expect(given('crawl c\n  vents 1/150', 'vents').value).toBe('1/150');
  });

  test('words of a condition are taken as they are spelled', () => {
    const text = 'minimum m for room\n  when plan.zone is 4C, 12-34\n';
    expect(remarksOf(text)).toEqual([]);
    const [when] = only(text).given.when as readonly GivenLine[];
    expect(when?.value).toMatchObject({ subject: 'plan', fact: 'zone', test: 'is', words: ['4c', '12-34'] });
  });

  test('a name stands for a quantity, but a count is left out rather than taken from a name', () => {
    expect(given('level main\n  height plate-height', 'height').value).toMatchObject({ kind: 'amount', dimension: 'length' });
    const [fixtures] = only('room bath\n  fixtures 1 shower 60" x 32", toilet, 2 towel-bar').given
      .fixtures as readonly GivenLine[];
    const parts = (fixtures!.value as readonly { value: { type: { name: string } } }[]).map(({ value }) => value.type.name);
    expect(parts).toEqual(['shower', 'toilet', 'towel-bar']);
  });

  test('waits: start of a step, part of a step, leads and lags; `of` there opens no clause', () => {
    const text = 'task a after b + 2 days, start of c + 1d, 50% of d, e - 2d by f\n';
    expect(remarksOf(text)).toEqual([]);
    expect(given(text, 'after').value).toMatchObject([
      { value: { step: { name: 'b' }, from: 'finish', lag: {} } },
      { value: { step: { name: 'c' }, from: 'start', lag: {} } },
      { value: { step: { name: 'd' }, share: 0.5 } },
      { value: { step: { name: 'e' }, lead: true } },
    ]);
    expect(Object.keys(only('task a does trench-and-lay 60% of water-line').given)).toEqual(['does', 'of']);
  });

  test('measure with and without the name of a side', () => {
    for (const text of [`measure main.north 5 1/2" + 27' = 27'-5 1/2"`, `measure 3' = 3'`, `measure plate-height = 8'`])
      expect(remarksOf(text), text).toEqual([]);
  });
});

describe('what is said', () => {
  test.each([
    // words
    ['plan small\n  untis feet', 'unknown-property', 'untis'],
    ['phase a\n  tsak dig takes 3d', 'unknown-property', 'tsak'],
    ['plan p\n  task dig takes 3d', 'misplaced-kind', 'task'],
    ['room bath\n  room hall', 'misplaced-kind', 'room'],
    ["foundation p\n  long 318'", 'word-behind', 'long'],
    ["trench t long 62'", 'word-behind', 'long'],
    ['holiday h on jul 4', 'below-only', 'on'],
    // names
    ["room\n  size 8' x 5'", 'name-missing', 'room'],
    [`window 3'-0" x 5'-0"`, 'name-missing', 'window'],
    ['room bed room on main', 'name-in-words', 'bed room'],
    ['room after', 'name-is-joining-word', 'after'],
    ['room on main', 'name-is-joining-word', 'on'],
    ['trade x "X" crew of 1', 'name-is-joining-word', 'x'],
    ['trade sat crew of 1', 'name-is-joining-word', 'sat'],
    // what comes with a word
    ['window w', 'value-missing', 'w'],
    [`window w 3'-0" x`, 'value-missing', 'x'],
    ['task dig does dig-foundation by', 'value-missing', 'by'],
    ['plan p\n  start', 'value-missing', 'start'],
    ['plan p\n  start tomorrow', 'value-unfit', 'tomorrow'],
    ['plan p\n  units inches', 'value-unfit', 'inches'],
    ['task dig takes 3 sf', 'value-unfit', '3 sf'],
    ['trade t crew of 3 at $52', 'value-unfit', '$52'],
    ['assembly a for walls', 'value-unfit', 'walls'],
    ['progress 2027-06-18\n  "dig" started 2027-06-18', 'value-unfit', '"dig"'],
    // given twice
    ['task dig takes 3d takes 4d', 'given-twice', 'takes'],
    ['task dig takes 3d\n  takes 4d', 'given-twice', 'takes'],
    ['plan p\n  accept a/b "r"\n    until 2027-01-01\n    until 2027-01-02', 'given-twice', 'until'],
    // left over
    ['plan p\n  start 2027-04-05 2027-04-06', 'not-expected', '2027-04-06'],
    [`window w 3'-0" x 5'-0", awnin`, 'not-expected', 'awnin'],
    ['task dig dose dig-foundation', 'not-expected', 'dose'],
    ['task a not befor 2027-01-01', 'not-expected', 'not befor'],
    ['price osb $3/sheet from yard untill 2027-04-05', 'not-expected', 'untill'],
    ['progress 2027-06-18\n  dig strated 2027-06-19', 'not-expected', 'strated'],
    ['assembly a for wall\n  layer stud\n    glud', 'not-expected', 'glud'],
    ['room bath "a" "b"', 'not-expected', '"b"'],
    ['task b takes 2d by fr deadline 2027-06-01', 'not-expected', ' deadline'],
    ['machine lift at $10/h 2 of them', 'not-expected', ' 2 of them'],
  ])('%s', (text, code, about) => {
    expect(marksOf(text)).toEqual([[code, about]]);
  });

  const sentence = (text: string): string => remarksOf(text)[0]!.replace(/^words\/[a-z-]+: /, '');

  test('near misses are offered, words of two parts too', () => {
    expect(sentence('plan p\n  strat 2027-04-05')).toBe('A plan has no "strat", so this line is not read. Did you mean "start"?');
    expect(sentence('task a also aftr b')).toBe('"also aftr" is not expected here, after "a". Did you mean "also after"?');
    expect(sentence('inspection i\n  cal 1 day ahead')).toContain('An inspection has no "cal"');
  });

  test('what was written is shown, with what would fit and an example', () => {
    expect(sentence('plan p\n  start tomorrow')).toBe(
      '"tomorrow" does not fit with "start", which takes: date such as 2027-04-05. For example: start 2027-04-05',
    );
    expect(sentence("room bath\n  at 1'")).toBe(
      `"at" lacks what comes with it: a comma and length. For example: at 11'-5 1/2", 18'-7"`,
    );
  });

  test('a comma that is missing is named, and offered', () => {
    expect(sentence('task b takes 2d by fr deadline 2027-06-01')).toBe(
      'A comma is missing before "deadline", so it is not read.',
    );
    expect(sentence('machine lift at $10/h 2 of them')).toBe('A comma is missing before "2 of them", so it is not read.');
  });

  test('a word that is no name where a name is wanted is said to be one, with a name that does', () => {
    expect(sentence('trade sat crew of 1')).toBe(
      '"sat" is a word of the language (a unit, a day, a sign) and cannot be the name of a trade. Choose another name: "trade-sat", say.',
    );
    expect(remarksOf('trade trade-sat crew of 1\ntrade trade-x\n')).toEqual([]);
  });

  test('a piece that cannot be read has its own problem and no remark beside it', () => {
    expect(remarksOf('plan p\n  start 2027-13-45\n')).toHaveLength(1);
    expect(remarksOf('room bath\n  size 3,60 m x 4 m\n')).toHaveLength(1);
  });

  test('one bad line leaves the others as they are', () => {
    const text = "room bath on main\n  sise 3'\n  size 8' x\n  use bathing\n";
    expect(Object.keys(only(text).given)).toEqual(['on', 'use']);
    expect(marksOf(text).map(([code]) => code)).toEqual(['unknown-property', 'value-missing']);
  });

  test('a first word that is no kind is nobody’s declaration', () => {
    expect(declarationsOf('rom bath on main\n')).toEqual([]);
  });
});
