// Everything the reader has to say about the spelling of a line, in plain words: what is wrong, why, and what to write.
import { type FindingSort, findingSort } from '#kit/finding';

type Text = string;

export const decimalComma = findingSort<[written: Text, withPoint: Text | undefined]>({
  code: 'syntax/decimal-comma',
  severity: 'error',
  say: (written, withPoint) =>
    withPoint === undefined
      ? `"${written}" mixes commas and points, so it can be read as several numbers. A point marks decimals, a comma groups exactly three digits, and a comma with a blank separates.`
      : `"${written}" has a comma for a decimal mark. Write ${withPoint}; or, if these are two values, put a blank after the comma.`,
});

export const moneyPoint = findingSort<[written: Text, grouped: Text]>({
  code: 'syntax/money-point',
  severity: 'error',
  say: (written, grouped) =>
    `"${written}" can mean thousands or thousandths. Write ${grouped} for thousands; for a price in thousandths add a zero or say per what it is.`,
});

export const negativeMoney = findingSort<[amount: Text]>({
  code: 'syntax/negative-money',
  severity: 'error',
  say: (amount) => `A minus before money is easily overlooked in a list of prices. Write a credit as "less ${amount}".`,
});

export const hyphenRange = findingSort<[written: Text, range: Text]>({
  code: 'syntax/hyphen-range',
  severity: 'error',
  say: (written, range) =>
    `"${written}" looks like a range, but a hyphen also joins feet to inches and parts of a date. Write ${range}.`,
});

export const hyphenNumbers = findingSort<[written: Text, feet: Text, range: Text, difference: Text]>({
  code: 'syntax/hyphen-numbers',
  severity: 'error',
  say: (written, feet, range, difference) =>
    `"${written}" can be feet and inches, a range or a difference. Write ${feet}, ${range} or ${difference}.`,
});

export const feetMinusInches = findingSort<[joined: Text, difference: Text, spelled: Text]>({
  code: 'syntax/feet-minus-inches',
  severity: 'error',
  say: (joined, difference, spelled) =>
    `This is read as a difference (${difference}), but drawings write ${joined} the same way. Write ${joined} for the length, or ${spelled} for the difference.`,
});

export const inchesTooMany = findingSort<[written: Text, sum: Text]>({
  code: 'syntax/inches-too-many',
  severity: 'error',
  say: (written, sum) =>
    `"${written}" has twelve inches or more after the feet. Write ${sum}; or, if it is a range, put two points between.`,
});

export const sizeTypo = findingSort<[written: Text, feet: Text]>({
  code: 'syntax/two-inches',
  severity: 'error',
  say: (written, feet) => `"${written}" gives inches twice. If it means feet and inches, write ${feet}.`,
});

export const dateForm = findingSort<[written: Text, first: Text | undefined, second: Text | undefined]>({
  code: 'syntax/date-form',
  severity: 'error',
  say: (written, first, second) =>
    first === undefined
      ? `"${written}" is no date that can be read without doubt. Write dates year first: 2027-04-05.`
      : second === undefined
        ? `"${written}" is a date in another form. Write it year first: ${first}.`
        : `"${written}" means one day to one reader and another to the next. Write it year first: ${first} or ${second}.`,
});

export const noSuchDate = findingSort<[written: Text]>({
  code: 'syntax/no-such-date',
  severity: 'error',
  say: (written) => `There is no ${written} in the calendar. Dates are written year, month, day: 2027-04-05.`,
});

export const noSuchTime = findingSort<[written: Text]>({
  code: 'syntax/no-such-time',
  severity: 'error',
  say: (written) => `"${written}" is no time of day. Write hours to 24 and two digits of minutes: 7:00-15:30.`,
});

export const unknownUnit = findingSort<[written: Text, unit: Text, near: readonly Text[]]>({
  code: 'syntax/unknown-unit',
  severity: 'error',
  say: (written, unit, near) =>
    `"${written}" cannot be read: "${unit}" is no unit.${near.length === 0 ? '' : ` Is ${near.join(' or ')} meant?`} A name begins with a letter; a count is followed by a blank.`,
});

export const unitCase = findingSort<[written: Text, forms: Text]>({
  code: 'syntax/unit-case',
  severity: 'error',
  say: (written, forms) => `"${written}" has the wrong case for its unit. Write ${forms}.`,
});

export const yards = findingSort<[written: Text, cubic: Text, feet: Text]>({
  code: 'syntax/yards',
  severity: 'error',
  say: (written, cubic, feet) =>
    `"${written}" can be cubic yards of concrete or yards of length. Write ${cubic} for volume or ${feet} for length.`,
});

export const resistanceForm = findingSort<[written: Text]>({
  code: 'syntax/insulation-sum',
  severity: 'error',
  say: (written) =>
    `"${written}" names two layers of insulation at once, and they do not add up to one value. Give each its own: R-13 in the cavity, R-5 outside it.`,
});

export const openingForm = findingSort<[written: Text, spaced: Text]>({
  code: 'syntax/conductance-form',
  severity: 'error',
  say: (written, spaced) => `"${written}" reads as a name. Write ${spaced}.`,
});

export const numberTooLong = findingSort<[]>({
  code: 'syntax/number-too-long',
  severity: 'error',
  say: () => 'This number has more than fifteen digits, more than can be kept exactly. Write a shorter one.',
});

export const divisionByZero = findingSort<[written: Text]>({
  code: 'syntax/zero-below',
  severity: 'error',
  say: (written) => `"${written}" has nothing below the line of the fraction. Write the number that belongs there.`,
});

export const oddQuote = findingSort<[]>({
  code: 'syntax/odd-quote',
  severity: 'error',
  say: () =>
    'A quote is open to the end of the line. Outside text a quote straight after a digit is inches, elsewhere it opens text. Inside text write 24 in, or double the mark: "sill 24"" up".',
});

export const singleQuotes = findingSort<[content: Text]>({
  code: 'syntax/single-quotes',
  severity: 'error',
  say: (content) => `Text stands between double quotes, since a single one means feet. Write "${content}".`,
});

export const oddCharacter = findingSort<[name: Text, advice: Text]>({
  code: 'syntax/odd-character',
  severity: 'error',
  say: (name, advice) => `${name} means nothing here. ${advice}`,
});

export const hiddenCharacter = findingSort<[code: Text]>({
  code: 'syntax/hidden-character',
  severity: 'error',
  say: (code) => `A character that cannot be seen (${code}) stands here, perhaps from copied text. Delete it.`,
});

export const comparison = findingSort<[sign: Text, words: Text]>({
  code: 'syntax/comparison',
  severity: 'error',
  say: (sign, words) => `"${sign}" is not part of the language. Write "${words}".`,
});

export const blanksAround = findingSort<[operator: Text]>({
  code: 'syntax/blanks-around',
  severity: 'error',
  say: (operator) =>
    `A "${operator}" between values has a blank on both sides; without them it can belong to a name, a fraction or a size.`,
});

export const operatorAlone = findingSort<[operator: Text]>({
  code: 'syntax/operator-alone',
  severity: 'error',
  say: (operator) => `"${operator}" lacks a value on one side. Write one, or delete the sign.`,
});

export const nameSlash = findingSort<[name: Text]>({
  code: 'syntax/slash-in-name',
  severity: 'error',
  say: (name) => `"${name}" is read as one word. A division has blanks around the slash.`,
});

export const gluedMinus = findingSort<[written: Text, spaced: Text]>({
  code: 'syntax/glued-minus',
  severity: 'error',
  say: (written, spaced) => `In "${written}" the hyphen belongs to the name. For a difference put blanks around it: ${spaced}.`,
});

export const parenthesisAlone = findingSort<[mark: Text]>({
  code: 'syntax/parenthesis-alone',
  severity: 'error',
  say: (mark) => `"${mark}" has no partner on this line. Add it, or delete this one.`,
});

export const parenthesesAround = findingSort<[]>({
  code: 'syntax/parentheses-around',
  severity: 'error',
  say: () => 'Parentheses only group a calculation, as in (3 + 2) * 4". Leave them out here.',
});

export const unknownFunction = findingSort<[name: Text]>({
  code: 'syntax/unknown-function',
  severity: 'error',
  say: (name) => `"${name}" is no calculation. There are min(…), max(…) and roundup(…).`,
});

export const functionInputs = findingSort<[name: Text, one: Text]>({
  code: 'syntax/function-inputs',
  severity: 'error',
  say: (name, one) => `"${name}" takes ${one}, with commas between them, as in min(3', 36").`,
});

export const rangeKinds = findingSort<[]>({
  code: 'syntax/range-kinds',
  severity: 'error',
  say: () => 'The two ends of a range are of one kind, such as 3d..6d or 30"..54". Write both in the same sort of unit.',
});

export const lineTooLong = findingSort<[letters: number]>({
  code: 'syntax/line-too-long',
  severity: 'error',
  say: (letters) =>
    `This line has ${letters} characters. Lines over 10,000 are not read; break it up, one item a line below its property.`,
});

export const tooDeep = findingSort<[]>({
  code: 'syntax/too-deep',
  severity: 'error',
  say: () => 'More than 64 parentheses are open at once. The line is not read; name parts of the calculation with "let".',
});

export const nestedTooDeep = findingSort<[]>({
  code: 'syntax/nested-too-deep',
  severity: 'error',
  say: () => 'This line is indented by more than 128 characters. It is read as if by 128; start it further left.',
});

export const conflictMarker = findingSort<[]>({
  code: 'syntax/conflict-marker',
  severity: 'error',
  say: () =>
    'Version control left a conflict here: both versions stand in the file and both are counted. Keep one and delete the marks.',
});

export const mixedIndent = findingSort<[]>({
  code: 'syntax/mixed-indent',
  severity: 'error',
  say: () =>
    'Tabs and blanks are mixed in the indentation of this block, so it looks different in every editor. Use two blanks a level.',
});

export const oddOutdent = findingSort<[columns: number, expected: number]>({
  code: 'syntax/odd-outdent',
  severity: 'error',
  say: (columns, expected) =>
    `This line is indented by ${columns}, the lines beside it by ${expected}. It is read as one of them; indent it alike, or by more to put it below the one above.`,
});

export const indentedStart = findingSort<[]>({
  code: 'syntax/indented-start',
  severity: 'error',
  say: () => 'This line is indented, but there is nothing above it that it could belong to. Start it in the first column.',
});

/** Every sort above by its code: how a problem becomes a finding. */
export const syntaxSorts: ReadonlyMap<string, FindingSort<never>> = new Map(
  [
    decimalComma,
    moneyPoint,
    negativeMoney,
    hyphenRange,
    hyphenNumbers,
    feetMinusInches,
    inchesTooMany,
    sizeTypo,
    dateForm,
    noSuchDate,
    noSuchTime,
    unknownUnit,
    unitCase,
    yards,
    resistanceForm,
    openingForm,
    numberTooLong,
    divisionByZero,
    oddQuote,
    singleQuotes,
    oddCharacter,
    hiddenCharacter,
    comparison,
    blanksAround,
    operatorAlone,
    nameSlash,
    gluedMinus,
    parenthesisAlone,
    parenthesesAround,
    unknownFunction,
    functionInputs,
    rangeKinds,
    lineTooLong,
    tooDeep,
    nestedTooDeep,
    conflictMarker,
    mixedIndent,
    oddOutdent,
    indentedStart,
  ].map((sort) => [sort.code, sort as unknown as FindingSort<never>]),
);
