// Units: exact factors, readings of unit words, and how quantities print.
import { expect, test } from 'vitest';
import { FOOT, INCH, METRE, MILLIMETRE } from '#kit/dimension';
import { dimensionOf, formatQuantity, fromBase, readUnit, toBase, usualSpelling } from '#kit/units';
import { UNITS } from '#kit/units/table';
import { degreesOf, tangent } from '#kit/units/tangent';

test.each([
  ['in', 25.4, 'mm'],
  ['ft', 304.8, 'mm'],
  ['mil', 0.0254, 'mm'],
  ['sf', 0.09290304, 'm2'],
  ['square', 9.290304, 'm2'],
  ['acre', 43_560, 'sf'],
  ['cy', 0.764554857984, 'm3'],
  ['gal', 3.785411784, 'l'],
  ['bf', 1 / 12, 'cf'],
  ['lb', 0.45359237, 'kg'],
  ['ton', 907.18474, 'kg'],
  ['cfm', 0.4719474432, 'l/s'],
  ['gpm', 0.0630901964, 'l/s'],
  ['psi', 6894.757, 'Pa'],
  ['psf', 47.88026, 'Pa'],
  ['hp', 745.69987, 'W'],
  ['Btu/h', 0.29307107, 'W'],
  ['R', 0.1761101837, 'RSI'],
  ['Btu/hft2F', 5.678263, 'U'],
])('NIST Special Publication 811 (2008), appendix B, values from memory: 1 %s is %d %s', (unit, amount, other) => {
  expect(fromBase(toBase(1, unit)!, other)).toBeCloseTo(amount, amount > 1000 ? 3 : 5);
});

test('every unit word is read as its own unit, and no spelling stands for two', () => {
  const seen = new Map<string, string>();
  for (const unit of UNITS) {
    for (const word of [...unit.words, ...(unit.also ?? [])]) {
      expect(seen.get(word), word).toBeUndefined();
      seen.set(word, unit.unit);
      expect(readUnit(word)?.unit).toBe(unit.unit);
    }
  }
});

test('the case of a unit word matters only where it tells units apart', () => {
  expect(readUnit('SF')?.unit).toBe('sf');
  expect(readUnit('W')?.unit).toBe('W');
  expect(readUnit('w')?.unit).toBe('w');
  expect(readUnit('M')).toBeUndefined();
  expect(readUnit('mPa')).toBeUndefined();
  expect(usualSpelling('SF')).toBe('sf');
  expect(usualSpelling('sq ft')).toBe('sf');
  expect(usualSpelling('Feet')).toBe('feet');
  expect(usualSpelling('feet')).toBeUndefined();
});

test('rates are a unit over a unit; a counting word leaves the dimension alone', () => {
  expect(dimensionOf('$/sf')).toBe('money/area');
  expect(dimensionOf('h/cy')).toBe('time/volume');
  expect(dimensionOf('$/sheet')).toBe('money');
  expect(dimensionOf('in/ft')).toBe('slope');
  expect(toBase(0.25, 'in/ft')).toBe(1 / 48);
  expect(toBase(4.2, '$/sf')).toBe(420 / (FOOT * FOOT));
});

test('degrees: the tangent by series, and back', () => {
  expect(tangent(45)).toBeCloseTo(1, 14);
  expect(tangent(7)).toBeCloseTo(0.12278456, 8);
  expect(tangent(26.56505117707799)).toBeCloseTo(0.5, 14);
  expect(tangent(0)).toBe(0);
  expect(tangent(-30)).toBeCloseTo(-0.57735027, 8);
  expect(degreesOf(tangent(33.7))).toBeCloseTo(33.7, 9);
});

test.each([
  [150.5 * INCH, 'length', undefined, 'feet', `12'-6 1/2"`],
  [9 * INCH, 'length', undefined, 'feet', '9"'],
  [28 * FOOT, 'length', undefined, 'feet', `28'-0"`],
  [28 * FOOT + INCH / 2, 'length', undefined, 'feet', `28'-0 1/2"`],
  [INCH / 64, 'length', undefined, 'feet', '1/64"'],
  [12 * INCH + INCH / 64, 'length', undefined, 'feet', `1'-0 1/64"`],
  [0, 'length', undefined, 'feet', '0"'],
  [-1.5 * INCH, 'length', undefined, 'feet', '-1 1/2"'],
  [-13 * INCH, 'length', undefined, 'feet', `-1'-1"`],
  [11.99 * INCH, 'length', undefined, 'feet', `1'-0"`],
  [28 * FOOT, 'length', 'ft', 'feet', `28'`],
  [(104 + 5 / 8) * INCH, 'length', 'in', 'feet', '104 5/8"'],
  [0.006 * INCH, 'length', 'mil', 'feet', '6 mil'],
  [1682.16 * FOOT, 'length', 'lf', 'feet', '1,682.2 lf'],
  [900 * MILLIMETRE, 'length', undefined, 'metric', '900 mm'],
  [9.6 * METRE, 'length', undefined, 'metric', '9.6 m'],
  [5605 * MILLIMETRE, 'length', undefined, 'metric', '5,605 mm'],
  [433.3333 * FOOT * FOOT, 'area', undefined, 'feet', '433.3 sf'],
  [1250 * FOOT * FOOT, 'area', 'square', 'feet', '12.5 squares'],
  [100 * FOOT * FOOT, 'area', 'square', 'feet', '1 square'],
  [57.6 * METRE * METRE, 'area', undefined, 'metric', '57.6 m2'],
  [1.2474 * METRE * METRE * METRE, 'volume', undefined, 'metric', '1.25 m3'],
  [27 * FOOT * FOOT * FOOT * 4.125, 'volume', undefined, 'feet', '4.13 cy'],
  [123_456, 'money', undefined, 'feet', '$1,234.56'],
  [-850_000, 'money', '€', 'metric', '-€8,500.00'],
  [420 / FOOT / FOOT, 'money/area', '$/sf', 'feet', '$4.20/sf'],
  [3.85, 'money', '$', 'feet', '$0.04'],
  [100, 'money', 'kr', 'metric', 'kr 1.00'],
  [0.385 / FOOT, 'money/length', '$/lf', 'feet', '$0.0039/lf'],
  [1420, 'money', '$/sheet', 'feet', '$14.20/sheet'],
  [0.1, 'number', '%', 'feet', '10%'],
  [1234.5, 'number', undefined, 'feet', '1,234.5'],
  [0.5, 'slope', undefined, 'feet', '6:12'],
  [1 / 48, 'slope', 'in/ft', 'feet', '1/4" per foot'],
  [0.02, 'slope', undefined, 'metric', '2%'],
  [0.12278456090290459, 'slope', 'deg', 'metric', '7 deg'],
  [156, 'time', undefined, 'feet', '2.6 h'],
  [1440, 'time', 'd', 'feet', '3d'],
  [1440, 'time', 'days', 'feet', '1 day'],
  [20160, 'time', 'weeks', 'feet', '2 weeks'],
  [40 / 9, 'temperature', undefined, 'feet', '40 F'],
  [5, 'temperature', undefined, 'metric', '5 C'],
  [9000, 'power', undefined, 'metric', '9 kW'],
  [80 * 0.4719474432, 'flow', undefined, 'feet', '80 cfm'],
  [21 * 0.17611018, 'resistance', undefined, 'feet', 'R-21'],
  [0.28 * 5.678263, 'conductance', undefined, 'feet', 'U 0.28'],
  [0.045 * 5.678263, 'conductance', undefined, 'feet', 'U 0.045'],
  [0.28 * 5.678263, 'conductance', undefined, 'metric', 'U 1.59 W/m2K'],
  [Number.NaN, 'length', undefined, 'feet', '?'],
] as const)('%d of %s in %s prints', (value, dimension, unit, system, printed) => {
  expect(formatQuantity(unit === undefined ? { value, dimension } : { value, dimension, unit }, system)).toBe(printed);
});
