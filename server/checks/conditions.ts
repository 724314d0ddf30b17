// Whether a condition of a library row holds of a plan, or of one thing in it. A fact that nobody gave is not known, and
// what is not known does not hold.
import { NONE } from '#kit/differing';
import type { Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Element, FollowedCondition, Rule } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import { keptFor } from './kept.ts';

/**
 * Whether a rule is about this plan at all: every `when` holds and no `unless` does. What is not known keeps it firing: an
 * `unless` holds only where something is known, and of all of which it is known.
 */
export function firesIn(rule: Conditional, model: Model): boolean {
  const { when, unless } = rule.given;
  return when.every(({ value }) => known(value, holds, model)) && !unless.some(({ value }) => known(value, excuses, model));
}

type Conditional = { readonly given: Pick<Rule['given'], 'when' | 'unless'> };

/** Answers about a list of things, kept while it is the same. */
const kept = new WeakMap<readonly Element[], Map<FollowedCondition, { readonly how: unknown; readonly holds: boolean }>>();

function known(
  condition: FollowedCondition,
  how: (condition: FollowedCondition, model: Model) => boolean,
  model: Model,
): boolean {
  if (condition.subject === 'plan') return how(condition, model);
  const things = model.list(condition.subject as KindWord) as readonly Element[];
  let answers = kept.get(things);
  if (answers === undefined) kept.set(things, (answers = new Map()));
  const answer = answers.get(condition);
  if (answer !== undefined && answer.how === how) return answer.holds;
  const made = how(condition, model);
  answers.set(condition, { how, holds: made });
  return made;
}

/** How a fact of a thing is found: from the model alone, unless somebody knows more. */
export type ValueOf = (thing: Element, fact: string) => Quantity | undefined;

/** `subject` is the thing looked at, where the row looks at things one by one. */
export function holds(condition: FollowedCondition, model: Model, subject?: Element, find: ValueOf = quantityOf): boolean {
  // Asked of every room by every row: nothing is made for it.
  if (subject !== undefined && isAboutOne(condition, subject)) return holdsOf(condition, subject, find);
  const things = thingsOf(condition, model);
  switch (condition.quantifier) {
    case 'every':
      return things.length > 0 && things.every((thing) => holdsOf(condition, thing, find));
    case 'no':
      return !things.some((thing) => holdsOf(condition, thing, find));
    default:
      return things.some((thing) => holdsOf(condition, thing, find));
  }
}

/** One deep trench among shallow ones keeps its rule. */
function excuses(condition: FollowedCondition, model: Model): boolean {
  if (condition.quantifier !== 'one') return holds(condition, model);
  const known = thingsOf(condition, model).filter((thing) => isKnown(condition, thing));
  return known.length > 0 && known.every((thing) => holdsOf(condition, thing, quantityOf));
}

function isKnown({ fact, test }: FollowedCondition, thing: Element): boolean {
  if (test === 'exists' || test === 'has' || fact === undefined) return true;
  return quantityOf(thing, fact) !== undefined || given(thing, fact).length > 0;
}

function isAboutOne({ quantifier, subject }: FollowedCondition, thing: Element): boolean {
  return quantifier === 'one' && subject === thing.kind;
}

function thingsOf(condition: FollowedCondition, model: Model): readonly Element[] {
  if (condition.subject === 'plan') return model.plan === undefined ? [] : [model.plan];
  return model.list(condition.subject as KindWord);
}

function holdsOf(condition: FollowedCondition, thing: Element, find: ValueOf): boolean {
  const { test, fact, words, amount } = condition;
  if (test === 'exists') return fact === undefined || isGiven(thing, fact);
  if (test === 'has') {
    const property = words[0] ?? '';
    if (words.length < 2) return isGiven(thing, property);
    const there = given(thing, property);
    // Not with the rest of the words in a list of their own: every thing of a house is asked.
    return words.some((word, at) => at > 0 && there.includes(word));
  }
  if (test === 'is' || test === 'is-not') {
    const there = given(thing, fact ?? '');
    const found = words.some((word) => there.includes(word));
    return there.length > 0 && (test === 'is' ? found : !found);
  }
  const value = find(thing, fact ?? '');
  if (value === undefined || amount === undefined || value.dimension !== amount.dimension) return false;
  switch (test) {
    case 'at-least':
      return value.value >= amount.value;
    case 'at-most':
      return value.value <= amount.value;
    case 'over':
      return value.value > amount.value;
    case 'under':
      return value.value < amount.value;
  }
}

/** A fact, or a quantity given under a property. */
export function quantityOf(thing: Element, fact: string): Quantity | undefined {
  const known = factsOf(thing)[fact];
  if (known !== undefined) return known;
  const line = (thing.given as Record<string, { readonly value?: unknown } | undefined>)[fact];
  const value = line?.value;
  return typeof value === 'object' && value !== null && 'dimension' in value && 'form' in value ? (value as Quantity) : undefined;
}

/** Whether a line of this property stands there, whatever it says. */
function isGiven(thing: Element, property: string): boolean {
  const line = (thing.given as Record<string, unknown>)[property];
  return Array.isArray(line) ? line.length > 0 : line !== undefined;
}

/** Every word and name given under a property, lower case. */
function given(thing: Element, property: string): readonly string[] {
  const value = (thing.given as Record<string, unknown>)[property];
  if (value === undefined) return NONE;
  if (typeof value === 'object' && value !== null) return wordsIn(value);
  const words: string[] = [];
  gather(value, words, 0);
  return words;
}

const wordsIn = keptFor((value: object): readonly string[] => {
  const words: string[] = [];
  gather(value, words, 0);
  return words;
});

/** Lists within lists within lines: a finish is a list of groups of layers. */
const DEEPEST = 12;

function gather(value: unknown, words: string[], depth: number): void {
  if (typeof value === 'string') words.push(value.toLowerCase());
  else if (value === true) words.push('yes');
  else if (Array.isArray(value)) for (const each of value) gather(each, words, depth + 1);
  else if (typeof value === 'object' && value !== null && depth < DEEPEST) {
    const named = value as { readonly name?: unknown; readonly value?: unknown };
    if (typeof named.name === 'string') words.push(named.name);
    else if ('value' in named && typeof named.value !== 'number') gather(named.value, words, depth + 1);
    else if (!('form' in value) && !('place' in value)) for (const part of Object.values(value)) gather(part, words, depth + 1);
  }
}
