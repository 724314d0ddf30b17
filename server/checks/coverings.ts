// For each visit of a plan the work that hides what it is to see, and of whose order no rule speaks: whatever links and days
// say. An edit that moves a few steps to other places asks again only of the visits that they have to do with.
import { keptWhereSame, NONE } from '#kit/differing';
import type { Inspection, WorkKind } from '#model/model';
import type { Steps } from '#schedule/steps';
import type { Results } from './check.ts';
import { keptFor } from './kept.ts';
import { meetAt } from './meetings.ts';
import { movedSince, type Scope, type Scopes, scopeOf, scopesOf } from './scopes.ts';
import { type Doing, doingIn, type Side, sidesOf } from './sides.ts';
import { isGoverned, libraryVisit, nameOfSide, namesHeld, namesSeen, sidesNamed } from './visits.ts';

export interface Covered {
  readonly cover: Side;
  /** What it hides there. */
  readonly hidden: string;
}

export interface VisitCovered {
  readonly visit: Inspection;
  readonly at: number;
  readonly coverings: readonly Covered[];
}

interface Known extends VisitCovered {
  /** The steps that it sees. */
  readonly seen: ReadonlySet<number>;
  readonly asked: readonly Asked[];
}

interface Seen {
  readonly name: string;
  readonly scope: Scope;
}

/** Sides that were asked whether they cover what is seen, and what of it they hide. */
interface Asked {
  readonly covers: readonly Side[];
  readonly hidden: readonly Seen[];
}

interface Last {
  readonly rules: unknown;
  readonly works: unknown;
  readonly index: Steps['index'];
  readonly scopes: Scopes;
  readonly visits: readonly Inspection[];
  readonly known: ReadonlyMap<Inspection, Known>;
  /** Those that are covered; the same list while they are. */
  readonly covered: readonly VisitCovered[];
}

const latest = new WeakMap<Doing, Last>();

export function coveringsOf(results: Results): readonly VisitCovered[] {
  const { model, timeline } = results;
  const doing = doingIn(results);
  const scopes = scopesOf(results);
  const visits = model.list('inspection');
  const [rules, works] = [model.rows('rule'), model.rows('work')];
  const { index } = timeline.steps;
  const before = latest.get(doing);
  const last = before?.rules === rules && before.works === works && before.index === index ? before : undefined;
  if (last?.scopes === scopes && last.visits === visits) return last.covered;
  const moved = last === undefined ? NOBODY : movedSince(last.scopes.stamp, ['rooms', 'elements'], scopes);
  const known = new Map<Inspection, Known>();
  const covered: VisitCovered[] = [];
  for (const visit of visits) {
    const at = index.get(visit.slot);
    if (at === undefined) continue;
    const old = last?.known.get(visit);
    const own = old !== undefined && !hasToDoWith(old, moved, scopes) ? old : coveringsAt(visit, at, results);
    known.set(visit, own);
    if (own.coverings.length > 0) covered.push(own);
  }
  const kept = keptWhereSame(last?.covered, covered);
  latest.set(doing, { rules, works, index, scopes, visits, known, covered: kept });
  return kept;
}

const NOBODY: ReadonlySet<number> = new Set();

/** Whether a visit sees one of them, or one of them covers what it sees, or did. */
function hasToDoWith({ seen, asked, coverings }: Known, moved: ReadonlySet<number>, scopes: Scopes): boolean {
  for (const step of moved) {
    if (seen.has(step) || coverings.some(({ cover }) => cover.step === step)) return true;
    for (const { covers, hidden } of asked)
      if (stepsIn(covers).has(step) && covers.some((side) => side.step === step && under(side, hidden, scopes) !== undefined))
        return true;
  }
  return false;
}

/** What lies under a cover, of all that it could hide. */
function under(cover: Side, hidden: readonly Seen[], scopes: Scopes): Seen | undefined {
  const scope = scopeOf(cover, scopes);
  return hidden.find((each) => meet(each.scope, scope));
}

const stepsIn = keptFor((sides: readonly Side[]): ReadonlySet<number> => new Set(sides.map(({ step }) => step)));

function coveringsAt(visit: Inspection, at: number, results: Results): Known {
  const { model, timeline } = results;
  const doing = doingIn(results);
  const scopes = scopesOf(results);
  const sides = sidesNamed(namesSeen(visit), results);
  const inSight = sides.map((side) => ({ name: nameOfSide(side, results), scope: scopeOf(side, scopes) }));
  const seen = new Set(sides.map(({ step }) => step));
  const coverings: Covered[] = [];
  const asked: Asked[] = [];
  /** `hides` are the works that they hide; all that is seen, where the library holds them for the visit. */
  const ask = (covers: readonly Side[], hides: ReadonlySet<string> | undefined): void => {
    const hidden = hides === undefined ? inSight : inSight.filter(({ name }) => hides.has(name));
    asked.push({ covers, hidden });
    for (const cover of covers) {
      if (cover.step === at || seen.has(cover.step)) continue;
      const found = under(cover, hidden, scopes);
      if (found !== undefined && !isGoverned(visit.name, nameOfSide(cover, results), { model, doing }))
        coverings.push({ cover, hidden: found.name });
    }
  };
  const row = libraryVisit(visit.name, model);
  // The plan may hold less than the library does for a visit of that name.
  if (row !== undefined) ask(tasksOf(sidesOf(namesHeld(row), doing), timeline.steps), undefined);
  else
    for (const { name, hides } of hiding(model.rows('work')))
      if (inSight.some((each) => hides.has(each.name))) ask(doing.doers.get(name) ?? NONE, hides);
  return { visit, at, coverings, seen, asked };
}

const tasks = new WeakMap<readonly Side[], readonly Side[]>();

/** The same list for the same sides: what stands in the places of others is of the same kinds. */
function tasksOf(sides: readonly Side[], { list }: Steps): readonly Side[] {
  let own = tasks.get(sides);
  if (own === undefined) tasks.set(sides, (own = sides.filter(({ step }) => list[step]!.kind === 'task')));
  return own;
}

/** The works that hide others, with what they hide. */
const hiding = keptFor((works: readonly WorkKind[]) =>
  works.flatMap(({ name, given }) =>
    given.hides === undefined ? [] : [{ name, hides: new Set(given.hides.value.map(({ value }) => value.name)) }],
  ),
);

/** In one room and on one thing, as far as each is known: what belongs to no room may still be in another house. */
function meet(one: Scope, other: Scope): boolean {
  return meetAt(one.elements, other.elements) && meetAt(one.rooms, other.rooms);
}
