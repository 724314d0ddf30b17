// What one step or one room costs, asked for alone, is what the whole list of costs has for it.
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
  for (let step = 0; step < timeline.steps.list.length; step++) {
    const own = budget.lines.filter((line) => line.step === step);
    expect(budget.linesOfStep(step)).toEqual(own);
    expect(budget.centsOfStep(step)).toBe(own.reduce((sum, { cents }) => sum + cents, 0));
  }
  for (const { slot } of [...model.list('room'), ...model.list('level'), ...model.list('roof')]) {
    const own = budget.lines.filter(({ room, level, element }) => room === slot || level === slot || element === slot);
    expect(centsOfRoom(plan, slot)).toBe(own.reduce((sum, { cents }) => sum + cents, 0));
  }
});
