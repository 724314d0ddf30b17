// What reading a text against the vocabulary gives: its declarations, nested ones too, and all there is to say about them.
import { parse } from '#grammar/parse';
import { syntaxSorts } from '#grammar/parser/messages';
import { type Declaration, findingOf, readDeclaration } from '#grammar/shape';
import type { Item, Node, Problem } from '#grammar/tree';
import { messageOf } from '#kit/finding';

const SLOT = { file: 'plan.screed', kind: '', name: '', again: 0 };

/** The declarations of a text, each before those that stand below it. */
export function declarationsOf(text: string): readonly Declaration[] {
  const all = (node: Node): readonly Declaration[] => {
    const read = readDeclaration(node);
    return read === undefined ? [] : [read, ...stepsBelow(node, read).flatMap(all)];
  };
  return parse(text).nodes.flatMap(all);
}

/** Remarks and problems as `code: sentence`; a first word that is no kind as `no kind: word`. */
export function remarksOf(text: string): readonly string[] {
  const tree = parse(text);
  const indentation = tree.problems.map(({ problem }) => saidOf(problem));
  return [...indentation, ...tree.nodes.flatMap(ofNode)];
}

/** The same with the text each is about. */
export function marksOf(text: string): readonly (readonly [code: string, about: string])[] {
  return parse(text).nodes.flatMap(function marks(node): readonly (readonly [string, string])[] {
    const read = readDeclaration(node);
    if (read === undefined) return [['no kind', node.line.statement.text]];
    const own = read.remarks.map(({ sort, spot }) => {
      const line = spot.path.reduce((at: Node, step) => at.children[step]!, node).line.statement.text;
      return [sort.code.replace('words/', ''), line.slice(spot.from, spot.to)] as const;
    });
    return [...own, ...stepsBelow(node, read).flatMap(marks)];
  });
}

function ofNode(node: Node): readonly string[] {
  const read = readDeclaration(node);
  if (read === undefined) return [`no kind: ${node.line.statement.text}`];
  const own = read.remarks.map((remark) => `${remark.sort.code}: ${messageOf(findingOf(SLOT, remark))}`);
  const steps = stepsBelow(node, read);
  return [...own, ...problemsBelow(node, read.asIs, new Set(steps)), ...steps.flatMap(ofNode)];
}

function problemsBelow(node: Node, asIs: ReadonlySet<Item>, without: ReadonlySet<Node>): readonly string[] {
  const { items, problems } = node.line.statement;
  const wrong = items.flatMap((item) => (item.kind === 'wrong' && !asIs.has(item) ? [item.problem] : []));
  const below = node.children.filter((child) => !without.has(child)).flatMap((child) => problemsBelow(child, asIs, without));
  return [...[...problems, ...wrong].map(saidOf), ...below];
}

function stepsBelow(node: Node, { kind }: Declaration): readonly Node[] {
  return node.children.filter(({ line }) => {
    const [first] = line.statement.items;
    return first?.kind === 'word' && kind.declares?.includes(first.word) === true;
  });
}

function saidOf({ code, details }: Problem): string {
  const say = syntaxSorts.get(code)?.say as unknown as ((...details: readonly unknown[]) => string) | undefined;
  return `${code}: ${say?.(...details) ?? ''}`;
}
