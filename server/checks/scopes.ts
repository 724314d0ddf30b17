// Where a step does a kind of work: in which rooms, on which things and levels. So a rule looks only at pairs that meet.
import type { Slot } from '#kit/place';
import type { Step } from '#model/model';
import type { Model } from '#model/resolve';
import type { Timeline } from '#schedule/timeline';
import type { Side } from './sides.ts';

export interface Scope {
  /** Undefined where the work goes on in the whole house, or nobody can tell. */
  readonly rooms: ReadonlySet<Slot> | undefined;
  readonly elements: ReadonlySet<Slot> | undefined;
}

const EVERYWHERE: Scope = { rooms: undefined, elements: undefined };
const kept = new WeakMap<Timeline['claims'], Map<string, Scope>>();

/** Whether two sides meet where a rule asks: in a room, on a thing, or anywhere in the house. */
export function meets(
  scope: 'same room' | 'same element' | 'house',
  a: Side,
  b: Side,
  timeline: Timeline,
  model: Model,
): boolean {
  if (scope === 'house') return true;
  const which = scope === 'same room' ? 'rooms' : 'elements';
  const first = scopeOf(a, timeline, model)[which];
  const second = scopeOf(b, timeline, model)[which];
  if (first === undefined || second === undefined) return true;
  const [few, many] = first.size < second.size ? [first, second] : [second, first];
  for (const slot of few) if (many.has(slot)) return true;
  return false;
}

export function scopeOf(side: Side, timeline: Timeline, model: Model): Scope {
  let scopes = kept.get(timeline.claims);
  if (scopes === undefined) kept.set(timeline.claims, (scopes = new Map()));
  const key = `${side.step} ${side.work ?? ''}`;
  let scope = scopes.get(key);
  if (scope === undefined) {
    // An inspection of something that looks at the inspection would ask for ever.
    scopes.set(key, EVERYWHERE);
    scopes.set(key, (scope = computed(side, timeline, model)));
  }
  return scope;
}

function computed({ step, work }: Side, timeline: Timeline, model: Model): Scope {
  const each = timeline.steps.list[step]!;
  if (each.kind === 'inspection') return seenBy(each, timeline, model);
  if (each.kind !== 'task') return EVERYWHERE;
  const rooms = new Set<Slot>();
  const elements = new Set<Slot>();
  let house = false;
  for (const { line } of timeline.claims.byTask.get(each) ?? []) {
    if (work !== undefined && line.work?.name !== work) continue;
    const { room, element, level } = line.where;
    if (room === undefined) house = true;
    else rooms.add(room);
    addElement(element, elements, model);
    if (level !== undefined) elements.add(level);
  }
  if (elements.size > 0) return { rooms: house ? undefined : rooms, elements };
  return fromWords(each, model);
}

/** Where nothing is taken off, what the step itself says. */
function fromWords({ given }: Extract<Step, { kind: 'task' }>, model: Model): Scope {
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

/** A visit is where the steps are that it looks at. */
function seenBy(inspection: Extract<Step, { kind: 'inspection' }>, timeline: Timeline, model: Model): Scope {
  const rooms = new Set<Slot>();
  const elements = new Set<Slot>();
  let [inHouse, onAll, none] = [false, false, true];
  for (const { value } of inspection.given.of?.value ?? []) {
    const step = timeline.steps.byName.get(value.name);
    const sides: readonly Side[] =
      step !== undefined
        ? [{ step, work: undefined }]
        : (timeline.claims.byWork.get(value.name)?.tasks ?? []).flatMap((task): readonly Side[] => {
            const number = timeline.steps.index.get(task.slot);
            return number === undefined ? [] : [{ step: number, work: value.name }];
          });
    for (const side of sides) {
      const scope = scopeOf(side, timeline, model);
      none = false;
      if (scope.rooms === undefined) inHouse = true;
      else for (const slot of scope.rooms) rooms.add(slot);
      if (scope.elements === undefined) onAll = true;
      else for (const slot of scope.elements) elements.add(slot);
    }
  }
  if (none) return EVERYWHERE;
  return { rooms: inHouse ? undefined : rooms, elements: onAll ? undefined : elements };
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
