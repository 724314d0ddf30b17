// The lines of the take-off as a listing wants them: those that count, by what they are grouped by, added up.
import { addTo } from '#kit/gathered';
import type { Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';
import type { ElementOf } from '#model/model';
import { pouredApart } from '#schedule/pours';
import type { Line, Purchase } from '#takeoff/lines';
import type { View } from './view.ts';

export type TakeOffGrouping = 'item' | 'room' | 'trade' | 'element' | 'part';

/** Lines that the plan asks for: what only a task brings about counts where there is such a task. */
export function countedLines({ plan: { takeOff, timeline } }: View): readonly Line[] {
  return (takeOff.lines as readonly Line[]).filter(
    (line) => line.onlyIfDone !== true || (timeline.claims.byWork.get(line.work?.name ?? '')?.tasks.length ?? 0) > 0,
  );
}

/** What is bought, of lines that count; what comes by the truck pour by pour. */
export function countedPurchases(view: View, counts: ReadonlySet<Line>): readonly Purchase[] {
  return allPurchases(view).filter((purchase) => purchase.lines.some((line) => counts.has(line)));
}

export function allPurchases({ plan: { takeOff, timeline } }: View): readonly Purchase[] {
  return pouredApart(takeOff.purchases(), timeline, takeOff.boughtFor);
}

/** What is dug or hauled is told in loads, and is no goods. */
export function isMeasuredOnly({ goods }: Purchase): boolean {
  return goods.of?.kind === 'item';
}

/** A part of a line, under a heading. */
export interface Part {
  readonly line: Line;
  readonly share: number;
}

export interface Group {
  readonly label: string;
  readonly parts: readonly Part[];
}

/** The same lines under other headings, in plan order; every line stands under one heading, or is shared out among several. */
export function groupLines(lines: readonly Line[], by: Exclude<TakeOffGrouping, 'item'>, view: View): readonly Group[] {
  if (by === 'element') return groupByElement(lines);
  const groups = new Map<unknown, { label: string; parts: Part[] }>();
  const add = ({ key, label }: Heading, part: Part): void => {
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { label, parts: [part] });
    else group.parts.push(part);
  };
  const trades = by === 'trade' ? tradesOf(view) : undefined;
  for (const line of lines) {
    if (trades === undefined)
      add(headingOf(line, by === 'room' ? line.where.room : line.where.element, view), { line, share: 1 });
    else for (const { heading, share } of trades.get(line) ?? [{ heading: NOBODY, share: 1 }]) add(heading, { line, share });
  }
  return [...groups.values()];
}

/** By the code of the element that the work, the goods or the work's measure name; what has none last. */
function groupByElement(lines: readonly Line[]): readonly Group[] {
  const groups = new Map<string, { label: string; parts: Part[] }>();
  for (const line of lines) {
    const element = elementOf(line);
    const code = element?.name.toUpperCase() ?? '';
    const group = groups.get(code);
    const part = { line, share: 1 };
    if (group !== undefined) group.parts.push(part);
    else groups.set(code, { label: element === undefined ? NOT_CLASSIFIED : `${code} ${element.label}`, parts: [part] });
  }
  return [...groups].sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a < b ? -1 : 1)).map(([, group]) => group);
}

export const NOT_CLASSIFIED = 'Not classified';

/** What the work says of this measure or part, else the goods, else the work whatever it is. */
export function elementOf({ work, goods, measure, where }: Line): ElementOf<'element'> | undefined {
  const own = work?.given.element ?? [];
  const of = goods?.of;
  const given = of?.kind === 'material' || of?.kind === 'item' || of?.kind === 'fixture' ? of.given.element : [];
  const near = [...own, ...given].find(
    ({ value }) =>
      value.by?.some((by) => by.value === measure) === true || (value.part !== undefined && value.part === where.part),
  );
  return (near ?? [...given, ...own].find(({ value }) => value.by === undefined && value.part === undefined))?.value.of;
}

/** Of a work of which nothing is measured: what it says without a measure. */
export function elementOfWork(work: NonNullable<Line['work']>): ElementOf<'element'> | undefined {
  return work.given.element.find(({ value }) => value.by === undefined && value.part === undefined)?.value.of;
}

interface Heading {
  /** What is one heading: two rooms of one label stay apart. */
  readonly key: unknown;
  readonly label: string;
}
const NOBODY: Heading = { key: 'nobody', label: 'Nobody yet' };

/** A sum of parts of one item, counted by one measure. */
export interface Sum {
  readonly item: string;
  readonly label: string;
  readonly net: Pick<Quantity, 'value' | 'dimension' | 'unit'>;
  readonly needed: Pick<Quantity, 'value' | 'dimension' | 'unit'> | undefined;
  /** Person-minutes. */
  readonly minutes: number | undefined;
  readonly lines: readonly Line[];
}

/** One sum for each item and sort of quantity, in the order they come. */
export function sums(parts: readonly Part[]): readonly Sum[] {
  const made = new Map<string, { -readonly [P in keyof Sum]: Sum[P] } & { lines: Line[] }>();
  for (const { line, share } of parts) {
    // Work that installs nothing is told apart by what it is.
    const what = line.goods === undefined ? (line.work?.name ?? line.item) : line.item;
    const key = `${what}\n${line.net.dimension}\n${line.needed?.dimension ?? ''}`;
    const minutes = line.hours === undefined ? undefined : line.hours.value * share;
    const sum = made.get(key);
    if (sum === undefined) {
      made.set(key, {
        item: line.item,
        label: line.label,
        net: part(line.net, share),
        needed: line.needed === undefined ? undefined : part(line.needed, share),
        minutes,
        lines: [line],
      });
      continue;
    }
    sum.net = { ...sum.net, value: sum.net.value + line.net.value * share };
    if (sum.needed !== undefined && line.needed !== undefined)
      sum.needed = { ...sum.needed, value: sum.needed.value + line.needed.value * share };
    if (minutes !== undefined) sum.minutes = (sum.minutes ?? 0) + minutes;
    sum.lines.push(line);
  }
  return [...made.values()];
}

/** What a thing is called: its label, or else its kind and name. */
export function labelOf(slot: Slot, view: View): string {
  const label = view.plan.model.element(slot)?.label;
  if (label !== undefined && label !== slot.name) return label;
  return slot.kind === 'room' || slot.kind === 'trade' || slot.name === '' || /^\d+$/.test(slot.name)
    ? (label ?? slot.name)
    : `${slot.kind} ${slot.name}`;
}

function part({ value, dimension, unit }: Quantity, share: number): Pick<Quantity, 'value' | 'dimension' | 'unit'> {
  return { value: value * share, dimension, ...(unit === undefined ? {} : { unit }) };
}

function headingOf(line: Line, slot: Slot | undefined, view: View): Heading {
  if (slot !== undefined) return { key: slot, label: labelOf(slot, view) };
  const { level } = line.where;
  return level === undefined
    ? { key: 'house', label: 'The house' }
    : { key: level, label: `${labelOf(level, view)}, not in a room` };
}

/** For each line, the trades of the tasks that do it, with their shares. */
function tradesOf({
  plan: { timeline },
}: View): ReadonlyMap<Line, readonly { readonly heading: Heading; readonly share: number }[]> {
  const trades = new Map<Line, { heading: Heading; share: number }[]>();
  const add = (line: Line, heading: Heading, share: number): void => {
    addTo(trades, line, { heading, share });
  };
  for (const [step, claims] of timeline.claims.byStep.entries()) {
    const trade = timeline.trades[step];
    const heading = trade === undefined ? { key: 'no trade', label: 'No trade' } : { key: trade.slot, label: trade.label };
    for (const { line, share } of claims) add(line, heading, share);
  }
  for (const { open } of timeline.claims.byWork.values())
    for (const { line, share } of open) if (trades.has(line)) add(line, NOBODY, share);
  return trades;
}
