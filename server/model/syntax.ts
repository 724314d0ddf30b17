// What could not be read on the lines of a file, as findings with a place in a declaration.
import { syntaxSorts } from '#grammar/parser/messages';
import type { Declaration } from '#grammar/shape';
import type { Node, Problem } from '#grammar/tree';
import { type Finding, type FindingSort, finding } from '#kit/finding';
import type { Slot } from '#kit/place';

/** One finding a problem of a declaration's lines, in the order of the text. */
export function syntaxFindings(slot: Slot, node: Node, declaration: Declaration | undefined): readonly Finding[] {
  return ofNode(slot, node, [], declaration);
}

/** Declarations that stand below another gather their own. */
function ofNode(slot: Slot, node: Node, path: readonly number[], declaration: Declaration | undefined): readonly Finding[] {
  const { statement } = node.line;
  const problems: Problem[] = [...statement.problems];
  for (const item of statement.items)
    if (item.kind === 'wrong' && declaration?.asIs.has(item) !== true) problems.push(item.problem);
  const own = problems.map((problem) => problemFinding(slot, path, problem));
  const nested = path.length === 0 ? declaration?.kind.declares : undefined;
  return [
    ...own,
    ...node.children.flatMap((child, index) => {
      const first = child.line.statement.items[0];
      return first?.kind === 'word' && nested?.includes(first.word) ? [] : ofNode(slot, child, [...path, index], declaration);
    }),
  ];
}

/** One problem of the grammar as a finding, with its rewrite as a fix. */
export function problemFinding(slot: Slot, path: readonly number[], problem: Problem): Finding {
  const place = { slot, spot: { path, from: problem.from, to: problem.to } };
  const sort = syntaxSorts.get(problem.code) as unknown as FindingSort<readonly unknown[]>;
  const made = finding(sort, place, ...problem.details);
  if (problem.rewrite === undefined) return made;
  return { ...made, fixes: [{ kind: 'replace', title: `Write ${problem.rewrite}`, place, text: problem.rewrite }] };
}
