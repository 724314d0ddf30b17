// Findings as a log in the Static Analysis Results Interchange Format, for programs that gather the results of many checkers.
// Standard: OASIS, Static Analysis Results Interchange Format (SARIF) Version 2.1.0, 27 March 2020.
import type { Severity } from '#kit/finding';
import { addressOf } from './addresses.ts';
import type { Checked, FoundIn } from './checked.ts';
import type { Point } from './findings-list.ts';
import { editOf } from './fix-edit.ts';
import type { Range } from './ranges.ts';
import { codedRows } from './row-page.ts';
import { ruleHelp } from './rule-page.ts';
import { planSummary } from './summary.ts';
import type { View } from './view.ts';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** In the words of the standard, the worst last. */
const LEVELS: readonly Severity[] = ['note', 'warning', 'error'];

interface Suppression {
  readonly kind: 'inSource' | 'external';
  readonly justification?: string;
}

type Tree = { readonly [name: string]: unknown };

export function sarifLog(checked: Checked, version: string): Tree {
  const { findings, accepted, known, views } = checked;
  // Where a baseline was asked, every result says how it stands to it.
  const compared = views.some(({ plan }) => plan.baseline !== undefined);
  const state = (baselineState: 'new' | 'unchanged') => (compared ? { baselineState } : {});
  const all = [
    ...findings.map((found) => ({ found, suppressions: [] as readonly Suppression[], ...state('new') })),
    ...accepted.map((found) => ({ found, suppressions: [inSource(found)], ...state('new') })),
    ...known.map((found) => ({
      found,
      suppressions: [{ kind: 'external' as const, justification: 'Known when the baseline was written.' }],
      ...state('unchanged'),
    })),
  ];
  const codes = [...new Set(all.map(({ found }) => found.listed.code))].sort();
  const nth = new Map<string, number>();
  return {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'Screed',
            version,
            rules: codes.map((code) =>
              ruleOf(
                code,
                all.map(({ found }) => found),
              ),
            ),
          },
        },
        invocations: [
          {
            executionSuccessful: true,
            toolExecutionNotifications: views.flatMap((view) => {
              const text = planSummary(view);
              return text === '' ? [] : [{ level: 'note', message: { text } }];
            }),
          },
        ],
        columnKind: 'utf16CodeUnits',
        results: all.map(({ found, suppressions, ...more }) => ({
          ...resultOf(found, codes, nth),
          ...(suppressions.length === 0 ? {} : { suppressions }),
          ...more,
        })),
      },
    ],
  };
}

function inSource({ reason, until }: { readonly reason: string | undefined; readonly until: string | undefined }): Suppression {
  const justification = [reason, until === undefined ? undefined : `until ${until}`]
    .filter((part) => part !== undefined)
    .join(', ');
  return { kind: 'inSource', ...(justification === '' ? {} : { justification }) };
}

/** One that occurs. Its level is the library row's, else the worst that was found. */
function ruleOf(code: string, found: readonly FoundIn[]): Tree {
  const own = found.filter(({ listed }) => listed.code === code);
  const { view } = own[0]!;
  const help = ruleHelp(code, view);
  const worst = LEVELS.findLast((level) => own.some(({ listed }) => listed.severity === level));
  return {
    id: code,
    name: code.replace(/(?:^|[/-])([a-z\d])/g, (_, letter: string) => letter.toUpperCase()),
    ...(help === undefined
      ? {}
      : {
          shortDescription: { text: `${help.title}.` },
          fullDescription: { text: help.about },
          help: { text: help.text, markdown: help.markdown },
        }),
    defaultConfiguration: { level: rowSeverity(code, view) ?? worst },
    properties: { tags: [code.slice(0, code.indexOf('/'))] },
  };
}

function rowSeverity(code: string, { plan: { model } }: View): Severity | undefined {
  return codedRows(model).find(([each]) => each === code)?.[1].given.severity?.value;
}

function resultOf({ finding, view, listed }: FoundIn, codes: readonly string[], nth: Map<string, number>): Tree {
  const { code, severity, message, file, start, end, related, thing, word } = listed;
  const fixes = (finding.fixes ?? []).flatMap((fix) => {
    const edit = editOf(fix, view.plan);
    if (edit === undefined) return [];
    const { range, newText } = edit.edit;
    return {
      description: { text: fix.title },
      artifactChanges: [
        {
          artifactLocation: locationOf(view.fileName(edit.path)),
          replacements: [{ deletedRegion: regionOfRange(range), insertedContent: { text: newText } }],
        },
      ],
    };
  });
  return {
    ruleId: code,
    ruleIndex: codes.indexOf(code),
    level: severity,
    message: { text: withoutLinks(message) },
    locations: [
      {
        physicalLocation: { artifactLocation: locationOf(file), region: regionOf(start, end) },
        logicalLocations: [{ name: thing, kind: 'declaration' }],
      },
    ],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((each, id) => ({
            id,
            message: { text: withoutLinks(each.message) },
            physicalLocation: { artifactLocation: locationOf(each.file), region: regionOf(each.start, each.end) },
          })),
        }),
    partialFingerprints: { 'findingName/v1': fingerprint([code, file, thing, word ?? ''], nth) },
    ...(fixes.length === 0 ? {} : { fixes }),
  };
}

/** In a message, words in brackets before a parenthesis would be a link (3.11.6 of the standard). */
function withoutLinks(text: string): string {
  return text.replace(/\[([^\]]*)\](?=\()/g, '\\[$1\\]');
}

/** What it is called whatever its line; of several that are called the same, with a number. */
function fingerprint(parts: readonly string[], nth: Map<string, number>): string {
  const name = parts.join('|');
  const number = (nth.get(name) ?? 0) + 1;
  nth.set(name, number);
  return `${name}|${number}`;
}

function locationOf(file: string): Tree {
  const uri = addressOf(file);
  // What is no address of its own is told from the folder that was checked.
  return /^[a-z]+:/.test(uri) ? { uri } : { uri, uriBaseId: '%SRCROOT%' };
}

function regionOf(start: Point, end: Point): Tree {
  return { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
}

function regionOfRange({ start, end }: Range): Tree {
  const point = ({ line, character }: Range['start']): Point => ({ line: line + 1, column: character + 1 });
  return regionOf(point(start), point(end));
}
