// Reading our own source as text, for the guards in tidy.test.ts: the code without comments and quoted text, and what a
// file imports. A small scanner is enough; it knows comments, quotes, templates and regular expressions.

export interface Import {
  readonly specifier: string;
  readonly line: number;
  /** `import type`, `export type … from`: gone when the program runs. */
  readonly typeOnly: boolean;
}

/** Every static, dynamic and required import; one whose target is computed has the specifier '?'. */
export function importsOf(text: string): readonly Import[] {
  const code = blankOut(text, 'comments');
  // Positions that lie within quotes or templates, where 'import' is only a word.
  const bare = blankOut(text, 'comments and text');
  const found: Import[] = [];
  for (const match of code.matchAll(IMPORT)) {
    if (bare.startsWith(match[0].slice(0, 6), match.index)) {
      found.push({ specifier: match[2] ?? '?', line: lineOf(text, match.index), typeOnly: match[1] !== undefined });
    }
  }
  for (const match of code.matchAll(CALL)) {
    const keyword = match[1]!;
    if (bare.startsWith(keyword, match.index + match[0].indexOf(keyword))) {
      found.push({ specifier: match[2] ?? '?', line: lineOf(text, match.index), typeOnly: false });
    }
  }
  return found;
}

/** The same text, character for character, with comments (and the insides of quotes and templates) turned to blanks. */
export function blankOut(text: string, what: 'comments' | 'comments and text'): string {
  const out = text.split('');
  const blank = (from: number, to: number) => {
    for (let index = from; index < to; index++) if (out[index] !== '\n') out[index] = ' ';
  };
  // For each open template: how many braces are open since its `${`.
  const braces: number[] = [];
  let at = 0;
  const template = (from: number) => {
    const end = endOfTemplatePart(text, from);
    if (what !== 'comments') blank(from, end - (text.startsWith('${', end - 2) ? 2 : 1));
    if (text.startsWith('${', end - 2)) braces.push(0);
    at = end;
  };
  while (at < text.length) {
    const character = text[at]!;
    const comment = character === '/' ? endOfComment(text, at) : at;
    if (comment > at) {
      blank(at, comment);
      at = comment;
    } else if (character === '"' || character === "'") {
      const end = endOfQuote(text, at);
      if (what !== 'comments') blank(at + 1, end - 1);
      at = end;
    } else if (character === '`') {
      template(at + 1);
    } else if (character === '}' && braces.at(-1) === 0) {
      braces.pop();
      template(at + 1);
    } else if (character === '/' && beginsExpression(text, at)) {
      const end = endOfExpression(text, at);
      if (what !== 'comments') blank(at + 1, end - 1);
      at = end;
    } else {
      if (character === '{' && braces.length > 0) braces[braces.length - 1]!++;
      if (character === '}' && braces.length > 0) braces[braces.length - 1]!--;
      at++;
    }
  }
  return out.join('');
}

export function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}

const IMPORT = /(?<=^|[;\n]\s*)(?:import|export)\b(\s+type\b(?!\s*(?:,|from\b)))?(?:[^'"`;()=]*?\bfrom)?\s*['"]([^'"]*)['"]/g;
const CALL = /(?<![.\w$#])(import|require)\s*\(\s*(?:['"]([^'"]*)['"]\s*[,)])?/g;

function endOfComment(text: string, at: number): number {
  if (text.startsWith('//', at)) {
    const end = text.indexOf('\n', at);
    return end < 0 ? text.length : end;
  }
  if (!text.startsWith('/*', at)) return at;
  const end = text.indexOf('*/', at + 2);
  return end < 0 ? text.length : end + 2;
}

function endOfQuote(text: string, at: number): number {
  for (let end = at + 1; end < text.length; end++) {
    if (text[end] === '\\') end++;
    else if (text[end] === text[at] || text[end] === '\n') return end + 1;
  }
  return text.length;
}

/** Just after the closing backtick, or after the `${` that opens code. */
function endOfTemplatePart(text: string, from: number): number {
  for (let end = from; end < text.length; end++) {
    if (text[end] === '\\') end++;
    else if (text[end] === '`') return end + 1;
    else if (text.startsWith('${', end)) return end + 2;
  }
  return text.length;
}

/** A slash divides after a value and begins a regular expression anywhere else. */
function beginsExpression(text: string, at: number): boolean {
  const before = text.slice(Math.max(0, at - 40), at).trimEnd();
  return before === '' || /[(,=:[!&|?{};+\-*%~^<>]$/.test(before) || /\b(?:return|typeof|case|in|of|yield|await)$/.test(before);
}

function endOfExpression(text: string, at: number): number {
  let inSet = false;
  for (let end = at + 1; end < text.length; end++) {
    const character = text[end];
    if (character === '\\') end++;
    else if (character === '[') inSet = true;
    else if (character === ']') inSet = false;
    else if ((character === '/' && !inSet) || character === '\n') return end + 1;
  }
  return text.length;
}
