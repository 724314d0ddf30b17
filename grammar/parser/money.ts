// Money: $4.20, $.20, 46 €/h, kr 450, EUR 12, $33K. Counted in cents; a price is an amount over a unit.
import { rateOf, unitNamed } from '#kit/units';
import { CURRENCIES, type Unit } from '#kit/units/table';
import type { Literal } from '../tree.ts';
import { type Magnitude, scanMagnitude } from './magnitudes.ts';
import { decimalComma, moneyPoint, numberTooLong } from './messages.ts';
import { scanBottom } from './rates.ts';
import { isBlank, isDigit, isLetter, literalScan, matchAt, type Scan, wrongScan } from './reading.ts';

/** A currency sign or code, with where it ends. */
export interface Currency {
  readonly unit: string;
  readonly to: number;
  /** As it is written before the number: '$', 'EUR '. Absent behind one. */
  readonly before?: string;
}

/** Money whose sign or code stands at `from`, before the number. */
export function scanMoney(text: string, from: number): Scan | undefined {
  const sign = matchAt(BEFORE, text, from);
  if (sign === undefined) return undefined;
  const word = sign[1] as string;
  const start = from + sign[0].length;
  const number = scanMagnitude(text, start);
  if (number === undefined) return undefined;
  return scanAmount(text, from, number, { unit: currency(word), to: number.to, before: word.length > 1 ? `${word} ` : word });
}

/** The currency that stands behind a number ending at `at`. */
export function currencyAfter(text: string, at: number): Currency | undefined {
  const blank = isBlank(text.charCodeAt(at)) ? at + 1 : at;
  const code = text.charCodeAt(blank);
  if (code === 34 || code === 39 || isDigit(code) || (isLetter(code) && !CURRENCY_STARTS.has(text.slice(blank, blank + 2))))
    return undefined;
  const found = matchAt(AFTER, text, at);
  return found === undefined ? undefined : { unit: currency(found[1] as string), to: at + found[0].length };
}

/** The rest of an amount of money: thousands, and what it is per. */
export function scanAmount(text: string, from: number, number: Magnitude, money: Currency): Scan {
  const thousands = money.before !== undefined ? matchAt(THOUSANDS, text, number.to) : undefined;
  const end = thousands === undefined ? money.to : number.to + 1;
  const bottom = scanBottom(text, end, false);
  const to = bottom?.to ?? end;
  const written = text.slice(from, to);
  if (number.tooLong) return wrongScan(numberTooLong, to, undefined);
  const rest = text.slice(end, to);
  const spelled = (amount: string): string =>
    money.before !== undefined ? `${money.before}${amount}${rest}` : `${amount}${text.slice(number.to, to)}`;
  if (number.comma === 'muddled') return wrongScan(decimalComma, to, undefined, written, undefined);
  if (number.comma === 'decimal') return wrongScan(decimalComma, to, spelled(number.tidy), written, spelled(number.tidy));
  if (bottom === undefined && THREE_DECIMALS.test(number.tidy)) {
    const grouped = spelled(number.tidy.replace('.', ','));
    return wrongScan(moneyPoint, to, grouped, written, grouped);
  }
  const over = thousands === undefined ? number.over : number.over * 1000;
  const amount = thousands === undefined ? number.tidy : groupedThousands(over / number.under);
  const tidy =
    money.before !== undefined
      ? `${money.before}${amount}${bottom?.tidy ?? ''}`
      : `${amount}${text.slice(number.to, end)}${bottom?.tidy ?? ''}`;
  return literalScan(
    priced((over * 100) / number.under, money.unit, bottom?.unit, bottom?.word),
    to,
    written === tidy ? undefined : tidy,
  );
}

function priced(cents: number, unit: string, bottom: Unit | undefined, word: string | undefined): Literal {
  if (word === undefined) return { kind: 'quantity', dimension: 'money', value: cents, unit };
  const rate = bottom === undefined ? undefined : rateOf(unitNamed(unit) as Unit, bottom);
  if (bottom === undefined || rate === undefined)
    return { kind: 'quantity', dimension: 'money', value: cents, unit: `${unit}/${word}` };
  return { kind: 'quantity', dimension: rate.dimension, value: cents / bottom.factor, unit: `${unit}/${word}` };
}

function currency(word: string): string {
  return CURRENCIES.get(word) ?? CURRENCIES.get(word.toLowerCase()) ?? word;
}

function groupedThousands(amount: number): string {
  const [whole, part] = String(amount).split('.');
  let text = '';
  for (let left = whole ?? ''; left !== ''; left = left.slice(0, -3))
    text = text === '' ? left.slice(-3) : `${left.slice(-3)},${text}`;
  return part === undefined ? text : `${text}.${part}`;
}

/** Whether money begins at `at`: a sign or code with a number behind it. */
export function moneyBegins(text: string, at: number): boolean {
  if (isLetter(text.charCodeAt(at)) && !CURRENCY_STARTS.has(text.slice(at, at + 2))) return false;
  const found = matchAt(BEFORE, text, at);
  if (found === undefined) return false;
  const next = at + found[0].length;
  return isDigit(text.charCodeAt(next)) || (text.charCodeAt(next) === 46 && isDigit(text.charCodeAt(next + 1)));
}

const CURRENCY_STARTS: ReadonlySet<string> = new Set([
  'kr',
  'Kr',
  'KR',
  'US',
  'EU',
  'GB',
  'CA',
  'AU',
  'NZ',
  'CH',
  'NO',
  'SE',
  'DK',
]);
const BEFORE = /(\$|€|£|(?:kr|Kr|KR|USD|EUR|GBP|CAD|AUD|NZD|CHF|NOK|SEK|DKK)(?=[ \d]))[ \u00a0]?/y;
const AFTER = /[ \u00a0]?((?:\$|€|£)(?! ?\.?\d)|(?:kr|Kr|KR|USD|EUR|GBP|CAD|AUD|NZD|CHF|NOK|SEK|DKK)(?![\p{L}\p{N}_-]))/uy;
const THOUSANDS = /[kK](?![\p{L}\p{N}_])/uy;
const THREE_DECIMALS = /^[1-9]\d{0,2}\.\d{3}$/;
