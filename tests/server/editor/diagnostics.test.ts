// Findings as an editor shows them: where, how severe, how many, and what else they name.
import { describe, expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-types';
import { clientOf } from '#editor/client';
import { diagnosticsOf, MOST_SHOWN } from '#editor/diagnostics';
import { settingsOf } from '#editor/settings';
import { able, covered, editing } from './editing.ts';

function shown(source: string, path = 'plan.screed', client = able) {
  const { view, textOf, places } = editing(source, client);
  const list = diagnosticsOf(path, places.plansOf(path), client, view.addresses);
  const lines = list.map(
    ({ range, severity, code }) =>
      `${range.start.line}:${range.start.character} ${severity} ${code} ${covered(textOf(path), range)}`,
  );
  return { list, lines };
}

test('a finding stands at what it is about, as wide as that', () => {
  expect(shown("room bath\n  siez 8' x 5'\n").lines).toContain('1:2 1 words/unknown-property siez');
});

test('columns count units of 16 bits', () => {
  const { list } = shown('room bath "é😀" siez 8\n');
  expect(list.map(({ range }) => range.start.character)).toContain(16);
});

test.each([
  ['a mark of byte order', '\ufeffrooom a\n', '0:1 1 words/unknown-kind rooom'],
  ['line ends of Windows', "room a\r\n  siez 8'\r\n", '1:2 1 words/unknown-property siez'],
  ['line ends of old', "room a\r  siez 8'\r", '1:2 1 words/unknown-property siez'],
  ['tabs', "room a\n\tsiez 8'\n", '1:1 1 words/unknown-property siez'],
])('%s', (_, text, line) => {
  expect(shown(text).lines).toContain(line);
});

test.each([
  ['nothing', ''],
  ['blanks', '   \n\t\n  '],
  ['comments', '# a\n# b'],
  ['zero bytes', '\0\0room\0 a\0\n\0'],
  ['half a pair', 'room \ud800 "\udc00"\n'],
  ['a megabyte in a line', 'x'.repeat(1_000_000)],
  ['ten thousand brackets', `let a = ${'('.repeat(10_000)}\n`],
  ['five thousand levels', Array.from({ length: 5000 }, (_, at) => `${' '.repeat(at)}room r${at}`).join('\n')],
  ['what version control left', 'room a\n<<<<<<< ours\nroom b\n=======\nroom c\n>>>>>>> theirs\n'],
])('%s: no throw, every range inside the text', (_, text) => {
  const { list } = shown(text);
  const lines = text.split(/\r\n|\r|\n/);
  for (const { range } of list) {
    expect(range.end.line).toBeLessThan(lines.length);
    expect(range.end.character).toBeLessThanOrEqual(lines[range.end.line]!.length);
  }
});

describe('how many', () => {
  const many = `${'rooom a\n'.repeat(MOST_SHOWN + 30)}`;

  test('the most severe first, then how many more there are', () => {
    const { list } = shown(many);
    expect(list).toHaveLength(MOST_SHOWN + 1);
    expect(list.at(-1)?.code).toBe('screed/more');
    expect(list.at(-1)?.message).toMatch(/^\d+ more findings in this file/);
  });
});

describe('what an editor can take', () => {
  const TWICE = 'room a\nroom a\n';

  test('related places, in words and by address', () => {
    const found = shown(TWICE).list.find(({ code }) => code === 'names/declared-twice');
    expect(found?.relatedInformation).toEqual([
      {
        location: { uri: 'plan.screed', range: { start: { line: 0, character: 5 }, end: { line: 0, character: 6 } } },
        message: expect.stringContaining('declared first'),
      },
    ]);
    expect(shown(TWICE, 'plan.screed', clientOf({})).list.some(({ relatedInformation }) => relatedInformation)).toBe(false);
  });

  test('what is no longer needed is told as that', () => {
    const unused = (client: typeof able): Diagnostic | undefined =>
      shown('room a\n  accept rooms/gap "why"\n', 'plan.screed', client).list.find(({ code }) => code === 'accept/unused');
    expect(unused(able)?.tags).toEqual([1]);
    expect(unused(clientOf({}))).toBeDefined();
    expect(unused(clientOf({}))?.tags).toBeUndefined();
  });
});

describe('the page of a code', () => {
  const linking = clientOf({ textDocument: { publishDiagnostics: { codeDescriptionSupport: true } } });
  const OWN = `
    task a does paint-walls takes 3d
    task b does set-devices takes 1d
    task c does prime takes 3d, not before 2027-06-01
    rule devices-first "Painted before devices"
      first set-devices
      then paint-walls
  `;
  const linked = (source: string, client: typeof able): Readonly<Record<string, string | undefined>> => {
    const { view, places } = editing(source, client);
    const addresses = { ...view.addresses, pageOf: (path: string) => `file:///pages/${path}` };
    const list = diagnosticsOf('plan.screed', places.plansOf('plan.screed'), client, addresses);
    return Object.fromEntries(list.map(({ code, codeDescription }) => [code, codeDescription?.href]));
  };

  test('is linked, of checks and of the library’s rows', () => {
    expect(linked(OWN, linking)).toMatchObject({
      'work/no-trade': 'file:///pages/work/no-trade.md',
      'sequence/plates-before-paint': 'file:///pages/sequence/plates-before-paint.md',
    });
  });

  test('a plan’s own rule has none: it is in the plan', () => {
    const links = linked(OWN, linking);
    expect(Object.keys(links)).toContain('sequence/devices-first');
    expect(links['sequence/devices-first']).toBeUndefined();
  });

  test('is not told to an editor that shows no links, or where no pages are', () => {
    expect(Object.values(linked(OWN, able)).filter((href) => href !== undefined)).toEqual([]);
    expect(shown(OWN, 'plan.screed', linking).list.some(({ codeDescription }) => codeDescription)).toBe(false);
  });

  test('of findings that are not sent, too', () => {
    expect(linked('rooom a\n'.repeat(MOST_SHOWN + 1), linking)['screed/more']).toBe('file:///pages/screed/more.md');
  });
});

describe('a file of two plans', () => {
  const STREET = `
    #- one.screed
    plan one
    include "prices.screed"
    #- two.screed
    plan two
    include "prices.screed"
    #- prices.screed
    prise a
  `;

  test('what both say is said once', () => {
    const { lines } = shown(STREET, 'prices.screed');
    expect(lines.filter((line) => line.includes('words/unknown-kind'))).toHaveLength(1);
  });
});

describe('what is known, and for whom', () => {
  const KNOWN = `
    #- plan.screed
    plan p
    let spare = 3
    let other = 4
    #- .screed-baseline.json
    {"screed-baseline":1,"findings":[{"code":"names/unused","file":"plan.screed","thing":"let spare","severity":"note","count":1}]}
  `;

  test('what the baseline beside the plan holds is a hint, in its place', () => {
    const { list, lines } = shown(KNOWN);
    expect(lines).toEqual(['1:4 4 names/unused spare', '2:4 3 names/unused other']);
    expect(list[0]!.message).toMatch(/^Known, in the baseline: The value "spare"/);
  });

  test('a profile that the editor was set to, else the plan’s own', () => {
    const { view, places } = editing('plan p\nlet spare = 3\n');
    const of = (profile?: 'ci' | 'owner') =>
      diagnosticsOf('plan.screed', places.plansOf('plan.screed'), able, view.addresses, profile);
    expect(of()).toHaveLength(1);
    expect(of('ci')).toHaveLength(0);
    const said = editing('plan p\n  profile ci\nlet spare = 3\n');
    const plans = said.places.plansOf('plan.screed');
    expect(diagnosticsOf('plan.screed', plans, able, said.view.addresses)).toHaveLength(0);
    expect(diagnosticsOf('plan.screed', plans, able, said.view.addresses, 'owner')).toHaveLength(1);
  });
});

test.each([
  ['nothing', undefined, undefined],
  ['the section', { screed: { profile: 'builder' } }, 'builder'],
  ['what stands in it', { profile: 'ci' }, 'ci'],
  ['as the plan says', { screed: { profile: '' } }, undefined],
  ['no profile', { screed: { profile: 7 } }, undefined],
])('settings: %s', (_, sent, profile) => expect(settingsOf(sent).profile).toBe(profile));

test('settings that speak of no profile leave it as it was', () => {
  expect(settingsOf({ screed: {} }, { profile: 'ci' }).profile).toBe('ci');
  expect(settingsOf({ screed: { profile: '' } }, { profile: 'ci' }).profile).toBeUndefined();
});
