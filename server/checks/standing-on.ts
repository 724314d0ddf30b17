// Which levels the things of a house stand on, carry or cover: work on a thing is work on those, too. And which levels are
// buildings of their own.
import { alike, sameList } from '#kit/differing';
import type { Slot } from '#kit/place';
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

/** Levels, and the kinds of things that have something to do with one. */
const STANDING = ['level', 'room', 'foundation', 'crawl', 'roof', 'panels'] as const;
export type Standing = readonly ElementOf<(typeof STANDING)[number]>[];

export function thingsStanding(model: Model): readonly Standing[] {
  return STANDING.map((kind): Standing => model.list(kind));
}

/** Whether the same things stand on the same levels, whatever else is said of them. */
export function standAlike(before: readonly Standing[], now: readonly Standing[]): boolean {
  return alike(before, now, (olds, list) =>
    alike(olds, list, (old, each) => old.slot === each.slot && sameList(levelsOf(old), levelsOf(each))),
  );
}

const NONE: readonly Slot[] = [];

/** The levels that a thing stands on, carries or covers. */
export function levelsOf(element: Element | undefined): readonly Slot[] {
  switch (element?.kind) {
    case 'room':
      return element.given.on === undefined ? NONE : [element.given.on.value.slot];
    case 'foundation':
    case 'crawl':
      return element.given.under === undefined ? NONE : [element.given.under.value.slot];
    case 'roof':
      return element.given.over === undefined ? NONE : [element.given.over.value.slot];
    case 'panels':
      return element.given.for?.value.map(({ value }) => value.slot) ?? NONE;
    default:
      return NONE;
  }
}

/**
 * The levels of a plan that are buildings of their own: where every level has both a roof and a foundation, each is one.
 * Else all stand on one another, and undefined says that the plan is one house.
 */
export function buildingsOf(model: Model): ReadonlySet<Slot> | undefined {
  const levels = model.list('level');
  if (levels.length < 2) return undefined;
  const roofed = new Set(model.list('roof').map(({ given }) => given.over?.value.slot));
  const founded = new Set(model.list('foundation').map(({ given }) => given.under?.value.slot));
  if (!levels.every(({ slot }) => roofed.has(slot) && founded.has(slot))) return undefined;
  return new Set(levels.map(({ slot }) => slot));
}
