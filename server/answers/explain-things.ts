// The facts, quantities and costs of things with a name that are no steps: rooms, levels, trades, goods, phases, the plan.
import type { Slot } from '#kit/place';
import { constant, total } from '#kit/quantity';
import { factsOf } from '#model/facts';
import type { Element } from '#model/model';
import { personMinutes } from '#schedule/durations';
import type { Line, Purchase } from '#takeoff/lines';
import { finishDay, span, startDay } from './days.ts';
import { earnedReasons } from './explain-earned.ts';
import { figureReasons, tellCalculation } from './explain-figures.ts';
import { heatReasons } from './explain-heat.ts';
import { costReason, planCostReason } from './explain-money.ts';
import { tellAssembly, tellBid, tellRule, tellState } from './explain-others.ts';
import { planRisk } from './explain-risk.ts';
import { endChain } from './explain-step.ts';
import { truckReasons } from './explain-trucks.ts';
import { panelReasons, panelsWhy } from './layout/panels.ts';
import { layoutReasons } from './layout/reasons.ts';
import { type ListedReason, listedReason, pruned, saying } from './listed-reason.ts';
import { slipReason } from './slippage.ts';
import { costText, finishText } from './summary.ts';
import { counted, listed } from './table.ts';
import { countedLines, countedPurchases, sums } from './takeoff-lines.ts';
import { buyText } from './takeoff-table.ts';
import { type View, write } from './view.ts';

export interface Told {
  /** One sentence. */
  readonly why: string;
  readonly reasons: readonly ListedReason[];
}

export function tellThing(element: Element, view: View): Told {
  switch (element.kind) {
    case 'plan':
      return tellPlan(element, view);
    case 'trade':
      return tellTrade(element.slot, view);
    case 'phase':
      return tellPhase(element.slot, view);
    case 'let': {
      const value = element.takes?.value;
      return value === undefined
        ? { why: 'Its value cannot be worked out.', reasons: [] }
        : { why: `It is ${write(value, view.style)}.`, reasons: [listedReason(value, view)] };
    }
    case 'work':
      return tellWork(element.name, view);
    case 'assembly':
      return tellAssembly(element, view);
    case 'state':
      return tellState(element, view);
    case 'rule':
      return tellRule(element);
    case 'bid':
      return tellBid(element, view);
    case 'calculation':
      return tellCalculation(element, view);
    case 'material':
    case 'item':
    case 'fixture':
      return tellGoods(element, view);
    default:
      return tellPlace(element, view);
  }
}

/** Facts by name; those that are known. */
export function factReasons(element: Element, view: View): readonly ListedReason[] {
  return Object.entries(factsOf(element)).flatMap(([fact, value]) =>
    value === undefined ? [] : [listedReason(value, view, fact)],
  );
}

function tellPlan(element: Element, view: View): Told {
  const said = [finishText(view), costText(view)].filter((part) => part !== undefined);
  return {
    why: said.length === 0 ? 'It has neither steps nor prices yet.' : `It is ${said.join(', and costs ')}.`,
    reasons: [
      ...[endChain(view), planRisk(view), ...slipReason(undefined, view), planCostReason(view)].filter(
        (reason) => reason !== undefined,
      ),
      ...earnedReasons(element, view),
      ...heatReasons(element, view),
      ...figureReasons(element, view),
    ],
  };
}

/** What is measured of a room, a level, a foundation, an opening …, and what it costs. */
function tellPlace(element: Element, view: View): Told {
  const { slot } = element;
  const lines = countedLines(view).filter(
    ({ where, goods }) => where.element === slot || where.room === slot || where.level === slot || isGoods(goods?.of?.slot, slot),
  );
  const facts = factReasons(element, view);
  const costs = view.plan.budget.lines.filter((line) => line.room === slot || line.element === slot || line.level === slot);
  const [first] = facts;
  const what = [
    ...(first === undefined ? [] : [`its ${first.label.replaceAll('-', ' ')} is ${first.text}`]),
    (element.kind === 'panels' ? panelsWhy(element, view) : undefined) ??
      (lines.length === 0
        ? 'no quantity of the plan is for it'
        : `${counted(lines.length, 'line')} of the take-off ${lines.length === 1 ? 'is' : 'are'} for it`),
  ];
  return {
    why: sentence(what),
    reasons: [
      ...facts,
      ...heatReasons(element, view),
      ...figureReasons(element, view),
      ...(element.kind === 'panels' ? panelReasons(element, view) : []),
      ...quantities(lines, view),
      ...list(costReason(costs, view)),
    ],
  };
}

function tellTrade(slot: Slot, view: View): Told {
  const { timeline, budget, model } = view.plan;
  const steps = timeline.steps.list.flatMap((_, step) => (timeline.trades[step]?.slot === slot ? [step] : []));
  const hours = steps.map((step) => {
    const task = timeline.steps.list[step]!;
    return { step, minutes: task.kind === 'task' ? personMinutes(timeline.claims.byStep[step]!) : undefined };
  });
  const sum = hours.reduce((all, { minutes }) => all + (minutes ?? 0), 0);
  const costs = budget.lines.filter((line) => line.trade === slot);
  const cost = costReason(costs, view);
  const element = model.element(slot);
  const work = total(
    'person-hours by the rates',
    'time',
    hours.map(({ minutes }) => constant('hours', minutes ?? 0, 'time')),
  );
  return {
    why: sentence([
      `it has ${counted(steps.length, 'step')}`,
      ...(sum > 0 ? [`${write({ value: sum, dimension: 'time' }, view.style)} of work by the rates`] : []),
      ...(cost === undefined ? [] : [`costs ${cost.text}`]),
    ]),
    reasons: [
      ...(element === undefined ? [] : factReasons(element, view)),
      ...(sum > 0
        ? [
            {
              ...listedReason(work, view),
              inputs: hours.flatMap(({ step, minutes }) =>
                minutes === undefined
                  ? []
                  : [{ ...listedReason(constant('hours', minutes, 'time'), view), label: timeline.steps.list[step]!.name }],
              ),
            },
          ]
        : []),
      ...(steps.length === 0 ? [] : [saying('steps', '', datesOf(steps, view))]),
      ...list(cost),
    ],
  };
}

function tellPhase(slot: Slot, view: View): Told {
  const { timeline, budget } = view.plan;
  const steps = timeline.steps.within.get(slot) ?? [];
  if (steps.length === 0) return { why: 'It has no steps.', reasons: [] };
  const start = steps.reduce((first, step) => Math.min(first, timeline.crews.start[step]!), Number.POSITIVE_INFINITY);
  const finish = steps.reduce((last, step) => Math.max(last, timeline.crews.finish[step]!), Number.NEGATIVE_INFINITY);
  const cost = costReason(
    budget.lines.filter(({ step }) => step !== undefined && steps.includes(step)),
    view,
  );
  return {
    why: sentence([
      `its ${counted(steps.length, 'step')} run from ${startDay(start, timeline)} to ${finishDay(finish, timeline)}`,
      ...(cost === undefined ? [] : [`cost ${cost.text}`]),
    ]),
    reasons: [saying('steps', '', datesOf(steps, view)), ...list(cost)],
  };
}

function tellWork(name: string, view: View): Told {
  const { timeline } = view.plan;
  const claims = timeline.claims.byWork.get(name);
  const tasks = claims?.tasks.map((task) => task.name) ?? [];
  const lines = countedLines(view).filter((line) => line.work?.name === name);
  const open = claims?.open.length ?? 0;
  return {
    why: sentence([
      tasks.length === 0 ? 'no task of this plan does it' : `${listed(tasks)} ${tasks.length === 1 ? 'does' : 'do'} it`,
      ...(open > 0 && tasks.length > 0 ? [`${counted(open, 'line')} of it ${open === 1 ? 'has' : 'have'} nobody`] : []),
    ]),
    reasons: quantities(lines, view),
  };
}

function tellGoods(element: Element, view: View): Told {
  const lines = countedLines(view).filter(
    ({ goods, where }) =>
      isGoods(goods?.of?.slot, element.slot) || goods?.name === element.name || where.element === element.slot,
  );
  const purchases = countedPurchases(view, new Set(lines));
  const costs = view.plan.budget.lines.filter(({ line }) => line !== undefined && lines.includes(line));
  return {
    why: sentence([
      purchases.length === 0
        ? 'none of it is bought for this plan'
        : `${listed(purchases.map((each) => `${buyText(each, view)} of ${each.label}`))} ${purchases.length === 1 ? 'is' : 'are'} bought`,
    ]),
    reasons: [
      ...purchases.map((purchase) => purchaseReason(purchase, view)),
      ...factReasons(element, view),
      ...list(costReason(costs, view)),
    ],
  };
}

function ofPour({ pour }: Purchase): string {
  return pour === undefined ? '' : ` for ${pour.label}`;
}

/** What is bought of an item: rounded up once over all its lines, or those of a pour. */
export function purchaseReason(purchase: Purchase, view: View): ListedReason {
  const reason = listedReason(purchase.bought, view, `buy ${purchase.label}${ofPour(purchase)}`);
  return {
    ...reason,
    text: buyText(purchase, view),
    inputs: [...reason.inputs, ...truckReasons(purchase, view), ...layoutReasons(purchase, view)],
  };
}

/** Items and their sums; the whole working of a line is told when its id is asked for. */
export function quantities(lines: readonly Line[], view: View): readonly ListedReason[] {
  return sums(lines.map((line) => ({ line, share: 1 }))).map((sum) => {
    const quantity = sum.needed ?? sum.net;
    const inputs = sum.lines.map((line) => pruned(listedReason(line.needed ?? line.net, view, line.id), 1));
    const [only] = inputs;
    if (inputs.length === 1 && only !== undefined) return { ...only, label: `${sum.label} (${only.label})` };
    const amount = listedReason({ ...total(sum.label, quantity.dimension, []), ...quantity }, view);
    return { ...amount, label: sum.label, inputs: inputs.map((input) => pruned(input, 0)) };
  });
}

function datesOf(steps: readonly number[], { plan: { timeline } }: View): readonly ListedReason[] {
  return steps.map((step) =>
    saying(timeline.steps.list[step]!.name, span(timeline.crews.start[step]!, timeline.crews.finish[step]!, timeline)),
  );
}

function isGoods(of: Slot | undefined, slot: Slot): boolean {
  return of !== undefined && of.kind === slot.kind && of.name === slot.name;
}

function sentence(parts: readonly string[]): string {
  const text = parts.join(', and ');
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}.`;
}

function list(reason: ListedReason | undefined): readonly ListedReason[] {
  return reason === undefined ? [] : [reason];
}
