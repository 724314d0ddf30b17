// A line as it comes to be, letter by letter: every prefix of lines from the samples is read, shaped and formatted, and
// gives the same whether it was read afresh or from the tree of a moment before.
import { expect, test } from 'vitest';
import { format } from '#grammar/format';
import { parse, statementCache } from '#grammar/parse';
import type { FileTree } from '#grammar/tree';
import { corpus } from '#tests/support/corpus';
import { remarksOf } from '#tests/support/remarks';

/** Blocks of the samples that show most of what lines can look like. */
const blocks = corpus()
  .filter(({ name }) => name.startsWith('samples/') && !name.includes('/broken/'))
  .flatMap(({ text }) => text.split(/\n\n+/))
  .filter((block) => !block.startsWith('#') && block.length > 60);

/** Every fifth block is enough; from each, its longest line is typed. */
const typed = blocks
  .filter((_, index) => index % 5 === 0)
  .map((block) => {
    const lines = block.split('\n');
    const longest = lines.reduce((best, line, index) => (line.length > lines[best]!.length ? index : best), 0);
    return { before: lines.slice(0, longest).join('\n'), line: lines[longest]!, after: lines.slice(longest + 1).join('\n') };
  });

const around = (before: string, line: string, after: string): string =>
  [before, line, after].filter((part, index) => index === 1 || part !== '').join('\n');

test('there is something to type', () => {
  expect(typed.length).toBeGreaterThan(10);
});

test.each(typed)('$line', ({ before, line, after }) => {
  const cache = statementCache();
  let previous: FileTree | undefined;
  for (let to = 0; to <= line.length; to += 1) {
    const text = around(before, line.slice(0, to), after);
    const tree: FileTree = parse(text, previous === undefined ? { cache } : { cache, previous });
    expect(summary(tree)).toBe(summary(parse(text)));
    for (const said of remarksOf(text)) expect(said).not.toMatch(/undefined|\[object/);
    const { text: made } = format(tree);
    expect(format(parse(made)).text).toBe(made);
    previous = tree;
  }
  expect(remarksOf(around(before, line, after))).toEqual([]);
});

test('letters that go again leave no trace', () => {
  const [{ before, line, after }] = typed as [(typeof typed)[number]];
  const cache = statementCache();
  let tree = parse(around(before, '', after), { cache });
  const empty = summary(tree);
  for (let to = 0; to <= line.length; to += 1) tree = parse(around(before, line.slice(0, to), after), { cache, previous: tree });
  for (let to = line.length; to >= 0; to -= 1) tree = parse(around(before, line.slice(0, to), after), { cache, previous: tree });
  expect(summary(tree)).toBe(empty);
});

/** A tree without its identity. */
function summary({ lines, nodes, nodeLines, problems }: FileTree): string {
  return JSON.stringify([lines, nodes.map((node) => [node.height, node.offsets]), [...nodeLines], problems]);
}
