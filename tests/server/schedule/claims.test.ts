// Who does what part of which work: whatever was typed before, each step has the shares of a fresh look, and a step whose
// shares are the same keeps its list.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse, emptyMemory, type Plan } from '#server/pipeline';
import { builtIn } from '#tests/support/built-in';

const library = builtIn();

const room = (name: string, size: string): string => `room ${name} on main
  size ${size}
  walls paint
  ceiling paint
`;

/** Parts of a plan, each with what may stand in its place. */
const PARTS: readonly (readonly string[])[] = [
  [
    `plan p
  start 2027-04-05
assembly lid for ceiling
  layer drywall 1/2"
assembly plain for wall
  layer drywall 1/2"
level main
  footprint 30' x 24'
  height 8'
  walls plain
  ceiling lid
`,
  ],
  [room('den', "9' x 9'"), room('den', "9' x 12'"), room('nook', "9' x 9'"), ''],
  [room('bath', "5' x 8'"), room('bath', "6' x 8'"), room('hall', "4' x 8'") + room('bath', "5' x 8'")],
  [room('loft', "8' x 8'"), ''],
  ['task a does hang-board in bath, den\n', 'task a does hang-board in den, bath, den\n', 'task a does hang-board\n', ''],
  [
    'task b does hang-board\n',
    'task b does hang-board except loft\n',
    'task b does hang-board 60%\n',
    'task b does hang-board 40 sf\n',
    '',
  ],
  ['task c does prime, tape-board in bath\n', 'task c does tape-board, prime on main\n', 'inspection c\n'],
  [
    'task d does paint-ceilings\n',
    'task d does paint-ceilings, hang-board coat 1\n',
    'task e does paint-ceilings in den coat 1\n',
  ],
  ['task f does tape-board, prime, paint-ceilings\n', 'task f does tape-board of den\n'],
];

const textOf = (choice: readonly number[]): string =>
  PARTS.map((variants, at) => variants[(choice[at] ?? 0) % variants.length]!).join('');

const look = (text: string, memory = emptyMemory()): Plan =>
  analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library }, memory);

function shares({ timeline }: Plan) {
  const told = (claims: readonly { readonly line: { readonly id: string }; readonly share: number }[]): readonly string[] =>
    claims.map(({ line, share }) => `${line.id} ${share}`);
  return {
    steps: timeline.steps.list.map((step, at) => [step.name, told(timeline.claims.byStep[at]!)]),
    works: [...timeline.claims.byWork].map(([work, { tasks, rivals, open, twice, goods }]) => [
      work,
      tasks.map(({ name }) => name),
      rivals.map(({ name }) => name),
      told(open),
      told(twice),
      goods,
    ]),
  };
}

describe('shares of work', () => {
  test('after any edits those of a fresh look, of the very lines of the take-off', () => {
    const choice = fc.array(fc.nat(11), { minLength: PARTS.length, maxLength: PARTS.length });
    const edits = fc.array(fc.tuple(fc.nat(PARTS.length - 1), fc.nat(3)), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(choice, edits, (first, changes) => {
        const memory = emptyMemory();
        const now = [...first];
        let plan = look(textOf(now), memory);
        for (const [part, variant] of changes) {
          now[part] = variant;
          plan = look(textOf(now), memory);
          expect(shares(plan)).toEqual(shares(look(textOf(now))));
          const lines = new Set(plan.takeOff.lines);
          for (const claims of plan.timeline.claims.byStep) for (const { line } of claims) expect(lines.has(line)).toBe(true);
          for (const { open } of plan.timeline.claims.byWork.values())
            for (const { line } of open) expect(lines.has(line)).toBe(true);
        }
      }),
      { numRuns: 60, seed: 20261125 },
    );
  }, 300_000);

  test('a room grows: steps elsewhere keep their lists, also those that do several works', () => {
    const memory = emptyMemory();
    const before = look(textOf([]), memory).timeline;
    const after = look(textOf([0, 1]), memory).timeline;
    expect(before.claims.byStep[before.steps.byName.get('c')!]!.length).toBeGreaterThan(2);
    const kept = after.steps.list.filter((_, at) => after.claims.byStep[at] === before.claims.byStep[at]);
    expect(kept.map(({ name }) => name)).toEqual(['b', 'c']);
  });
});
