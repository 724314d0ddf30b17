// Every single link that a plan's text states, each with the text without it: a name after `after`, `also after`, `with` or
// `before`, a wait behind a name, the order of a phase, and what an inspection holds by the library's row of its name.

export interface Removal {
  readonly line: number;
  /** '"windows-here" in "after dry, windows-here"'. */
  readonly what: string;
  readonly text: string;
}

const ITEM = /[a-z][\w-]*(?:\s[+-]\s\d+\s?[a-z]+)?/;
const CLAUSE = new RegExp(
  String.raw`(?<before>[\s,]\s*)(?<word>also after|measured after|after|with|before)\s+(?<list>${ITEM.source}(?:,\s*${ITEM.source})*)`,
  'g',
);
/** Words that open a clause of their own after a comma. */
const OTHER = /^(?:note|call|lead|good|not|takes|by|costs|arrives|measured|after|also|before|with|materials)\b/;

/** `held` names what an inspection holds by the library, where its own line does not say. */
export function removals(text: string, held: (inspection: string) => readonly string[]): readonly Removal[] {
  const lines = text.split('\n');
  const found: Removal[] = [];
  const add = (line: number, what: string, now: string): void => {
    const changed = [...lines];
    changed[line] = now;
    found.push({ line, what, text: changed.join('\n') });
  };
  // Whose line it is: a property stands below its step.
  let name = '';
  lines.forEach((whole, line) => {
    // Texts in quotes and comments hold no links: blanks of the same length stand for them.
    const code = whole.replace(/"[^"]*"/g, (quoted) => ' '.repeat(quoted.length)).replace(/(^|\s)# .*$/, '');
    name = /^\s*(?:phase|task|inspection|milestone|delivery)\s+([\w-]+)/.exec(code)?.[1] ?? name;
    const order = code.indexOf(' in order');
    if (order >= 0 && code.startsWith('phase '))
      add(line, `"in order" of ${name}`, whole.slice(0, order) + whole.slice(order + ' in order'.length));
    for (const match of code.matchAll(CLAUSE)) {
      const { before, word, list } = match.groups as { before: string; word: string; list: string };
      const from = match.index + match[0].length - list.length;
      const items = [...list.matchAll(new RegExp(ITEM, 'g'))]
        .map((item) => ({ said: item[0], at: from + item.index }))
        .filter(({ said }, at, all) => !all.slice(0, at + 1).some((each) => each.said === said && OTHER.test(said)));
      const said = items.map((item) => item.said);
      for (const [at, item] of items.entries()) {
        const others = said.filter((_, other) => other !== at);
        const end = items[items.length - 1]!;
        const rest = whole.slice(end.at + end.said.length);
        const head = whole.slice(0, match.index);
        const clause = `${word} ${said.join(', ')}`;
        add(
          line,
          `"${item.said}" in "${clause}" of ${name}`,
          others.length === 0 ? head + rest : `${head}${before}${word} ${others.join(', ')}${rest}`,
        );
        const bare = item.said.replace(/\s[+-]\s.*$/, '');
        if (bare !== item.said)
          add(
            line,
            `the wait in "${clause}" of ${name}`,
            whole.slice(0, item.at) + bare + whole.slice(item.at + item.said.length),
          );
      }
    }
    const visit = /^\s*inspection\s+([\w-]+)/.exec(code)?.[1];
    if (visit === undefined || /\sbefore\s/.test(code)) return;
    const holds = held(visit);
    // A list of its own takes the place of the library's; the last step of all stands in where nothing else is held.
    for (const each of holds) {
      const others = holds.filter((other) => other !== each);
      add(
        line,
        `that ${visit} holds ${each}`,
        whole.replace(visit, `${visit} before ${others.length === 0 ? 'move-in' : others.join(', ')}`),
      );
    }
  });
  return found;
}
