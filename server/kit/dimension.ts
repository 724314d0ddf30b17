// What sort of thing a number measures, and what comes of multiplying and dividing such things.
// Base units: length 1/320 mm (so 1/64 inch and 0.1 mm are whole), area its square, volume its cube; weight kg;
// money cents; time minutes; temperature °C; slope rise over run; power W; current A; voltage V; flow litres per second;
// pressure Pa; speed metres per second; resistance m²K/W; conductance W/m²K;
// heat transfer W/K; number 1.

export type Base =
  | 'number'
  | 'length'
  | 'area'
  | 'volume'
  | 'weight'
  | 'money'
  | 'time'
  | 'temperature'
  | 'slope'
  | 'power'
  | 'current'
  | 'voltage'
  | 'flow'
  | 'pressure'
  | 'speed'
  | 'resistance'
  | 'conductance'
  | 'transfer';
/** 'area', or a rate such as 'money/area'. */
export type Dimension = Base | `${Base}/${Base}`;

/** Base units in one inch and one millimetre. */
export const INCH = 8128;
export const MILLIMETRE = 320;
export const FOOT = 12 * INCH;
export const METRE = 1000 * MILLIMETRE;

const POWERS: readonly Base[] = ['number', 'length', 'area', 'volume'];

/** The dimension of a product, or undefined where the product means nothing (money × money). */
export function timesDimension(a: Dimension, b: Dimension): Dimension | undefined {
  const [aTop, aBottom] = parts(a);
  const [bTop, bBottom] = parts(b);
  // Cancel first: $/sf × sf.
  if (aBottom !== 'number' && bBottom === 'number') {
    const rest = overBase(bTop, aBottom);
    if (rest !== undefined) return isRate(rest) ? undefined : timesBase(aTop, rest as Base);
  }
  if (bBottom !== 'number' && aBottom === 'number') return timesDimension(b, a);
  const top = timesBase(aTop, bTop);
  const bottom = timesBase(aBottom, bBottom);
  return top !== undefined && bottom !== undefined ? rate(top, bottom) : undefined;
}

/** The dimension of a quotient, or undefined where it means nothing. */
export function overDimension(a: Dimension, b: Dimension): Dimension | undefined {
  if (a === b) return 'number';
  const [bTop, bBottom] = parts(b);
  const [aTop, aBottom] = parts(a);
  if (bBottom === 'number' && aBottom === 'number') return overBase(aTop, bTop);
  return timesDimension(a, rate(bBottom, bTop));
}

function parts(dimension: Dimension): readonly [Base, Base] {
  const slash = dimension.indexOf('/');
  return slash < 0 ? [dimension as Base, 'number'] : [dimension.slice(0, slash) as Base, dimension.slice(slash + 1) as Base];
}

function rate(top: Base, bottom: Base): Dimension {
  if (bottom === 'number') return top;
  return top === bottom ? 'number' : `${top}/${bottom}`;
}

function isRate(dimension: Dimension): boolean {
  return dimension.includes('/');
}

function timesBase(a: Base, b: Base): Base | undefined {
  if (a === 'number') return b;
  if (b === 'number') return a;
  if ((a === 'current' && b === 'voltage') || (a === 'voltage' && b === 'current')) return 'power';
  const power = POWERS.indexOf(a) + POWERS.indexOf(b);
  return POWERS.includes(a) && POWERS.includes(b) ? POWERS[power] : undefined;
}

function overBase(a: Base, b: Base): Dimension | undefined {
  if (b === 'number') return a;
  if (a === b) return 'number';
  if (POWERS.includes(a) && POWERS.includes(b)) {
    const power = POWERS.indexOf(a) - POWERS.indexOf(b);
    return power >= 0 ? POWERS[power] : rate('number', POWERS[-power] as Base);
  }
  // 2,400 W ÷ 240 V are 10 A.
  if (a === 'power' && b === 'voltage') return 'current';
  if (a === 'power' && b === 'current') return 'voltage';
  return rate(a, b);
}
