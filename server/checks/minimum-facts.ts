// DOOR: the facts that only the least values of a model code ask for, by the kind of thing they are of. A fact stands in the
// file of its subject, under `own` where the thing and the plan's settings tell it, under `beside` where those next to it do,
// under `around` where others must be looked at too. Undefined is what nobody gave.
import { NONE } from '#kit/differing';
import type { Quantity } from '#kit/quantity';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import { quantityOf } from './conditions.ts';
import { keptFor } from './kept.ts';
import { roomsOn } from './level-rooms.ts';
import { airOfPlan, airOfRoom } from './minimum-facts/air.ts';
import { alarmsOfLevel, alarmsOfPlan, alarmsOfRoom } from './minimum-facts/alarms.ts';
import { bathOfRoom } from './minimum-facts/bath.ts';
import { borrowedByRoom } from './minimum-facts/borrowed.ts';
import { drainsOfPlan, drainsOfRoom } from './minimum-facts/drains.ts';
import { crawlsUnder, energyOfLevel } from './minimum-facts/energy.ts';
import { exitOfPlan, fallsOfDeck, fallsOfRoom, type Way, waysOutOfLevel, waysOutOfRoom } from './minimum-facts/escape.ts';
import { factsOfCrawl, factsOfDryWell, factsOfFoundation, factsOfSite, factsOfTrench } from './minimum-facts/ground.ts';
import { hotWaterOfPlan } from './minimum-facts/hot-water.ts';
import { lightOfRoom } from './minimum-facts/light.ts';
import { roomsInside } from './minimum-facts/lived-in.ts';
import { roomsBeside } from './minimum-facts/neighbours.ts';
import { powerOfLevel, powerOfPlan, powerOfRoom } from './minimum-facts/power.ts';
import { factsOfRoof } from './minimum-facts/roof.ts';
import { sizesOfRoom } from './minimum-facts/rooms.ts';
import { factsOfStair } from './minimum-facts/stairs.ts';
import type { FactTable } from './minimum-facts/tables.ts';

const TABLES: { readonly [kind: string]: readonly FactTable<never>[] } = {
  room: [sizesOfRoom, lightOfRoom, borrowedByRoom, airOfRoom, alarmsOfRoom, fallsOfRoom, bathOfRoom, drainsOfRoom, powerOfRoom],
  level: [energyOfLevel, alarmsOfLevel, powerOfLevel],
  foundation: [factsOfFoundation],
  crawl: [factsOfCrawl],
  roof: [factsOfRoof],
  deck: [fallsOfDeck],
  stair: [factsOfStair],
  trench: [factsOfTrench],
  'dry-well': [factsOfDryWell],
  site: [factsOfSite],
  plan: [airOfPlan, alarmsOfPlan, drainsOfPlan, exitOfPlan, hotWaterOfPlan, powerOfPlan],
};

/** A fact of a thing, or a value that it gives. */
export function factOf(thing: Element, fact: string, model: Model): Quantity | undefined {
  if (thing !== model.plan) return found(thing, fact, model);
  // Rows of every room ask the same of the whole plan.
  const facts = planFacts(model);
  if (!facts.has(fact)) facts.set(fact, found(thing, fact, model));
  return facts.get(fact);
}

const planFacts = keptFor((_: Model) => new Map<string, Quantity | undefined>());

function found(thing: Element, fact: string, model: Model): Quantity | undefined {
  const known = quantityOf(thing, fact);
  if (known !== undefined) return known;
  for (const { own, beside, around } of TABLES[thing.kind] ?? []) {
    const find = own?.[fact] ?? beside?.[fact] ?? around?.[fact];
    if (find !== undefined) return find(thing as never, model);
  }
  return undefined;
}

/** The word of the line that tells a fact. */
export function lineOfFact(kind: string, fact: string): string {
  for (const { lines } of TABLES[kind] ?? []) {
    const line = lines?.[fact];
    if (line !== undefined) return line;
  }
  return fact;
}

/** How far one must look to tell a fact: at the thing itself, at those beside it too, or anywhere. */
export type Reach = 'own' | 'beside' | 'around';

export function reachOf(kind: string, fact: string): Reach {
  if (kind === 'plan') return 'around';
  for (const reach of ['around', 'beside'] as const)
    if (TABLES[kind]?.some((table) => table[reach]?.[fact] !== undefined)) return reach;
  return 'own';
}

/** Those whose facts a thing's own may hang on, in the same order while they are the same. */
export function thingsBeside(thing: Element, model: Model): readonly Element[] {
  if (thing.kind === 'room') return roomsBeside(thing, model);
  if (thing.kind === 'foundation' || thing.kind === 'crawl') return roomsInside(thing, model);
  return thing.kind === 'level' ? [...roomsOn(thing, model), ...crawlsUnder(thing, model)] : NONE;
}

/** The openings of which one must meet all rows of a word; `undefined` for words that no kind has. */
export function waysOf(thing: Element, together: string, model: Model): readonly Way[] | undefined {
  if (together !== 'escape') return undefined;
  if (thing.kind === 'room') return waysOutOfRoom(thing, model);
  return thing.kind === 'level' ? waysOutOfLevel(thing, model) : undefined;
}
