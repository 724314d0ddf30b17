// An assembly taken apart: the framing or panel that carries it, and what lies on either side of it.
import type { Quantity } from '#kit/quantity';
import type { Assembly, Goods } from '#model/model';
import { materialOf, thicknessOf } from '../goods.ts';
import { laidOf } from './portion.ts';

export type Layer = Assembly['given']['layer'][number];

export interface Layers {
  /** The deepest framing, or the panel; in a wall all that is before it lies inside, all after it outside. */
  readonly main: Layer | undefined;
  readonly before: readonly Layer[];
  readonly after: readonly Layer[];
}

const kept = new WeakMap<Assembly, Layers>();

export function layersOf(assembly: Assembly): Layers {
  let layers = kept.get(assembly);
  if (layers === undefined) kept.set(assembly, (layers = apart(assembly.given.layer)));
  return layers;
}

function apart(list: readonly Layer[]): Layers {
  let at = -1;
  let deepest = -1;
  list.forEach((layer, index) => {
    if (!isFrame(layer)) return;
    const depth = thicknessOf(layer.value)?.value ?? 0;
    if (depth > deepest) {
      at = index;
      deepest = depth;
    }
  });
  // Without framing everything lies inside.
  return at < 0
    ? { main: undefined, before: list, after: [] }
    : { main: list[at], before: list.slice(0, at), after: list.slice(at + 1) };
}

/** Framing and panels carry; goods unknown to the library that have a spacing are framing too. */
export function isFrame(layer: Layer): boolean {
  const laid = laidOf(layer.value);
  if (laid === 'panels')
    return materialOf(layer.value)?.given.insulates !== undefined || (materialOf(layer.value)?.given.size.length ?? 0) > 0;
  return laid === 'framing' || (laid === undefined && layer.deeper.at !== undefined);
}

export function isPanel(layer: Layer | undefined): boolean {
  return layer !== undefined && laidOf(layer.value) === 'panels';
}

/** The studs of a wall, where it is framed. */
export function framingGoods(assembly: Assembly): Goods | undefined {
  const { main } = layersOf(assembly);
  return main === undefined || isPanel(main) ? undefined : main.value;
}

/** Depth of the framing, or of the panel: what a level's and a room's sizes are measured to. */
export function wallThickness(assembly: Assembly): Quantity<'length'> | undefined {
  const { main } = layersOf(assembly);
  return main === undefined ? undefined : thicknessOf(main.value);
}

/** What a word of a room replaces: board or lining on the face of the room. */
export function isFace(goods: Goods): boolean {
  const serves = materialOf(goods)?.given['serves as']?.value;
  return serves === 'board' || serves === 'lining';
}

/** The faces of an assembly, first the one named first. */
export function facesOf(assembly: Assembly): readonly Goods[] {
  return assembly.given.layer.map(({ value }) => value).filter(isFace);
}
