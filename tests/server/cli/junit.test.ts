// Findings as a report of tests. XML: W3C, "Extensible Markup Language (XML) 1.0 (Fifth Edition)", read back by a strict
// parser; the letters it has no place for are those outside production 2 (Char). The elements are those that JUnit reports
// share: testsuites, testsuite, testcase, failure, skipped, system-out (common practice; there is no standard).
import { DOMParser, onWarningStopParsing } from '@xmldom/xmldom';
import { describe, expect, test } from 'vitest';
import { baselineOf, checkedPlans } from '#answers/checked';
import { junitReport } from '#cli/junit';
import { asked } from '#tests/server/answers/plans';

const CHAR = /^(?:[\t\n\r\u0020-\ud7ff\ue000-\ufffd]|[\u{10000}-\u{10ffff}])*$/u;

function report(given: Parameters<typeof asked>, warningsFail = false) {
  const text = junitReport(checkedPlans([asked(...given)], {}), warningsFail);
  expect(text).toMatch(CHAR);
  const root = new DOMParser({ onError: onWarningStopParsing }).parseFromString(text, 'application/xml').documentElement!;
  const all = (name: string) => [...root.getElementsByTagName(name)];
  for (const each of [root, ...all('testsuite')]) {
    const count = (name: string): string => String(each.getElementsByTagName(name).length);
    expect([each.getAttribute('tests'), each.getAttribute('failures'), each.getAttribute('skipped')]).toEqual([
      count('testcase'),
      count('failure'),
      count('skipped'),
    ]);
  }
  return {
    text,
    suites: all('testsuite').map((each) => each.getAttribute('name')),
    cases: all('testcase').map((each) => {
      const inside = [...each.childNodes].find(({ nodeType }) => nodeType === 1);
      return `${inside?.nodeName ?? 'passed'} ${each.getAttribute('name')}`;
    }),
    messages: [...all('failure'), ...all('skipped')].map((each) => each.getAttribute('message')),
  };
}

const HOUSE = {
  'plan.screed':
    'plan p\n  start 2027-04-05\n  target 2027-04-05\ninclude "more.screed"\ntrade me\ntask dig takes 2d by me, to the end\nroom bath on nowhere\nlet spare = 3\n',
  'more.screed': '# nothing\n',
};

test('a suite for each file; one without findings has a case that passes', () => {
  const { suites, cases } = report([HOUSE]);
  expect(suites).toEqual(['more.screed', 'plan.screed']);
  expect(cases).toEqual([
    'passed no findings',
    'skipped dates/past-target: plan p',
    'failure names/unknown: room bath, nowhere',
    'system-out names/unused: let spare',
  ]);
});

test('it fails what the exit status fails: warnings only where there are more than allowed', () => {
  expect(report([HOUSE], true).cases).toContain('failure dates/past-target: plan p');
});

test('a case keeps its name when lines move', () => {
  const moved = { ...HOUSE, 'plan.screed': `# one\n\n${HOUSE['plan.screed']}` };
  expect(report([moved]).cases).toEqual(report([HOUSE]).cases);
});

test('two of one name are told apart', () => {
  const { cases } = report([{ 'plan.screed': 'plan p\nroom a on nowhere\n  window w in north\n  window w in south\n' }]);
  expect(new Set(cases).size).toBe(cases.length);
});

describe('what is set apart is skipped, with the reason', () => {
  test('accepted', () => {
    const house = { 'plan.screed': `${HOUSE['plan.screed']}accept names/unused for spare "Kept for the shed"\n` };
    const { cases, messages } = report([house]);
    expect(cases).toContain('skipped names/unused: let spare');
    expect(messages).toContainEqual(expect.stringMatching(/^accepted \("Kept for the shed"\): The value "spare"/));
  });

  test('known', () => {
    const { text: baseline } = baselineOf([asked(HOUSE)], {}, '.screed-baseline.json');
    const { cases, messages } = report([HOUSE, { baseline }]);
    expect(cases.filter((each) => each.startsWith('failure'))).toEqual([]);
    expect(messages).toContainEqual(expect.stringMatching(/^in the baseline: /));
  });
});

test('whatever stands in a text, the report is XML', () => {
  const { text, cases } = report([
    { 'a<b>&"\'.screed': 'plan p "<&>]]>"\nroom a\u0000\u0007\u001b "\ud800" siez <![CDATA[ \ufffe "x"\nlet é😀 = <&>\n' },
  ]);
  expect(cases.length).toBeGreaterThan(1);
  expect(text).toContain('&lt;');
});
