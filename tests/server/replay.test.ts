// Every number of every sample replays from its working: take-off lines, purchases, durations, costs, facts, assemblies.
import { describe, expect, test } from 'vitest';
import { type Quantity, replay } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { CostLine } from '#money/cost-lines';
import { durationWorking } from '#schedule/durations';
import { analyse } from '#server/pipeline';
import { assemblyFigures } from '#takeoff/assembly';
import { airFilms } from '#takeoff/conventions';
import { builtIn, sampleTexts } from '#tests/support/built-in';

function every(quantity: Quantity, see: (each: Quantity) => void): void {
  see(quantity);
  for (const input of quantity.inputs) every(input, see);
}

describe.each(['cottage', 'shed', 'panel-cabin'])('%s', (sample) => {
  const texts = sampleTexts(sample);
  const root = Object.keys(texts).find((path) => /(^|\n)plan /.test(texts[path]!))!;
  const plan = analyse({ root, texts, library: builtIn() });
  const { model, takeOff, timeline, budget } = plan;

  function expectReplays(name: string, quantity: Quantity | undefined): number {
    if (quantity === undefined) return 0;
    let count = 0;
    every(quantity, (each) => {
      count += 1;
      expect(Number.isFinite(each.value), `${name}: ${each.form.label}`).toBe(true);
      if (each.inputs.length > 0) expect(replay(each), `${name}: ${each.form.label}`).toBe(each.value);
      // What nobody computed was given somewhere, or is fixed by definition.
      else expect(each.place !== undefined || !Number.isNaN(each.form.compute()), `${name}: ${each.form.label}`).toBe(true);
    });
    return count;
  }

  test('quantities', () => {
    let count = 0;
    for (const line of takeOff.lines) {
      count += expectReplays(line.id, line.net);
      count += expectReplays(line.id, line.needed);
      count += expectReplays(line.id, line.hours);
    }
    for (const purchase of takeOff.purchases()) count += expectReplays(purchase.item, purchase.bought);
    expect(count).toBeGreaterThan(200);
  });

  test('every line has a name of its own', () => {
    const ids = takeOff.lines.map((line) => line.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('durations by rate', () => {
    timeline.steps.list.forEach((step, at) => {
      const duration = timeline.durations[at]!;
      if (step.kind !== 'task' || duration.basis !== 'rate') return;
      const working = durationWorking(step, timeline.claims.byStep[at]!, timeline.trades[at]);
      expectReplays(step.name, working);
      expect(working?.value, step.name).toBe(duration.minutes);
    });
  });

  test('costs, which add up to the total in cents', () => {
    for (const line of budget.lines) {
      expect(Number.isInteger(line.cents), line.label).toBe(true);
      expectReplays(line.label, line.working?.());
    }
    expect(budget.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(budget.net);
    expect(budget.net + budget.tax + budget.contingency).toBe(budget.total);
  });

  test('costs of one step or one thing are those of all lines', () => {
    timeline.steps.list.forEach(({ name }, step) => {
      const lines = budget.lines.filter((line) => line.step === step);
      expect(budget.linesOfStep(step).map(told), name).toEqual(lines.map(told));
      expect(budget.centsOfStep(step), name).toBe(lines.reduce((sum, line) => sum + line.cents, 0));
    });
    for (const { slot } of model.names.declared) {
      const lines = budget.lines.filter(({ room, level, element }) => room === slot || level === slot || element === slot);
      expect(budget.centsAt(slot), slot.name).toBe(lines.reduce((sum, line) => sum + line.cents, 0));
    }
  });

  test('facts and assemblies', () => {
    for (const kind of ['room', 'level', 'foundation', 'roof', 'trench', 'window', 'door', 'deck', 'trade'] as const)
      for (const thing of model.list(kind))
        for (const [fact, value] of Object.entries(factsOf(thing))) expectReplays(`${thing.name}.${fact}`, value);
    for (const assembly of model.list('assembly'))
      for (const [name, value] of Object.entries(assemblyFigures(assembly, airFilms(model))))
        if (typeof value === 'object' && value !== null && 'form' in value)
          expectReplays(`${assembly.name} ${name}`, value as Quantity);
  });
});

/** A cost without its working, which is made anew for each that asks. */
function told({ working, ...rest }: CostLine): Omit<CostLine, 'working'> & { readonly worked: number | undefined } {
  return { ...rest, worked: working?.().value };
}
