// The colouring file is fresh, and colours the language as an editor without a server shows it.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { textmateGrammar } from '#grammar/textmate/build';

const FILE = join(import.meta.dirname, '../../../grammar/textmate/screed.tmLanguage.json');

test('the colouring file is what the token rows and the vocabulary give', async () => {
  await expect(textmateGrammar()).toMatchFileSnapshot(FILE);
});

/** Each token of the text with its innermost scope, blanks left out. */
async function colours(text: string): Promise<readonly string[]> {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await loadWASM(new Uint8Array(readFileSync(wasm)).buffer);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async () => textmate.parseRawGrammar(textmateGrammar(), 'screed.tmLanguage.json'),
  });
  const grammar = await registry.loadGrammar('source.screed');
  let stack = textmate.INITIAL;
  const seen: string[] = [];
  for (const line of text.split('\n')) {
    const { tokens, ruleStack } = grammar!.tokenizeLine(line, stack);
    stack = ruleStack;
    for (const token of tokens) {
      const letters = line.slice(token.startIndex, token.endIndex);
      const scope = token.scopes.at(-1)!.replace('.screed', '');
      if (letters.trim() !== '') seen.push(`${letters.trim()} ${scope}`);
    }
  }
  return seen;
}

test('a cottage in colours', async () => {
  const text = [
    'plan larkspur "Larkspur cottage"  # a cottage',
    '  start        2027-04-05',
    '  frost        30"',
    '  workweek     mon-fri 7:00-15:30',
    '  closed       2027-07-02..2027-07-06',
    '  contingency  10%',
    'room living on main',
    `  size     16'-0" x 27'-1"`,
    '  windows  3 w-3050 in south',
    '  layer stud 2x6 at 16" oc, filled with r21-batt',
    'trade concrete crew of 3 at $58/h',
    'phase ground in order after permit-issued',
    '  task footings does pour-footings after stem + 2 days',
  ].join('\n');
  expect(await colours(text)).toEqual([
    'plan storage.type',
    'larkspur entity.name',
    '"Larkspur cottage" string.quoted.double',
    '# a cottage comment.line.number-sign',
    'start support.type.property-name',
    '2027-04-05 constant.numeric.date',
    'frost support.type.property-name',
    '30" constant.numeric.length',
    'workweek support.type.property-name',
    'mon-fri constant.language.weekday',
    '7:00 constant.numeric.ratio',
    '- source',
    '15:30 constant.numeric.ratio',
    'closed support.type.property-name',
    '2027-07-02 constant.numeric.date',
    '.. keyword.operator',
    '2027-07-06 constant.numeric.date',
    'contingency support.type.property-name',
    '10 constant.numeric',
    '% keyword.other.unit',
    'room storage.type',
    'living entity.name',
    'on keyword.control',
    'main variable.other',
    'size support.type.property-name',
    `16'-0" constant.numeric.length`,
    'x keyword.operator',
    `27'-1" constant.numeric.length`,
    'windows support.type.property-name',
    '3 constant.numeric',
    'w-3050 variable.other',
    'in keyword.control',
    'south variable.other',
    'layer support.type.property-name',
    'stud variable.other',
    '2x6 constant.numeric.size',
    'at keyword.control',
    '16" constant.numeric.length',
    'oc variable.other',
    ', punctuation.separator',
    'filled variable.other',
    'with keyword.control',
    'r21-batt variable.other',
    'trade storage.type',
    'concrete entity.name',
    'crew variable.other',
    'of keyword.control',
    '3 constant.numeric',
    'at keyword.control',
    '$58/h constant.numeric.money',
    'phase storage.type',
    'ground entity.name',
    'in keyword.control',
    'order variable.other',
    'after keyword.control',
    'permit-issued variable.other',
    'task storage.type',
    'footings entity.name',
    'does keyword.control',
    'pour-footings variable.other',
    'after keyword.control',
    'stem variable.other',
    '+ keyword.operator',
    '2 constant.numeric',
    'days keyword.other.unit',
  ]);
});
