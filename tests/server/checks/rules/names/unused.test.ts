// Things that are declared and used by nothing.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'names/unused';

test.each([
  ['let clear = 8' + "'", 'value "clear"'],
  [`window w-3050 3' x 5'`, 'window "w-3050"'],
  [`door d-2868 2'-8" x 6'-8"`, 'door "d-2868"'],
  ['assembly mine for wall\n  layer housewrap', 'assembly "mine"'],
  ['trade framing crew of 2', 'trade "framing"'],
  ['supplier yard', 'supplier "yard"'],
  ['machine crane at $185/h', 'machine "crane"'],
  ['firm ruiz', 'firm "ruiz"'],
])('%s', (line, what) => {
  expect(checked(`${line}\n`).messages(CODE)[0]).toMatch(new RegExp(`^The ${what} is used by nothing`));
});

test('each of them used', () => {
  const plan = checked(`
    let clear = 8'
    level main
      height clear
      walls mine
    assembly mine for wall
      layer housewrap
    window w-3050 3' x 5'
    door d-2868 2'-8" x 6'-8"
    room bed on main
      windows 1 w-3050
      closet 6' x 2' in south, 1 d-2868
    trade framing crew of 2 at $50/h
    supplier yard
    machine crane at $185/h
    machine toilet at $145
      stands from lift to look
    task lift takes 1d by framing, needs crane 4h
    price housewrap $165/roll from yard
    trade city
    inspection look of lift by city
    firm ruiz
    paid ruiz $100 on 2027-04-05
  `);
  expect(plan.messages(CODE)).toEqual([]);
});

test('a price does not put a window into the house, and what a firm does puts no trade to work', () => {
  const plan = checked(`window w-3050 3' x 5'\nprice w-3050 $612 each\ntrade framing crew of 2\nfirm rivers does framing\n`);
  expect(plan.messages(CODE).map((message) => message.split(' is used')[0])).toEqual([
    'The window "w-3050"',
    'The trade "framing"',
  ]);
});

test('a row of the library that the plan overrides is meant for those who use it', () => {
  expect(checked('assembly int-2x4 for partition\n  layer drywall 5/8"\n').messages(CODE)).toEqual([]);
});
