// A page of the rule reference, as text for a terminal and as Markdown for a file: both from one tree, so that they say the
// same. In its words, what stands between backticks is the language's own.

export interface Page {
  readonly code: string;
  /** A few words, or a sentence without its full stop. */
  readonly title: string;
  /** What it is about and why it matters. Where it begins with the title, the page says that once. */
  readonly about: string;
  readonly parts: readonly Part[];
}

export type Part =
  | { readonly kind: 'text'; readonly text: string }
  /** Short answers, each under its word: 'Why', 'Source'. */
  | { readonly kind: 'rows'; readonly rows: readonly Row[] }
  | { readonly kind: 'plan'; readonly title: string; readonly text: string };
export type Row = readonly [word: string, text: string];

export function paragraph(text: string): Part {
  return { kind: 'text', text };
}

/** Rows without text are left out. */
export function rows(...given: readonly (readonly [word: string, text: string | undefined])[]): Part {
  return { kind: 'rows', rows: given.flatMap(([word, text]) => (text === undefined || text === '' ? [] : [[word, text]])) };
}

/** Both plans of an example: 'Wrong', and what is wrong with it. */
export function example(
  { wrong, right }: { readonly wrong: string; readonly right: string },
  why = '',
  how = '',
): readonly Part[] {
  return [
    { kind: 'plan', title: why === '' ? 'Wrong' : `Wrong (${why})`, text: wrong },
    { kind: 'plan', title: how === '' ? 'Right' : `Right (${how})`, text: right },
  ];
}

export function pageText(page: Page): string {
  return `${[page.code, plain(page.title), ...partsOf(page).map(partText)].join('\n\n')}\n`;
}

export function pageMarkdown(page: Page): string {
  return `${[`# ${page.title}`, `\`${page.code}\``, ...partsOf(page).map(partMarkdown)].join('\n\n')}\n`;
}

function partsOf({ title, about, parts }: Page): readonly Part[] {
  const rest = about.startsWith(title) ? about.slice(title.length).replace(/^[.?]\s*/, '') : about;
  return rest === '' ? parts : [paragraph(rest), ...parts];
}

function partText(part: Part): string {
  switch (part.kind) {
    case 'text':
      return plain(part.text);
    case 'rows':
      return rowsText(part.rows);
    case 'plan':
      return `${plain(part.title)}:\n\n${indented(part.text)}`;
  }
}

function partMarkdown(part: Part): string {
  switch (part.kind) {
    case 'text':
      return part.text;
    case 'rows':
      return part.rows.map(([word, text]) => `- **${word}**: ${text}`).join('\n');
    case 'plan':
      return `## ${part.title}\n\n\`\`\`screed\n${part.text.trimEnd()}\n\`\`\``;
  }
}

function rowsText(given: readonly Row[]): string {
  const width = Math.max(0, ...given.map(([word]) => word.length)) + 2;
  return given.map(([word, text]) => `${`${word}:`.padEnd(width)}${plain(text)}`).join('\n');
}

function plain(text: string): string {
  return text.replaceAll('`', '');
}

function indented(text: string): string {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `    ${line}`))
    .join('\n');
}

/** The last words of pages on what can hurt someone or be turned down. */
export const WHO_DECIDES = 'Rules help to plan. The adopted local code, the inspector, and licensed people decide.';

/** How a finding is answered. */
export function answer(code: string): Part {
  return paragraph(
    `To answer it, mend the plan; or accept it, with a reason, below the declaration it is found at: \`accept ${code} "reason"\`.`,
  );
}
