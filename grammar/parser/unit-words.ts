// The unit after a number: glued to it or one blank behind, spelled in one word or in two, if the letters there are one.
import { addTo } from '#kit/gathered';
import { readUnit, usualSpelling } from '#kit/units';
import { UNITS, type Unit } from '#kit/units/table';
import { endsHere, isBlank, isLetter, isWordPart, matchAt } from './reading.ts';

export interface UnitWord {
  readonly unit: Unit;
  readonly to: number;
  /** As the formatter writes it. */
  readonly tidy: string;
}

/** The unit that follows a number ending at `at`. `counts`: the number is whole and may count what comes. */
export function scanUnit(text: string, at: number, counts: boolean): UnitWord | undefined {
  const spaced = isBlank(text.charCodeAt(at));
  const from = spaced ? at + 1 : at;
  const found = scanUnitWord(text, from);
  if (found === undefined) return undefined;
  const word = text.slice(from, found.to);
  if (word.length === 1 && spaced && !ALONE.has(word)) return undefined;
  // 3d-6d is a range written wrong, but in "1 w-3050" the hyphen belongs to a name.
  if (spaced && text.charCodeAt(found.to) === 45 && isWordPart(text.charCodeAt(found.to + 1))) return undefined;
  if (word === 'in' && spaced && !endsInches(text, found.to)) return undefined;
  if (found.unit.unit === 'min' && text.charAt(found.to) === '(') return undefined;
  if (word === 'square' && counts && matchAt(ENDS_CLAUSE, text, found.to) === undefined && !ONE_SQUARE.test(text.slice(0, at)))
    return undefined;
  return found;
}

/** The unit word that begins at `from`. */
export function scanUnitWord(text: string, from: number): UnitWord | undefined {
  const code = text.charCodeAt(from);
  if (!isLetter(code) && code !== 0xb0) return undefined;
  for (const spelling of LONG.get(text.charAt(from).toLowerCase()) ?? []) {
    const to = from + spelling.length;
    if (text.slice(from, to).toLowerCase() !== spelling.toLowerCase() || !ends(text, to)) continue;
    const unit = readUnit(spelling) as Unit;
    return { unit, to, tidy: usualSpelling(spelling) ?? spelling };
  }
  const word = matchAt(WORD, text, from)?.[0];
  if (word === undefined || !endsHere(text, from + word.length)) return undefined;
  const unit = readUnit(word);
  return unit === undefined ? undefined : { unit, to: from + word.length, tidy: usualSpelling(word) ?? word };
}

/** Whether an "in" standing alone ends here as inches: before x, oc, a comma or the end it cannot mean "inside". */
function endsInches(text: string, at: number): boolean {
  return matchAt(AFTER_INCHES, text, at) !== undefined;
}

function ends(text: string, at: number): boolean {
  return endsHere(text, at) && !(text.charCodeAt(at - 1) === 46 && text.charCodeAt(at) === 46);
}

// Single letters that are units with a blank before them too; the others are too easily words or names.
const ALONE: ReadonlySet<string> = new Set(['m', 'h', 'd', 'w', 'l', 't', 'A', 'V', 'W', 'F', 'C']);
const WORD = /[A-Za-z°][A-Za-z]*[23²³]?/y;
const AFTER_INCHES = /\s*(?:$|[,)=+*/-]|\.\.|#\s|[x×X](?![\p{L}\p{N}_-])|o\.?c\b|@)/iuy;
const ENDS_CLAUSE = /\s*(?:$|[,)/]|per\b|#\s)/y;
const ONE_SQUARE = /(?:^|\s)1$/;

// Spellings of more than letters, longest first, by their first letter.
const LONG: ReadonlyMap<string, readonly string[]> = byFirstLetter(
  UNITS.flatMap((unit) => [...unit.words, ...(unit.also ?? [])]).filter((word) => /[^A-Za-z23²³]/.test(word) && word !== '%'),
);

function byFirstLetter(spellings: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const spelling of [...spellings].sort((a, b) => b.length - a.length)) {
    const letter = spelling.charAt(0).toLowerCase();
    addTo(groups, letter, spelling);
  }
  return groups;
}
