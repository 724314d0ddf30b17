// Rules of order: held, by luck, broken; waits, scopes, conditions, reminders; what is done; what is told together.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

/** Two kinds of work and a rule between them, in words of their own. */
const own = (rule = '', more = ''): string => `
plan p
  start 2027-04-05
trade crew crew of 2 at $50/h
trade others crew of 2 at $50/h
work glue "Glue"
  scope in room
work clamp "Clamp"
  scope in room
rule glue-first "Clamped before glued"
  first glue
  then clamp
  severity error
  because "It falls apart."
  remedy "Glue first."
${rule}${more}`;
const CODE = 'sequence/glue-first';

/** What is told of that rule alone. */
function orders(text: string): ReturnType<typeof checked> {
  const plan = checked(text);
  const own = (lines: readonly string[]): readonly string[] => lines.filter((line) => line.includes(CODE));
  return { ...plan, told: own(plan.told), loud: own(plan.loud) };
}

describe('three outcomes', () => {
  test('held by a link', () => {
    expect(orders(own('', 'task a does glue takes 1d by crew\ntask b does clamp takes 1d by others after a\n')).told).toEqual([]);
  });

  test('held by a chain through others', () => {
    const plan = own(
      '',
      'task a does glue takes 1d by crew\ntask m takes 1d by crew after a\ntask b does clamp takes 1d by others after m\n',
    );
    expect(checked(plan).told).toEqual([]);
  });

  test('right by luck: the dates are right, nothing holds them', () => {
    const plan = orders(
      own(
        '',
        'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before 2027-04-12, to the end\n',
      ),
    );
    expect(plan.told).toEqual([`warning ${CODE} b`]);
    expect(plan.messages(CODE)).toEqual([
      '"b" (12 Apr) comes after "a" (5 Apr) only by luck: no chain of links holds it there, and more than 4 working days of slip would break it. It falls apart. Let "b" wait for "a".',
    ]);
  });

  test('slip is counted in the days of those who come first', () => {
    const slip = (works: string, day: string): string =>
      orders(
        own(
          '',
          `task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before ${day}, to the end\n`,
        ).replace('$50/h\n', `$50/h\n${works}`),
      ).messages(CODE)[0] ?? '';
    // Two hours are left of Monday, then three days of ten hours, and an hour before the others come: 33 of 10.
    expect(slip('  works mon-thu 7:00-17:00\n', '2027-04-12')).toContain('more than 3.3 working days of slip');
    expect(slip('', '2027-04-12')).toContain('more than 4 working days of slip');
    expect(slip('', '2027-04-06')).toContain('and any slip would break it.');
  });

  test('where one crew does both, a slip pushes both', () => {
    expect(
      orders(own('', 'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by crew, to the end\n')).messages(
        CODE,
      )[0],
    ).toContain(
      'only by luck: no chain of links holds it there, and another order of work of "crew", which does both, would break it.',
    );
  });

  test('a shared crew is luck', () => {
    expect(
      orders(own('', 'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by crew, to the end\n')).told,
    ).toEqual([`warning ${CODE} b`]);
  });

  test('broken: the dates are in the wrong order', () => {
    const plan = orders(
      own('', 'task a does glue takes 3d by crew, to the end\ntask b does clamp takes 1d by others, to the end\n'),
    );
    expect(plan.told).toEqual([`error ${CODE} b`]);
    expect(plan.messages(CODE)).toEqual(['"b" begins on 5 Apr, but "a" is done on 7 Apr. It falls apart. Glue first.']);
    expect(plan.plan.findings.find(({ code }) => code === CODE)?.related?.map(({ place }) => place.slot.name)).toEqual(['a']);
  });

  test('starting together holds nothing, and neither does a lead', () => {
    const linked = (link: string): string =>
      own('', `task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others ${link}, to the end\n`);
    expect(checked(linked('with a + 3d')).told).toEqual([`warning ${CODE} b`]);
    expect(checked(linked('after a')).told).toEqual([]);
  });

  test('the worst of several pairs is told, once for the later step', () => {
    const plan = orders(
      own(
        '',
        'task a does glue 50% takes 1d by crew, to the end\ntask c does glue 50% takes 4d by crew, to the end\ntask b does clamp takes 1d by others, to the end\n',
      ),
    );
    expect(plan.messages(CODE)).toHaveLength(1);
    expect(plan.messages(CODE)[0]).toContain('"c" is done on 9 Apr');
  });

  test('one step that does both has the order in its own hands', () => {
    expect(orders(own('', 'task a does glue, clamp takes 1d by crew\n')).told).toEqual([]);
  });

  test('luck is never worse than a warning, and a note stays a note', () => {
    const plan = (severity: string): readonly string[] =>
      orders(
        own(
          '',
          'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before 2027-04-12, to the end\n',
        ).replace('severity error', `severity ${severity}`),
      ).told;
    expect(plan('warning')).toEqual([`warning ${CODE} b`]);
    expect(plan('note')).toEqual([`note ${CODE} b`]);
  });

  test('the fix adds the link', () => {
    const steps = (words: string): string =>
      own(
        '',
        `task s takes 1d by crew\ntask a does glue takes 3d by crew, to the end\ntask b does clamp takes 1d by others${words}, to the end\n`,
      );
    expect(checked(steps('')).plan.findings.find(({ code }) => code === CODE)?.fixes).toMatchObject([
      { kind: 'append', text: ' also after a' },
    ]);
    expect(checked(steps(' after s')).plan.findings.find(({ code }) => code === CODE)?.fixes).toMatchObject([
      { kind: 'insert-after', text: ', a' },
    ]);
  });
});

describe('waits', () => {
  const plan = (wait: string, link: string, rest = ''): ReturnType<typeof checked> =>
    orders(own(`  wait ${wait}\n`, `task a does glue takes 1d by crew\n${rest}task b does clamp takes 1d by others ${link}\n`));

  test('must stand on the chain', () => {
    expect(plan('2 days', 'after a + 2 days').told).toEqual([]);
    expect(plan('24h', 'after a + 1 day').told).toEqual([]);
    expect(plan('2d', 'after a + 2d').told).toEqual([]);
    expect(plan('2 days', 'after a + 1 day').told).toEqual([`error ${CODE} b`]);
  });

  test('where the link holds the order but not the wait, that is what is told and mended', () => {
    const lucky = plan('24h', 'after a, not before 2027-04-12');
    expect(lucky.told).toEqual([`warning ${CODE} b`]);
    expect(lucky.messages(CODE)[0]).toBe(
      '"b" (12 Apr) waits for "a" (5 Apr), but that 24h pass in between is luck: no link asks for as much. It falls apart. Write "a + 24h".',
    );
    expect(lucky.plan.findings.find(({ code }) => code === CODE)?.fixes).toMatchObject([
      { kind: 'insert-after', text: ' + 24h' },
    ]);
  });

  test('waits add up along a chain, and work in between counts as it must pass', () => {
    expect(plan('3 days', 'after m + 2 days', 'task m takes 1d by crew after a + 1 day\n').told).toEqual([]);
    // Four days of work have three nights between them: more than 72 hours, less than 96.
    expect(plan('72h', 'after m', 'task m takes 4d by crew after a\n').told).toEqual([]);
    expect(plan('96h', 'after m', 'task m takes 4d by crew after a\n').loud).toEqual([`warning ${CODE} b`]);
  });

  test('a wait in working time is longer by the calendar than it says', () => {
    expect(plan('24h', 'after a + 2d').told.filter((line) => line.includes(CODE))).toEqual([]);
    expect(plan('4 days', 'after a + 2d').told.filter((line) => line.includes(CODE))).toHaveLength(1);
  });

  test('the missing wait is in the broken date, too', () => {
    const late = orders(
      own(
        '  wait 2 days\n',
        'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before 2027-04-06, to the end\n',
      ),
    );
    expect(late.messages(CODE)[0]).toContain('"b" begins on 6 Apr, but "a" is done on 5 Apr, and 2 days must pass.');
  });
});

describe('scopes', () => {
  const rooms = 'level main\nroom bath on main\nroom hall on main\n';
  const steps = (scope: string, first: string, then: string): ReturnType<typeof checked> =>
    orders(
      own(
        `  scope ${scope}\n`,
        `${rooms}task a does glue ${first} takes 3d by crew, to the end\ntask b does clamp ${then} takes 1d by others, to the end\n`,
      ),
    );

  test('same room: only rooms that both are in', () => {
    expect(steps('same room', 'in bath', 'in hall').told).toEqual([]);
    expect(steps('same room', 'in bath', 'in bath, hall').told).toEqual([`error ${CODE} b`]);
    expect(steps('same room', 'in bath', '').told).toEqual([`error ${CODE} b`]);
  });

  test('house: everywhere', () => {
    expect(steps('house', 'in bath', 'in hall').told).toEqual([`error ${CODE} b`]);
  });

  test('same element: rooms of one level meet on it; two trenches do not meet', () => {
    expect(steps('same element', 'in bath', 'on main').told).toEqual([`error ${CODE} b`]);
    const trenches = "trench water 10' long, 2' deep, 1' wide\ntrench sewer 10' long, 2' deep, 1' wide\n";
    const dug = (of: string): ReturnType<typeof checked> =>
      orders(
        own(
          '  scope same element\n',
          `${trenches}task a does glue of water takes 3d by crew, to the end\ntask b does clamp of ${of} takes 1d by others, to the end\n`,
        ),
      );
    expect(dug('sewer').told).toEqual([]);
    expect(dug('water').told).toEqual([`error ${CODE} b`]);
  });

  test('an inspection is where the steps are that it looks at', () => {
    const look = (at: string): ReturnType<typeof checked> =>
      orders(
        own(
          '  scope same room\n',
          `${rooms}task wet does glue in ${at} takes 3d by crew, to the end\ninspection glue-check of wet by others, to the end\ntask b does clamp in bath takes 1d by others, to the end\n`,
        ).replace('first glue\n', 'first glue-check\n'),
      );
    expect(look('hall').loud).toEqual([]);
    expect(look('bath').loud).toEqual([`error ${CODE} b`]);
  });

  test('what the take-off measures counts where the step says nothing', () => {
    const plan = checked(`
      plan p
        start 2027-04-05
      level main
      room bath on main
        size 5' x 8'
        wet 60 sf porcelain-tile over backer-board, tile-membrane
      room kitchen on main
        size 10' x 10'
        tile 32 sf porcelain-tile
      trade tile crew of 1 at $50/h
      trade others crew of 1 at $50/h
      task membrane does set-backer, lay-membrane takes 3d by tile
      inspection pan-test of membrane before bath-tile by others, after membrane + 24h
      task bath-tile does set-tile in bath takes 1d by tile, to the end
      task splash does set-tile in kitchen takes 1d by others, to the end
    `);
    expect(plan.told.filter((line) => line.includes('sequence/'))).toEqual([]);
  });

  test('buildings of one plan do not wait for each other', () => {
    const building = (name: string): string =>
      `level ${name}\nfoundation ${name}-base under ${name}\nroof ${name}-roof over ${name}\nroom ${name}-room on ${name}\n`;
    const both = `${building('cottage')}${building('garage')}`;
    const steps = (then: string): ReturnType<typeof checked> =>
      orders(
        own(
          '',
          `${both}task a does glue on cottage takes 3d by crew, to the end\ntask b does clamp on ${then} takes 1d by others, to the end\n`,
        ),
      );
    expect(steps('garage').loud.filter((line) => line.includes(CODE))).toEqual([]);
    expect(steps('cottage').loud.filter((line) => line.includes(CODE))).toEqual([`error ${CODE} b`]);
  });
});

describe('who stands on a side', () => {
  const steps = (first: string, lines: string): ReturnType<typeof checked> =>
    orders(
      own(
        '',
        `state stuck "Stuck: all glued"\n  made by glue\n${lines}task b does clamp takes 1d by others, to the end\n`,
      ).replace('first glue\n', `first ${first}\n`),
    );

  test('a state stands for every task that does one of its works', () => {
    expect(steps('stuck', 'task a does glue takes 3d by crew, to the end\n').told).toEqual([`error ${CODE} b`]);
  });

  test('a milestone named like the state counts as that side', () => {
    const plan = steps('stuck', 'task a takes 3d by crew\nmilestone stuck after a, to the end\n');
    expect(plan.told).toEqual([`error ${CODE} b`]);
  });

  test('so does a milestone, or a task without words on its work, named like a work', () => {
    expect(steps('glue', 'task a takes 3d by crew\nmilestone glue after a, to the end\n').told).toEqual([`error ${CODE} b`]);
    expect(steps('glue', 'task glue takes 3d by crew, to the end\n').told).toEqual([`error ${CODE} b`]);
  });

  test('an absent first side is silent for an order and an approval', () => {
    expect(steps('glue', '').told).toEqual([]);
    expect(orders(own('  relation hold\n', 'task b does clamp takes 1d by others, to the end\n')).told).toEqual([]);
  });
});

describe('conditions that last, and what is owed', () => {
  test('while: nobody sees to it, so there is a note, hazard first', () => {
    const plan = orders(
      own('  relation while\n', 'task b does clamp takes 1d by others\n').replace(
        '"It falls apart."',
        '"Falls: it falls apart on people."',
      ),
    );
    expect(plan.told).toEqual([`note ${CODE} b`]);
    expect(plan.messages(CODE)).toEqual(['Falls: it falls apart on people. No step of the plan sees to it for "b". Glue first.']);
  });

  test('while: a step that sees to it must come first like any other', () => {
    expect(
      orders(
        own(
          '  relation while\n',
          'task a does glue takes 3d by crew, to the end\ntask b does clamp takes 1d by others, to the end\n',
        ),
      ).told,
    ).toEqual([`error ${CODE} b`]);
    expect(
      orders(own('  relation while\n', 'task a does glue takes 3d by crew\ntask b does clamp takes 1d by others after a\n')).told,
    ).toEqual([]);
  });

  test('once: a note while nobody does it; an error once it comes too late; luck is enough', () => {
    const plan = (lines: string): readonly string[] => orders(own('  relation once\n', lines)).told;
    expect(plan('task b does clamp takes 1d by others\n')).toEqual([`note ${CODE} b`]);
    expect(
      plan(
        'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before 2027-04-12, to the end\n',
      ),
    ).toEqual([]);
    expect(plan('task a does glue takes 3d by crew, to the end\ntask b does clamp takes 1d by others, to the end\n')).toEqual([
      `error ${CODE} b`,
    ]);
  });

  test('what is done needs no reminder', () => {
    expect(
      orders(own('  relation while\n', 'task b does clamp takes 1d by others\nprogress 2027-04-09\n  b finished 2027-04-08\n'))
        .told,
    ).toEqual([]);
  });
});

describe('what is known of the house', () => {
  const steps = 'task a does glue takes 3d by crew, to the end\ntask b does clamp takes 1d by others, to the end\n';
  const foundation = (fill: string): string => `foundation base\n${fill}`;

  test('when: every line must hold', () => {
    expect(orders(own('  when any foundation\n', steps)).told).toEqual([]);
    expect(orders(own('  when any foundation\n', `${foundation('')}${steps}`)).told).toEqual([`error ${CODE} b`]);
  });

  test('unless: what nobody knows leaves the rule firing', () => {
    const rule = '  unless foundation.fill under 48"\n';
    expect(orders(own(rule, steps)).told).toEqual([`error ${CODE} b`]);
    expect(orders(own(rule, `${foundation('')}${steps}`)).told).toEqual([`error ${CODE} b`]);
    expect(orders(own(rule, `${foundation('  bottom 32" below grade\n')}${steps}`)).told).toEqual([]);
    expect(orders(own(rule, `${foundation('  bottom 60" below grade\n')}${steps}`)).told).toEqual([`error ${CODE} b`]);
  });

  test('unless: one deep foundation beside a shallow one keeps it firing, one without a depth does not', () => {
    const rule = '  unless foundation.fill under 48"\n';
    const two = (second: string): string => `foundation base\n  bottom 32" below grade\nfoundation cellar\n${second}${steps}`;
    expect(orders(own(rule, two('  bottom 60" below grade\n'))).told).toEqual([`error ${CODE} b`]);
    expect(orders(own(rule, two(''))).told).toEqual([]);
  });
});

describe('recorded work', () => {
  const steps =
    'task a does glue takes 1d by crew, to the end\ntask b does clamp takes 1d by others, not before 2027-04-26, to the end\n';
  const diary = (lines: string): readonly string[] => orders(own('', `${steps}progress 2027-04-16\n${lines}`)).loud;

  test('done in order is held', () => {
    expect(diary('  a finished 2027-04-07\n')).toEqual([]);
    expect(diary('  a finished 2027-04-07\n  b finished 2027-04-09\n')).toEqual([]);
    expect(diary('  a finished 2027-04-07\n  b started 2027-04-08\n')).toEqual([]);
  });

  test('done the wrong way round is broken, and stays so until it is accepted', () => {
    expect(diary('  b finished 2027-04-09\n')).toEqual([`error ${CODE} b`]);
    expect(diary('  a finished 2027-04-09\n  b started 2027-04-07\n')).toEqual([`error ${CODE} b`]);
  });

  test('not yet begun is still luck', () => expect(diary('')).toEqual([`warning ${CODE} b`]));

  test('what is done waits out its time', () => {
    const plan = (wait: string): readonly string[] =>
      orders(own(`  wait ${wait}\n`, `${steps}progress 2027-04-16\n  a finished 2027-04-14\n`)).loud;
    expect(plan('24h')).toEqual([]);
    expect(plan('7 days')).toEqual([`warning ${CODE} b`]);
  });
});

describe('together', () => {
  const many = (count: number): string =>
    Array.from({ length: count }, (_, at) => `task b${at} does clamp ${100 / count}% takes 1d by others, to the end\n`).join('');

  test('up to three are told one by one, more at the first', () => {
    const first = 'task a does glue takes 9d by crew, to the end\n';
    expect(orders(own('', first + many(2))).messages(CODE)).toHaveLength(2);
    const five = orders(own('', first + many(5)));
    expect(five.told).toEqual([`error ${CODE} b0`]);
    expect(five.messages(CODE)[0]).toMatch(/Glue first\. The same of "b1", "b2", "b3" and "b4"\.$/);
    expect(five.plan.findings.find(({ code }) => code === CODE)?.related?.map(({ place }) => place.slot.name)).toEqual([
      'a',
      'b1',
      'b2',
      'b3',
      'b4',
    ]);
  });

  test('one of them accepted is not among them', () => {
    const plan = orders(
      own(
        '',
        `task a does glue takes 9d by crew, to the end\n${many(5)
          .replace('task b2', 'task b2 "Two"')
          .replace(/(task b2 .*\n)/, `$1  accept ${CODE} "Screwed instead"\n`)}`,
      ),
    );
    expect(plan.told).toEqual([`error ${CODE} b0`]);
    expect(plan.messages(CODE)[0]).toMatch(/The same of "b1", "b3" and "b4"\.$/);
  });
});

test('a plan of its own may set a rule of the library aside', () => {
  const steps =
    'trade crew crew of 2 at $50/h\ntask felt does lay-underlayment takes 1d by crew, to the end\ntask board does hang-board takes 1d by crew, to the end\n';
  expect(checked(steps).told.filter((line) => line.includes('board-before-dry'))).toHaveLength(1);
  const gentler = checked(`${steps}rule board-before-dry\n  severity note\n`);
  expect(gentler.told).toContain('note sequence/board-before-dry board');
});
