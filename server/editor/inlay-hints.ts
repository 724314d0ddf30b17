// What was computed, beside the text it was computed from: at the end of each declaration's own line.
import type { InlayHint, Range } from 'vscode-languageserver-types';
import { countedBy } from '#answers/counted-by';
import { heatText } from '#answers/explain-heat';
import { costText, finishText } from '#answers/summary';
import { counted } from '#answers/table';
import { type Style, styleOf, viewOf, write, writeWholeMoney } from '#answers/view';
import { firstAtLeast } from '#grammar/lines';
import { dayOfStart } from '#kit/dates';
import type { Quantity } from '#kit/quantity';
import type { Declared } from '#model/declared';
import { factsOf } from '#model/facts';
import type { FileNames } from '#model/file-names';
import type { Delivery, Element } from '#model/model';
import type { Plan } from '#server/pipeline';
import type { Feature } from './features.ts';
import { centsOfStep, centsOfTrade, countOfOpening, hoursOfTrade, measuredOf } from './figures.ts';
import { lineLength } from './places.ts';
import { datesText, dayText, stepParts } from './step-text.ts';
import { tellBriefly } from './things.ts';
import type { View } from './view.ts';

export const inlayHints: Feature = {
  method: 'textDocument/inlayHint',
  offers: () => ({ inlayHintProvider: { resolveProvider: true } }),
  answer: (view, { range }: { readonly range: Range }) => hintsIn(view, range),
};

/** The working behind a hint, made when a pointer rests on it. */
export const inlayHintResolve: Feature = {
  method: 'inlayHint/resolve',
  offers: () => ({}),
  answer: (view, hint: InlayHint): InlayHint => {
    const { file } = view;
    const [from, to] = within(file, hint.position.line, hint.position.line);
    const declared = from < to ? file.declared[from] : undefined;
    const element = declared === undefined ? undefined : view.plan.model.element(declared.slot);
    if (element === undefined) return hint;
    const { why } = tellBriefly(element, viewOf(view.plan));
    return { ...hint, tooltip: why };
  },
};

/** Hints of the lines from first to last, both included. */
function hintsIn(view: View, { start, end }: Range): readonly InlayHint[] {
  const { file } = view;
  const [from, to] = within(file, start.line, end.line);
  return file.declared.slice(from, to).flatMap((declared, nth) => {
    const label = labelOf(declared, view);
    if (label === undefined) return [];
    const line = file.lines[from + nth]!;
    const position = { line, character: lineLength(file.tree, line) };
    return [{ position, label, paddingLeft: true, data: { uri: view.addresses.uriOf(file.path) } }];
  });
}

/** The same without places: what a person sees changes only when one of these does. */
export function shownHints(view: View, { start, end }: Range): readonly string[] {
  const [from, to] = within(view.file, start.line, end.line);
  return view.file.declared.slice(from, to).map((declared) => labelOf(declared, view) ?? '');
}

/** Which declarations begin on the lines from first to last. */
function within({ lines }: FileNames, first: number, last: number): readonly [from: number, to: number] {
  return [firstAtLeast(lines, first), firstAtLeast(lines, last + 1)];
}

/** What was said of a plan's declarations: the same lines are asked for, and then compared with those shown. */
const said = new WeakMap<Plan, Map<Declared, string | undefined>>();

function labelOf(declared: Declared, view: View): string | undefined {
  let labels = said.get(view.plan);
  if (labels === undefined) said.set(view.plan, (labels = new Map()));
  if (!labels.has(declared)) labels.set(declared, hintOf(declared, view));
  return labels.get(declared);
}

/** Nothing for a line with a mistake in it: what could be computed of it would mislead. */
function hintOf({ slot, declaration, node }: Declared, view: View): string | undefined {
  const { plan } = view;
  const { statement } = node.line;
  if (statement.problems.length > 0 || statement.items.some((item) => item.kind === 'wrong' && !declaration.asIs.has(item)))
    return undefined;
  if (plan.model.names.repeated.has(slot)) return undefined;
  const element = plan.model.element(slot);
  if (element === undefined || (plan.model.names.bySlot.get(slot) === undefined && element.kind !== 'assembly')) return undefined;
  const parts = partsOf(element, view, styleOf(plan)).filter((part) => part !== undefined);
  if (parts.length === 0) return undefined;
  const books = PLACES.has(element.kind) ? countedBy(plan, slot) : [];
  return [...parts, ...(books.length === 0 ? [] : [`by ${books.join(', ')}`])].join(' · ');
}

/** Whose quantities a book of the plan's choice may count. */
const PLACES: ReadonlySet<string> = new Set(['room', 'level', 'foundation', 'roof', 'deck']);

function partsOf(element: Element, { plan }: View, style: Style): readonly (string | undefined)[] {
  const { slot } = element;
  const named = (word: string, quantity: Quantity | undefined): string | undefined =>
    quantity === undefined || quantity.value === 0 ? undefined : `${write(quantity, style)} ${word}`;
  switch (element.kind) {
    case 'plan': {
      const seen = viewOf(plan);
      return [finishText(seen), costText(seen)];
    }
    case 'room':
      return [
        named('floor', factsOf(element)['floor-area']),
        named('board', measuredOf(plan, slot, 'area', 'board', ['board-area'])),
      ];
    case 'level':
      return [
        named('floor', factsOf(element)['floor-area']),
        named('outside wall, net', measuredOf(plan, slot, 'area', 'outside wall', ['wall-sheathing-area'])),
        heatText(element, viewOf(plan)),
      ];
    case 'assembly': {
      const { resistance, thickness } = factsOf(element);
      return [resistance === undefined ? undefined : write(resistance, style), named('thick', thickness)];
    }
    case 'window':
    case 'door':
      return [`${countOfOpening(plan.model, slot)} in the plan`];
    case 'foundation':
      return [named('concrete', measuredOf(plan, slot, 'volume', 'concrete', CONCRETE))];
    case 'trench':
      return [named('dug', measuredOf(plan, slot, 'volume', 'dug', ['trench-volume']))];
    case 'roof':
      return [named('roof', measuredOf(plan, slot, 'area', 'roof', ['roof-cover-area']))];
    case 'deck':
      return [named('deck', measuredOf(plan, slot, 'area', 'deck', ['deck-area']))];
    case 'task':
    case 'inspection':
    case 'milestone': {
      const number = plan.timeline.steps.index.get(slot);
      return number === undefined ? [] : stepParts(plan, number, style);
    }
    case 'delivery': {
      const number = plan.timeline.steps.index.get(slot);
      if (number === undefined) return [];
      return [orderBy(element, number, plan), ...stepParts(plan, number, style)];
    }
    case 'phase':
      return phaseParts(plan, slot, style);
    case 'trade': {
      const { minutes, steps } = hoursOfTrade(plan, slot);
      const cents = centsOfTrade(plan, slot);
      return [
        steps === 0
          ? undefined
          : `${write({ value: minutes, dimension: 'time', unit: 'h' }, style)} in ${counted(steps, 'task')}`,
        cents === 0 ? undefined : writeWholeMoney(cents, style),
      ];
    }
    case 'let': {
      const value = element.takes?.value;
      return [value === undefined || value.inputs.length === 0 ? undefined : `= ${write(value, style)}`];
    }
    default:
      return [];
  }
}

const CONCRETE = ['footing-volume', 'stem-wall-volume', 'slab-volume', 'pier-volume', 'pad-volume'];

/** From the first day of its steps to the last, and what they cost. */
function phaseParts(plan: View['plan'], slot: Element['slot'], style: Style): readonly (string | undefined)[] {
  const { timeline } = plan;
  const numbers = timeline.steps.within.get(slot) ?? [];
  if (numbers.length === 0) return [];
  let start = Number.POSITIVE_INFINITY;
  let finish = Number.NEGATIVE_INFINITY;
  let cents = 0;
  for (const number of numbers) {
    start = Math.min(start, timeline.crews.start[number]!);
    finish = Math.max(finish, timeline.crews.finish[number]!);
    cents += centsOfStep(plan, number);
  }
  return [datesText(start, finish, timeline), cents === 0 ? undefined : writeWholeMoney(cents, style)];
}

/** The last day on which an order still comes in time; nothing once it is ordered or here. */
function orderBy({ given }: Delivery, number: number, { timeline }: View['plan']): string | undefined {
  const lead = given.lead?.value;
  const isOpen = given.ordered === undefined && timeline.progress.records.get(number)?.finished === undefined;
  if (lead === undefined || !isOpen || !timeline.dated || lead.unit === 'd' || lead.unit === 'w') return undefined;
  return `order by ${dayText(dayOfStart(timeline.floats.lateStart[number]! - lead.value))}`;
}
