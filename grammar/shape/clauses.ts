// Splits what stands on a line into clauses: a clause begins at a joining word, or at one of the row's own words at the
// start of a group (after a comma, or first on the line), and runs to the next.
import type { Item } from '../tree.ts';
import type { Properties } from '../vocabulary/types.ts';
import { joiningWords } from '../vocabulary/vocabulary.ts';
import { matchWords } from './cursor.ts';

export interface Clause {
  /** The property's words; undefined for what stands before any clause. */
  readonly key: string | undefined;
  /** Items of the clause's words. */
  readonly keyFrom: number;
  readonly keyTo: number;
  /** Items of its value, a comma before the next clause excluded. */
  readonly from: number;
  readonly to: number;
}

interface Word {
  readonly key: string;
  readonly words: readonly string[];
}
interface Words {
  readonly leading: readonly Word[];
  readonly trailing: readonly Word[];
}

const wordsOf = new WeakMap<Properties, Words>();

/** The words that open (or, for trailing ones, end) a clause of these rows, longest first. */
function clauseWords(rows: Properties): Words {
  let words = wordsOf.get(rows);
  if (words === undefined) {
    const all = Object.keys(rows)
      .map((key): Word => ({ key, words: key.toLowerCase().split(' ') }))
      .sort((a, b) => b.words.length - a.words.length);
    words = {
      leading: all.filter(({ key }) => rows[key]!.trailing !== true),
      trailing: all.filter(({ key }) => rows[key]!.trailing === true),
    };
    wordsOf.set(rows, words);
  }
  return words;
}

/** The key whose words begin at `index`, and how many items they take. */
export function keyAt(
  items: readonly Item[],
  index: number,
  end: number,
  rows: Properties,
  groupStart: boolean,
): { key: string; taken: number } | undefined {
  for (const { key, words } of clauseWords(rows).leading) {
    if (!groupStart && words.length === 1 && !joiningWords.has(words[0]!)) continue;
    const taken = matchWords(items, index, end, words);
    if (taken > 0) return { key, taken };
  }
  return undefined;
}

export function splitClauses(items: readonly Item[], from: number, end: number, rows: Properties): readonly Clause[] {
  const clauses: Clause[] = [];
  let open: { key: string | undefined; keyFrom: number; keyTo: number; from: number } = {
    key: undefined,
    keyFrom: from,
    keyTo: from,
    from,
  };
  const close = (to: number): void => {
    const last = to > open.from && items[to - 1]?.kind === 'comma' ? to - 1 : to;
    if (open.key !== undefined || last > open.from) clauses.push({ ...open, to: last });
  };
  let index = from;
  while (index < end) {
    const groupStart = index === from || items[index - 1]?.kind === 'comma';
    if (groupStart) {
      const group = groupEnd(items, index, end);
      const trailing = trailingKey(items, index, group, rows);
      if (trailing !== undefined) {
        close(index);
        clauses.push({
          key: trailing.key,
          keyFrom: group - trailing.taken,
          keyTo: group,
          from: index,
          to: group - trailing.taken,
        });
        const next = items[group]?.kind === 'comma' ? group + 1 : group;
        open = { key: undefined, keyFrom: next, keyTo: next, from: next };
        index = next;
        continue;
      }
    }
    // A row's own word also begins a clause straight after a value or a text: size 2x6 actual 1 1/2" x 5 1/2".
    const afterValue = items[index - 1]?.kind === 'value' || items[index - 1]?.kind === 'text';
    const found = items[index]?.kind === 'word' ? keyAt(items, index, end, rows, groupStart || afterValue) : undefined;
    if (found === undefined || (takesSteps(rows, open.key) && isPartOfStep(items, index))) {
      index += 1;
      continue;
    }
    close(index);
    index += found.taken;
    open = { key: found.key, keyFrom: index - found.taken, keyTo: index, from: index };
  }
  close(end);
  return clauses;
}

function takesSteps(rows: Properties, key: string | undefined): boolean {
  const check = key === undefined ? undefined : rows[key]?.takes.check;
  return check?.kind === 'list' && check.item.check.kind === 'step';
}

/** The `of` in `start of ducts` and `50% of framing` says which step is meant, and opens no clause. */
function isPartOfStep(items: readonly Item[], index: number): boolean {
  const [before, word] = [items[index - 1], items[index]];
  if (word?.kind !== 'word' || word.word !== 'of') return false;
  if (before?.kind === 'word') return before.word === 'start' || before.word === 'end';
  const literal = before?.kind === 'value' && before.expression.kind === 'literal' ? before.expression.literal : undefined;
  return literal?.kind === 'quantity' && literal.unit === '%';
}

function groupEnd(items: readonly Item[], from: number, end: number): number {
  let to = from;
  while (to < end && items[to]?.kind !== 'comma') to += 1;
  return to;
}

function trailingKey(
  items: readonly Item[],
  from: number,
  to: number,
  rows: Properties,
): { key: string; taken: number } | undefined {
  for (const { key, words } of clauseWords(rows).trailing) {
    const start = to - words.length;
    if (start > from && matchWords(items, start, to, words) === words.length) return { key, taken: words.length };
  }
  return undefined;
}
