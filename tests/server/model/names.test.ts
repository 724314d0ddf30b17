// Names from text to text: whatever blocks came, went, moved or were renamed before, the tables are those of a fresh look.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { messageOf } from '#kit/finding';
import { slotKey } from '#kit/place';
import { noWork } from '#kit/work';
import { type Model, modelMemory, readLibrary, resolve } from '#model/resolve';
import { lineOf } from '#model/standing';

const library = readLibrary(
  [{ path: 'library.screed', text: 'material vinyl "Vinyl"\nmaterial pine also pitch-pine\n' }],
  noWork(),
);

/** Blocks of all sorts: named, nameless, repeated, holding others, unknown, faulty; some lines between them. */
const BLOCKS = [
  'plan p\n',
  "level main\n  height 8'\n",
  "room den on main\n  size 9' x 9'\n  floor vinyl\n",
  "room den on main\n  size 8' x 9'\n",
  "room hall on main\n  siez 9' x 9'\n",
  'room nook on mian\n',
  'material vinyl "Other vinyl" also lino\n',
  'item lino "Lino"\n',
  'assembly vinyl\n  board pine\n',
  'price vinyl $1/sf\n',
  'price pine $2/sf\n',
  'phase shell\n  task walls\n  task roof after walls\n',
  'phase inside\n  task walls\n  wibble\n',
  'task roof takes 2d\n',
  'inspection roof\n',
  'wibble on main\n',
  '! wrong\n',
  '# between\n',
  '\n',
  'room east on main\n  above hall\n',
  'room west on main\n',
  'task paint after walls\n',
  'milestone dry\n  when paint\n',
  '<<<<<<< mine\n',
  "let tall = 8'\n",
];

/** Plans to begin with: one where every name is said once, one with all of these. */
const ONCE = BLOCKS.filter((_, at) => [0, 1, 2, 6, 9, 10, 11, 17, 19, 20, 21, 22].includes(at));

const edits = fc.array(
  fc.record({ at: fc.nat(30), remove: fc.nat(3), insert: fc.array(fc.nat(BLOCKS.length - 1), { maxLength: 3 }) }),
  { minLength: 1, maxLength: 12 },
);

test('edited block by block', () => {
  fc.assert(
    fc.property(edits, fc.boolean(), (list, once) => {
      const blocks: string[] = once ? [...ONCE] : [...BLOCKS];
      const memory = modelMemory();
      for (const { at, remove, insert } of list) {
        blocks.splice(Math.min(at, blocks.length), remove, ...insert.map((each) => BLOCKS[each]!));
        const texts = { 'plan.screed': blocks.join('') };
        const kept = resolve('plan.screed', texts, library, memory, noWork());
        const fresh = resolve('plan.screed', texts, library, modelMemory(), noWork());
        expect(tables(kept.value)).toEqual(tables(fresh.value));
        const told = (found: (typeof kept)['findings'], model: Model) =>
          found.map((each) => `${lineOf(each.place, model)}:${each.place.spot.from} ${each.code} ${messageOf(each)}`);
        expect(told(kept.findings, kept.value)).toEqual(told(fresh.findings, fresh.value));
      }
    }),
    { numRuns: 300, seed: 20261125 },
  );
});

function tables({ names, files, list, rows }: Model): unknown {
  const keys = (slots: Iterable<{ file: string; kind: string; name: string; again: number }>) => [...slots].map(slotKey);
  return {
    declared: names.declared.map(({ slot, parent, declaration }) => [
      slotKey(slot),
      names.lineOf(slot),
      parent && slotKey(parent),
      declaration.key,
    ]),
    lines: files.map(({ lines, begins }) => [[...lines], [...begins]]),
    strays: files.flatMap(({ strays }) => strays.map(({ slot, line }) => [slotKey(slot), line])),
    first: [...names.first].map(([key, slot]) => [key, slotKey(slot)]),
    also: [...names.also].map(([name, slot]) => [name, slotKey(slot)]),
    order: [...names.order].map(([slot, at]) => [slotKey(slot), at]),
    byKind: [...names.byKind].map(([kind, slots]) => [kind, keys(slots)]).sort(),
    repeated: [...names.repeated].map(([slot, first]) => [slotKey(slot), slotKey(first)]),
    lists: (['room', 'task', 'material', 'price'] as const).map((kind) => keys(list(kind).map(({ slot }) => slot))),
    rows: keys(rows('material').map(({ slot }) => slot)),
  };
}
