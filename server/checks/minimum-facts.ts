// Facts that only the least values of a model code ask for: the best way out of a room, what its fans move, the sizes of a
// footing, the widest way out of the house. Undefined is what nobody gave.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import type { Element, ElementOf, Foundation, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { quantityOf } from './conditions.ts';

type Facts = { readonly [fact: string]: Quantity | undefined };

/** A fact of a thing, or a value that it gives. */
export function factOf(thing: Element, fact: string, model: Model): Quantity | undefined {
  return quantityOf(thing, fact) ?? ownFacts(thing, model)[fact];
}

function ownFacts(thing: Element, model: Model): Facts {
  switch (thing.kind) {
    case 'room':
      return { ...waysOut(thing, model), exhaust: exhaust(thing) };
    case 'foundation':
      return foundationSizes(thing);
    case 'deck':
      // A deck that names no rail has none.
      return { rails: constant('rails', 0, 'length') };
    case 'plan':
      return exit(model);
    default:
      return {};
  }
}

const clearArea = form('clear area', 'width × height', (width = 0, height = 0) => width * height);

/** By the window or outside door with the largest net clear opening; without any opening at all there is none. */
function waysOut({ given, slot }: Room, model: Model): Facts {
  const types = [...given.windows, ...given.doors].flatMap((line) =>
    line.value.flatMap(({ value }) =>
      value.type.kind === 'window' || value.type.given.exterior !== undefined ? [value.type] : [],
    ),
  );
  if (types.length === 0) {
    // A line that could not be read may have named one.
    const said = model.names.bySlot.get(slot)?.declaration.given;
    const none = (said?.windows ?? said?.doors) === undefined;
    return none ? { 'escape-area': constant('ways out', 0, 'area') } : {};
  }
  const ways = types.flatMap((type) => {
    const clear = type.given.clear?.value;
    return clear === undefined ? [] : [{ type, clear, area: measure('area', clearArea, clear.left, clear.right) }];
  });
  const best = ways.reduce<(typeof ways)[number] | undefined>(
    (most, way) => (most === undefined || way.area.value > most.area.value ? way : most),
    undefined,
  );
  if (best === undefined) return {};
  return {
    'escape-area': best.area,
    'escape-width': best.clear.left,
    'escape-height': best.clear.right,
    'escape-sill': best.type.kind === 'window' ? best.type.given.sill?.value : constant('sill of a door', 0, 'length'),
  };
}

/** The strongest fan among the fixtures that a room lists, by what it moves. */
function exhaust({ given }: Room): Quantity | undefined {
  if (given.fixtures.length === 0) return undefined;
  let most = 0;
  for (const line of given.fixtures)
    for (const { value } of line.value)
      for (const rating of value.ratings)
        if ('kind' in rating.value && rating.value.kind === 'quantity' && rating.value.dimension === 'flow')
          most = Math.max(most, rating.value.value);
  return constant('exhaust', most, 'flow');
}

const beyond = form('footing beyond the wall', '(footing − wall) ÷ 2', (footing = 0, wall = 0) => (footing - wall) / 2);
const above = form(
  'wall above the ground',
  'wall + footing − depth',
  (wall = 0, footing = 0, depth = 0) => wall + footing - depth,
);

function foundationSizes({ given }: Foundation): Facts {
  const footing = given.footing?.value.size;
  const wall = given.wall?.value.size;
  const bottom = given.bottom?.value;
  return {
    'footing-width': footing?.left,
    'footing-thickness': footing?.right,
    'footing-projection':
      footing === undefined || wall === undefined ? undefined : measure('length', beyond, footing.left, wall.left),
    'wall-above-grade':
      footing === undefined || wall === undefined || bottom === undefined
        ? undefined
        : measure('length', above, wall.right, footing.right, bottom),
    'bolt-size': given.bolts?.value.size,
    'bolt-spacing': given.bolts?.value.at,
    'slab-thickness': given.slab?.value.thickness,
  };
}

/** The widest outside door that swings, by its net clear opening. */
function exit(model: Model): Facts {
  let best: NonNullable<ElementOf<'door'>['given']['clear']>['value'] | undefined;
  for (const { given } of model.list('room'))
    for (const line of given.doors)
      for (const { value } of line.value) {
        const { type } = value;
        if (type.kind !== 'door' || type.given.exterior === undefined || type.given.sliding !== undefined) continue;
        const clear = type.given.clear?.value;
        if (clear !== undefined && (best === undefined || clear.left.value > best.left.value)) best = clear;
      }
  return { 'exit-width': best?.left, 'exit-height': best?.right };
}
