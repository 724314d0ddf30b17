// Names that stand where several kinds of things may be meant, and that name none of them.
import { nearest } from '#kit/did-you-mean';
import { differing } from '#kit/differing';
import { type Finding, finding } from '#kit/finding';
import type { At, Element, NamePlace } from '#model/model';
import { unknownName } from '#model/problems';
import type { Model } from '#model/resolve';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { ALL_VISITS } from '../../validity.ts';

/** What may be named where: the words for it, and the kinds it may be. */
const STEPS = ['task', 'inspection', 'milestone', 'delivery', 'phase', 'state'];
const GOODS = ['material', 'item', 'assembly', 'window', 'door', 'fixture'];
const PLACES = ['level', 'room', 'trench', 'dry-well', 'foundation', 'crawl', 'roof', 'deck', 'panels', 'wall', 'site'];

const THINGS = [...PLACES, ...GOODS];
const WORKS = ['work'];
const DOINGS = [...STEPS, ...WORKS];
const PRICED = [...GOODS, ...WORKS];
const ANYTHING = [...DOINGS, ...THINGS];
const PAID_FOR = [...DOINGS, ...GOODS, 'bid', 'change', 'allowance', 'trade'];

interface Naming {
  readonly what: string;
  readonly kinds: readonly string[];
  readonly names: readonly At<NamePlace>[];
}

export const unknown: Check = {
  code: 'names/unknown',
  about:
    'A name must mean something: a step, a kind of work, goods, or a thing of the house, as its place asks. What a misspelled name should have reached is not counted.',
  wrong: `task walls does frame-walls takes 2d
inspection frame-check of wals
`,
  right: `task walls does frame-walls takes 2d
inspection frame-check of walls
`,
  reads: ({ model }) => [model.names.first, model.library, ...LOOKED_AT.map((kind) => model.list(kind))],
  run: ({ model }) => {
    const findings: Finding[] = [];
    for (const kind of LOOKED_AT)
      for (const element of model.list(kind))
        for (const { what, kinds, names } of namings(element))
          for (const { value, place } of names)
            if (place.slot === element.slot && !isKnown(value.name, kinds, model))
              findings.push(told(value.name, what, kinds, place, model));
    return findings;
  },
};

const LOOKED_AT = [
  'task',
  'inspection',
  'milestone',
  'delivery',
  'bid',
  'allowance',
  'alternate',
  'paid',
  'invoice',
  'rule',
  'state',
] as const;

type Named = { readonly value: readonly At<NamePlace>[] } | undefined;

/** All visits together have no name of their own. */
function renewing(line: Named): Named {
  return line === undefined ? undefined : { value: line.value.filter(({ value }) => value.name !== ALL_VISITS) };
}

const NONE: readonly Naming[] = [];

const namings = keptFor((element: Element): readonly Naming[] => {
  const found: Naming[] = [];
  const look = (what: string, kinds: readonly string[], line: Named): void => {
    if (line !== undefined) found.push({ what, kinds, names: line.value });
  };
  switch (element.kind) {
    case 'task':
      look('thing of the house', THINGS, element.given.of);
      look('thing of the house', THINGS, element.given.except);
      break;
    case 'inspection':
      look('step or kind of work', DOINGS, element.given.of);
      look('step or kind of work', DOINGS, element.given.before);
      break;
    case 'milestone':
      look('step, kind of work or goods', ANYTHING, element.given.except);
      break;
    case 'delivery':
      look('material, window, door or fixture', GOODS, element.given.brings);
      break;
    case 'bid':
      look('kind of work or step', DOINGS, element.given.includes);
      look('kind of work or step', DOINGS, element.given['leaves out']);
      break;
    case 'allowance':
      look('material, window, door or fixture', PRICED, element.given.for);
      break;
    case 'paid':
    case 'invoice':
      look('step, bid or change', PAID_FOR, element.given.for);
      break;
    case 'rule':
      look('kind of work, state or inspection', DOINGS, element.given.first);
      look('kind of work, state or inspection', DOINGS, element.given.then);
      look('kind of work, state or inspection', DOINGS, renewing(element.given['renewed by']));
      break;
    case 'hazard':
      look('kind of work, state or inspection', DOINGS, element.given.during);
      look('kind of work, state or inspection', DOINGS, element.given['met by']);
      break;
    case 'state':
      look('kind of work', WORKS, element.given['made by']);
      break;
    default:
  }
  return found.length === 0 ? NONE : found;
});

/** Answers to whether something bears a name, for the names that there are: by the kinds asked for, then by name. */
interface Answers {
  names: Model['names']['names'];
  readonly byKinds: Map<readonly string[], Map<string, boolean>>;
}
const answers = new WeakMap<Model['library'], Answers>();

function isKnown(name: string, kinds: readonly string[], model: Model): boolean {
  const { names } = model.names;
  let known = answers.get(model.library);
  if (known === undefined) answers.set(model.library, (known = { names, byKinds: new Map() }));
  if (known.names !== names) forget(known, names);
  let byName = known.byKinds.get(kinds);
  if (byName === undefined) known.byKinds.set(kinds, (byName = new Map()));
  let answer = byName.get(name);
  if (answer === undefined) byName.set(name, (answer = isNamed(name, kinds, model)));
  return answer;
}

/** Answers about names that came or went. */
function forget(known: Answers, names: Answers['names']): void {
  const { slots, also } = known.names;
  const { from, before, now } = differing(slots, names.slots);
  const changed = [...slots.slice(from, before), ...names.slots.slice(from, now)];
  if (changed.length > FEW || also.size + names.also.size > 0) known.byKinds.clear();
  for (const byName of known.byKinds.values()) for (const { name } of changed) byName.delete(name);
  known.names = names;
}

/** Where more names than this changed, or where goods have second names, all is asked again. */
const FEW = 16;

function isNamed(name: string, kinds: readonly string[], { names, library }: Model): boolean {
  if (kinds.some((kind) => names.first.has(`${kind}/${name}`) || library.first.has(`${kind}/${name}`))) return true;
  const second = names.also.get(name) ?? library.also.get(name);
  return second !== undefined && kinds.includes(second.kind);
}

function told(name: string, what: string, kinds: readonly string[], place: Finding['place'], { names, library }: Model): Finding {
  const known = [names, library].flatMap((table) =>
    [...table.first.values()].flatMap((slot) => (kinds.includes(slot.kind) ? [slot.name] : [])),
  );
  const near = nearest(name, known)[0];
  const made = finding(unknownName, place, name, what, near);
  return near === undefined ? made : { ...made, fixes: [{ kind: 'replace', title: `Write "${near}"`, place, text: near }] };
}
