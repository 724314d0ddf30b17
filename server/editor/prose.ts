// Help and working as text for an editor: markdown where it takes that, plain text where it does not.
import type { MarkupContent } from 'vscode-languageserver-types';

export type Block =
  | { readonly kind: 'title'; readonly name: string; readonly rest?: string }
  | { readonly kind: 'words'; readonly text: string }
  /** Lines that stand as they are: working, examples, the text of a declaration. */
  | { readonly kind: 'lines'; readonly lines: readonly string[]; readonly language?: 'screed' };

export function title(name: string, rest?: string): Block {
  return rest === undefined || rest === '' ? { kind: 'title', name } : { kind: 'title', name, rest };
}

export function words(text: string): Block {
  return { kind: 'words', text };
}

export function asIs(lines: readonly string[], language?: 'screed'): Block {
  return language === undefined ? { kind: 'lines', lines } : { kind: 'lines', lines, language };
}

export function markup(blocks: readonly Block[], markdown: boolean): MarkupContent {
  const filled = blocks.filter((block) => block.kind !== 'lines' || block.lines.length > 0);
  return markdown
    ? { kind: 'markdown', value: filled.map(asMarkdown).join('\n\n') }
    : { kind: 'plaintext', value: filled.map(asPlain).join('\n\n') };
}

function asMarkdown(block: Block): string {
  switch (block.kind) {
    case 'title':
      return `**${escaped(block.name)}**${block.rest === undefined ? '' : ` ${escaped(block.rest)}`}`;
    case 'words':
      return escaped(block.text);
    case 'lines':
      return `\`\`\`${block.language ?? 'text'}\n${block.lines.join('\n').replaceAll('```', "'''")}\n\`\`\``;
  }
}

function asPlain(block: Block): string {
  switch (block.kind) {
    case 'title':
      return block.rest === undefined ? block.name : `${block.name} ${block.rest}`;
    case 'words':
      return block.text;
    case 'lines':
      return block.lines.map((line) => `  ${line}`).join('\n');
  }
}

/** What markdown would take for marks: `*`, `_` and the like; a `#` only where a heading could begin. */
function escaped(text: string): string {
  return text.replace(/[\\`*_[\]<>|~]/g, '\\$&').replace(/^(\s*)([#+-])/gm, '$1\\$2');
}
