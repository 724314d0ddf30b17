// What is told of things that nothing is measured of: assemblies as layers, states, rules of order, bids.
import type { Assembly, ElementOf, Rule, State } from '#model/model';
import { assemblyCost } from '#money/assembly-cost';
import { assemblyFigures } from '#takeoff/assembly';
import { sampleOf } from '#takeoff/assembly-sample';
import { airFilms } from '#takeoff/conventions';
import { screenedWall } from '#takeoff/heat/dew-point';
import { totalOf } from './explain-money.ts';
import type { Told } from './explain-things.ts';
import { type ListedReason, listedReason, pruned, saying } from './listed-reason.ts';
import { counted, listed } from './table.ts';
import { type View, write, writeMoney } from './view.ts';

/** Thickness, R and weight; layers that do not tell are named, so that no figure is taken for more than it is. */
export function tellAssembly(assembly: Assembly, view: View): Told {
  const figures = assemblyFigures(assembly, airFilms(view.plan.model));
  const { thickness, resistance, unknown } = figures;
  const lacks = (what: readonly string[]): string => (what.length === 0 ? '' : `, without ${listed([...new Set(what)])}`);
  return {
    why: `It is ${write(thickness, view.style)} thick${lacks(unknown.thickness)}, and ${write(resistance, view.style)} over all with air films${lacks(unknown.resistance)}.`,
    reasons: assemblyReasons(assembly, view),
  };
}

export function assemblyReasons(assembly: Assembly, view: View): readonly ListedReason[] {
  const { thickness, resistance, weight, unknown } = assemblyFigures(assembly, airFilms(view.plan.model));
  const screened = screenedWall(assembly, view.plan.model);
  return [
    listedReason(thickness, view, 'thickness'),
    listedReason(resistance, view, 'resistance'),
    ...(weight.value > 0 ? [lacking(listedReason(weight, view, 'weight'), unknown.weight, 'without the weight of')] : []),
    ...perArea(assembly, view),
    ...(screened === undefined ? [] : [listedReason(screened.face, view), listedReason(screened.dew, view)]),
  ];
}

/** Of a wall: labour and materials for each unit of its area, away from corners and openings. */
function perArea(assembly: Assembly, view: View): readonly ListedReason[] {
  const { model } = view.plan;
  const sample = sampleOf(assembly, model);
  if (sample === undefined) return [];
  const { labour, withoutLabour } = sample;
  const cost = assemblyCost(sample, model);
  return [
    ...(labour === undefined ? [] : [lacking(pruned(listedReason(labour, view, 'labour'), 2), withoutLabour, 'without a rate')]),
    ...(cost === undefined
      ? []
      : [lacking(pruned(listedReason(cost.each, view, 'materials'), 2), cost.without, 'without a price')]),
  ];
}

function lacking(reason: ListedReason, names: readonly string[], what: string): ListedReason {
  return names.length === 0 ? reason : { ...reason, inputs: [...reason.inputs, saying(what, listed([...new Set(names)]))] };
}

/** The works that make a state, and who does them in this plan. */
export function tellState(state: State, view: View): Told {
  const works = state.given['made by']?.value ?? [];
  const done = works.map(({ value, place }) => {
    const tasks = view.plan.timeline.claims.byWork.get(value.name)?.tasks.map((task) => task.name) ?? [];
    return { tasks, reason: saying(value.name, tasks.length === 0 ? 'no task of this plan' : tasks.join(', '), [], place, view) };
  });
  const open = done.filter(({ tasks }) => tasks.length === 0).length;
  return {
    why: `It is made by ${counted(works.length, 'kind')} of work${open === 0 ? '' : `, ${open} of which no task of this plan does`}.`,
    reasons: done.map(({ reason }) => reason),
  };
}

export function tellRule(rule: Rule): Told {
  const because = rule.given.because?.value;
  return {
    why: because ?? 'It gives no reason.',
    reasons: [
      saying('more', `screed rule sequence/${rule.name}`),
      ...(rule.given.remedy === undefined ? [] : [saying('what to do', rule.given.remedy.value)]),
    ],
  };
}

/** The steps an accepted bid pays for, with their shares of its price. */
export function tellBid(bid: ElementOf<'bid'>, view: View): Told {
  const { timeline, budget } = view.plan;
  const money = bid.given.for?.value.money;
  const asked = money === undefined ? 'It names no price' : `It asks ${write(money, view.style)}`;
  if (bid.given.accepted === undefined) return { why: `${asked}, and is not accepted, so it does not count.`, reasons: [] };
  const lines = budget.lines.filter((line) => line.rung === 'bid' && line.label === bid.label);
  const steps = lines.flatMap((line) =>
    line.step === undefined ? [] : [saying(timeline.steps.list[line.step]!.name, writeMoney(line.cents, view.style))],
  );
  return {
    why: `${asked}, and is accepted: it pays for ${counted(steps.length, 'step')}.`,
    reasons: [
      { ...saying('shared out by the length of the steps', writeMoney(totalOf(lines), view.style), steps, bid.place, view) },
    ],
  };
}
