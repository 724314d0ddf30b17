// Insulation of an assembly the way tables of energy codes name it: what fills the framing, and what lies on it unbroken.
import { type Quantity, total } from '#kit/quantity';
import type { Assembly, Goods } from '#model/model';
import { fillingOf, ownResistance } from './assembly.ts';
import { materialOf } from './goods.ts';
import { isPanel, type Layer, layersOf } from './measure/layers.ts';
import { laidOf } from './measure/portion.ts';

export interface Insulation {
  /** Nominal R of what fills the framing. */
  readonly between: Quantity<'resistance'>;
  /** R of insulation that no framing interrupts: boards, loose fill over a ceiling, panels. */
  readonly outside: Quantity<'resistance'>;
  /** Of both together, what lies on the room's side of a heavy layer; undefined where no layer is heavy. */
  readonly inward: Quantity<'resistance'> | undefined;
}

const kept = new WeakMap<Assembly, { readonly insulation: Insulation | undefined }>();

/**
 * Nothing, where no layer insulates and each is known. Undefined where something that insulates tells no R, or where nobody
 * knows what a layer is that might.
 */
export function insulationOf(assembly: Assembly): Insulation | undefined {
  let known = kept.get(assembly);
  if (known === undefined) kept.set(assembly, (known = { insulation: insulationIn(assembly) }));
  return known.insulation;
}

function insulationIn(assembly: Assembly): Insulation | undefined {
  const { main } = layersOf(assembly);
  const unknown: string[] = [];
  const between = main === undefined || isPanel(main) || main.deeper['filled with'] === undefined ? [] : fillingOf(main, unknown);
  const heavy = assembly.given.layer.findIndex(({ value }) => materialOf(value)?.given.mass !== undefined && !isVeneer(value));
  const inward = main !== undefined && assembly.given.layer.indexOf(main) < heavy ? [...between] : [];
  const outside = assembly.given.layer.flatMap((layer, at) => {
    const insulates =
      isPanel(layer) ||
      INSULATION.has(laidOf(layer.value) ?? '') ||
      materialOf(layer.value)?.given['serves as']?.value === 'insulation';
    if (!insulates) return [];
    const own = ownResistance(layer.value);
    if (own === undefined) unknown.push(layer.value.name);
    else if (at < heavy) inward.push(own);
    return own === undefined ? [] : [own];
  });
  const known = between.length + outside.length > 0 || (assembly.given.layer.length > 0 && assembly.given.layer.every(isKnown));
  if (unknown.length > 0 || !known) return undefined;
  return {
    between: total('R between the framing', 'resistance', between),
    outside: total('R outside the framing', 'resistance', outside),
    inward: heavy < 0 ? undefined : total('R inside of the heavy layer', 'resistance', inward),
  };
}

/** Brick or stone that only faces the wall: it makes no heavy wall of a framed one. */
export function isVeneer(goods: Goods): boolean {
  return materialOf(goods)?.given['serves as']?.value === 'masonry veneer';
}

/** No insulation at all. */
export function isBare({ between, outside }: Insulation): boolean {
  return between.value + outside.value === 0;
}

/** A second frame may be filled. */
function isKnown({ value, deeper }: Layer): boolean {
  return materialOf(value) !== undefined && deeper['filled with'] === undefined;
}

const INSULATION: ReadonlySet<string> = new Set(['batts', 'loose']);
