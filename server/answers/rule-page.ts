// What the code of a finding means: what is looked for and why, where it comes from, how to answer it; with a plan that is
// wrong and one that is right. `screed rule` prints it, the reference is made of it, and other tools are told in its words.
import type { Check } from '#checks/check';
import { checks } from '#checks/rules';
import type { Model } from '#model/resolve';
import { answer, example, type Page, pageMarkdown, pageText, paragraph, WHO_DECIDES } from './page.ts';
import { codedRows, ROW_KINDS, rowPage } from './row-page.ts';
import { ABOUT, HAZARDS } from './rule-about.ts';
import { ABOUT_EXAMPLES } from './rule-about-examples.ts';
import type { View } from './view.ts';

/** A code in the words of its page, for whoever tells of it elsewhere. */
export interface RuleHelp {
  readonly code: string;
  /** A few words, or a sentence without its full stop. */
  readonly title: string;
  /** What it is about and why it matters, in a few sentences. */
  readonly about: string;
  /** The whole page. */
  readonly text: string;
  readonly markdown: string;
  /** Where its page lies below the folder of the reference: 'sequence/board-before-dry.md'. */
  readonly path: string;
}

/** Undefined where no finding has the code. */
export function ruleHelp(code: string, view: View): RuleHelp | undefined {
  const page = pageOf(code, view);
  if (page === undefined) return undefined;
  return {
    code,
    title: page.title,
    about: page.about,
    text: pageText(page),
    markdown: pageMarkdown(page),
    path: pagePath(code),
  };
}

/** The page of a code as text; undefined where no finding has it. */
export function rulePage(code: string, view: View): string | undefined {
  const page = pageOf(code, view);
  return page === undefined ? undefined : pageText(page);
}

/** Every code that a finding can have, each once. */
export function ruleCodes({ plan: { model } }: View): readonly string[] {
  return [...new Set([...checks.map(({ code }) => code), ...codedRows(model).map(([code]) => code), ...Object.keys(ABOUT)])];
}

/** Where the page of a code lies below the folder of the reference. */
export function pagePath(code: string): string {
  return `${code}.md`;
}

/** Whether the reference has a page for a code. A plan's own rules have none: their code leads to the plan. */
export function isInReference(code: string, { library }: Model): boolean {
  if (checkCodes.has(code) || Object.hasOwn(ABOUT, code)) return true;
  const at = code.indexOf('/');
  const kind = ROW_KINDS[code.slice(0, at)];
  return kind !== undefined && library.first.has(`${kind}/${code.slice(at + 1)}`);
}

const checkCodes: ReadonlySet<string> = new Set(checks.map(({ code }) => code));

function pageOf(code: string, view: View): Page | undefined {
  const check = checks.find((each) => each.code === code);
  if (check !== undefined) return checkPage(check);
  const row = rowPage(code, view);
  if (row !== undefined) return row;
  const about = Object.hasOwn(ABOUT, code) ? ABOUT[code] : undefined;
  return about === undefined ? undefined : aboutPage(code, about);
}

/** The first sentence is the title. */
function checkPage({ code, about, wrong, right }: Check): Page {
  return { code, title: firstSentence(about), about, parts: [...example({ wrong, right }), answer(code)] };
}

function aboutPage(code: string, about: string): Page {
  const shown = ABOUT_EXAMPLES[code];
  const parts = shown === undefined ? [] : example(shown);
  const last = HAZARDS.has(code) ? [paragraph(WHO_DECIDES)] : [];
  return { code, title: firstSentence(about), about, parts: [...parts, answer(code), ...last] };
}

function firstSentence(text: string): string {
  return /^(.*?)[.?](?=\s|$)/s.exec(text)?.[1] ?? text;
}
