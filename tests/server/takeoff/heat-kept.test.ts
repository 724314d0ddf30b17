// What a storey loses is kept between keystrokes; after each edit it is what a fresh reading of the same text gives.
import { expect, test } from 'vitest';
import { analyse, emptyMemory, type Plan } from '#server/pipeline';
import { heatLossOf } from '#takeoff/heat/heat-loss';
import { builtIn } from '#tests/support/built-in';
import { checked } from '#tests/support/checked';

const TEXT = `plan p
  units feet
  indoors 70 F, 50% humidity
  outdoors 5 F, 32 F on average
  infiltration 0.35
material fill laid batts
  insulates R-12
assembly outer for wall
  layer stud 2x4 at 16" oc, filled with fill
  layer osb 7/16"
window glass 3' x 5', U 0.30
level main
  footprint 40' x 30'
  height 9'
  walls outer
  ceiling flat-lid
room all on main
  size 39' x 29'
  windows 12 glass
roof top over main
  shape gable 6:12
`;

const EDITS: readonly (readonly [from: string, to: string])[] = [
  ['U 0.30', 'U 0.25'],
  ['insulates R-12', 'insulates R-20'],
  ['12 glass', '11 glass'],
  ["height 9'", "height 8'"],
  ['infiltration 0.35', 'infiltration 0.5'],
  ['outdoors 5 F, 32 F', 'outdoors 0 F, 20 F'],
  ['layer osb 7/16"', 'layer osb 7/16"\n  layer xps-board 1"'],
  ['ceiling flat-lid', 'ceiling flat-lid-49'],
  ['50% humidity', '15% humidity'],
  ['roof top over main', `level upper\n  footprint 10' x 10'\nroof top over upper`],
];

function told(plan: Plan): unknown {
  const heat = heatLossOf(plan.model.list('level')[0]!, plan.model);
  return {
    loss: heat?.loss?.value,
    without: heat?.without,
    wet: plan.findings.filter(({ code }) => code === 'walls/dew-point').length,
  };
}

test('after each edit the same as read anew', () => {
  const texts = (text: string) => ({ root: 'plan.screed', texts: { 'plan.screed': text }, library: builtIn() });
  let text = TEXT;
  const memory = emptyMemory();
  const losses = new Set<unknown>();
  for (const [from, to] of [['', ''], ...EDITS] as const) {
    expect(text).toContain(from);
    text = text.replace(from, to);
    const plan = analyse(texts(text), memory);
    const kept = told(plan);
    expect(kept, to).toEqual(told(checked({ 'plan.screed': text }).plan));
    losses.add(JSON.stringify(kept));
  }
  // Every edit tells: none of them was made for nothing.
  expect(losses.size).toBe(EDITS.length + 1);
});
