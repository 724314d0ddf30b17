// What can hurt someone, from the library's rows of hazards: told where the plan itself says something dangerous, and where
// its work carries a hazard that nothing sees to. Once for a thing, or once for the plan; never at every task.
import type { Finding, FindingSort } from '#kit/finding';
import type { Place } from '#kit/place';
import type { Element, ElementOf, FollowedCondition } from '#model/model';
import type { Model } from '#model/resolve';
import type { KindWord } from '#model/words';
import { keptByRow, type RowMemory, thingsAsked } from './by-row.ts';
import type { Results } from './check.ts';
import { holds } from './conditions.ts';
import { carried } from './hazard-messages.ts';
import { keptFor } from './kept.ts';
import { safetyFact } from './safety-facts.ts';
import { type Scopes, scopeOf, scopesOf } from './scopes.ts';
import { quantityText, sideText } from './show.ts';
import { type Doing, doingIn, type Side, sidesOf } from './sides.ts';
import { levelsOf } from './standing-on.ts';

export type Hazard = ElementOf<'hazard'>;

export type HazardsMemory = RowMemory<Hazard, readonly Finding[]>;
export function hazardsMemory(): HazardsMemory {
  return new WeakMap();
}

export function hazardFindings(results: Results, memory: HazardsMemory): readonly Finding[] {
  const { model, timeline } = results;
  const looking: Looking = { ...results, doing: doingIn(results), scopes: scopesOf(results) };
  const all = [model.settings, timeline.progress, ...LOOKED_AT.map((kind) => model.list(kind))];
  const findings: Finding[] = [];
  for (const row of model.rows('hazard')) {
    if (!isWhole(row)) continue;
    const reads = [...all, ...thingsAsked(row, model)];
    const { during, metBy } = namesOf(row);
    const sides = [sidesOf(during, looking.doing), sidesOf(metBy, looking.doing)];
    const own = keptByRow(memory, row, reads, sides, ['elements'], results, () => findingsOf(row, looking));
    for (const each of own) findings.push(each);
  }
  return findings;
}

interface Looking extends Results {
  readonly doing: Doing;
  readonly scopes: Scopes;
}

/** A hazard that says neither where it lies nor what carries it lies nowhere. */
function isWhole({ given }: Hazard): boolean {
  return given.for !== undefined || given.during !== undefined;
}

/** By every row: heights are worked out of levels, foundations and roofs together, slopes of the site's soil. */
const LOOKED_AT = ['site', 'level', 'foundation', 'roof', 'item', 'work'] as const satisfies readonly KindWord[];

function findingsOf(row: Hazard, looking: Looking): readonly Finding[] {
  const { model } = looking;
  const kind = row.given.for?.value;
  const { during, metBy } = namesOf(row);
  const things: readonly Element[] = kind === undefined || kind === 'plan' ? [] : model.list(kind as KindWord);
  // A plan that draws no roof still works on one: what nobody knows excuses nothing.
  if (things.length === 0) {
    const thing = kind === 'plan' ? model.plan : undefined;
    if ((row.given.during ?? thing) === undefined || !fires(row, thing, model)) return [];
    const carriers = stillToDo(sidesOf(during, looking.doing), looking);
    if (row.given.during !== undefined && carriers.length === 0) return [];
    return sidesOf(metBy, looking.doing).length > 0 ? [] : [told(row, thing, [], carriers, looking)];
  }
  const dangerous = things.flatMap((thing) => {
    if (!fires(row, thing, model)) return [];
    const carriers = stillToDo(sidesOn(thing, sidesOf(during, looking.doing), looking), looking);
    if (row.given.during !== undefined && carriers.length === 0) return [];
    const isMet = sidesOf(metBy, looking.doing).some((side) => isOn(thing, side, looking));
    return isMet ? [] : [{ thing, carriers }];
  });
  // A reminder is given once, and names the other things.
  const [first, ...others] = dangerous;
  if (first === undefined) return [];
  if (severityOf(row) === 'note')
    return [
      told(
        row,
        first.thing,
        others.map(({ thing }) => thing),
        first.carriers,
        looking,
      ),
    ];
  return dangerous.map(({ thing, carriers }) => told(row, thing, [], carriers, looking));
}

/** The names of a row as lists that stay the same objects. */
const namesOf = keptFor(({ given }: Hazard) => ({
  during: given.during?.value.map(({ value }) => value.name) ?? [],
  metBy: given['met by']?.value.map(({ value }) => value.name) ?? [],
}));

/** Names that some row of hazards is met by: of what they see to, a rule of order need not remind as well. */
export const seenToBy = keptFor(
  (rows: readonly Hazard[]): ReadonlySet<string> => new Set(rows.flatMap((row) => namesOf(row).metBy)),
);

function severityOf({ given }: Hazard): 'error' | 'warning' | 'note' {
  return given.severity?.value ?? 'note';
}

function fires({ given }: Hazard, thing: Element | undefined, model: Model): boolean {
  const is = ({ value }: { readonly value: FollowedCondition }): boolean =>
    holds(value, model, thing, (each, fact) => safetyFact(each, fact, model));
  return given.when.every(is) && !given.unless.some(is);
}

function stillToDo(sides: readonly Side[], { timeline: { progress } }: Looking): readonly Side[] {
  return sides.filter(({ step }) => progress.records.get(step)?.finished === undefined);
}

/** Of the steps those that work on a thing: on itself where they name things of its kind, else on its level. */
function sidesOn(thing: Element, sides: readonly Side[], looking: Looking): readonly Side[] {
  return sides.filter((side) => isOn(thing, side, looking));
}

function isOn(thing: Element, side: Side, { scopes, model }: Looking): boolean {
  const { elements } = scopeOf(side, scopes);
  if (elements === undefined || elements.has(thing.slot)) return true;
  if (!levelsOf(thing).some((slot) => elements.has(slot))) return false;
  for (const slot of elements) if (slot.kind === thing.kind && isAlike(slot, thing, model)) return false;
  return true;
}

/** Whether a slot names a thing of the same kind that such work could be for: a beam's foundation has no wall to fill against. */
function isAlike(slot: Element['slot'], thing: Element, model: Model): boolean {
  if (thing.kind !== 'foundation') return true;
  const other = model.element(slot);
  return other?.kind === 'foundation' && other.given.wall !== undefined;
}

function told(
  row: Hazard,
  thing: Element | undefined,
  others: readonly Element[],
  carriers: readonly Side[],
  looking: Looking,
): Finding {
  const { timeline, model } = looking;
  const steps = [...new Set(carriers.map(({ step }) => step))].map((step) => timeline.steps.list[step]!);
  const [first, ...rest] = steps;
  const source = row.given.source?.value;
  return {
    sort: carried as unknown as FindingSort<never>,
    code: `safety/${row.name}`,
    severity: severityOf(row),
    place: first?.place ?? placeOf(row, thing!),
    details: [
      {
        row,
        thing: thing?.kind === 'plan' ? undefined : thing?.name,
        others: others.map(({ name }) => name),
        figures: thing === undefined ? [] : figuresOf(row, thing, model),
        steps: steps.map(({ name }) => name),
      },
    ],
    related: [
      ...(first === undefined || thing === undefined || thing.kind === 'plan'
        ? []
        : [{ place: placeOf(row, thing), note: `${thing.kind} "${thing.name}"` }]),
      ...rest.slice(0, MOST_PLACES).map(({ place, name }) => ({ place, note: `"${name}" carries it too` })),
    ],
    ...(source === undefined ? {} : { source }),
  };
}

const MOST_PLACES = 20;

/** 'depth 8'-0"', 'side slope upright': as the row asks. */
function figuresOf({ given }: Hazard, thing: Element, model: Model): readonly string[] {
  return (given.tells?.value ?? []).map(({ value: fact }) => {
    const value = safetyFact(thing, fact, model);
    const label = fact.replaceAll('-', ' ');
    if (value === undefined) return `${label} not given`;
    if (fact.endsWith('-slope')) return `${label} ${sideText(value.value)}`;
    // A year is no amount: it has no thousands.
    return `${label} ${value.dimension === 'number' ? value.value : quantityText(value, model)}`;
  });
}

/** The line that gives the first of its figures, where one does. */
function placeOf({ given }: Hazard, thing: Element): Place {
  const lines = thing.given as { readonly [word: string]: { readonly place?: Place } | undefined };
  for (const { value } of given.tells?.value ?? []) {
    const place = lines[value === 'depth' ? 'deep' : value]?.place;
    if (place !== undefined) return place;
  }
  return thing.place;
}
