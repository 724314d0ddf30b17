// A baseline: what was found on the day it was written is known; what is new, or worse, is told.
import { describe, expect, test } from 'vitest';
import { baselineOf, checkedPlans, leftOver } from '#answers/checked';
import { readBaseline } from '#checks/baseline';
import { asked } from '#tests/server/answers/plans';
import { dedent } from '#tests/support/fixture';

const FILE = '.screed-baseline.json';
const OLD = dedent(`
  plan p
    start 2027-04-05
  trade framing crew of 3 at $52/h
  trade drywall crew of 3 at $48/h
  task windows does set-windows, set-flashing takes 5d by framing, to the end
  task board does hang-board takes 4d by drywall, to the end
  room bath on nowhere
    size 5' x 8'
`);

const written = (text: string): string => baselineOf([asked(text)], {}, FILE).text;
const look = (text: string, baseline: string) => {
  const plans = [asked(text, { baseline })];
  const { findings, known } = checkedPlans(plans, {});
  const line = ({ listed }: (typeof findings)[number]): string => `${listed.code} ${listed.thing}`;
  return {
    told: findings.map(line),
    known: known.map(line),
    left: leftOver(plans).map(({ entry }) => `${entry.code} ${entry.thing} ${entry.count}`),
  };
};

test('one entry a line, sorted, without line numbers; the same whatever order things stand in', () => {
  const text = written(OLD);
  expect(text).toBe(
    [
      '{',
      '  "screed-baseline": 1,',
      '  "findings": [',
      '    {"code":"names/unknown","file":"plan.screed","thing":"room bath","word":"nowhere","severity":"error","count":1},',
      '    {"code":"sequence/board-before-dry","file":"plan.screed","thing":"task board","severity":"warning","count":1}',
      '  ]',
      '}',
      '',
    ].join('\n'),
  );
  const moved = OLD.replace(/task windows.*\n/, '').replace('room bath', `${/task windows.*\n/.exec(OLD)![0]}\n\nroom bath`);
  expect(written(moved)).toBe(text);
});

test('what was found then is known, also on other lines', () => {
  expect(look(OLD, written(OLD))).toEqual({
    told: [],
    known: ['sequence/board-before-dry task board', 'names/unknown room bath'],
    left: [],
  });
  expect(look(`# one\n\n${OLD}`, written(OLD)).told).toEqual([]);
});

test('what is new is told, also of a thing that had something else', () => {
  expect(look(`${OLD}  floor nothing-like-it\n`, written(OLD)).told).toContain('names/unknown-goods room bath');
  expect(look(OLD.replace('nowhere', 'elsewhere'), written(OLD))).toMatchObject({
    told: ['names/unknown room bath'],
    left: ['names/unknown room bath 1'],
  });
});

test('one more of a kind is told', () => {
  const twice = OLD.replace("  size 5' x 8'", "  size 5' x 8'\n  door nothing to nowhere");
  const { told, known } = look(twice, written(OLD));
  expect(known).toContain('names/unknown room bath');
  expect(told.length).toBeGreaterThan(0);
});

test('what became more severe is told; what became milder is known', () => {
  const milder = written(OLD).replace('"severity":"warning"', '"severity":"note"');
  expect(look(OLD, milder)).toMatchObject({
    told: ['sequence/board-before-dry task board'],
    left: ['sequence/board-before-dry task board 1'],
  });
  const worse = written(OLD).replace('"severity":"warning"', '"severity":"error"');
  expect(look(OLD, worse)).toMatchObject({ told: [], left: [] });
});

test('what is no longer found is left over', () => {
  const mended = OLD.replace('by drywall', 'by drywall after windows');
  expect(look(mended, written(OLD))).toMatchObject({ told: [], left: ['sequence/board-before-dry task board 1'] });
});

test('what the plan accepts needs no entry', () => {
  const accepted = `${OLD}accept sequence/board-before-dry for board "Tarped"\n`;
  expect(written(accepted)).not.toContain('board-before-dry');
  expect(look(accepted, written(OLD)).left).toEqual(['sequence/board-before-dry task board 1']);
});

test('a new one among many known ones of a sort is told by itself', () => {
  const rooms = (count: number): string =>
    `plan p\n${Array.from({ length: count }, (_, at) => `let spare${at} = ${at}\n`).join('')}`;
  expect(look(rooms(9), written(rooms(8))).told).toEqual(['names/unused let spare8']);
});

describe('a hazard is answered by no baseline', () => {
  const DEEP = dedent(`
    plan p
      start 2027-04-05
    trade us crew of 2 at $50/h
    task deck does sheathe-roof takes 2d by us, to the end
  `);

  test('it is left out when one is written, and counted', () => {
    const { text, hazards } = baselineOf([asked(DEEP)], {}, FILE);
    expect(hazards).toBeGreaterThan(0);
    expect(text).not.toContain('safety/roof-edge');
  });

  test('an entry put in by hand does not hush it', () => {
    const entry = '{"code":"safety/roof-edge","file":"plan.screed","thing":"task deck","severity":"error","count":9}';
    expect(look(DEEP, `{"screed-baseline":1,"findings":[${entry}]}`).told).toContain('safety/roof-edge task deck');
  });
});

test('paths go from the folder of the baseline', () => {
  const files = { 'houses/one/plan.screed': OLD };
  const at = (path: string): string => /"file":"([^"]*)"/.exec(baselineOf([asked(files)], {}, path).text)![1]!;
  expect(at('houses/one/known.json')).toBe('plan.screed');
  expect(at('known.json')).toBe('houses/one/plan.screed');
  expect(at('other/known.json')).toBe('../houses/one/plan.screed');
});

test.each([
  ['nothing', ''],
  ['no JSON', '{'],
  ['another number', '{"screed-baseline":2,"findings":[]}'],
  ['an entry without a code', '{"screed-baseline":1,"findings":[{"file":"a","thing":"b","severity":"note","count":1}]}'],
  ['a count of none', '{"screed-baseline":1,"findings":[{"code":"a/b","file":"a","thing":"b","severity":"note","count":0}]}'],
  ['null', 'null'],
])('%s is no baseline, and answers nothing', (_, text) => {
  expect(readBaseline(text, FILE)).toEqual({ file: FILE, entries: [], broken: true });
  expect(look(OLD, text).known).toEqual([]);
});
