// The only file that knows the order of the phases. Texts and the library go in, everything known of a plan comes out; the
// memory of the last look only saves work. The library is an argument like any other.
import { type AcceptMemory, accepted, acceptMemory } from '#checks/accept';
import type { Results } from '#checks/check';
import { type Order, orderOf } from '#checks/order';
import { type ChecksMemory, checksMemory, runChecks } from '#checks/run';
import type { Finding } from '#kit/finding';
import { noWork, type Work } from '#kit/work';
import { type Library, type Model, type ModelMemory, modelMemory, resolve, type Texts } from '#model/resolve';
import type { Budget } from '#money/cost-lines';
import { budgetOf, type MoneyMemory, moneyMemory } from '#money/money';
import type { Network } from '#schedule/network';
import { type ScheduleMemory, schedule, scheduleMemory } from '#schedule/schedule';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import { type TakeOffMemory, takeOffMemory } from '#takeoff/memory';
import { type TakeOff, takeOff } from '#takeoff/take-off';

export type { Library, Texts } from '#model/resolve';
export { readLibrary } from '#model/resolve';

/** What survives between two looks at the same plan. An empty one gives the same answer. */
export interface Memory {
  readonly model: ModelMemory;
  readonly takeOff: TakeOffMemory;
  readonly schedule: ScheduleMemory;
  readonly money: MoneyMemory;
  readonly checks: ChecksMemory;
  readonly accept: AcceptMemory;
  order: { readonly network: Network; readonly index: Steps['index']; readonly order: Order } | undefined;
}

export function emptyMemory(): Memory {
  return {
    model: modelMemory(),
    takeOff: takeOffMemory(),
    schedule: scheduleMemory(),
    money: moneyMemory(),
    checks: checksMemory(),
    accept: acceptMemory(),
    order: undefined,
  };
}

export interface Input {
  /** Path of the file to begin with: a plan, or any file on its own. */
  readonly root: string;
  /** All files that may be included, by path. */
  readonly texts: Texts;
  readonly library: Library;
  /** Days since 1970-01-01; the latest diary block's where absent. */
  readonly asOf?: number;
}

/** Everything known of one plan at one moment; never changed. */
export interface Plan extends Results {
  readonly root: string;
  readonly model: Model;
  readonly takeOff: TakeOff;
  readonly timeline: Timeline;
  readonly budget: Budget;
  /** In the order of files, lines, columns and codes; what was accepted is not among them. */
  readonly findings: readonly Finding[];
  readonly work: Work;
}

export function analyse({ root, texts, library, asOf }: Input, memory: Memory = emptyMemory()): Plan {
  const work = noWork();
  const resolved = resolve(root, texts, library, memory.model, work);
  const model = resolved.value;
  const taken = takeOff(model, memory.takeOff, work);
  const scheduled = schedule(model, taken.value, asOf, memory.schedule, work);
  const timeline = scheduled.value;
  const money = budgetOf(model, taken.value, timeline, memory.money);
  memory.order = orderKept(timeline, memory.order);
  const results: Results = { model, takeOff: taken.value, timeline, budget: money.value, order: memory.order.order };
  const found = [
    ...resolved.findings,
    ...taken.findings,
    ...scheduled.findings,
    ...money.findings,
    ...runChecks(results, memory.checks),
  ];
  return { ...results, root, findings: accepted(found, results, memory.accept), work };
}

/** Who comes before whom; a milestone is one moment, so what holds its finish holds its start. */
function orderKept({ network, steps }: Timeline, kept: Memory['order']): NonNullable<Memory['order']> {
  const { list, index } = steps;
  // Which steps are milestones hangs on their slots alone.
  if (kept?.network === network && kept.index === index) return kept;
  const instant = new Uint8Array(list.length);
  for (let at = 0; at < list.length; at++) if (list[at]!.kind === 'milestone') instant[at] = 1;
  return { network, index, order: orderOf(network, instant) };
}
