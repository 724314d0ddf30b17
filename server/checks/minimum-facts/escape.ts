// Ways out and falls: the windows and outside doors by which a room or storey can be left, the way out of the house, the
// lowest sill to fall from, the guard of a deck. Only net clear openings count; a nominal size serves to tell what cannot do.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Deck, ElementOf, Level, Opening, Plan, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { roomsOn } from '../level-rooms.ts';
import { type FactTable, smallest } from './tables.ts';

/** One opening, by its net clear size; or by its unit's size, which can tell only that it is too small. */
export interface Way {
  readonly opening: string | undefined;
  readonly stated: boolean;
  readonly facts: { readonly [fact: string]: Quantity | undefined };
}

const clearArea = form('clear area', 'width × height', (width = 0, height = 0) => width * height);
const toGrade = form('sill from the ground', 'sill + floor above the ground, either way', (sill = 0, ground = 0) =>
  Math.abs(sill + ground),
);

/** What a window or outside door alone tells, whatever room it is in: nothing where the maker's clear size is not given. */
export function clearOf(type: Opening): { readonly [fact: string]: Quantity | undefined } {
  const clear = type.given.clear?.value;
  if (clear === undefined || !opensOut(type)) return {};
  const swings = type.kind === 'door' && type.given.sliding === undefined;
  return swings ? { 'exit-width': clear.left, 'exit-height': clear.right } : wayBy(type, undefined).facts;
}

export function waysOutOfRoom(room: Room, model: Model): readonly Way[] {
  const { given, slot } = room;
  const openings = [...given.windows, ...given.doors].flatMap((line) => line.value.map(({ value }) => value.type));
  const ways = [...new Set(openings)].filter(opensOut).map((type) => wayBy(type, room));
  if (ways.length > 0) return ways;
  // A line that could not be read may have named one.
  const said = model.names.bySlot.get(slot)?.declaration.given;
  const none = openings.length > 0 || (said?.windows ?? said?.doors) === undefined;
  return none ? [NONE] : [];
}

/** Every opening of the rooms on a storey; none where no room is on it. */
export function waysOutOfLevel(level: Level, model: Model): readonly Way[] {
  const rooms = roomsOn(level, model);
  const ways = rooms.flatMap((room) => waysOutOfRoom(room, model));
  const real = ways.filter((way) => way !== NONE);
  return real.length > 0 ? real : ways.slice(0, 1);
}

const NONE: Way = { opening: undefined, stated: true, facts: { 'escape-area': constant('ways out', 0, 'area') } };

function opensOut(type: Opening): boolean {
  return type.kind === 'window' ? type.given.fixed === undefined : type.given.exterior !== undefined;
}

function wayBy(type: Opening, room: Room | undefined): Way {
  const clear = type.given.clear?.value;
  const size = clear ?? type.takes;
  if (size === undefined) return { opening: type.name, stated: false, facts: {} };
  const sill = type.kind === 'window' ? type.given.sill?.value : constant('sill of a door', 0, 'length');
  const ground = room === undefined ? undefined : groundBelow(room);
  return {
    opening: type.name,
    stated: clear !== undefined,
    facts: {
      'escape-area': measure('area', clearArea, size.left, size.right),
      'escape-width': size.left,
      'escape-height': size.right,
      'escape-sill': sill,
      'escape-to-grade': sill === undefined || ground === undefined ? undefined : measure('length', toGrade, sill, ground),
    },
  };
}

const upward = form('ground below the floor', 'less than nothing where it is above', (height = 0) => -height);

/** How far the ground lies below a room's floor; less than nothing where it lies above. */
function groundBelow({ given }: Room): Quantity<'length'> | undefined {
  const ground = given.on?.value.given.ground?.value;
  if (ground === undefined) return undefined;
  return ground.way === 'below' ? ground.distance : measure('length', upward, ground.distance);
}

// ---- falls ----

/** Sills of windows that open wide. */
function sillsOf({ given }: Room): readonly Quantity<'length'>[] {
  return given.windows.flatMap((line) =>
    line.value.flatMap(({ value: { type } }) =>
      type.kind === 'window' && type.given.fixed === undefined && type.given.limiter === undefined
        ? (type.given.sill?.value ?? [])
        : [],
    ),
  );
}

const fallFrom = form('fall from the sill', 'sill + floor above the ground', (sill = 0, ground = 0) => sill + ground);

export const fallsOfRoom: FactTable<Room> = {
  lines: { 'low-sill': 'windows' },
  own: {
    'low-sill': (room) => smallest(sillsOf(room)),
    fall: (room) => {
      const sill = smallest(sillsOf(room));
      const ground = groundBelow(room);
      return sill === undefined || ground === undefined ? undefined : measure('length', fallFrom, sill, ground);
    },
  },
};

/** A deck that names no rail has none. */
export const fallsOfDeck: FactTable<Deck> = {
  lines: {
    'pier-depth': 'piers',
  },
  own: {
    rails: () => constant('rails', 0, 'length'),
    'pier-depth': ({ given }) => given.piers?.value.size.right,
  },
};

// ---- the way out of the house ----

type Clear = NonNullable<ElementOf<'door'>['given']['clear']>['value'];

interface OutsideDoors {
  readonly all: number;
  /** Those that swing, and nobody counts on the garage. */
  readonly exits: number;
  /** The widest exit by its net clear opening. */
  readonly best: Clear | undefined;
}

function outsideDoors(model: Model): OutsideDoors {
  let [all, exits] = [0, 0];
  let best: Clear | undefined;
  for (const { given } of model.list('room')) {
    for (const line of given.doors)
      for (const { value } of line.value) {
        const { type } = value;
        if (type.kind !== 'door' || type.given.exterior === undefined) continue;
        all++;
        if (type.given.sliding !== undefined || given.use?.value === 'garage') continue;
        exits++;
        const clear = type.given.clear?.value;
        if (clear !== undefined && (best === undefined || clear.left.value > best.left.value)) best = clear;
      }
  }
  return { all, exits, best };
}

export const exitOfPlan: FactTable<Plan> = {
  around: {
    // A plan without any outside door has not come so far.
    exits: (_, model) => {
      const { all, exits } = outsideDoors(model);
      return all === 0 ? undefined : constant('outside doors that swing', exits, 'number');
    },
    'exit-width': (_, model) => outsideDoors(model).best?.left,
    'exit-height': (_, model) => outsideDoors(model).best?.right,
  },
};
