// Which later steps a rule of order is about, where its conditions look at things one by one: fill against a deep wall waits
// for the floor, fill against a shallow wall of the same house does not.
import type { Element, FollowedCondition, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import { firesIn } from './conditions.ts';
import { keptFor } from './kept.ts';
import type { Scopes } from './scopes.ts';

/** What is not known keeps a step concerned, as it keeps a rule firing. */
export function concerns(rule: Rule, later: number, scopes: Scopes, model: Model): boolean {
  const kinds = kindsOf(rule);
  if (kinds.length === 0) return true;
  return kinds.every((kind) => {
    const here = thingsAt(kind, later, scopes, model);
    return here === undefined || here.some((thing) => firesIn(rule, only(thing, kind, model)));
  });
}

/** Kinds of things that conditions of a rule look at one by one. */
const kindsOf = keptFor(({ given }: Rule): readonly string[] => [
  ...new Set([...given.when, ...given.unless].flatMap(({ value }) => (isOfThings(value) ? [value.subject] : []))),
]);

function isOfThings({ quantifier, subject }: FollowedCondition): boolean {
  return quantifier === 'one' && subject !== 'plan';
}

/** The things of a kind that a step works on; undefined where it names none of them. */
function thingsAt(kind: string, step: number, { bySteps }: Scopes, model: Model): readonly Element[] | undefined {
  const things: Element[] = [];
  for (const { elements } of bySteps[step]?.values() ?? []) {
    if (elements === undefined) return undefined;
    for (const slot of elements) {
      const thing = slot.kind === kind ? model.element(slot) : undefined;
      if (thing !== undefined) things.push(thing as Element);
    }
  }
  return things.length === 0 ? undefined : things;
}

/** The plan as if it held one thing of a kind. */
function only(thing: Element, kind: string, model: Model): Model {
  const alone = listOf(thing);
  return { ...model, list: ((word: KindWord) => (word === kind ? alone : model.list(word))) as Model['list'] };
}

/** One list for one thing: answers about it are kept by its list. */
const listOf = keptFor((thing: Element): readonly Element[] => [thing]);
