// Every fact that the vocabulary promises is computed where what it needs is given.
import { expect, test } from 'vitest';
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { replay } from '#kit/quantity';
import { factsOf } from '#model/facts';
import { look } from './look.ts';

const plan = `plan p
level main
  footprint 28' x 32'
  height 8'
room den on main
  size 10' x 12'
  windows 2 w-3050 in north
window w-3050 3'-0" x 5'-0"
door d-2868 2'-8" x 6'-8"
foundation perimeter under main
  wall 8" x 32"
  bottom 32" below grade
roof main over main
  shape gable 6:12
trench water 62' long, 42" deep, 12" wide
deck porch
  size 8' x 6'
stair steps
  rise 22"
  risers 3
  tread 11"
  narrow 6"
  headroom 7'
  turn after 1, landing 36" x 36"
  turn after 2, 1 winders
trade framing crew of 4
`;

test('every fact of the vocabulary has a value that replays, of the dimension it promises', () => {
  const { model } = look(plan);
  for (const row of Object.values(vocabulary)) {
    const promised = Object.entries(row.facts) as [string, string][];
    if (promised.length === 0) continue;
    const [thing] = model.list(row.word);
    expect(thing, row.word).toBeDefined();
    const facts = factsOf(thing!);
    for (const [fact, dimension] of promised) {
      expect(facts[fact]?.dimension, `${row.word}.${fact}`).toBe(dimension);
      expect(replay(facts[fact]!)).toBe(facts[fact]!.value);
    }
  }
});

test('lengths of the sides that face a way, of an outline with a corner cut out', () => {
  const { model } = look(`plan p
level main
  footprint east 28', north 20', west 10', north 12', west 18', south 32'
`);
  const facts = factsOf(model.list('level')[0]!);
  const feet = (name: string): number => facts[name]!.value / (12 * 8128);
  expect([feet('south-length'), feet('north-length'), feet('east-length'), feet('west-length')]).toEqual([28, 28, 32, 32]);
  expect(feet('perimeter')).toBe(120);
  expect(facts['floor-area']!.value / (12 * 8128) ** 2).toBe(28 * 20 + 18 * 12);
});
