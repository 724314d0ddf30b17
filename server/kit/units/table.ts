// Every unit once: how it is spelled, what it measures, its exact factor to the base units of kit/dimension.
// Factors follow from the definitions in NIST Special Publication 811 (2008), appendix B: inch 25.4 mm, pound
// 0.453 592 37 kg, US gallon 231 cubic inches, Btu (IT) 1055.055 852 62 J.
import { type Base, FOOT, INCH, METRE, MILLIMETRE } from '../dimension.ts';

export interface Unit {
  /** The canonical word, as literals carry it. */
  readonly unit: string;
  /** The word for one of them where that differs, as in '$/week'. */
  readonly one?: string;
  /** The word for several, where the canonical one is for one: '13 squares'. */
  readonly many?: string;
  readonly dimension: Base;
  /** Base units in one. */
  readonly factor: number;
  /** Degrees only: what stands at 0 °C. */
  readonly zero?: number;
  /** Which plans print in it; 'both' where it is the same everywhere. */
  readonly system: 'feet' | 'metric' | 'both';
  /** Spellings left as they are. Case does not matter, except for single letters. */
  readonly words: readonly string[];
  /** Spellings understood and rewritten to the first of `words`. */
  readonly also?: readonly string[];
}

const POUND = 0.453_592_37;
const GALLON = 231 * INCH * INCH * INCH;
const BTU = 1055.055_852_62;
const SQUARE_FOOT = 0.092_903_04;

/** Minutes in a working day and a working week where the plan says nothing else. */
export const WORKING_DAY = 8 * 60;
export const WORKING_WEEK = 5 * WORKING_DAY;
const DAY = 24 * 60;

export const UNITS: readonly Unit[] = [
  { unit: 'ft', dimension: 'length', factor: FOOT, system: 'feet', words: ['ft', 'feet', 'foot'], also: ['ft.'] },
  { unit: 'ft-in', dimension: 'length', factor: FOOT, system: 'feet', words: [] },
  { unit: 'in', dimension: 'length', factor: INCH, system: 'feet', words: ['in', 'inch', 'inches'], also: ['in.'] },
  {
    unit: 'lf',
    dimension: 'length',
    factor: FOOT,
    system: 'feet',
    words: ['lf'],
    also: ['lin ft', 'linear ft', 'linear feet', 'linear foot', 'lineal feet', 'l.f.', 'ln/ft', 'lft'],
  },
  { unit: 'mil', dimension: 'length', factor: INCH / 1000, system: 'feet', words: ['mil', 'mils'] },
  {
    unit: 'mm',
    dimension: 'length',
    factor: MILLIMETRE,
    system: 'metric',
    words: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  },
  {
    unit: 'cm',
    dimension: 'length',
    factor: 10 * MILLIMETRE,
    system: 'metric',
    words: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  },
  { unit: 'm', dimension: 'length', factor: METRE, system: 'metric', words: ['m', 'metre', 'metres', 'meter', 'meters'] },

  {
    unit: 'sf',
    dimension: 'area',
    factor: FOOT * FOOT,
    system: 'feet',
    words: ['sf'],
    also: ['sq ft', 'sqft', 'sq.ft.', 'sq. ft.', 's.f.', 'square feet', 'square foot', 'ft2', 'ft²', 'sft'],
  },
  {
    unit: 'sq in',
    dimension: 'area',
    factor: INCH * INCH,
    system: 'feet',
    words: ['sq in'],
    also: ['sq. in.', 'square inches', 'square inch', 'in2', 'in²'],
  },
  { unit: 'square', dimension: 'area', factor: 100 * FOOT * FOOT, system: 'feet', words: ['square', 'squares'], many: 'squares' },
  {
    unit: 'sy',
    dimension: 'area',
    factor: 9 * FOOT * FOOT,
    system: 'feet',
    words: ['sy'],
    also: ['sq yd', 'square yards', 'square yard', 'yd2', 'yd²'],
  },
  { unit: 'acre', dimension: 'area', factor: 43_560 * FOOT * FOOT, system: 'feet', words: ['acre', 'acres'] },
  {
    unit: 'm2',
    dimension: 'area',
    factor: METRE * METRE,
    system: 'metric',
    words: ['m2'],
    also: ['m²', 'sqm', 'sq m', 'square metres', 'square metre', 'square meters', 'square meter'],
  },
  { unit: 'mm2', dimension: 'area', factor: MILLIMETRE * MILLIMETRE, system: 'metric', words: ['mm2'], also: ['mm²'] },
  { unit: 'ha', dimension: 'area', factor: 10_000 * METRE * METRE, system: 'metric', words: ['ha', 'hectare', 'hectares'] },

  {
    unit: 'cy',
    dimension: 'volume',
    factor: 27 * FOOT * FOOT * FOOT,
    system: 'feet',
    words: ['cy'],
    also: ['cu yd', 'cuyd', 'c.y.', 'cubic yards', 'cubic yard', 'yd3', 'yd³'],
  },
  {
    unit: 'cf',
    dimension: 'volume',
    factor: FOOT * FOOT * FOOT,
    system: 'feet',
    words: ['cf'],
    also: ['cu ft', 'cuft', 'c.f.', 'cubic feet', 'cubic foot', 'ft3', 'ft³', 'cft'],
  },
  { unit: 'gal', dimension: 'volume', factor: GALLON, system: 'feet', words: ['gal', 'gallon', 'gallons'] },
  {
    unit: 'bf',
    dimension: 'volume',
    factor: 144 * INCH * INCH * INCH,
    system: 'feet',
    words: ['bf'],
    also: ['board feet', 'board foot', 'bdft', 'bd ft'],
  },
  {
    unit: 'm3',
    dimension: 'volume',
    factor: METRE * METRE * METRE,
    system: 'metric',
    words: ['m3'],
    also: ['m³', 'cum', 'cu m', 'cubic metres', 'cubic metre', 'cubic meters', 'cubic meter'],
  },
  {
    unit: 'l',
    dimension: 'volume',
    factor: (METRE * METRE * METRE) / 1000,
    system: 'metric',
    words: ['l', 'litre', 'litres', 'liter', 'liters'],
  },
  { unit: 'ml', dimension: 'volume', factor: (METRE * METRE * METRE) / 1_000_000, system: 'metric', words: ['ml'] },

  { unit: 'lb', dimension: 'weight', factor: POUND, system: 'feet', words: ['lb', 'lbs', 'pound', 'pounds'] },
  { unit: 'ton', dimension: 'weight', factor: 2000 * POUND, system: 'feet', words: ['ton', 'tons'] },
  { unit: 'kg', dimension: 'weight', factor: 1, system: 'metric', words: ['kg', 'kilogram', 'kilograms'] },
  { unit: 'g', dimension: 'weight', factor: 0.001, system: 'metric', words: ['gram', 'grams'] },
  { unit: 't', dimension: 'weight', factor: 1000, system: 'metric', words: ['t', 'tonne', 'tonnes'], also: ['mt'] },

  { unit: 'min', dimension: 'time', factor: 1, system: 'both', words: ['min', 'minute', 'minutes'] },
  { unit: 'h', dimension: 'time', factor: 60, system: 'both', words: ['h'], also: ['hr', 'hrs'] },
  { unit: 'hours', one: 'hour', dimension: 'time', factor: 60, system: 'both', words: ['hours', 'hour'] },
  {
    unit: 'd',
    dimension: 'time',
    factor: WORKING_DAY,
    system: 'both',
    words: ['d'],
    also: ['working days', 'working day', 'workdays', 'workday'],
  },
  { unit: 'w', dimension: 'time', factor: WORKING_WEEK, system: 'both', words: ['w'], also: ['working weeks', 'working week'] },
  {
    unit: 'days',
    one: 'day',
    dimension: 'time',
    factor: DAY,
    system: 'both',
    words: ['days', 'day'],
    also: ['calendar days', 'calendar day'],
  },
  { unit: 'weeks', one: 'week', dimension: 'time', factor: 7 * DAY, system: 'both', words: ['weeks', 'week', 'wk', 'wks'] },
  { unit: 'months', one: 'month', dimension: 'time', factor: 30 * DAY, system: 'both', words: ['months', 'month'] },
  { unit: 'years', one: 'year', dimension: 'time', factor: 365 * DAY, system: 'both', words: ['years', 'year'] },

  { unit: '%', dimension: 'number', factor: 0.01, system: 'both', words: ['%', 'percent'] },
  { unit: 'C', dimension: 'temperature', factor: 1, zero: 0, system: 'metric', words: ['C'], also: ['°C', 'deg C'] },
  { unit: 'F', dimension: 'temperature', factor: 5 / 9, zero: 32, system: 'feet', words: ['F'], also: ['°F', 'deg F'] },
  // Between two temperatures; computed, never written.
  { unit: 'K', dimension: 'temperature', factor: 1, system: 'metric', words: [] },
  { unit: 'degrees F', dimension: 'temperature', factor: 5 / 9, system: 'feet', words: [] },

  { unit: 'W', dimension: 'power', factor: 1, system: 'both', words: ['W', 'watt', 'watts'] },
  { unit: 'VA', dimension: 'power', factor: 1, system: 'both', words: ['VA'] },
  { unit: 'kVA', dimension: 'power', factor: 1000, system: 'both', words: ['kVA'] },
  { unit: 'kW', dimension: 'power', factor: 1000, system: 'both', words: ['kW'] },
  { unit: 'hp', dimension: 'power', factor: 550 * 0.3048 * POUND * 9.806_65, system: 'feet', words: ['hp'] },
  { unit: 'Btu/h', dimension: 'power', factor: BTU / 3600, system: 'feet', words: ['Btu/h'], also: ['btuh'] },
  { unit: 'A', dimension: 'current', factor: 1, system: 'both', words: ['A', 'amp', 'amps'] },
  { unit: 'V', dimension: 'voltage', factor: 1, system: 'both', words: ['V', 'volt', 'volts'] },
  { unit: 'cfm', dimension: 'flow', factor: (0.3048 * 0.3048 * 0.3048 * 1000) / 60, system: 'feet', words: ['cfm'] },
  { unit: 'gpm', dimension: 'flow', factor: 3.785_411_784 / 60, system: 'feet', words: ['gpm'] },
  { unit: 'l/s', dimension: 'flow', factor: 1, system: 'metric', words: ['l/s'] },
  { unit: 'm3/h', dimension: 'flow', factor: 1 / 3.6, system: 'metric', words: ['m3/h'], also: ['m³/h'] },
  { unit: 'psi', dimension: 'pressure', factor: (POUND * 9.806_65) / (0.0254 * 0.0254), system: 'feet', words: ['psi'] },
  { unit: 'psf', dimension: 'pressure', factor: (POUND * 9.806_65) / SQUARE_FOOT, system: 'feet', words: ['psf'] },
  { unit: 'Pa', dimension: 'pressure', factor: 1, system: 'metric', words: ['Pa'] },
  { unit: 'kPa', dimension: 'pressure', factor: 1000, system: 'metric', words: ['kPa'], also: ['kN/m2', 'kN/m²'] },
  { unit: 'MPa', dimension: 'pressure', factor: 1_000_000, system: 'metric', words: ['MPa'], also: ['N/mm2', 'N/mm²'] },
  { unit: 'mph', dimension: 'speed', factor: 0.447_04, system: 'feet', words: ['mph'] },
  { unit: 'km/h', dimension: 'speed', factor: 1 / 3.6, system: 'metric', words: ['km/h'] },
  // h·ft²·°F/Btu
  { unit: 'R', dimension: 'resistance', factor: (3600 * SQUARE_FOOT * 5) / 9 / BTU, system: 'feet', words: [] },
  { unit: 'RSI', dimension: 'resistance', factor: 1, system: 'metric', words: ['m2K/W'], also: ['m²K/W', 'm2·K/W', 'm²·K/W'] },
  {
    unit: 'U',
    dimension: 'conductance',
    factor: 1,
    system: 'metric',
    words: ['W/m2K'],
    also: ['W/m²K', 'W/(m2K)', 'W/(m²K)', 'W/m2·K', 'W/m²·K'],
  },
  {
    unit: 'Btu/hft2F',
    dimension: 'conductance',
    factor: BTU / ((3600 * SQUARE_FOOT * 5) / 9),
    system: 'feet',
    words: ['Btu/hft2F'],
  },
  // Heat through something for each degree; computed, never written.
  { unit: 'W/K', dimension: 'transfer', factor: 1, system: 'metric', words: ['W/K'] },
  { unit: 'Btu/hF', dimension: 'transfer', factor: BTU / ((3600 * 5) / 9), system: 'feet', words: ['Btu/hF'] },
];

/** Money signs and codes, with the unit that literals carry. All are counted in hundredths. */
export const CURRENCIES: ReadonlyMap<string, string> = new Map([
  ['$', '$'],
  ['USD', '$'],
  ['€', '€'],
  ['EUR', '€'],
  ['£', '£'],
  ['GBP', '£'],
  ['kr', 'kr'],
  ['CAD', 'CAD'],
  ['AUD', 'AUD'],
  ['NZD', 'NZD'],
  ['CHF', 'CHF'],
  ['NOK', 'NOK'],
  ['SEK', 'SEK'],
  ['DKK', 'DKK'],
]);
