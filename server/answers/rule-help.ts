// The code of a finding in the words of its page, for whoever tells of it elsewhere.
import { checks } from '#checks/rules';
import { ABOUT } from './rule-about.ts';
import { rulePage } from './rule-page.ts';
import type { View } from './view.ts';

export interface RuleHelp {
  readonly code: string;
  /** A few words or one sentence, without a full stop. */
  readonly title: string;
  /** What it is about and why it matters, in a few sentences. */
  readonly about: string;
  /** The whole page. */
  readonly text: string;
  readonly markdown: string;
}

/** Undefined where no finding has the code. */
export function ruleHelp(code: string, view: View): RuleHelp | undefined {
  const text = rulePage(code, view);
  if (text === undefined) return undefined;
  const { model } = view.plan;
  const name = code.slice(code.indexOf('/') + 1);
  const row = code.startsWith('sequence/')
    ? model.rows('rule').find((each) => each.name === name)
    : code.startsWith('minimum/')
      ? model.rows('minimum').find((each) => each.name === name)
      : undefined;
  const known = checks.find((each) => each.code === code)?.about ?? (Object.hasOwn(ABOUT, code) ? ABOUT[code] : undefined);
  const title = row?.label ?? firstSentence(known ?? code);
  const { because, remedy, source } = row?.given ?? {};
  const about =
    row === undefined ? (known ?? title) : [because?.value, remedy?.value].filter((part) => part !== undefined).join(' ');
  return {
    code,
    title,
    about: about === '' ? `${title}.` : about,
    text,
    markdown: [
      `**${title}.**`,
      about,
      source === undefined ? '' : `*Source: ${source.value}.*`,
      `To answer it, mend the line; or accept it, with a reason, below the declaration it is found at: \`accept ${code} "reason"\`.`,
    ]
      .filter((part) => part !== '')
      .join('\n\n'),
  };
}

function firstSentence(text: string): string {
  return /^(.*?)\.(?:\s|$)/.exec(text)?.[1] ?? text;
}
