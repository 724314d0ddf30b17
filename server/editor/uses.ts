// Where names are used: every name in a declaration's lines that means something declared elsewhere, and what it means.
// Read from the record once a declaration; columns count from the first letter of their line, as those of places do.
import type { Declaration, GivenLine, GivenProperties } from '#grammar/shape';
import type { Expression, Node } from '#grammar/tree';
import type { Amount, Condition, GoodsNamed, Named, Pointed, StepNamed } from '#grammar/vocabulary/types';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import type { Slot, Spot } from '#kit/place';
import type { Declared } from '#model/declared';
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
  /** The property's word that it stands behind; a kind's own word for the value after a name. */
  readonly property: string;
}

const kept = new WeakMap<Declaration, readonly Use[]>();

export function usesIn({ declaration, node }: Pick<Declared, 'declaration' | 'node'>): readonly Use[] {
  let uses = kept.get(declaration);
  if (uses === undefined) {
    const { word } = declaration.kind;
    const at: Gathering = { node, property: word, found: [] };
    if (declaration.takes !== undefined) gather(declaration.takes.value, at);
    if (word === 'accept' && declaration.takes !== undefined) addCode(declaration.takes.value, declaration.takes.spot, at);
    gatherGiven(declaration.given, at);
    for (const entry of declaration.entries) gatherLine(entry, at);
    kept.set(declaration, (uses = at.found));
  }
  return uses;
}

interface Gathering {
  readonly node: Node;
  readonly property: string;
  readonly found: Use[];
}

/** The declaration that a use means; undefined where there is none of that name. */
export function meantBy(use: Use, user: Slot, { names, library }: Model): Slot | undefined {
  switch (use.space) {
    case 'any':
      return anyNamed(use, user, names, library);
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
      return (
        lookUp('rule', use.name, names, library) ??
        lookUp('minimum', use.name, names, library) ??
        lookUp('need', use.name, names, library) ??
        lookUp('hazard', use.name, names, library)
      );
    default:
      return lookUp(use.space, use.name, names, library);
  }
}

/** Kinds that have facts, in the order in which a bare `NAME.FACT` is looked for. */
const FACTUAL = ['room', 'level', 'roof', 'foundation', 'assembly', 'window', 'door', 'trench', 'deck', 'stair', 'plan', 'trade'];
const NAMED = Object.keys(vocabulary).filter((kind) => vocabulary[kind as keyof typeof vocabulary].name !== 'none');
const THINGS = ['room', 'level', 'foundation', 'trench', 'dry-well', 'roof', 'deck', 'panels', 'crawl', 'wall'];

/** What a bare name usually means behind a word of a kind, first of all. */
export function spacesMeant(kind: string, property: string): readonly string[] {
  switch (kind) {
    case 'task':
      return [...THINGS, 'goods'];
    case 'inspection':
      return ['step', 'work'];
    case 'rule':
    case 'need':
    case 'hazard':
      return ['work', 'state', 'step'];
    case 'milestone':
      return ['goods', 'step'];
    case 'delivery':
    case 'allowance':
    case 'alternate':
      return ['goods'];
    case 'bid':
      return ['work', 'step'];
    case 'paid':
    case 'invoice':
      return property === 'for' ? ['step', 'change', 'bid'] : ['firm', 'supplier', 'trade'];
    case 'change':
      return ['firm', 'trade'];
    case 'measure':
      return ['level', 'room'];
    case 'work':
      return property === 'hides' ? ['work', 'step'] : ['goods'];
    default:
      return [...THINGS, 'step', 'goods', 'work'];
  }
}

function anyNamed({ name, property }: Use, user: Slot, names: Model['names'], library: Model['library']): Slot | undefined {
  // A measured side is `main.north`: the thing is before the dot.
  const dot = name.indexOf('.');
  const wanted = dot < 0 ? name : name.slice(0, dot);
  for (const space of [...spacesMeant(user.kind, property), ...NAMED]) {
    const slot = lookUp(space, wanted, names, library);
    if (slot !== undefined) return slot;
  }
  return undefined;
}

/** Words that are no names of anything declared: second names, and words for packages. */
const NO_NAMES: ReadonlySet<string> = new Set(['also', 'package']);

function gatherGiven(given: GivenProperties, at: Gathering): void {
  for (const [word, lines] of Object.entries(given)) {
    if (NO_NAMES.has(word)) continue;
    for (const line of Array.isArray(lines) ? (lines as readonly GivenLine[]) : [lines as GivenLine]) {
      if (line === undefined) continue;
      if (word === 'accept') addCode(line.value, line.spot, { ...at, property: word });
      gatherLine(line, { ...at, property: word });
    }
  }
}

function gatherLine(line: GivenLine, at: Gathering): void {
  gather(line.value, at);
  gatherGiven(line.deeper, at);
}

function addCode(value: unknown, spot: Spot, { property, found }: Gathering): void {
  const code = (value as { code?: unknown } | undefined)?.code;
  if (typeof code !== 'string') return;
  const name = code.slice(code.lastIndexOf('/') + 1).toLowerCase();
  found.push({ space: 'code', name, property, spot: { path: spot.path, from: spot.from, to: spot.from + code.length } });
}

function gather(value: unknown, at: Gathering): void {
  if (typeof value !== 'object' || value === null) return;
  if (Array.isArray(value)) {
    for (const item of value)
      gather(typeof item === 'object' && item !== null && 'spot' in item && 'value' in item ? item.value : item, at);
    return;
  }
  const { property, found, node } = at;
  switch ((value as { kind?: string }).kind) {
    case 'named':
    case 'pointed': {
      const { of, name, spot } = value as Named | Pointed;
      found.push({ space: of, name, spot, property });
      return;
    }
    case 'any-name': {
      const { name, spot } = value as { name: string; spot: Spot };
      found.push({ space: 'any', ...ownerPart(name, spot), property });
      return;
    }
    case 'goods': {
      const { space, name, spot } = value as GoodsNamed;
      found.push({ space, name, spot: wordWithin(name, spot, node), property });
      return;
    }
    case 'step': {
      const { step, lag } = value as StepNamed;
      found.push({ space: 'step', name: step.name, spot: step.spot, property });
      if (lag !== undefined) gather(lag, at);
      return;
    }
    case 'condition': {
      const condition = value as Condition;
      if (!Object.hasOwn(vocabulary, condition.subject))
        found.push({ space: 'any', name: condition.subject, spot: subjectSpot(condition, node), property });
      if (condition.amount !== undefined) gather(condition.amount, at);
      return;
    }
    case 'amount': {
      const { expression, path } = value as Amount;
      gatherNames(expression, path, at);
      return;
    }
    default:
      for (const [name, part] of Object.entries(value)) if (!NO_NAMES.has(name)) gather(part, at);
  }
}

function gatherNames(expression: Expression, path: readonly number[], at: Gathering): void {
  switch (expression.kind) {
    case 'name': {
      const { name, from, to } = expression;
      const parts = name.split('.');
      const use = parts.length > 2 ? middlePart(parts, path, from) : ownerPart(name, { path, from, to });
      at.found.push({ space: 'value', ...use, name, property: at.property });
      return;
    }
    case 'operation':
      gatherNames(expression.left, path, at);
      gatherNames(expression.right, path, at);
      return;
    case 'call':
      for (const input of expression.inputs) gatherNames(input, path, at);
      return;
    case 'range':
      gatherNames(expression.low, path, at);
      gatherNames(expression.high, path, at);
      return;
    case 'literal':
      return;
  }
}

/** `kitchen.floor-area`: the name is what stands before the dot. */
function ownerPart(name: string, spot: Spot): Omit<Use, 'space' | 'property'> {
  const dot = name.indexOf('.');
  if (dot < 0) return { name, spot };
  return { name, spot: { ...spot, to: spot.from + dot }, fact: name.slice(dot + 1) };
}

/** `roof.main.area`: the name is the middle. */
function middlePart(parts: readonly string[], path: readonly number[], from: number): Omit<Use, 'space' | 'name' | 'property'> {
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
