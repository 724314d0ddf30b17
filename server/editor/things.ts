// What a hover says of a thing: its figures with their working, and what it comes to, from sums that stand ready. All of
// it is shown by `explain`; a pointer passing by must not cost more than a glance.
import { countedBy } from '#answers/counted-by';
import { startDay, stepFinishDay } from '#answers/days';
import { explainElement } from '#answers/explain';
import { earnedReasons } from '#answers/explain-earned';
import { figureReasons } from '#answers/explain-figures';
import { hazardReason } from '#answers/explain-hazards';
import { heatReasons } from '#answers/explain-heat';
import { orderReason } from '#answers/explain-order';
import { planRisk, stepRisk } from '#answers/explain-risk';
import { beginsReason, endChain, takesReason, whyStep } from '#answers/explain-step';
import { type ListedReason, listedReason, pruned, saying } from '#answers/listed-reason';
import { spareText, standing } from '#answers/schedule-table';
import { slipReason } from '#answers/slippage';
import { costText, finishText } from '#answers/summary';
import { counted, listed } from '#answers/table';
import { allPurchases } from '#answers/takeoff-lines';
import { buyText } from '#answers/takeoff-table';
import { type View as AnswerView, write, writeMoney } from '#answers/view';
import type { Slot } from '#kit/place';
import { factsOf } from '#model/facts';
import type { Element } from '#model/model';
import type { Line } from '#takeoff/lines';
import { centsOfRoom, centsOfStep, centsOfTrade, costsOfStep, countOfOpening, hoursOfTrade, stepsOfTrade } from './figures.ts';
import { shallow } from './quantities.ts';
import { datesText } from './step-text.ts';

export interface Told {
  /** One sentence. */
  readonly why: string;
  readonly reasons: readonly ListedReason[];
}

/** Working is shown so deep. */
export const DEEPEST = 4;
/** No more rows than this in a list. */
const MOST_ROWS = 12;
/** Rules of order that a hover tells; a wall of board is under thirty. */
const MOST_RULES = 5;

export function tellBriefly(element: Element, view: AnswerView): Told {
  const { plan } = view;
  const step = plan.timeline.steps.index.get(element.slot);
  if (step !== undefined) return tellStep(step, view);
  switch (element.kind) {
    case 'plan':
      return tellPlan(element, view);
    case 'trade':
      return tellTrade(element, view);
    case 'phase':
      return tellPhase(element.slot, view);
    case 'window':
    case 'door': {
      const count = countOfOpening(plan.model, element.slot);
      return {
        why: `The rooms of the plan hold ${count === 0 ? 'none' : count}.`,
        reasons: [...facts(element, view), ...bought(element.slot, view)],
      };
    }
    case 'material':
    case 'item':
    case 'fixture':
      return tellGoods(element.slot, view);
    case 'work':
      return tellWork(element.name, view);
    case 'let':
    case 'assembly':
    case 'bid':
    case 'calculation':
      return explainElement(element, view);
    default:
      return tellPlace(element, view);
  }
}

function tellStep(step: number, view: AnswerView): Told {
  const { plan, style } = view;
  const { timeline } = plan;
  const { crews, floats, links } = timeline;
  const takes = takesReason(step, view);
  const spare = saying('to spare before the end moves', spareText(floats.totalFloat[step]!, style), [
    saying('may begin as late as', startDay(floats.lateStart[step]!, timeline)),
    saying('to spare before another step feels it', spareText(floats.freeFloat[step]!, style)),
  ]);
  const next = [...new Set(links.filter(({ from }) => from === step).map(({ to }) => to))];
  const money = costsOfStep(plan, step);
  return {
    why: whyStep(step, view),
    // Whoever only glances sees first what can hurt.
    reasons: [
      ...(standing(step, timeline) === 'done' ? [] : optional(hazardReason(timeline.steps.list[step]!))),
      ...optional(orderReason(step, view, MOST_RULES)),
      ...(takes === undefined ? [] : [takes]),
      beginsReason(step, view),
      saying('done', stepFinishDay(crews.start[step]!, crews.finish[step]!, timeline)),
      ...optional(stepRisk(step, view)),
      ...(standing(step, timeline) === 'done' ? [] : [spare]),
      ...slipReason(step, view),
      ...rows(
        'waited for by',
        next.map((each) => stepRow(each, view)),
      ),
      ...(money.length === 0
        ? []
        : [
            {
              ...rows(
                'costs',
                money.map(({ label, cents }) => saying(label, writeMoney(cents, style))),
              )[0]!,
              text: writeMoney(centsOfStep(plan, step), style),
            },
          ]),
    ],
  };
}

function tellPlan(element: Element, view: AnswerView): Told {
  const said = [finishText(view), costText(view)].filter((part) => part !== undefined);
  const chain = endChain(view);
  return {
    why: said.length === 0 ? 'It has neither steps nor prices yet.' : `It is ${said.join(', and costs ')}.`,
    reasons: [
      ...(chain === undefined ? [] : [{ ...chain, label: `${chain.label}, held there by` }]),
      ...optional(planRisk(view)),
      ...slipReason(undefined, view),
      ...earnedReasons(element, view),
      ...heatReasons(element, view).map((reason) => pruned(reason, 2)),
      ...figureReasons(element, view),
    ],
  };
}

function tellTrade(element: Element, view: AnswerView): Told {
  const { plan, style } = view;
  const { minutes } = hoursOfTrade(plan, element.slot);
  const steps = stepsOfTrade(plan, element.slot);
  const cents = centsOfTrade(plan, element.slot);
  return {
    why: sentence([
      `it has ${counted(steps.length, 'step')}`,
      ...(minutes > 0 ? [`${write({ value: minutes, dimension: 'time', unit: 'h' }, style)} of work`] : []),
      ...(cents !== 0 ? [`it costs ${writeMoney(cents, style)}`] : []),
    ]),
    reasons: [
      ...facts(element, view),
      ...rows(
        'steps',
        steps.map((step) => stepRow(step, view)),
      ),
    ],
  };
}

function tellPhase(slot: Slot, view: AnswerView): Told {
  const { plan, style } = view;
  const { crews, steps } = plan.timeline;
  const numbers = steps.within.get(slot) ?? [];
  if (numbers.length === 0) return { why: 'It has no steps.', reasons: [] };
  const start = numbers.reduce((first, step) => Math.min(first, crews.start[step]!), Number.POSITIVE_INFINITY);
  const finish = numbers.reduce((last, step) => Math.max(last, crews.finish[step]!), Number.NEGATIVE_INFINITY);
  const cents = numbers.reduce((sum, step) => sum + centsOfStep(plan, step), 0);
  return {
    why: sentence([
      `its ${counted(numbers.length, 'step')} go on ${datesText(start, finish, plan.timeline)}`,
      ...(cents === 0 ? [] : [`they cost ${writeMoney(cents, style)}`]),
    ]),
    reasons: rows(
      'steps',
      numbers.map((step) => stepRow(step, view)),
    ),
  };
}

/** A room, a level, a foundation, a roof: figures, what is measured of it itself, what it costs. */
function tellPlace(element: Element, view: AnswerView): Told {
  const { plan, style } = view;
  const { slot } = element;
  const all = plan.takeOff.linesOf(slot);
  const own = all.filter(({ where, onlyIfDone }) => where.element === slot && onlyIfDone !== true);
  const cents = centsOfRoom(plan, slot);
  const figures = facts(element, view);
  const books = countedBy(plan, slot);
  const [first] = figures;
  return {
    why: sentence([
      ...(first === undefined ? [] : [`its ${first.label} is ${first.text}`]),
      all.length === 0
        ? 'nothing is taken off for it'
        : `${counted(all.length, 'line')} of the take-off ${all.length === 1 ? 'is' : 'are'} for it`,
      ...(cents === 0 ? [] : [`it costs ${writeMoney(cents, style)}`]),
    ]),
    reasons: [
      ...figures,
      ...heatReasons(element, view).map((reason) => pruned(reason, 2)),
      ...figureReasons(element, view),
      ...optional(books.length === 0 ? undefined : saying('counted by', books.join(', '))),
      ...rows(
        'taken off',
        own.map((line) => lineRow(line, view)),
      ),
    ],
  };
}

function tellGoods(slot: Slot, view: AnswerView): Told {
  const purchases = bought(slot, view);
  const said = purchases.map(({ label, text }) => `${text} of ${label.replace(/^buy /, '')}`);
  return {
    why:
      said.length === 0
        ? 'None of it is bought for this plan.'
        : sentence([`${listed(said)} ${said.length === 1 ? 'is' : 'are'} bought`]),
    reasons: purchases,
  };
}

function tellWork(name: string, { plan }: AnswerView): Told {
  const tasks = plan.timeline.claims.byWork.get(name)?.tasks.map((task) => task.name) ?? [];
  const shown = tasks.length > MOST_ROWS ? [...tasks.slice(0, MOST_ROWS - 1), `${tasks.length - MOST_ROWS + 1} more`] : tasks;
  const does = tasks.length === 1 ? 'does' : 'do';
  return { why: tasks.length === 0 ? 'No task of this plan does it.' : `${listed(shown)} ${does} it.`, reasons: [] };
}

function facts(element: Element, view: AnswerView): readonly ListedReason[] {
  return Object.entries(factsOf(element)).flatMap(([fact, value]) =>
    value === undefined || value.value === 0 ? [] : [listedReason(shallow(value, DEEPEST), view, fact)],
  );
}

/** What is bought of some goods, over the whole plan. */
function bought(slot: Slot, view: AnswerView): readonly ListedReason[] {
  return allPurchases(view)
    .filter(({ goods }) => goods.of?.slot === slot)
    .map((purchase) => ({
      ...listedReason(shallow(purchase.bought, DEEPEST), view, `buy ${purchase.label}`),
      text: buyText(purchase, view),
    }));
}

function stepRow(step: number, { plan: { timeline } }: AnswerView): ListedReason {
  const { crews, steps } = timeline;
  return saying(steps.list[step]!.name, datesText(crews.start[step]!, crews.finish[step]!, timeline));
}

function lineRow(line: Line, view: AnswerView): ListedReason {
  const { part } = line.where;
  return saying(`${line.label}${part === undefined ? '' : `, ${part}`}`, write(line.needed ?? line.net, view.style));
}

function optional(reason: ListedReason | undefined): readonly ListedReason[] {
  return reason === undefined ? [] : [reason];
}

/** A list under its heading, cut where it grows long. */
function rows(label: string, list: readonly ListedReason[]): readonly ListedReason[] {
  if (list.length === 0) return [];
  const cut =
    list.length > MOST_ROWS ? [...list.slice(0, MOST_ROWS - 1), saying(`and ${list.length - MOST_ROWS + 1} more`, '')] : list;
  return [saying(label, '', cut)];
}

function sentence(parts: readonly string[]): string {
  const text = parts.length > 2 ? `${parts.slice(0, -1).join(', ')}, and ${parts.at(-1)}` : parts.join(', and ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
