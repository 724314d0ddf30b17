// One mistake in, one or two findings out: single things of the cottage are broken, and what is told above a note is counted,
// and all that is told. The numbers are what is told today; a lower one is better.
import { describe, expect, test } from 'vitest';
import { namesHazard } from '#checks/hazard';
import { messageOf } from '#kit/finding';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';
import { checked } from '#tests/support/checked';

const texts = sampleTexts('cottage');

/** Findings that do not name a hazard; those always stay. */
function told(file: string, from: string | RegExp, to: string) {
  const path = `samples/cottage/${file}.screed`;
  const text = texts[path]!.replace(from, to);
  expect(text, 'the mistake is made').not.toBe(texts[path]);
  const { findings } = analyse({ root: 'samples/cottage/plan.screed', texts: { ...texts, [path]: text }, library: builtIn() });
  return findings.filter((found) => !namesHazard(messageOf(found)));
}

describe('a mistake, the code that tells it, how many are told above a note, and in all', () => {
  test.each([
    ['a trade is named otherwise where it is used', 'work', 'by drywall    also', 'by drywal    also', 'names/unknown', 1, 1],
    ['a trade is renamed', 'work', /^trade plumbing /m, 'trade plumbng ', 'names/unknown', 2, 3],
    ['a trade’s line is not read', 'work', /^trade framing/m, 'trad framing', 'words/unknown-kind', 2, 2],
    ['a room is renamed', 'house', /^room bath /m, 'room bathh ', 'names/unknown', 2, 5],
    ['a room’s line is not read', 'house', /^room living/m, 'rom living', 'words/unknown-kind', 1, 2],
    ['a level is renamed', 'house', /^level main/m, 'level mian', 'names/unknown', 1, 5],
    ['a level’s line is not read', 'house', /^level main/m, 'levl main', 'words/unknown-kind', 1, 6],
    ['a footprint has no unit', 'house', /footprint +\S+ x \S+/, 'footprint 28 x 32', 'units/missing', 1, 8],
    ['an assembly is renamed', 'house', /^assembly outer-2x6/m, 'assembly outer-2x7', 'names/unknown', 2, 6],
    ['a window is renamed', 'house', /^window +w-3050/m, 'window w-3051', 'names/unknown', 1, 1],
    ['a door is renamed', 'house', /^door +d-2868/m, 'door d-2869', 'names/unknown', 1, 1],
    ['a step that others wait for is renamed', 'work', /task wires /, 'task wirs ', 'names/unknown', 1, 1],
    ['a milestone that others wait for is renamed', 'work', 'milestone dry "Dry"', 'milestone dri "Dry"', 'names/unknown', 1, 1],
    ['a step that makes a state is renamed', 'work', 'task underlay ', 'task underlaj ', 'names/unknown', 2, 2],
    ['a step with a diary is renamed', 'work', 'task silt-fence ', 'task silt-fense ', 'names/unknown', 1, 1],
    ['a step is renamed that another is as near to', 'work', 'task glass ', 'task glassx ', 'names/unknown', 1, 1],
    ['a step before what must be ordered is renamed', 'work', 'task strip-walls ', 'task strip-wals ', 'names/unknown', 3, 3],
    ['a kind of work is misspelt', 'work', 'does hang-board ', 'does hang-bord ', 'names/unknown', 2, 3],
    ['a file of prices is not there', 'plan', '"prices.screed"', '"prises.screed"', 'names/include-missing', 1, 1],
    ['the file of the house is not there', 'plan', '"house.screed"', '"hous.screed"', 'names/include-missing', 1, 1],
    ['the file of the work is not there', 'plan', '"work.screed"', '"wrk.screed"', 'names/include-missing', 1, 1],
    ['the calendar has no such first day', 'plan', /start +\S+/, 'start 2027-13-05', 'syntax/no-such-date', 1, 1],
    ['the calendar has no such target', 'plan', /target +\S+/, 'target 2027-00-17', 'syntax/no-such-date', 1, 1],
  ])('%s', (_, file, from, to, cause, loud, all) => {
    const findings = told(file, from, to);
    const lines = findings.map((found) => `${found.severity} ${found.code} ${found.place.slot.name}`);
    expect(findings.map(({ code }) => code)).toContain(cause);
    expect(lines.filter((line) => !line.startsWith('note ')).length, lines.join('\n')).toBeLessThanOrEqual(loud);
    expect(lines.length, lines.join('\n')).toBeLessThanOrEqual(all);
  });
});

test('a name used more than three times is told once, with the places', () => {
  const [found, ...others] = told('work', /^trade plumbing /m, 'trade plumbng ').filter(({ code }) => code === 'names/unknown');
  expect(others).toEqual([]);
  expect(found!.related!.length).toBeGreaterThan(5);
});

test('two names that lead nowhere are two mistakes', () => {
  const lines = Array.from({ length: 5 }, (_, at) => `task a${at} takes 1d by nobody\ntask b${at} takes 1d by noone\n`);
  expect(checked(`plan p\n${lines.join('')}`).told.filter((line) => line.includes('names/unknown'))).toHaveLength(2);
});

test('what has nothing to do with the mistake is told as before', () => {
  const text = 'plan p\ntask walls does frame-walls takes 2d by nobody\ntask other by us\ntrade us\nlet spare = 3\n';
  const { told: lines } = checked(text);
  expect(lines).toContain('error names/unknown walls');
  expect(lines).toContain('note names/unused spare');
  expect(lines).toContain('note schedule/no-duration other');
});

test('a hazard is told beside a name that leads nowhere', () => {
  const text = 'plan p\n  start 2027-04-05\ntask deck does sheathe-roof takes 2d by nobody, to the end\n';
  const { told: lines } = checked(text);
  expect(lines).toContain('error names/unknown deck');
  expect(lines).toContain('note safety/roof-edge deck');
});

test('an order that no lost link could have held is told beside it', () => {
  const steps = (waits: string): string => `plan p
  start 2027-04-05
trade us crew of 2
trade others crew of 2
task board does hang-board takes 3d by us
task tape does tape-board takes 1d by others
task tile does set-tile takes 2d by us
milestone boarded-up after board
task prim does prime takes 1d by others after ${waits}
task floor does lay-plank takes 1d by us after boarded-up, to the end
`;
  const lines = checked(steps('boarded-upp, tape + 24h')).told;
  expect(lines).toContain('error names/unknown prim');
  // Nothing that follows from the lost link leads to the taping.
  expect(lines).toContain('warning sequence/tape-before-board tape');
  // The primer waits for what comes after the board, if the name is mended.
  const lost = checked(
    steps('boarded-upp').replace('task tape does tape-board takes 1d by others', 'task tape takes 1d by others after board'),
  );
  expect(lost.told.filter((line) => line.includes('sequence/') && line.endsWith('prim'))).toEqual([]);
});
