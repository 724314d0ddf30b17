// Whose cost goods are: asked for one step, one room or all steps, the answer is that of the whole list of costs.
import { expect, test } from 'vitest';
import { centsOfRoom } from '#editor/figures';
import { analyse } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';

const library = builtIn();

test.each(['shed', 'panel-cabin', 'cottage'])('%s', (sample) => {
  const texts = sampleTexts(sample);
  const root = Object.keys(texts).find((path) => /\nplan /.test(`\n${texts[path]}`))!;
  const plan = analyse({ root, texts, library });
  const { budget, timeline, model } = plan;
  const bySteps = budget.byStep();
  for (let step = 0; step < timeline.steps.list.length; step++) {
    const own = budget.lines.filter((line) => line.step === step);
    expect(budget.ofStep(step)).toEqual(own);
    expect(bySteps[step]).toBe(own.reduce((sum, { cents }) => sum + cents, 0));
  }
  for (const { slot } of [...model.list('room'), ...model.list('level'), ...model.list('roof')]) {
    const own = budget.lines.filter(({ room, level, element }) => room === slot || level === slot || element === slot);
    expect(centsOfRoom(plan, slot)).toBe(own.reduce((sum, { cents }) => sum + cents, 0));
  }
});
