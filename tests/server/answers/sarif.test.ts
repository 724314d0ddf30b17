// Findings as a SARIF log, against the standard's own schema: OASIS, "Static Analysis Results Interchange Format (SARIF)
// Version 2.1.0", sarif-schema-2.1.0.json of the technical committee's repository oasis-tcs/sarif-spec, as it lies in
// tests/published (copyright OASIS Open; it may be copied and furnished to others). It came by way of the npm package
// @datadog/datadog-ci-plugin-sarif 5.25.0.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { baselineOf, checkedPlans } from '#answers/checked';
import { sarifLog } from '#answers/sarif';
import { lineStarts, offsetAt } from '#kit/text';
import { sampleTexts } from '#tests/support/built-in';
import { dedent } from '#tests/support/fixture';
import { asked } from './plans.ts';

/** An address, absolute or relative, as RFC 3986 spells one. */
const REFERENCE = /^(?:[A-Za-z\d\-._~:/?#[\]@!$&'()*+,;=]|%[\dA-Fa-f]{2})*$/;
const ajv = new Ajv({
  strict: false,
  allErrors: true,
  formats: {
    uri: (text: string) => REFERENCE.test(text) && URL.canParse(text),
    'uri-reference': (text: string) => REFERENCE.test(text) && URL.canParse(text, 'file:///base/'),
    'date-time': true,
  },
});
const valid = ajv.compile(
  JSON.parse(readFileSync(join(import.meta.dirname, '../../published/sarif-schema-2.1.0.json'), 'utf8')) as object,
);

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
interface Place {
  readonly physicalLocation: { readonly artifactLocation: { readonly uri: string }; readonly region: Region };
  readonly message?: { readonly text: string };
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly Place[];
  readonly relatedLocations?: readonly Place[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly suppressions?: readonly { readonly kind: string; readonly justification?: string }[];
  readonly baselineState?: string;
  readonly fixes?: readonly {
    readonly description: { readonly text: string };
    readonly artifactChanges: readonly {
      readonly replacements: readonly { readonly deletedRegion: Region; readonly insertedContent: { readonly text: string } }[];
    }[];
  }[];
}
interface Run {
  readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string; readonly [name: string]: unknown }[] } };
  readonly columnKind: string;
  readonly results: readonly Result[];
}

/** The one run of a log that keeps to the schema. */
function runOf(...given: Parameters<typeof asked>): Run {
  const log = JSON.parse(JSON.stringify(sarifLog(checkedPlans([asked(...given)], {}), '1.2.3'))) as { runs: Run[] };
  expect(valid(log) ? [] : valid.errors?.slice(0, 3)).toEqual([]);
  return log.runs[0]!;
}

const BOARD = `
  plan p
    start 2027-04-05
  trade framing crew of 3 at $52/h
  trade drywall crew of 3 at $48/h
  task windows does set-windows, set-flashing takes 5d by framing, to the end
  task board does hang-board takes 4d by drywall, to the end
`;

test('the guard: what is no log is found out', () => {
  expect(valid({ version: '2.1.0', runs: [{ tool: { driver: {} } }] })).toBe(false);
  expect(
    valid({
      version: '2.1.0',
      runs: [{ tool: { driver: { name: 'x' } }, results: [{ message: {}, level: 'bad' }] }],
    }),
  ).toBe(false);
});

test.each(['cottage', 'shed', 'panel-cabin', 'broken'])('samples/%s keeps to the schema of the standard', (sample) => {
  const plans = Object.entries(sampleTexts(sample));
  const roots = plans.filter(([, text]) => /^plan /m.test(text));
  for (const [path, text] of roots)
    runOf(sample === 'broken' ? { [path]: text } : { [path]: text, ...Object.fromEntries(plans) });
});

test('level, place, rule and what else is named', () => {
  const { tool, columnKind, results } = runOf(BOARD);
  const [found] = results;
  expect(columnKind).toBe('utf16CodeUnits');
  expect(results).toHaveLength(1);
  expect(found).toMatchObject({
    ruleId: 'sequence/board-before-dry',
    ruleIndex: 0,
    level: 'warning',
    locations: [
      {
        physicalLocation: {
          artifactLocation: { uri: 'plan.screed' },
          region: { startLine: 6, startColumn: 6, endLine: 6, endColumn: 11 },
        },
      },
    ],
    relatedLocations: [{ message: { text: '"windows", which comes first' } }],
  });
  expect(tool.driver.rules).toEqual([
    expect.objectContaining({
      id: 'sequence/board-before-dry',
      name: 'SequenceBoardBeforeDry',
      shortDescription: { text: 'Board goes up before the house is dry.' },
      fullDescription: { text: expect.stringContaining('Wet board comes out again.') },
      help: { text: expect.stringContaining('Wet board comes out again.'), markdown: expect.stringContaining('# Board goes up') },
      defaultConfiguration: { level: 'warning' },
    }),
  ]);
});

test('every rule that occurs is told once, and every result points at its own', () => {
  for (const [path, text] of Object.entries(sampleTexts('broken'))) {
    const { tool, results } = runOf({ [path]: text });
    const { rules } = tool.driver;
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const { ruleId, ruleIndex } of results) expect(rules[ruleIndex]!.id).toBe(ruleId);
    for (const each of rules) expect(each.shortDescription, each.id).toBeDefined();
  }
});

describe('fixes: the edits, applied, answer the finding', () => {
  test.each([
    ['a word replaced', "room bath\n  siez 5' x 8'\n"],
    ['a link added at the end of a line', dedent(BOARD)],
    [
      'a wait added after a name',
      'plan p\n  start 2027-04-05\ntrade c crew of 3 at $52/h\ntask walls does pour-stem-walls takes 2d by c\ntask strip does strip-forms takes 1d by c after walls, to the end\n',
    ],
  ])('%s', (_, text) => {
    const before = runOf({ 'plan.screed': text }).results;
    const found = before.find(({ fixes }) => fixes !== undefined);
    expect(found).toBeDefined();
    const [{ deletedRegion: at, insertedContent }] = found!.fixes![0]!.artifactChanges[0]!.replacements as [
      { deletedRegion: Region; insertedContent: { text: string } },
    ];
    const starts = lineStarts(text);
    const offset = (line: number, column: number): number => offsetAt(text, starts, { line: line - 1, character: column - 1 });
    const mended =
      text.slice(0, offset(at.startLine, at.startColumn)) + insertedContent.text + text.slice(offset(at.endLine, at.endColumn));
    const after = runOf({ 'plan.screed': mended }).results;
    expect(after.map(({ ruleId }) => ruleId)).not.toContain(found!.ruleId);
  });
});

test('fingerprints stay when lines move, and tell two of a kind apart', () => {
  const text =
    "plan p\nroom bath on nowhere\n  size 5' x 8'\nroom bed on nowhere\n  size 9' x 9'\nroom hall on nowhere, nowhere\n";
  const names = (source: string): readonly string[] =>
    runOf({ 'plan.screed': source }).results.map(({ partialFingerprints }) => partialFingerprints['findingName/v1']!);
  const before = names(text);
  expect(new Set(before).size).toBe(before.length);
  expect(names(`# a line\n\n# another\n${text.replace('room bed', '\n\nroom bed')}`)).toEqual(before);
});

describe('what is set apart', () => {
  const ACCEPTED = `${dedent(BOARD)}  accept sequence/board-before-dry "Tarped, inspector agreed" until 2027-09-01\n`;

  test('accepted in the text: suppressed in source, with the reason', () => {
    const [found, ...others] = runOf({ 'plan.screed': ACCEPTED }).results;
    expect(others).toEqual([]);
    expect(found!.suppressions).toEqual([{ kind: 'inSource', justification: 'Tarped, inspector agreed, until 2027-09-01' }]);
    expect(found!.baselineState).toBeUndefined();
  });

  test('in the baseline: suppressed from outside, and every result says how it stands to it', () => {
    const { text: baseline } = baselineOf([asked(BOARD)], {}, '.screed-baseline.json');
    const grown = `${dedent(BOARD)}room bath on nowhere\n`;
    const results = runOf({ 'plan.screed': grown }, { baseline }).results;
    expect(results.map(({ ruleId, baselineState, suppressions }) => [ruleId, baselineState, suppressions?.[0]?.kind])).toEqual(
      expect.arrayContaining([
        ['names/unknown', 'new', undefined],
        ['sequence/board-before-dry', 'unchanged', 'external'],
      ]),
    );
  });
});

test('brackets before a parenthesis are words, not a link', () => {
  const { results } = runOf({ 'plan.screed': 'plan p\nroom [a](b)\n' });
  for (const { message } of results) expect(message.text).not.toMatch(/(?<!\\)\[[^\]]*[^\\]\]\(/);
});
