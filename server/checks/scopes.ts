// Where each step does each kind of work: in which rooms, on which things and levels. So a rule looks only at pairs that
// meet. One table for all steps; the same object while no step works elsewhere than before.
import type { Slot } from '#kit/place';
import type { Step } from '#model/model';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import type { Results } from './check.ts';
import { type Doers, doingIn, type Side } from './sides.ts';
import { buildingsOf, levelsOf, type Standing, standAlike, thingsStanding } from './standing-on.ts';

export interface Scope {
  /** Undefined where the work goes on in the whole house, or nobody can tell. */
  readonly rooms: ReadonlySet<Slot> | undefined;
  readonly elements: ReadonlySet<Slot> | undefined;
  /** Where a plan holds several buildings: those the work belongs to, by their level. */
  readonly buildings: ReadonlySet<Slot> | undefined;
}

export interface Scopes {
  /** By step, then by kind of work ('' for a step that does none). */
  readonly bySteps: readonly ByWork[];
  /**
   * Counts the looks at which some step worked elsewhere; by step, the last at which it did, as each sort of place tells. The
   * same list while nobody moved by that sort.
   */
  readonly stamp: number;
  readonly since: { readonly [sort in keyof Scope]: Int32Array };
}

const EVERYWHERE: Scope = { rooms: undefined, elements: undefined, buildings: undefined };

/** The last look at steps in one order: what each scope was made from, by number of the step. */
interface Last {
  readonly steps: Steps;
  readonly claims: Timeline['claims'];
  readonly names: Model['names']['first'];
  readonly things: readonly Standing[];
  readonly buildings: ReadonlySet<Slot> | undefined;
  readonly doers: Doers;
  readonly tasks: readonly (Known | undefined)[];
  /** Numbers of the steps that each visit looks at. */
  readonly seen: readonly (readonly number[] | undefined)[];
  readonly scopes: Scopes;
}
const latest = new WeakMap<Steps['index'], Last>();

export function scopesOf(results: Pick<Results, 'timeline' | 'model'>): Scopes {
  const { timeline, model } = results;
  const { claims, steps } = timeline;
  const last = latest.get(steps.index);
  const names = model.names.first;
  const things = thingsStanding(model);
  const isStanding = last !== undefined && standAlike(last.things, things);
  const sameWorld = isStanding && last.names === names;
  if (sameWorld && last.claims === claims && last.steps === steps) return last.scopes;
  const buildings = isStanding ? last.buildings : buildingsNow(model, last?.buildings);
  const count = steps.list.length;
  const bySteps: ByWork[] = new Array(count);
  const tasks: (Known | undefined)[] = new Array(count);
  // Whether all tasks work where they did.
  let isStill = last !== undefined;
  for (let at = 0; at < count; at++) {
    const step = steps.list[at]!;
    bySteps[at] = NO_SCOPES;
    if (step.kind !== 'task') continue;
    const own = claims.byStep[at]!;
    const known = last?.tasks[at];
    const same = known !== undefined && known.task === step && known.claims === own && known.buildings === buildings;
    tasks[at] = same && (sameWorld || !known.spoken) ? known : taskScopes(step, own, buildings, model, isStanding, known);
    bySteps[at] = tasks[at]!.scopes;
    isStill &&= bySteps[at] === last!.scopes.bySteps[at];
  }
  // A visit is where the steps are that it looks at.
  const { doers } = doingIn(results);
  const seen: (readonly number[] | undefined)[] = new Array(count);
  for (let at = 0; at < count; at++) {
    const step = steps.list[at]!;
    if (step.kind !== 'inspection') continue;
    const sameVisit = last !== undefined && last.steps.list[at] === step && last.doers === doers && last.buildings === buildings;
    seen[at] = sameVisit ? last.seen[at]! : stepsSeen(step, steps, doers);
    const old = last?.scopes.bySteps[at];
    const unmoved = sameVisit && (isStill || seen[at]!.every((number) => bySteps[number] === last.scopes.bySteps[number]));
    bySteps[at] = unmoved ? old! : visitScopes(step, bySteps, buildings, steps, doers, old);
  }
  const scopes = numbered(bySteps, last?.scopes);
  latest.set(steps.index, { steps, claims, names, things, buildings, doers, tasks, seen, scopes });
  return scopes;
}

/** The scopes of before where nobody moved; else with what moved marked by a new number. */
function numbered(bySteps: readonly ByWork[], before: Scopes | undefined): Scopes {
  const count = bySteps.length;
  if (before === undefined)
    return {
      bySteps,
      stamp: 0,
      since: { rooms: new Int32Array(count), elements: new Int32Array(count), buildings: new Int32Array(count) },
    };
  const stamp = before.stamp + 1;
  const since = { ...before.since };
  let moved = false;
  for (let at = 0; at < count; at++) {
    const [old, now] = [before.bySteps[at]!, bySteps[at]!];
    if (old === now) continue;
    moved = true;
    for (const sort of SORTS) {
      if (samePlaces(old, now, sort)) continue;
      if (since[sort] === before.since[sort]) since[sort] = since[sort].slice();
      since[sort][at] = stamp;
    }
  }
  return moved ? { bySteps, stamp, since } : before;
}

const SORTS = ['rooms', 'elements', 'buildings'] as const;

function samePlaces(a: ByWork, b: ByWork, sort: keyof Scope): boolean {
  if (a.size !== b.size) return false;
  for (const [work, scope] of a) {
    const other = b.get(work);
    if (other === undefined || !sameSet(scope[sort], other[sort])) return false;
  }
  return true;
}

/** The steps that by one of these sorts have worked elsewhere after a look of this number. */
export function movedSince(stamp: number, sorts: readonly (keyof Scope)[], { since }: Scopes): ReadonlySet<number> {
  const moved = new Set<number>();
  for (const sort of sorts) {
    const looks = since[sort];
    for (let at = 0; at < looks.length; at++) if (looks[at]! > stamp) moved.add(at);
  }
  return moved;
}

/** Where a side works; everywhere, where nothing is known. */
export function scopeOf({ step, work }: Side, { bySteps }: Pick<Scopes, 'bySteps'>): Scope {
  return bySteps[step]?.get(work ?? '') ?? EVERYWHERE;
}

type Places = Omit<Scope, 'buildings'>;
type ByWork = ReadonlyMap<string, Scope>;
type Task = Extract<Step, { kind: 'task' }>;
const NO_SCOPES: ByWork = new Map();

interface Known {
  readonly task: Task;
  readonly claims: readonly Claim[];
  readonly buildings: ReadonlySet<Slot> | undefined;
  /** Whether any place hangs on names in the task's own words, and on where the things so named stand. */
  readonly spoken: boolean;
  readonly scopes: ByWork;
}

/** The same scopes while the task's lines are where they were: an edit mostly leaves them there. */
function taskScopes(
  task: Task,
  claims: readonly Claim[],
  buildings: ReadonlySet<Slot> | undefined,
  model: Model,
  isStanding: boolean,
  before: Known | undefined,
): Known {
  const stayed = isStanding && before?.task === task && before.buildings === buildings && !before.spoken;
  if (stayed && sameLines(before.claims, claims)) return { ...before, claims };
  const measured = measuredPlaces(claims, model);
  const places = new Map<string, Places>();
  const works = task.given.does?.value ?? [];
  let words: Places | undefined;
  for (const { value } of works) places.set(value.work.name, measured.get(value.work.name) ?? (words ??= fromWords(task, model)));
  if (works.length === 0) places.set('', (words ??= fromWords(task, model)));
  const made = new Map([...places].map(([work, own]) => [work, { ...own, buildings: within(own.elements, buildings) }]));
  const scopes = before !== undefined && sameScopes(before.scopes, made) ? before.scopes : made;
  return { task, claims, buildings, spoken: words !== undefined && words !== EVERYWHERE, scopes };
}

function measuredPlaces(claims: readonly Claim[], model: Model): ReadonlyMap<string, Places> {
  const found = new Map<string, { rooms: Set<Slot>; elements: Set<Slot>; house: boolean; all: boolean; where: unknown }>();
  for (const { line } of claims) {
    if (line.work === undefined) continue;
    let own = found.get(line.work.name);
    if (own === undefined)
      found.set(line.work.name, (own = { rooms: new Set(), elements: new Set(), house: false, all: false, where: undefined }));
    if (own.where === line.where) continue;
    own.where = line.where;
    const { room, element, level } = line.where;
    if (room === undefined) own.house = true;
    else own.rooms.add(room);
    // What is measured by the house goes on anywhere in it.
    if (element.kind === 'plan') own.all = true;
    if (!own.elements.has(element)) addElement(element, own.elements, model);
    if (level !== undefined) own.elements.add(level);
  }
  return new Map(
    [...found].map(([work, { rooms, elements, house, all }]) => [
      work,
      { rooms: house ? undefined : rooms, elements: all ? undefined : elements },
    ]),
  );
}

/** The very lines, or as many of the same works at the same places. */
function sameLines(before: readonly Claim[], now: readonly Claim[]): boolean {
  if (before.length !== now.length) return false;
  for (let at = 0; at < now.length; at++) {
    const [a, b] = [before[at]!.line, now[at]!.line];
    if (a === b) continue;
    if (a.work?.name !== b.work?.name) return false;
    if (a.where.element !== b.where.element || a.where.room !== b.where.room || a.where.level !== b.where.level) return false;
  }
  return true;
}

/** Where nothing is taken off, what the step itself says. */
function fromWords({ given }: Task, model: Model): Places {
  if (given.in === undefined && given.on === undefined && given.of === undefined) return EVERYWHERE;
  const rooms = new Set(given.in?.value.map(({ value }) => value) ?? []);
  const elements = new Set<Slot>(given.on?.value.map(({ value }) => value) ?? []);
  for (const room of rooms) addElement(room, elements, model);
  for (const { value } of given.of?.value ?? [])
    for (const kind of NAMED_THINGS) {
      const slot = model.names.first.get(`${kind}/${value.name}`);
      if (slot !== undefined) addElement(slot, elements, model);
    }
  return { rooms: rooms.size === 0 ? undefined : rooms, elements: elements.size === 0 ? undefined : elements };
}

const NAMED_THINGS = ['trench', 'roof', 'foundation', 'level', 'deck', 'dry-well', 'room', 'wall', 'crawl', 'panels'] as const;

type Visit = Extract<Step, { kind: 'inspection' }>;

function stepsSeen({ given }: Visit, steps: Steps, doers: Doers): readonly number[] {
  const numbers: number[] = [];
  for (const { value } of given.of?.value ?? []) {
    const step = steps.byName.get(value.name);
    if (step !== undefined) numbers.push(step);
    else for (const side of doers.get(value.name) ?? []) numbers.push(side.step);
  }
  return numbers;
}

function visitScopes(
  visit: Visit,
  bySteps: readonly ByWork[],
  buildings: ReadonlySet<Slot> | undefined,
  steps: Steps,
  doers: Doers,
  before: ByWork | undefined,
): ByWork {
  const places = seenBy(visit, bySteps, steps, doers);
  const made = new Map([['', { ...places, buildings: within(places.elements, buildings) }]]);
  return before !== undefined && sameScopes(before, made) ? before : made;
}

function seenBy({ given }: Visit, bySteps: readonly ByWork[], steps: Steps, doers: Doers): Places {
  const rooms = new Set<Slot>();
  const elements = new Set<Slot>();
  let [inHouse, onAll, none] = [false, false, true];
  const add = (scope: Scope): void => {
    none = false;
    if (scope.rooms === undefined) inHouse = true;
    else for (const slot of scope.rooms) rooms.add(slot);
    if (scope.elements === undefined) onAll = true;
    else for (const slot of scope.elements) elements.add(slot);
  };
  for (const { value } of given.of?.value ?? []) {
    const step = steps.byName.get(value.name);
    if (step !== undefined) for (const scope of bySteps[step]!.values()) add(scope);
    else for (const side of doers.get(value.name) ?? []) if (side.work !== undefined) add(scopeOf(side, { bySteps }));
  }
  return none ? EVERYWHERE : { rooms: inHouse ? undefined : rooms, elements: onAll ? undefined : elements };
}

/** A thing, and the levels that it stands on, carries or covers. */
function addElement(slot: Slot, elements: Set<Slot>, model: Model): void {
  elements.add(slot);
  for (const level of levelsOf(model.element(slot))) elements.add(level);
}

/** Those of before where they are the same. */
function buildingsNow(model: Model, before: ReadonlySet<Slot> | undefined): ReadonlySet<Slot> | undefined {
  const now = buildingsOf(model);
  return sameSet(now, before) ? before : now;
}

/** Undefined where the work belongs to no building alone. */
function within(
  elements: ReadonlySet<Slot> | undefined,
  buildings: ReadonlySet<Slot> | undefined,
): ReadonlySet<Slot> | undefined {
  if (elements === undefined || buildings === undefined) return undefined;
  const own = [...elements].filter((slot) => buildings.has(slot));
  return own.length === 0 ? undefined : new Set(own);
}

function sameScopes(a: ByWork, b: ByWork): boolean {
  return SORTS.every((sort) => samePlaces(a, b, sort));
}

function sameSet(a: ReadonlySet<Slot> | undefined, b: ReadonlySet<Slot> | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.size !== b.size) return false;
  for (const slot of a) if (!b.has(slot)) return false;
  return true;
}
