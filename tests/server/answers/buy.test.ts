// The purchase list: who sells what, which delivery brings it, by when it must be ordered, what comes without being bought;
// and it adds up to what the materials cost.
import { describe, expect, test } from 'vitest';
import { buyAnswer, buySheet } from '#answers/buy-json';
import { buyTable } from '#answers/buy-table';
import { purchaseList } from '#answers/purchase-list';
import { sheetCells } from '#answers/sheet';
import { countedLines } from '#answers/takeoff-lines';
import { viewSample, viewText } from './plans.ts';

describe.each([
  ['cottage', 'plan.screed'],
  ['shed', 'shed.screed'],
  ['panel-cabin', 'cabin.screed'],
])('%s', (sample, root) => {
  const view = viewSample(sample, root);
  const groups = purchaseList(view);

  test('adds up to the cost of materials, to the cent', () => {
    const materials = view.plan.budget.lines.filter(({ kind }) => kind === 'material');
    expect(buyAnswer(view).cents).toBe(materials.reduce((sum, { cents }) => sum + cents, 0));
  });

  test('every line of goods that counts stands in it once, and no work', () => {
    const listed = groups.flatMap(({ lines }) => lines.flatMap(({ purchases }) => purchases.flatMap((each) => each.lines)));
    const goods = countedLines(view).filter((line) => line.goods !== undefined && line.goods.of?.kind !== 'item');
    expect(new Set(listed).size).toBe(listed.length);
    expect(new Set(listed)).toEqual(new Set(goods));
  });

  test('an item stands once in a group', () => {
    for (const { lines } of groups) expect(new Set(lines.map(({ item }) => item)).size).toBe(lines.length);
  });

  test('no part of a package is bought', () => {
    for (const { lines } of groups)
      for (const { purchases } of lines)
        for (const { item, bought } of purchases)
          if (bought.dimension === 'number') expect(Number.isInteger(bought.value), item).toBe(true);
  });
});

/** A floor with its joists, delivered; the plan begins on a Monday. */
const floor = (delivery: string, more = '') => `
  plan p
    start    2027-03-01
    workweek mon-fri 8h
  level main
    footprint 12' x 20'
    floor     deck
    joists    run north-south
  assembly deck for floor
    layer subfloor 23/32"
    layer joist 2x10 at 16" oc
  supplier yard "The yard"
    phone "555-0100"
  supplier barn "The barn"
  trade crew crew of 2 at $50/h
  task ready takes 20d by crew
  task joists does frame-floor by crew after ready
  task deck does lay-subfloor by crew after joists
  ${delivery}
  price joist 2x10 $2/lf from yard
  price subfloor 23/32" $30/sheet from barn
  ${more}
`;
const told = (text: string) =>
  buyTable(viewText(text)).rows.map((row) => (typeof row === 'string' ? row : row.filter((cell) => cell !== '').join(' | ')));

describe('who and when', () => {
  // Twenty working days from Monday, 1 March: the joists begin on Monday, 29 March; two weeks before is Monday, 15 March.
  test('a delivery says its lead, the last day to order and the day it is wanted', () => {
    const rows = told(floor('delivery lumber "Lumber" brings joist from yard, lead 2 weeks'));
    expect(rows).toContain('The yard, 555-0100');
    expect(rows.join('\n')).toContain(
      'Lumber (lumber): lead 2 weeks, order by Mon 15 Mar, planned for Mon 15 Mar, wanted by Mon 29 Mar',
    );
  });

  test('a day to order on that nobody works moves to the working day before', () =>
    expect(told(floor('delivery lumber brings joist from yard, lead 9 days')).join('\n')).toContain('order by Fri 19 Mar'));

  test('what is ordered has no day to order by', () => {
    const rows = told(floor('delivery lumber brings joist from yard, lead 2 weeks, ordered 2027-03-08')).join('\n');
    expect(rows).toContain('ordered Mon 8 Mar, planned for Mon 22 Mar');
    expect(rows).not.toContain('order by');
  });

  test('what no delivery brings stands apart, under whoever sells it', () => {
    const rows = told(floor('delivery lumber brings joist from yard, lead 2 weeks'));
    const at = rows.indexOf('The barn');
    expect(rows[at + 1]).toContain('No delivery brings these');
    expect(rows[at + 2]).toContain('Tongue-and-groove subfloor 23/32"');
  });

  test('a day that has passed says so', () => {
    const diary = 'progress 2027-03-20\n    ready started 2027-03-01, left 5d';
    expect(told(floor('delivery lumber brings joist from yard, lead 2 weeks', diary)).join('\n')).toContain(
      'order by Mon 15 Mar, a day that has passed',
    );
  });
});

describe('what is not bought', () => {
  const bid = `firm co "Joist and Co" does crew
  bid co-bid by co for crew $900 on 2027-02-01, accepted 2027-02-03, with materials
    includes frame-floor`;

  test('goods of an accepted bid with materials stand under it, without a cost', () => {
    const groups = purchaseList(viewText(floor('', bid)));
    const own = groups.find(({ way }) => way.kind === 'bid');
    expect(own?.lines.map(({ item, cents }) => [item, cents])).toContainEqual(['joist 2x10', undefined]);
    expect(
      groups.filter(({ way }) => way.kind === 'no-delivery').flatMap(({ lines }) => lines.map(({ item }) => item)),
    ).not.toContain('joist 2x10');
  });

  // Nails go into both works: for the deck alone they are rounded up for themselves.
  test('goods that a bid brings in part are rounded up for the rest alone', () => {
    const nails = purchaseList(viewText(floor('', `${bid}\n  price nail $64/box from yard`))).flatMap(({ way, lines }) =>
      lines.filter(({ item }) => item === 'nail').map(({ purchases, cents }) => [way.kind, purchases[0]!.bought.value, cents]),
    );
    expect(nails).toEqual([
      ['no-delivery', 1, 6400],
      ['bid', 1, undefined],
    ]);
  });

  test('what money is set aside for is told to be open', () =>
    expect(told(floor('', 'allowance planks $700\n    for subfloor')).join('\n')).toContain(
      'Not chosen yet: money is set aside (planks)',
    ));
});

// A room of 10' by 12' takes 120 sf of plank, with a tenth of waste 132 sf: 132 ÷ 23.6 = 5.6, six boxes of 141.6 sf.
describe('goods in boxes at a price by area', () => {
  const room = (price: string) => `
    plan p
      units feet
    level main
      footprint 12' x 14'
    room r on main
      size  10' x 12'
      floor plank
    price plank ${price}`;
  const plank = (price: string) => told(room(price)).find((row) => row.includes('Wood plank'));

  // 141.6 sf × $4 = $566.40
  test('whole boxes are paid', () => expect(plank('$4/sf')).toMatch(/6 boxes of 23\.6 sf \|.*\$566\.40$/));

  // 120 sf × $4 = $480
  test('a price for what is laid says so beside the boxes', () =>
    expect(plank('$4 per sf laid')).toMatch(/6 boxes of 23\.6 sf; paid as 120 sf laid \|.*\$480\.00$/));
});

test('what is not chosen yet is told so though a bid sets it; steps that bring no goods are not named', () => {
  const rows = buyTable(viewSample('cottage')).rows;
  const at = rows.findIndex((row) => typeof row === 'string' && row.includes('Not chosen yet'));
  expect(rows[at + 1]![0]).toContain('Recessed light');
  expect(rows).toContain('  Paid for with the work of water-trench, sewer-trench, storm-trench and appliances');
});

test('as comma-separated values every row has its supplier, dates as days and money in units', () => {
  const [heading, ...rows] = sheetCells(buySheet(viewText(floor('delivery lumber brings joist from yard, lead 2 weeks'))));
  const joist = rows.find((row) => row[heading!.indexOf('item')] === 'joist 2x10');
  const cell = (name: string) => joist![heading!.indexOf(name)];
  // 12 ft at 16 in are ten joists of 20 ft, at $2 a foot.
  expect(['supplier', 'delivery', 'quantity', 'on site by', 'order by', 'cost', 'currency'].map(cell)).toEqual([
    'yard',
    'lumber',
    10,
    '2027-03-29',
    '2027-03-15',
    400,
    'USD',
  ]);
});

test('a window is asked for by its size, a beam made to length by its pieces', () => {
  const labels = (sample: string, root: string) => buyTable(viewSample(sample, root)).rows.map((row) => [row].flat().join('|'));
  expect(labels('cottage', 'plan.screed').join('\n')).toContain(`Awning, 2'-6" x 3'-0"|1|`);
  expect(labels('panel-cabin', 'cabin.screed').join('\n')).toContain('Glued beam 115x315|28.8 m as 3 of 9.6 m|');
});
