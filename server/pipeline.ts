// The only file that knows the order of the phases. Texts and the library go in, everything known of a plan comes out; the
// memory of the last look only saves work. The library is an argument like any other.
import type { Baseline } from '#checks/baseline';
import type { Results } from '#checks/check';
import { type Order, orderOf } from '#checks/order';
import { type ChecksMemory, checksMemory, runChecks } from '#checks/run';
import { sharedTradeFindings } from '#checks/shared-trades';
import { type Told, type ToldMemory, toldMemory, toldOf } from '#checks/told';
import { equal } from '#kit/equal';
import { noWork, type Work } from '#kit/work';
import { type Library, type Model, type ModelMemory, modelMemory, resolve, type Texts } from '#model/resolve';
import type { Budget } from '#money/cost-lines';
import { budgetOf, type MoneyMemory, moneyMemory } from '#money/money';
import { bookingsOf, type House } from '#schedule/bookings';
import type { Network } from '#schedule/network';
import { type ScheduleMemory, schedule, scheduleMemory } from '#schedule/schedule';
import type { Steps } from '#schedule/steps';
import type { Timeline } from '#schedule/timeline';
import { type TakeOffMemory, takeOffMemory } from '#takeoff/memory';
import { type TakeOff, takeOff } from '#takeoff/take-off';

export { BASELINE_FILE, type Baseline, readBaseline } from '#checks/baseline';
export type { Library, Texts } from '#model/resolve';
export { readLibrary } from '#model/resolve';
export type { House } from '#schedule/bookings';

/** What survives between two looks at the same plan. An empty one gives the same answer. */
export interface Memory {
  readonly model: ModelMemory;
  readonly takeOff: TakeOffMemory;
  readonly schedule: ScheduleMemory;
  readonly money: MoneyMemory;
  readonly checks: ChecksMemory;
  readonly told: ToldMemory;
  order: { readonly network: Network; readonly index: Steps['index']; readonly order: Order } | undefined;
}

export function emptyMemory(): Memory {
  return {
    model: modelMemory(),
    takeOff: takeOffMemory(),
    schedule: scheduleMemory(),
    money: moneyMemory(),
    checks: checksMemory(),
    told: toldMemory(),
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
  /** Findings that were there before and are not told again. */
  readonly baseline?: Baseline | undefined;
  /** Other plans that are looked at beside it, in the order of their roots: trades may be shared. */
  readonly houses?: readonly House[];
}

const NO_HOUSES: readonly House[] = [];

/** Everything known of one plan at one moment; never changed. */
export interface Plan extends Results, Told {
  readonly root: string;
  readonly model: Model;
  readonly takeOff: TakeOff;
  readonly timeline: Timeline;
  readonly budget: Budget;
  /** What was known before, as it was handed in. */
  readonly baseline: Baseline | undefined;
  readonly work: Work;
}

export function analyse(
  { root, texts, library, asOf, baseline, houses = NO_HOUSES }: Input,
  memory: Memory = emptyMemory(),
): Plan {
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
    ...sharedTradeFindings(timeline, houses),
  ];
  return { ...results, ...toldOf(found, results, baseline, memory.told), root, baseline, work };
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

/**
 * A plan as those see it that include some of the same files. The same object as before while it says the same, so that its
 * neighbours need not look again.
 */
export function houseOf({ root, model, timeline }: Plan, isShared: (file: string) => boolean, before: House | undefined): House {
  const bookings = bookingsOf(timeline, ({ slot }) => isShared(slot.file));
  const house: House = { root, label: model.plan?.label ?? root, bookings };
  return before !== undefined && equal([house.label, [...bookings]], [before.label, [...before.bookings]], () => false)
    ? before
    : house;
}
