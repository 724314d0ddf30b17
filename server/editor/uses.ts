// Where names are used: every name in a declaration's lines that means something declared elsewhere, and what it means.
// Read from the record once a declaration; columns count from the first letter of their line, as those of places do.
import type { Declaration, GivenLine, GivenProperties } from '#grammar/shape';
import type { Expression, Node } from '#grammar/tree';
import type { Amount, Condition, GoodsNamed, Named, Pointed, StepNamed } from '#grammar/vocabulary/types';
import { kindsOf, vocabulary } from '#grammar/vocabulary/vocabulary';
import type { Slot, Spot } from '#kit/place';
import type { Declared } from '#model/file-names';
import { lookUp } from '#model/names';
import type { Model } from '#model/resolve';

export interface Use {
  /** A kind or space of names; 'any', 'value' (a `let` or a fact), 'code' of a finding. */
  readonly space: string;
  /** What is looked up; for `roof.main.area` the whole. */
  readonly name: string;
  /** Where the name alone stands: in `kitchen.floor-area` that of `kitchen`. */
  readonly spot: Spot;
  readonly fact?: string;
}

const kept = new WeakMap<Declaration, readonly Use[]>();

export function usesIn({ declaration, node }: Pick<Declared, 'declaration' | 'node'>): readonly Use[] {
  let uses = kept.get(declaration);
  if (uses === undefined) {
    const found: Use[] = [];
    if (declaration.takes !== undefined) gather(declaration.takes.value, declaration.takes.spot, node, found);
    if (declaration.kind.word === 'accept' && declaration.takes !== undefined)
      addCode(declaration.takes.value, declaration.takes.spot, found);
    gatherGiven(declaration.given, node, found);
    for (const entry of declaration.entries) gatherLine(entry, node, found);
    kept.set(declaration, (uses = found));
  }
  return uses;
}

/** The declaration that a use means; undefined where there is none of that name. */
export function meantBy(use: Use, user: Slot, { names, library }: Model): Slot | undefined {
  switch (use.space) {
    case 'any':
      return anyNamed(use.name, user, names, library);
    case 'value': {
      const parts = use.name.split('.');
      if (parts.length === 1) return lookUp('let', use.name, names, library);
      const owner = parts[parts.length - 2]!;
      for (const kind of parts.length > 2 ? [parts[0]!] : FACTUAL) {
        const slot = lookUp(kind, owner, names, library);
        if (slot !== undefined) return slot;
      }
      return undefined;
    }
    case 'code':
      return lookUp('rule', use.name, names, library) ?? lookUp('minimum', use.name, names, library);
    default:
      return lookUp(use.space, use.name, names, library);
  }
}

/** Kinds that have facts, in the order in which a bare `NAME.FACT` is looked for. */
const FACTUAL = ['room', 'level', 'roof', 'foundation', 'assembly', 'window', 'door', 'trench', 'deck', 'plan', 'trade'];
const STEPS_FIRST = ['step', 'work', 'state', 'goods'];
const THINGS = Object.keys(vocabulary).filter(
  (kind) => vocabulary[kind as keyof typeof vocabulary].name !== 'none' && !STEPS_FIRST.flatMap(kindsOf).includes(kind),
);
/** What a task is `of` or `except` is a thing of the house; elsewhere such names are steps or works first. */
const THINGS_FIRST: ReadonlySet<string> = new Set(['task', 'accept', 'measure']);

function anyNamed(name: string, user: Slot, names: Model['names'], library: Model['library']): Slot | undefined {
  // A measured side is `main.north`: the thing is before the dot.
  const dot = name.indexOf('.');
  const wanted = dot < 0 ? name : name.slice(0, dot);
  const order = THINGS_FIRST.has(user.kind) ? [...THINGS, ...STEPS_FIRST] : [...STEPS_FIRST, ...THINGS];
  for (const space of order) {
    const slot = lookUp(space, wanted, names, library);
    if (slot !== undefined) return slot;
  }
  return undefined;
}

function gatherGiven(given: GivenProperties, node: Node, found: Use[]): void {
  for (const [word, lines] of Object.entries(given)) {
    for (const line of Array.isArray(lines) ? (lines as readonly GivenLine[]) : [lines as GivenLine]) {
      if (line === undefined) continue;
      if (word === 'accept') addCode(line.value, line.spot, found);
      gatherLine(line, node, found);
    }
  }
}

function gatherLine(line: GivenLine, node: Node, found: Use[]): void {
  gather(line.value, line.spot, node, found);
  gatherGiven(line.deeper, node, found);
}

function addCode(value: unknown, spot: Spot, found: Use[]): void {
  const code = (value as { code?: unknown } | undefined)?.code;
  if (typeof code !== 'string') return;
  const name = code.slice(code.lastIndexOf('/') + 1).toLowerCase();
  found.push({ space: 'code', name, spot: { path: spot.path, from: spot.from, to: spot.from + code.length } });
}

function gather(value: unknown, spot: Spot, node: Node, found: Use[]): void {
  if (typeof value !== 'object' || value === null) return;
  if (Array.isArray(value)) {
    for (const item of value) {
      if (typeof item !== 'object' || item === null) continue;
      if ('spot' in item && 'value' in item) gather(item.value, item.spot as Spot, node, found);
      else gather(item, spot, node, found);
    }
    return;
  }
  switch ((value as { kind?: string }).kind) {
    case 'named':
    case 'pointed': {
      const named = value as Named | Pointed;
      found.push({ space: named.of, name: named.name, spot: named.spot });
      return;
    }
    case 'any-name': {
      const named = value as { name: string; spot: Spot };
      found.push({ space: 'any', ...ownerPart(named.name, named.spot) });
      return;
    }
    case 'goods': {
      const goods = value as GoodsNamed;
      found.push({ space: goods.space, name: goods.name, spot: wordWithin(goods.name, goods.spot, node) });
      return;
    }
    case 'step': {
      const { step, lag } = value as StepNamed;
      found.push({ space: 'step', name: step.name, spot: step.spot });
      if (lag !== undefined) gather(lag, spot, node, found);
      return;
    }
    case 'condition': {
      const condition = value as Condition;
      if (!Object.hasOwn(vocabulary, condition.subject))
        found.push({ space: 'any', name: condition.subject, spot: subjectSpot(condition, node) });
      if (condition.amount !== undefined) gather(condition.amount, spot, node, found);
      return;
    }
    case 'amount': {
      const { expression, path } = value as Amount;
      gatherNames(expression, path, found);
      return;
    }
    default:
      for (const part of Object.values(value)) gather(part, spot, node, found);
  }
}

function gatherNames(expression: Expression, path: readonly number[], found: Use[]): void {
  switch (expression.kind) {
    case 'name': {
      const { name, from, to } = expression;
      const parts = name.split('.');
      const use = parts.length > 2 ? middlePart(parts, path, from) : ownerPart(name, { path, from, to });
      found.push({ space: 'value', ...use, name });
      return;
    }
    case 'operation':
      gatherNames(expression.left, path, found);
      gatherNames(expression.right, path, found);
      return;
    case 'call':
      for (const input of expression.inputs) gatherNames(input, path, found);
      return;
    case 'range':
      gatherNames(expression.low, path, found);
      gatherNames(expression.high, path, found);
      return;
    case 'literal':
      return;
  }
}

/** `kitchen.floor-area`: the name is what stands before the dot. */
function ownerPart(name: string, spot: Spot): Omit<Use, 'space'> {
  const dot = name.indexOf('.');
  if (dot < 0) return { name, spot };
  return { name, spot: { ...spot, to: spot.from + dot }, fact: name.slice(dot + 1) };
}

/** `roof.main.area`: the name is the middle. */
function middlePart(parts: readonly string[], path: readonly number[], from: number): Omit<Use, 'space' | 'name'> {
  const start = from + parts[0]!.length + 1;
  return { spot: { path, from: start, to: start + parts[1]!.length }, fact: parts.slice(2).join('.') };
}

function subjectSpot({ subject, spot }: Condition, node: Node): Spot {
  const item = nodeAt(node, spot.path)?.line.statement.items.find(
    (each) => each.kind === 'word' && each.from >= spot.from && (each.word === subject || each.word.startsWith(`${subject}.`)),
  );
  return item === undefined ? spot : { path: spot.path, from: item.from, to: item.from + subject.length };
}

/** Where goods' name stands among their sizes. */
function wordWithin(name: string, spot: Spot, node: Node): Spot {
  const item = nodeAt(node, spot.path)?.line.statement.items.find(
    (each) => each.kind === 'word' && each.word === name && each.from >= spot.from && each.to <= spot.to,
  );
  return item === undefined ? spot : { path: spot.path, from: item.from, to: item.to };
}

export function nodeAt(node: Node, path: readonly number[]): Node | undefined {
  return path.reduce<Node | undefined>((at, step) => at?.children[step], node);
}
