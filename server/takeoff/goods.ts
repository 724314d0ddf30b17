// What a row of the library says of goods in a size: thickness, weight, R, packages. A size's own value stands before the
// row's general one.
import { INCH } from '#kit/dimension';
import type { Place } from '#kit/place';
import { constant, form, givenQuantity, measure, type Quantity } from '#kit/quantity';
import { formatQuantity, readUnit, type System, unitNamed } from '#kit/units';
import type { Material, Opening } from '#model/model';
import type { Literal, NamedGoods } from './lines.ts';

export function materialOf(goods: NamedGoods | undefined): Material | undefined {
  return goods?.of?.kind === 'material' ? goods.of : undefined;
}

/** 'drywall 1/2"': what tells one item from another. */
export function itemText(goods: NamedGoods): string {
  return goods.sizes.length === 0 ? goods.name : textsOf(goods).item;
}

/** The same as people read it: 'Drywall 1/2"'; a window or door by its size, which its label seldom says. */
export function labelText(goods: NamedGoods): string {
  const { of } = goods;
  if (of?.kind === 'window' || of?.kind === 'door') return of.takes === undefined ? of.label : `${of.label}, ${openingText(of)}`;
  return goods.sizes.length === 0 ? (goods.of?.label ?? goods.name) : textsOf(goods).label;
}

/** 3'-0" x 5'-0", 1200 x 1200 mm. */
function openingText({ takes }: Opening): string {
  const { left, right } = takes!;
  const side = (length: Quantity): string => formatQuantity(length, 'feet').replace(/^(\d+),(\d{3} mm)$/, '$1$2');
  return `${side(left).replace(/ mm$/, right.unit === 'mm' ? '' : ' mm')} x ${side(right)}`;
}

interface Texts {
  readonly item: string;
  readonly label: string;
}
const texts = new WeakMap<NamedGoods, Texts>();
function textsOf(goods: NamedGoods): Texts {
  let known = texts.get(goods);
  if (known === undefined) {
    const sizes = goods.sizes.map(sizeText).join(' x ');
    known = { item: `${goods.name} ${sizes}`, label: `${goods.of?.label ?? goods.name} ${sizes}` };
    texts.set(goods, known);
  }
  return known;
}

export function sizeText(size: Literal): string {
  switch (size.kind) {
    case 'quantity':
      return size.unit === 'in' ? inchText(size.value) : formatQuantity(size, 'feet');
    case 'nominal': {
      const across = size.across.map((side) =>
        Number.isInteger(side * 4) && !Number.isInteger(side) ? `${side * 4}/4` : String(side),
      );
      return `${across.join('x')}${size.feet === undefined ? '' : `x${size.feet}`}${size.unit ?? ''}`;
    }
    case 'bar':
      return `${size.metric === true ? 'T' : '#'}${size.number}`;
    case 'ratio':
      return size.terms.join(':');
    case 'door':
      return `${formatQuantity({ value: size.width, dimension: 'length' }, 'feet')} x ${formatQuantity({ value: size.height, dimension: 'length' }, 'feet')}`;
    default:
      return '';
  }
}

/** Inches with a fraction in lowest terms down to 1/64, as sheets are named: 23/32". */
function inchText(value: number): string {
  const parts = Math.round((value * 64) / INCH);
  if (Math.abs(parts * INCH - value * 64) > 1e-6) return formatQuantity({ value, dimension: 'length', unit: 'in' }, 'feet');
  const whole = Math.floor(parts / 64);
  let over = parts - whole * 64;
  let under = 64;
  if (over === 0) return `${whole}"`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${whole === 0 ? '' : `${whole} `}${over}/${under}"`;
}

export function sameSize(a: Literal, b: Literal): boolean {
  if (a.kind === 'quantity' && b.kind === 'quantity') return a.dimension === b.dimension && a.value === b.value;
  if (a.kind === 'nominal' && b.kind === 'nominal')
    return a.across.length === b.across.length && a.across.every((side, index) => side === b.across[index]);
  if (a.kind === 'bar' && b.kind === 'bar') return a.number === b.number && a.metric === b.metric;
  return false;
}

export type SizeRow = Material['given']['size'][number];

/** The row's own words on this size. */
export function sizeRow(material: Material, sizes: readonly Literal[]): SizeRow | undefined {
  return sizes.length === 0 ? undefined : material.given.size.find((row) => sizes.some((size) => sameSize(size, row.value)));
}

/** Whether goods come in one of the sizes; those without sizes in the library come in any. */
export function comesIn(material: Material, sizes: readonly Literal[]): boolean {
  return material.given.size.length === 0 || sizeRow(material, sizes) !== undefined;
}

const filling = new WeakMap<NamedGoods, Map<number, NamedGoods>>();

/**
 * Goods that fill a space between framing, in the size that the row says is made for that spacing, or as thick as the framing
 * is deep, where the plan names no size. The same object for the same goods.
 */
export function inSpace<T extends NamedGoods>(
  goods: T,
  spacing: Quantity<'length'> | undefined,
  depth: Quantity<'length'> | undefined,
): NamedGoods {
  const sizes = materialOf(goods)?.given.size ?? [];
  if (goods.sizes.length > 0 || sizes.length === 0) return goods;
  const row =
    sizes.find(({ deeper }) => deeper.between !== undefined && deeper.between.value.value === spacing?.value) ??
    sizes.find(({ value, deeper }) => deeper.between === undefined && isLong(value, depth));
  if (row === undefined) return goods;
  let bySize = filling.get(goods);
  if (bySize === undefined) filling.set(goods, (bySize = new Map()));
  const at = sizes.indexOf(row);
  let sized = bySize.get(at);
  if (sized === undefined) bySize.set(at, (sized = { name: goods.name, of: goods.of, sizes: [row.value] }));
  return sized;
}

function isLong(size: Literal, length: Quantity<'length'> | undefined): boolean {
  return size.kind === 'quantity' && size.dimension === 'length' && size.value === length?.value;
}

/** Across and depth of a piece as dressed: 1 1/2" x 5 1/2" for a 2x6. */
export function actualSize(
  goods: NamedGoods,
): { readonly left: Quantity<'length'>; readonly right: Quantity<'length'> } | undefined {
  const material = materialOf(goods);
  if (material === undefined) return undefined;
  return (sizeRow(material, goods.sizes)?.deeper.actual ?? material.given.actual)?.value;
}

/** How thick goods lie: a size that is a length, else what the row says. */
export function thicknessOf(goods: NamedGoods & { readonly place?: Place }): Quantity<'length'> | undefined {
  const material = materialOf(goods);
  const laid = material?.given.laid?.value;
  if (laid === 'framing') return actualSize(goods)?.right;
  if (laid === 'courses' || laid === 'boards') return material?.given.thick?.value ?? actualSize(goods)?.left;
  return lengthSize(goods) ?? material?.given.thick?.value;
}

/** The first size that is a length. */
export function lengthSize(goods: NamedGoods & { readonly place?: Place }): Quantity<'length'> | undefined {
  for (const size of goods.sizes) {
    if (size.kind !== 'quantity' || size.dimension !== 'length') continue;
    return goods.place === undefined
      ? constant('thickness', size.value, 'length')
      : givenQuantity('thickness', size.value, 'length', goods.place, size.unit);
  }
  return undefined;
}

/** R that the plan asks for: blown-cellulose R-60. */
export function resistanceSize(goods: NamedGoods & { readonly place?: Place }): Quantity<'resistance'> | undefined {
  for (const size of goods.sizes) {
    if (size.kind !== 'quantity' || size.dimension !== 'resistance') continue;
    return goods.place === undefined
      ? constant('R', size.value, 'resistance')
      : givenQuantity('R', size.value, 'resistance', goods.place, size.unit);
  }
  return undefined;
}

export function insulatesOf(goods: NamedGoods): Quantity | undefined {
  const material = materialOf(goods);
  if (material === undefined) return undefined;
  return (sizeRow(material, goods.sizes)?.deeper.insulates ?? material.given.insulates)?.value;
}

export function weighsOf(goods: NamedGoods): Quantity | undefined {
  const material = materialOf(goods);
  if (material === undefined) return undefined;
  return (sizeRow(material, goods.sizes)?.deeper.weighs ?? material.given.weighs)?.value;
}

/** A package and what it holds: a sheet of 32 sf, a bag of 25 lb, one cubic yard, one of something. */
export interface Package {
  readonly word: string;
  readonly holds: Quantity;
  /** It is bought by the quantity itself: cy, lf, sf. */
  readonly loose: boolean;
}

const sheetArea = form('area of one', 'width × length', (width = 0, length = 0) => width * length);
const kept = new WeakMap<Material | SizeRow, readonly Package[]>();

/** The ways goods are sold, the usual one first. */
export function packagesOf(material: Material, sizes: readonly Literal[]): readonly Package[] {
  const size = sizeRow(material, sizes);
  const own = size !== undefined && size.deeper['sold by'].length > 0 ? size : undefined;
  let packages = kept.get(own ?? material);
  if (packages === undefined) {
    packages = (own === undefined ? material.given['sold by'] : own.deeper['sold by']).map(({ value }) => packageOf(value));
    kept.set(own ?? material, packages);
  }
  return packages;
}

/** Of packages and steps of an order those that speak the plan's units, where there are any; else all. */
export function inUnitsOf<T extends { readonly holds: Quantity } | Quantity>(system: System, list: readonly T[]): readonly T[] {
  const own = list.filter((each) => systemOf('holds' in each ? each.holds : each) === system);
  return own.length > 0 ? own : list;
}

/** Whose unit a quantity was written in; a sheet's is that of its width. */
export function systemOf({ unit, inputs }: Quantity): System | undefined {
  const known = unitNamed(unit ?? inputs[0]?.unit ?? '')?.system;
  return known === 'both' ? undefined : known;
}

function packageOf({ package: word, holds }: Material['given']['sold by'][number]['value']): Package {
  if (holds !== undefined)
    return {
      word: word.name,
      holds: 'left' in holds ? measure('area', sheetArea, holds.left, holds.right) : holds,
      loose: false,
    };
  const unit = readUnit(word.name);
  return unit === undefined
    ? { word: word.name, holds: constant(`one ${word.name}`, 1, 'number'), loose: false }
    : { word: word.name, holds: { ...constant(`one ${word.name}`, unit.factor, unit.dimension), unit: unit.unit }, loose: true };
}

/** The stock lengths that pieces of goods are cut from; what comes in rolls runs on and has none. */
export function sticksOf(goods: NamedGoods, system?: System): readonly Package[] {
  const material = materialOf(goods);
  if (material === undefined || material.given.laid?.value === 'rolls') return [];
  const packages = packagesOf(material, goods.sizes);
  return (system === undefined ? packages : inUnitsOf(system, packages)).filter(
    ({ holds, loose }) => holds.dimension === 'length' && !loose,
  );
}
