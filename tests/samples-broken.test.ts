// The samples of common mistakes say under the line what is found there: exactly that, and nothing else above a note. The
// whole samples have neither errors nor warnings.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checks } from '#checks/rules';
import { messageOf } from '#kit/finding';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from './support/built-in.ts';
import { checked } from './support/checked.ts';
import { readFixture } from './support/fixture.ts';

const folder = join(import.meta.dirname, '../samples/broken');
const files = readdirSync(folder).filter((file) => file.endsWith('.screed'));

describe.each(files)('samples/broken/%s', (file) => {
  const fixture = readFixture(`#- ${file}\n${readFileSync(join(folder, file), 'utf8')}`);
  const plan = checked(Object.fromEntries(fixture.files.map(({ path, text }) => [path, text])));

  test('one mistake, marked and found', () => {
    expect(fixture.marks).toHaveLength(1);
    const [{ line, severity, code, from, to }] = fixture.marks as [(typeof fixture.marks)[number]];
    const marked = (fixture.files[0]?.text.split('\n')[line] ?? '').slice(from, to);
    expect(plan.marks(code ?? '')).toEqual([`line ${line + 1}: ${marked}`]);
    expect(plan.plan.findings.filter((found) => found.code === code).map((found) => found.severity)).toEqual([severity]);
  });

  test('nothing else above a note', () => {
    expect(plan.loud.filter((line) => !fixture.marks.some(({ code }) => line.includes(` ${code} `)))).toEqual([]);
  });
});

test('the commonest mistakes each have a sample', () => {
  const codes = new Set(
    files.flatMap((file) => readFixture(readFileSync(join(folder, file), 'utf8')).marks.map(({ code }) => code)),
  );
  for (const code of [
    'schedule/loop',
    'schedule/loose-end',
    'work/nobody-does-it',
    'work/no-trade',
    'work/done-twice',
    'measures/does-not-close',
    'rooms/outside-level',
    'dates/before-start',
    'dates/past-target',
    'accept/unused',
    'openings/wider-than-wall',
    'money/price-missing',
    'sequence/board-before-dry',
  ])
    expect(codes).toContain(code);
  expect(checks.length).toBeGreaterThan(20);
});

describe.each([
  ['cottage', 'plan'],
  ['shed', 'shed'],
  ['panel-cabin', 'cabin'],
])('samples/%s', (sample, root) => {
  const plan = analyse({ root: `samples/${sample}/${root}.screed`, texts: sampleTexts(sample), library: builtIn() });
  const of = (severity: string): readonly string[] =>
    plan.findings
      .filter((found) => found.severity === severity)
      .map((found) => `${found.code} ${found.place.slot.name}: ${messageOf(found)}`);

  test('no errors, no warnings', () => {
    expect(of('error')).toEqual([]);
    expect(of('warning')).toEqual([]);
  });

  test('few notes', () => expect(of('note').length).toBeLessThanOrEqual(4));
});
