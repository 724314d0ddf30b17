// Where each step does each kind of work: in which rooms, on which things and levels. So a rule looks only at pairs that
// meet. One table for all steps; the same object while no step works elsewhere than before.
import type { Slot } from '#kit/place';
import type { Level, Step } from '#model/model';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import type { Results } from './check.ts';
import type { Order } from './order.ts';
import type { Side } from './sides.ts';

export interface Scope {
  /** Undefined where the work goes on in the whole house, or nobody can tell. */
  readonly rooms: ReadonlySet<Slot> | undefined;
  readonly elements: ReadonlySet<Slot> | undefined;
  /** Where a plan holds several buildings: those the work belongs to, by their level. */
  readonly buildings: ReadonlySet<Slot> | undefined;
}

export interface Scopes {
  /** By step, then by kind of work ('' for a step that does none). */
  readonly bySteps: readonly ReadonlyMap<string, Scope>[];
}

const EVERYWHERE: Scope = { rooms: undefined, elements: undefined, buildings: undefined };
const byClaims = new WeakMap<Timeline['claims'], { readonly steps: Steps; readonly scopes: Scopes }>();
const latest = new WeakMap<Order, Scopes>();

export function scopesOf({ timeline, model, order }: Pick<Results, 'timeline' | 'model' | 'order'>): Scopes {
  const { claims, steps } = timeline;
  const known = byClaims.get(claims);
  if (known?.steps === steps) return known.scopes;
  const last = latest.get(order);
  const before = last?.bySteps.length === steps.list.length ? last : undefined;
  const buildings = buildingsOf(model);
  const bySteps = steps.list.map((step, at) =>
    step.kind === 'task' ? taskScopes(step, claims.byStep[at]!, buildings, model, before?.bySteps[at]) : NO_SCOPES,
  );
  // A visit is where the steps are that it looks at.
  const tasks: Scopes = { bySteps };
  steps.list.forEach((step, at) => {
    if (step.kind === 'inspection') bySteps[at] = visitScopes(step, tasks, buildings, timeline, before?.bySteps[at]);
  });
  const same = before !== undefined && bySteps.every((own, at) => own === before.bySteps[at]);
  const scopes = same ? before : tasks;
  latest.set(order, scopes);
  byClaims.set(claims, { steps, scopes });
  return scopes;
}

/** Where a side works; everywhere, where nothing is known. */
export function scopeOf({ step, work }: Side, { bySteps }: Scopes): Scope {
  return bySteps[step]?.get(work ?? '') ?? EVERYWHERE;
}

type Places = Omit<Scope, 'buildings'>;
type ByWork = ReadonlyMap<string, Scope>;
type Task = Extract<Step, { kind: 'task' }>;
const NO_SCOPES: ByWork = new Map();

interface Known {
  readonly claims: readonly Claim[];
  readonly buildings: ReadonlySet<Slot> | undefined;
  /** What the names in a task's own words meant. */
  readonly names: Model['names']['first'];
  /** Whether any place hangs on such names. */
  readonly spoken: boolean;
  readonly scopes: ByWork;
}
const kept = new WeakMap<Task, Known>();

/** The same map while the task's lines are where they were: an edit mostly leaves them there. */
function taskScopes(
  task: Task,
  claims: readonly Claim[],
  buildings: ReadonlySet<Slot> | undefined,
  model: Model,
  last: ByWork | undefined,
): ByWork {
  const before = kept.get(task);
  const names = model.names.first;
  if (before !== undefined && before.buildings === buildings && (before.names === names || !before.spoken)) {
    if (before.claims === claims) return before.scopes;
    if (sameLines(before.claims, claims)) {
      kept.set(task, { ...before, claims });
      return before.scopes;
    }
  }
  const measured = measuredPlaces(claims, model);
  const places = new Map<string, Places>();
  const works = task.given.does?.value ?? [];
  let words: Places | undefined;
  for (const { value } of works) places.set(value.work.name, measured.get(value.work.name) ?? (words ??= fromWords(task, model)));
  if (works.length === 0) places.set('', fromWords(task, model));
  const made = new Map([...places].map(([work, own]) => [work, { ...own, buildings: within(own.elements, buildings) }]));
  const old = before?.scopes ?? last;
  const scopes = old !== undefined && sameScopes(old, made) ? old : made;
  const spoken = task.given.of !== undefined && (words !== undefined || works.length === 0);
  kept.set(task, { claims, buildings, names, spoken, scopes });
  return scopes;
}

function measuredPlaces(claims: readonly Claim[], model: Model): ReadonlyMap<string, Places> {
  const found = new Map<string, { rooms: Set<Slot>; elements: Set<Slot>; house: boolean; where: unknown }>();
  for (const { line } of claims) {
    if (line.work === undefined) continue;
    let own = found.get(line.work.name);
    if (own === undefined)
      found.set(line.work.name, (own = { rooms: new Set(), elements: new Set(), house: false, where: undefined }));
    if (own.where === line.where) continue;
    own.where = line.where;
    const { room, element, level } = line.where;
    if (room === undefined) own.house = true;
    else own.rooms.add(room);
    if (!own.elements.has(element)) addElement(element, own.elements, model);
    if (level !== undefined) own.elements.add(level);
  }
  return new Map([...found].map(([work, { rooms, elements, house }]) => [work, { rooms: house ? undefined : rooms, elements }]));
}

/** The very lines, or as many of the same works at the same places. An element that moved to another level has new places. */
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

function visitScopes(
  inspection: Extract<Step, { kind: 'inspection' }>,
  tasks: Scopes,
  buildings: ReadonlySet<Slot> | undefined,
  timeline: Timeline,
  before: ByWork | undefined,
): ByWork {
  const places = seenBy(inspection, tasks, timeline);
  const made = new Map([['', { ...places, buildings: within(places.elements, buildings) }]]);
  return before !== undefined && sameScopes(before, made) ? before : made;
}

function seenBy(inspection: Extract<Step, { kind: 'inspection' }>, scopes: Scopes, { steps, claims }: Timeline): Places {
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
  for (const { value } of inspection.given.of?.value ?? []) {
    const step = steps.byName.get(value.name);
    if (step !== undefined) for (const scope of scopes.bySteps[step]!.values()) add(scope);
    else
      for (const task of claims.byWork.get(value.name)?.tasks ?? []) {
        const number = steps.index.get(task.slot);
        if (number !== undefined) add(scopeOf({ step: number, work: value.name }, scopes));
      }
  }
  return none ? EVERYWHERE : { rooms: inHouse ? undefined : rooms, elements: onAll ? undefined : elements };
}

/** A thing, and the level that it stands on, carries or covers. */
function addElement(slot: Slot, elements: Set<Slot>, model: Model): void {
  elements.add(slot);
  const element = model.element(slot);
  switch (element?.kind) {
    case 'room':
      if (element.given.on !== undefined) elements.add(element.given.on.value.slot);
      break;
    case 'foundation':
    case 'crawl':
      if (element.given.under !== undefined) elements.add(element.given.under.value.slot);
      break;
    case 'roof':
      if (element.given.over !== undefined) elements.add(element.given.over.value.slot);
      break;
    case 'panels':
      for (const { value } of element.given.for?.value ?? []) elements.add(value.slot);
      break;
    default:
  }
}

/**
 * The levels of a plan that are buildings of their own: where every level has both a roof and a foundation, each is one.
 * Else all stand on one another, and undefined says that the plan is one house.
 */
function buildingsOf(model: Model): ReadonlySet<Slot> | undefined {
  const levels = model.list('level');
  if (levels.length < 2) return undefined;
  const [roofs, foundations] = [model.list('roof'), model.list('foundation')];
  const known = buildingsKept.get(levels);
  if (known !== undefined && known.roofs === roofs && known.foundations === foundations) return known.buildings;
  const roofed = new Set(roofs.map(({ given }) => given.over?.value.slot));
  const founded = new Set(foundations.map(({ given }) => given.under?.value.slot));
  const own = levels.every(({ slot }) => roofed.has(slot) && founded.has(slot))
    ? new Set(levels.map(({ slot }) => slot))
    : undefined;
  const buildings = sameSet(own, known?.buildings) ? known?.buildings : own;
  buildingsKept.set(levels, { roofs, foundations, buildings });
  return buildings;
}
const buildingsKept = new WeakMap<
  readonly Level[],
  {
    readonly roofs: readonly unknown[];
    readonly foundations: readonly unknown[];
    readonly buildings: ReadonlySet<Slot> | undefined;
  }
>();

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
  if (a.size !== b.size) return false;
  for (const [work, scope] of a) {
    const other = b.get(work);
    if (other === undefined || !sameScope(scope, other)) return false;
  }
  return true;
}

function sameScope(a: Scope, b: Scope): boolean {
  return sameSet(a.rooms, b.rooms) && sameSet(a.elements, b.elements) && sameSet(a.buildings, b.buildings);
}

function sameSet(a: ReadonlySet<Slot> | undefined, b: ReadonlySet<Slot> | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.size !== b.size) return false;
  for (const slot of a) if (!b.has(slot)) return false;
  return true;
}
