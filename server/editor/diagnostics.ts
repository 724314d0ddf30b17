// Findings as an editor shows them. Sentences are made only here, for the files somebody looks at, and once a finding.
import type { Diagnostic } from 'vscode-languageserver-types';
import { isShown, type ProfileName, profileOf } from '#answers/profiles';
import { isInReference, pagePath } from '#answers/rule-page';
import { type Finding, messageOf, type Severity } from '#kit/finding';
import { standingOf } from '#model/standing';
import type { Plan } from '#server/pipeline';
import type { Client } from './client.ts';
import { rangeOf, stretchOf } from './places.ts';
import type { Addresses } from './view.ts';

/** No more than this many are shown for a file; the most severe first. */
export const MOST_SHOWN = 200;

const SEVERITIES = { error: 1, warning: 2, note: 3 } as const satisfies { readonly [S in Severity]: 1 | 2 | 3 };
/** What a baseline answers is there for whoever looks at the line, and stands in no list of problems. */
const HINT = 4;

/**
 * What a file's plans say about it, in the order of the text. A plan's own words are told once, however many say them.
 * `profile`: who reads, where the editor was told; else each plan says.
 */
export function diagnosticsOf(
  path: string,
  plans: readonly Plan[],
  client: Client,
  addresses: Addresses,
  profile?: ProfileName,
): readonly Diagnostic[] {
  const [only] = plans;
  if (only === undefined) return [];
  const shown: Diagnostic[] = [];
  let left = 0;
  for (const plan of plans) {
    const reader = profileOf(plan, profile);
    const here = plan.findings.filter((found) => found.place.slot.file === path && isShown(found, reader));
    const chosen = here.length > MOST_SHOWN ? mostSevere(here) : here;
    left += here.length - chosen.length;
    for (const found of chosen) {
      const made = diagnosticOf(found, plan, client, addresses);
      if (made !== undefined) shown.push(made);
    }
    for (const { finding } of plan.known.filter((each) => each.finding.place.slot.file === path).slice(0, MOST_SHOWN)) {
      const made = diagnosticOf(finding, plan, client, addresses);
      if (made !== undefined) shown.push(asKnown(made));
    }
  }
  const several = plans.length > 1 || plans.some(({ known }) => known.length > 0);
  const distinct = several ? inOrder(withoutTwins(shown)) : shown;
  return left === 0 ? distinct : [...distinct, more(left, only, client, addresses)];
}

/** The same for some findings of one plan. */
export function diagnosticsOfFindings(
  findings: readonly Finding[],
  plan: Plan,
  client: Client,
  addresses: Addresses,
): readonly Diagnostic[] {
  return findings.flatMap((found) => diagnosticOf(found, plan, client, addresses) ?? []);
}

function mostSevere(findings: readonly Finding[]): readonly Finding[] {
  const chosen = new Set<Finding>();
  for (const severity of Object.keys(SEVERITIES)) {
    for (const found of findings) {
      if (chosen.size >= MOST_SHOWN) break;
      if (found.severity === severity) chosen.add(found);
    }
  }
  return findings.filter((found) => chosen.has(found));
}

/** How many sentences were made, for the counters. */
export const sentences = { made: 0 };

interface Kept {
  readonly message: string;
  line: number;
  diagnostic: Diagnostic | undefined;
}
const kept = new WeakMap<Finding, Kept>();

function diagnosticOf(found: Finding, plan: Plan, client: Client, addresses: Addresses): Diagnostic | undefined {
  const standing = standingOf(found.place, plan.model);
  if (standing === undefined) return undefined;
  let known = kept.get(found);
  if (known === undefined) {
    sentences.made += 1;
    kept.set(found, (known = { message: messageOf(found), line: -1, diagnostic: undefined }));
  }
  // Related places may have moved, so only what stands alone is kept whole.
  if (known.line === standing.line && known.diagnostic !== undefined && found.related === undefined) return known.diagnostic;
  const related = client.relatedPlaces ? relatedOf(found, plan, addresses) : [];
  const made: Diagnostic = {
    range: stretchOf(standing, found.place.spot.from, found.place.spot.to),
    severity: SEVERITIES[found.severity],
    code: found.code,
    ...pageLink(found.code, plan, client, addresses),
    source: 'screed',
    message: known.message,
    ...(related.length === 0 ? {} : { relatedInformation: [...related] }),
    ...(client.unnecessaryTag && found.code.endsWith('/unused') ? { tags: [1] } : {}),
    ...(client.diagnosticNotes && found.fixes !== undefined ? { data: { fixes: found.fixes.map(({ title }) => title) } } : {}),
  };
  known.line = standing.line;
  known.diagnostic = made;
  return made;
}

const hints = new WeakMap<Diagnostic, Diagnostic>();

function asKnown(diagnostic: Diagnostic): Diagnostic {
  let hint = hints.get(diagnostic);
  if (hint === undefined)
    hints.set(diagnostic, (hint = { ...diagnostic, severity: HINT, message: `Known, in the baseline: ${diagnostic.message}` }));
  return hint;
}

/** The page of the code, where there is one and the editor shows a code as a link. */
function pageLink(code: string, { model }: Plan, client: Client, { pageOf }: Addresses): Pick<Diagnostic, 'codeDescription'> {
  if (!client.diagnosticLinks || pageOf === undefined || !isInReference(code, model)) return {};
  return { codeDescription: { href: pageOf(pagePath(code)) } };
}

function relatedOf({ related = [] }: Finding, { model }: Plan, addresses: Addresses) {
  return related.flatMap(({ place, note }) => {
    const range = rangeOf(place, model);
    return range === undefined ? [] : [{ location: { uri: addresses.uriOf(place.slot.file), range }, message: note }];
  });
}

function more(count: number, plan: Plan, client: Client, addresses: Addresses): Diagnostic {
  const start = { line: 0, character: 0 };
  const message = `${count} more ${count === 1 ? 'finding' : 'findings'} in this file. Answer some of those shown and the rest follow.`;
  return {
    range: { start, end: start },
    severity: 3,
    code: 'screed/more',
    ...pageLink('screed/more', plan, client, addresses),
    source: 'screed',
    message,
  };
}

function withoutTwins(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Set<string>();
  return diagnostics.filter((each) => {
    const key = JSON.stringify(each);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function inOrder(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return [...diagnostics].sort(
    (a, b) => a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character,
  );
}
