// Light and air of a room through its windows and glazed doors, and of the rooms that are open to it, as shares of the floor.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Opening, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { nextRoom } from './borrowed.ts';
import { neighboursOf } from './neighbours.ts';
import { areas, countOf, type FactTable, number, serving, shareOf } from './tables.ts';

const whole = form('opening', 'count × width × height', (count = 0, width = 0, height = 0) => count * width * height);
const half = form(
  'half of an opening',
  'count × width × height ÷ 2',
  (count = 0, width = 0, height = 0) => (count * width * height) / 2,
  'common practice: half of a slider or double-hung window opens, and half of a half-glass door is glass',
);

type Part = 'glass' | 'openable';

/** By the unit's size, which is more than the glass itself: what fails by it fails for certain. */
function partOf(type: Opening, part: Part): typeof whole | undefined {
  const { given } = type;
  if (type.kind === 'window') {
    if (part === 'glass') return whole;
    if ('fixed' in given && given.fixed !== undefined) return undefined;
    return ('slider' in given && given.slider !== undefined) || ('double-hung' in given && given['double-hung'] !== undefined)
      ? half
      : whole;
  }
  if (!('exterior' in given) || given.exterior === undefined) return undefined;
  if (part === 'openable') return given.sliding === undefined ? whole : half;
  if (given.sliding !== undefined) return whole;
  return given['half-glass'] === undefined ? undefined : half;
}

const kept: { readonly [part in Part]: WeakMap<Room, Quantity<'area'>> } = { glass: new WeakMap(), openable: new WeakMap() };

function partOfRoom(room: Room, part: Part): Quantity<'area'> {
  let known = kept[part].get(room);
  if (known === undefined) {
    const openings = [...room.given.windows, ...room.given.doors].flatMap((line) => line.value);
    known = areas(
      part,
      openings.flatMap(({ value: { type, count } }) => {
        const size = type.takes;
        const how = size === undefined ? undefined : partOf(type, part);
        return size === undefined || how === undefined
          ? []
          : [measure('area', how, constant('count', count ?? 1, 'number'), size.left, size.right)];
      }),
    );
    kept[part].set(room, known);
  }
  return known;
}

/** Of the room and all that is open to it, over their floors together. */
function overFloor(room: Room, part: Part, model: Model): Quantity | undefined {
  return ofTogether(neighboursOf(model).open(room), part, model);
}

/** The room that it has a cased opening to counted in, with what is open to either. */
function withNext(room: Room, part: Part, model: Model): Quantity | undefined {
  const next = nextRoom(room, model);
  if (next === undefined) return undefined;
  const { open } = neighboursOf(model);
  const together = [...open(room), ...open(next.other)];
  return ofTogether([...new Set(together)], part, model);
}

function ofTogether(together: readonly Room[], part: Part, model: Model): Quantity | undefined {
  const floors = together.map((each) => factsOf(each)['floor-area']);
  if (floors.some((floor) => floor === undefined) || together.some((each) => misread(each, model))) return undefined;
  return shareOf(
    areas(
      part,
      together.map((each) => partOfRoom(each, part)),
    ),
    areas('floor area', floors as readonly Quantity<'area'>[]),
  );
}

/** A line of openings that could not be read may have named a window. */
function misread({ given, slot }: Room, model: Model): boolean {
  if (given.windows.length + given.doors.length > 0) return false;
  const said = model.names.bySlot.get(slot)?.declaration.given;
  return (said?.windows ?? said?.doors) !== undefined;
}

export const lightOfRoom: FactTable<Room> = {
  own: {
    'openable-area': (room) => partOfRoom(room, 'openable'),
    lights: ({ given }) => (given.devices.length === 0 ? undefined : number('lights', countOf(serving(given.devices, 'light')))),
  },
  beside: {
    daylight: (room, model) => overFloor(room, 'glass', model),
    openable: (room, model) => overFloor(room, 'openable', model),
    'daylight-with-next': (room, model) => withNext(room, 'glass', model),
    'openable-with-next': (room, model) => withNext(room, 'openable', model),
  },
};
