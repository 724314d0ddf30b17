// The facts of things: the only computed values that expressions and conditions may use, made from what is given.
import type { Quantity } from '#kit/quantity';
import { levelFacts } from './facts/level.ts';
import { deckFacts, foundationFacts, openingFacts, roofFacts, tradeFacts, trenchFacts } from './facts/others.ts';
import { roomFacts } from './facts/room.ts';
import { stairFacts } from './facts/stair.ts';
import type { Element } from './model.ts';

export interface Facts {
  readonly [fact: string]: Quantity | undefined;
}

const kept = new WeakMap<Element, Facts>();

export function factsOf(element: Element): Facts {
  let facts = kept.get(element);
  if (facts === undefined) kept.set(element, (facts = computed(element)));
  return facts;
}

function computed(element: Element): Facts {
  switch (element.kind) {
    case 'room':
      return roomFacts(element);
    case 'level':
      return levelFacts(element);
    case 'window':
    case 'door':
      return openingFacts(element);
    case 'foundation':
      return foundationFacts(element);
    case 'roof':
      return roofFacts(element);
    case 'deck':
      return deckFacts(element);
    case 'stair':
      return stairFacts(element);
    case 'trench':
      return trenchFacts(element);
    case 'trade':
      return tradeFacts(element);
    default:
      return {};
  }
}
