// Figures of an assembly: thickness, framing depth, R by parallel paths, weight. What a layer does not tell is named, so
// that a figure is never taken for more than it is.
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Assembly, Goods } from '#model/model';
import type { Films } from './conventions.ts';
import { actualSize, insulatesOf, materialOf, resistanceSize, thicknessOf, weighsOf } from './goods.ts';
import { isFrame, isPanel, type Layer, layersOf, wallThickness } from './measure/layers.ts';
import { laidOf } from './measure/portion.ts';

type R = Quantity<'resistance'>;

export interface AssemblyFigures {
  /** All layers together; those of unknown thickness are left out and named. */
  readonly thickness: Quantity<'length'>;
  /** Of the framing or panel alone: what sizes are measured to. */
  readonly framing: Quantity<'length'> | undefined;
  /** Between the framing, and through it; the latter only where it is framed. */
  readonly between: R;
  readonly through: R | undefined;
  /** Over all, both paths by their share of the area; air films at both faces in it. */
  readonly resistance: R;
  readonly weight: Quantity<'weight/area'>;
  readonly unknown: {
    readonly thickness: readonly string[];
    readonly resistance: readonly string[];
    readonly weight: readonly string[];
  };
}

const perDepth = form('R', 'thickness × R for each depth', (thickness = 0, each = 0) => thickness * each);
const parallel = form(
  'R over all',
  '1 ÷ ((1 − framing) ÷ R between + framing ÷ R through the framing)',
  (share = 0, between = 1, through = 1) => 1 / ((1 - share) / between + share / through),
  'ASHRAE, parallel-path method',
);
const shareOf = form('share of framing', 'thickness of a piece ÷ spacing', (piece = 0, spacing = 1) =>
  Math.min(1, piece / spacing),
);
const weightAt = form('framing', 'weight of a length ÷ spacing', (weight = 0, spacing = 1) => weight / spacing);
const weightOfPieces = form(
  'framing',
  'width × depth of a piece ÷ spacing × weight of the volume',
  (across = 0, deep = 0, spacing = 1, weight = 0) => ((across * deep) / spacing) * weight,
);
const weightDeep = form('weight', 'thickness × weight of the volume', (depth = 0, weight = 0) => depth * weight);
const kept = new WeakMap<Assembly, { readonly films: Films; readonly figures: AssemblyFigures }>();

export function assemblyFigures(assembly: Assembly, films: Films): AssemblyFigures {
  let known = kept.get(assembly);
  if (known?.films !== films) kept.set(assembly, (known = { films, figures: figuresOf(assembly, films) }));
  return known.figures;
}

function figuresOf(assembly: Assembly, films: Films): AssemblyFigures {
  const { main } = layersOf(assembly);
  const layers = assembly.given.layer;
  const unknown = { thickness: [] as string[], resistance: [] as string[], weight: [] as string[] };
  const common = [
    ...filmsOf(assembly, films),
    ...layers.filter((layer) => layer !== main).flatMap((layer) => resistanceOf(layer, unknown.resistance)),
  ];
  const betweenMain =
    main === undefined
      ? []
      : isPanel(main)
        ? resistanceOf(main, unknown.resistance)
        : throughMetal(main, fillingOf(main, unknown.resistance));
  const throughMain = main === undefined || isPanel(main) || isMetal(main) ? undefined : ownResistance(main.value);
  const between = total('R between the framing', 'resistance', [...common, ...betweenMain]);
  const through = throughMain === undefined ? undefined : total('R through the framing', 'resistance', [...common, throughMain]);
  const share = main === undefined ? undefined : framingShare(assembly, main);
  const both = through !== undefined && share !== undefined && between.value > 0 && through.value > 0;
  return {
    thickness: total(
      'thickness',
      'length',
      layers.flatMap((layer) => thicknessOfLayer(layer, unknown.thickness)),
    ),
    framing: wallThickness(assembly),
    between,
    through,
    resistance: both ? measure('resistance', parallel, share, between, through) : between,
    weight: total(
      'weight',
      'weight/area',
      layers.flatMap((layer) => weightOf(layer, unknown.weight)),
    ),
    unknown,
  };
}

function filmsOf(assembly: Assembly, films: Films): readonly R[] {
  switch (assembly.given.for?.value) {
    case 'wall':
      return [films.outside, films.level];
    case 'partition':
      return [films.level, films.level];
    case 'floor':
      return [films.downward, films.downward];
    case 'ceiling':
      return [films.upward, films.upward];
    case 'roof':
      return [films.outside, films.upward];
    case undefined:
      return [];
  }
}

/** Sheets that only stop air, water or vapour, coats, and the air between battens have no R worth counting. */
function isThin(goods: Goods): boolean {
  const laid = laidOf(goods);
  return laid === 'membrane' || laid === 'rolls' || laid === 'coats';
}

/** What a layer beside the main one adds, by itself; nothing where it tells no R. */
export function layerResistance(layer: Layer): readonly R[] {
  return resistanceOf(layer, []);
}

function resistanceOf(layer: Layer, unknown: string[]): readonly R[] {
  if (isFrame(layer) && !isPanel(layer)) return layer.deeper['filled with'] === undefined ? [] : fillingOf(layer, unknown);
  const own = ownResistance(layer.value);
  if (own === undefined && !isThin(layer.value)) unknown.push(layer.value.name);
  return own === undefined ? [] : [own];
}

/** What fills the framing, as deep as it is unless the filling says its own thickness. */
export function fillingOf(layer: Layer, unknown: string[]): readonly R[] {
  const filled = layer.deeper['filled with']?.value;
  if (filled === undefined) {
    unknown.push('air space');
    return [];
  }
  const own = ownResistance(filled, thicknessOf(layer.value));
  if (own === undefined) unknown.push(filled.name);
  return own === undefined ? [] : [own];
}

export function ownResistance(goods: Goods, depth?: Quantity<'length'>): R | undefined {
  const wanted = resistanceSize(goods);
  if (wanted !== undefined) return wanted;
  const insulates = insulatesOf(goods);
  if (insulates === undefined) return undefined;
  if (insulates.dimension === 'resistance') return insulates as R;
  const thickness = thicknessOf(goods) ?? depth;
  return thickness === undefined ? undefined : measure('resistance', perDepth, thickness, insulates);
}

const isMetal = (main: Layer): boolean => (materialOf(main.value)?.given.effective.length ?? 0) > 0;

const byTable = form(
  'filling between metal',
  'between two fillings of the table, by its share of the step from one to the other',
  (own = 0, lower = 0, lowerCounts = 0, upper = 0, upperCounts = 0) =>
    upper > lower ? lowerCounts + ((own - lower) / (upper - lower)) * (upperCounts - lowerCounts) : Math.min(own, lowerCounts),
);
/** Metal carries heat round its filling: parallel paths do not hold, and a table says what the filling is worth. */
function throughMetal(main: Layer, filling: readonly R[]): readonly R[] {
  const [own] = filling;
  if (own === undefined || !isMetal(main)) return filling;
  const spacing = main.deeper.at?.value.value;
  const rows = materialOf(main.value)!
    .given.effective.map(({ value }) => value)
    .filter(({ at }) => at === undefined || at.value === spacing)
    .sort((a, b) => a.filling.value - b.filling.value);
  const upper = rows.find((row) => row.filling.value >= own.value) ?? rows[rows.length - 1];
  if (upper === undefined) return filling;
  const lower = [...rows].reverse().find((row) => row.filling.value < own.value) ?? upper;
  return [measure('resistance', byTable, own, lower.filling, lower.counts, upper.filling, upper.counts)];
}

function framingShare(assembly: Assembly, main: Layer): Quantity<'number'> | undefined {
  // Studs at their spacing are less than half of what frames a wall: plates, headers and corners are wood too.
  const usual = assembly.given.for?.value === 'wall' ? materialOf(main.value)?.given.framing?.value : undefined;
  const given = assembly.given.framing?.value ?? usual;
  if (given !== undefined) return given;
  const piece = actualSize(main.value)?.left;
  const spacing = main.deeper.at?.value;
  return piece === undefined || spacing === undefined || !(spacing.value > 0)
    ? undefined
    : measure('number', shareOf, piece, spacing);
}

function thicknessOfLayer(layer: Layer, unknown: string[]): readonly Quantity<'length'>[] {
  const thickness = thicknessOf(layer.value);
  if (thickness === undefined && !isThin(layer.value)) unknown.push(layer.value.name);
  return thickness === undefined ? [] : [thickness];
}

/** Of a layer, and of what fills the space in it as if no framing stood there, which is a little too much. */
function weightOf(layer: Layer, unknown: string[]): readonly Quantity<'weight/area'>[] {
  const filled = layer.deeper['filled with']?.value;
  const depth = thicknessOf(layer.value);
  return [
    ...goodsWeight(layer.value, depth, layer.deeper.at?.value, unknown),
    ...(filled === undefined ? [] : goodsWeight(filled, thicknessOf(filled) ?? depth, undefined, unknown)),
  ];
}

function goodsWeight(
  goods: Goods,
  depth: Quantity<'length'> | undefined,
  spacing: Quantity<'length'> | undefined,
  unknown: string[],
): readonly Quantity<'weight/area'>[] {
  const weighs = weighsOf(goods) ?? materialOf(goods)?.given.density?.value;
  if (weighs?.dimension === 'weight/area') return [weighs as Quantity<'weight/area'>];
  if (weighs?.dimension === 'weight/length' && spacing !== undefined) return [measure('weight/area', weightAt, weighs, spacing)];
  const piece = spacing === undefined ? undefined : actualSize(goods);
  if (weighs?.dimension === 'weight/volume' && piece !== undefined && spacing !== undefined)
    return [measure('weight/area', weightOfPieces, piece.left, piece.right, spacing, weighs)];
  if (weighs?.dimension === 'weight/volume' && depth !== undefined) return [measure('weight/area', weightDeep, depth, weighs)];
  if (!isThin(goods)) unknown.push(goods.name);
  return [];
}
