// DOOR: a name → the working behind it: a sentence that says why, and a tree of reasons. A name may be anything the plan or
// the library declares, NAME.FACT, an item that is bought, the id of a line of the take-off, or what any of them is called where
// it is printed.
import { nearest } from '#kit/did-you-mean';
import type { Place, Slot } from '#kit/place';
import { factsOf } from '#model/facts';
import type { Element } from '#model/model';
import type { Line, Purchase } from '#takeoff/lines';
import { earnedReason } from './explain-earned.ts';
import { figureReason } from './explain-figures.ts';
import { heatReason } from './explain-heat.ts';
import { costReason } from './explain-money.ts';
import { assemblyReasons } from './explain-others.ts';
import { beginsReason, stepReasons, takesReason, whyStep } from './explain-step.ts';
import { purchaseReason, quantities, tellThing } from './explain-things.ts';
import { type ListedReason, listedReason, saying, treeLines } from './listed-reason.ts';
import { positionOf } from './position.ts';
import { counted } from './table.ts';
import { countedLines, countedPurchases, labelOf, sums } from './takeoff-lines.ts';
import { buyText } from './takeoff-table.ts';
import { type View, write } from './view.ts';

export interface Explanation {
  readonly name: string;
  /** 'task', 'room' …; 'fact', 'item' and 'line' for what is not declared. */
  readonly kind: string;
  readonly label: string;
  /** One sentence. */
  readonly why: string;
  readonly place?: { readonly file: string; readonly line: number; readonly column: number };
  readonly reasons: readonly ListedReason[];
}

export interface Explained {
  /** One for each thing of that name. */
  readonly found: readonly Explanation[];
  /** Near misses, where nothing has that name. */
  readonly near: readonly string[];
}

export function explain(asked: string, view: View): Explained {
  const name = asked.trim().toLowerCase();
  const found = [...declaredThings(name, view), ...facts(name, view), ...items(name, view), ...lines(name, view)];
  if (found.length > 0) return { found, near: [] };
  const called = [...itemsCalled(name, view), ...measuredCalled(name, view), ...thingsCalled(name, view)];
  if (called.length > 0) return { found: called, near: [] };
  return { found, near: nearNames(name, view) };
}

/** What is explained, why, and the tree. */
export function explanationText({ name, kind, label, why, place, reasons }: Explanation): string {
  const called = label === name ? '' : `  "${label}"`;
  const at = place === undefined ? '' : `  (${place.file}:${place.line})`;
  return `${[`${kind} ${name}${called}${at}`, why, ...reasons.flatMap((reason) => treeLines(reason, 12, 1))].join('\n')}\n`;
}

/** Everything declared that has the name; `kind name` and `kind/name` narrow it down. */
function declaredThings(name: string, view: View): readonly Explanation[] {
  const { model } = view.plan;
  const [kind, own] = /^([a-z-]+)[ /]([^ /]+)$/.exec(name)?.slice(1) ?? [undefined, name];
  const inPlan = slotsNamed(own ?? name, kind, model.names.first);
  const slots = inPlan.length > 0 ? inPlan : slotsNamed(own ?? name, kind, model.library.first);
  if (slots.length === 0 && name === 'plan' && model.plan !== undefined) slots.push(model.plan.slot);
  return slots.flatMap((slot) => {
    const element = model.element(slot);
    return element === undefined ? [] : [explainElement(element, view)];
  });
}

/** The explanation of one thing: for hover as for the command line. */
export function explainElement(element: Element, view: View): Explanation {
  const step = view.plan.timeline.steps.index.get(element.slot);
  const { why, reasons } =
    step === undefined ? tellThing(element, view) : { why: whyStep(step, view), reasons: stepReasons(step, view) };
  return { name: element.name, kind: element.kind, label: element.label, why, ...placed(element.place, view), reasons };
}

function slotsNamed(name: string, kind: string | undefined, first: ReadonlyMap<string, Slot>): Slot[] {
  return [...first.values()].filter((slot) => slot.name === name && (kind === undefined || slot.kind === kind));
}

/** NAME.FACT: a fact of a thing, or of a step how long it takes and when. */
function facts(name: string, view: View): readonly Explanation[] {
  const dot = name.lastIndexOf('.');
  if (dot < 0) return [];
  const [owner, fact] = [name.slice(0, dot).replace('.', '/'), name.slice(dot + 1)];
  return elementsNamed(owner, view).flatMap((element) => {
    const reason = factReason(element, fact, view);
    if (reason === undefined) return [];
    return [
      {
        name,
        kind: 'fact',
        label: `${element.label}: ${fact.replaceAll('-', ' ')}`,
        why: `It is ${reason.text}.`,
        ...placed(element.place, view),
        reasons: [reason],
      },
    ];
  });
}

function factReason(element: Element, fact: string, view: View): ListedReason | undefined {
  const facts = factsOf(element);
  const value = Object.hasOwn(facts, fact) ? facts[fact] : undefined;
  if (value !== undefined) return listedReason(value, view);
  const heat = heatReason(element, fact, view);
  if (heat !== undefined) return heat;
  const earned = earnedReason(element, fact, view);
  if (earned !== undefined) return earned;
  if (element.kind === 'assembly') return assemblyReasons(element, view).find(({ label }) => label === fact);
  const step = view.plan.timeline.steps.index.get(element.slot);
  if (fact === 'cost')
    return costReason(
      view.plan.budget.lines.filter(
        (line) => (step !== undefined && line.step === step) || [line.trade, line.room, line.element].includes(element.slot),
      ),
      view,
    );
  if (step === undefined) return figureReason(element, fact, view);
  return fact === 'takes' || fact === 'duration'
    ? takesReason(step, view)
    : fact === 'begins' || fact === 'start'
      ? beginsReason(step, view)
      : undefined;
}

function elementsNamed(owner: string, view: View): readonly Element[] {
  const { model } = view.plan;
  if (owner === 'plan' && model.plan !== undefined) return [model.plan];
  const [kind, own] = owner.includes('/') ? owner.split('/') : [undefined, owner];
  return slotsNamed(own ?? owner, kind, model.names.first).flatMap((slot) => model.element(slot) ?? []);
}

/** 'osb 7/16"': what is bought of it. */
function items(name: string, view: View): readonly Explanation[] {
  return bought(({ item }) => item.toLowerCase() === name, view);
}

/** 'Oriented strand board 7/16"', as it is printed; of concrete also one pour. */
function itemsCalled(name: string, view: View): readonly Explanation[] {
  return bought(
    ({ label, pour }) => label.toLowerCase() === name || (pour !== undefined && `${label}: ${pour.label}`.toLowerCase() === name),
    view,
  );
}

/** 'Brace the walls', 'deck area': what is measured and not bought, as it is printed. */
function measuredCalled(name: string, view: View): readonly Explanation[] {
  const all = countedLines(view);
  const purchased = new Set(countedPurchases(view, new Set(all)).flatMap((purchase) => purchase.lines));
  const own = all.filter((line) => !purchased.has(line) && [line.label, line.item].some((word) => word.toLowerCase() === name));
  return sums(own.map((line) => ({ line, share: 1 }))).map((sum) => ({
    name: sum.item,
    kind: 'quantity',
    label: sum.label,
    why: `${write(sum.net, view.style)} in ${counted(sum.lines.length, 'line')} of the take-off${sum.minutes === undefined ? '' : `, ${write({ value: sum.minutes, dimension: 'time' }, view.style)} of work by the rates`}.`,
    reasons: quantities(sum.lines, view),
  }));
}

/** Whatever the plan or the library calls so. */
function thingsCalled(name: string, view: View): readonly Explanation[] {
  const { model } = view.plan;
  for (const { first } of [model.names, model.library]) {
    const found = [...first.values()].flatMap((slot) => {
      const element = model.element(slot);
      return element !== undefined && element.label.toLowerCase() === name ? [explainElement(element, view)] : [];
    });
    if (found.length > 0) return found;
  }
  return [];
}

function bought(wanted: (purchase: Purchase) => boolean, view: View): readonly Explanation[] {
  return countedPurchases(view, new Set(countedLines(view)))
    .filter(wanted)
    .map((purchase) => ({
      name: purchase.item,
      kind: 'item',
      label: purchase.label,
      why: `${buyText(purchase, view)}: ${write(purchase.needed, view.style)} needed, rounded up once for ${purchase.pour === undefined ? 'the whole plan' : 'the pour'}.`,
      reasons: [
        purchaseReason(purchase, view),
        ...list(
          costReason(
            view.plan.budget.lines.filter(
              ({ line, kind }) => kind === 'material' && line !== undefined && purchase.lines.includes(line),
            ),
            view,
          ),
        ),
      ],
    }));
}

/** A line of the take-off: net, needed, hours, who does it. */
function lines(name: string, view: View): readonly Explanation[] {
  return countedLines(view)
    .filter(({ id }) => id.toLowerCase() === name)
    .map((line) => ({
      name: line.id,
      kind: 'line',
      label: line.label,
      why: whyLine(line, view),
      ...placed(view.plan.model.element(line.where.element)?.place, view),
      reasons: [
        listedReason(line.net, view, `net: ${line.net.form.label}`),
        ...(line.needed === undefined ? [] : [listedReason(line.needed, view, `needed: ${line.needed.form.label}`)]),
        ...(line.hours === undefined ? [] : [listedReason(line.hours, view)]),
        ...doers(line, view),
        ...list(
          costReason(
            view.plan.budget.lines.filter((cost) => cost.line === line),
            view,
          ),
        ),
      ],
    }));
}

function whyLine(line: Line, view: View): string {
  const { element, part } = line.where;
  const needed = line.needed === undefined ? '' : `, ${write(line.needed, view.style)} with what the material’s convention adds`;
  return `${write(line.net, view.style)} of ${line.label} for ${labelOf(element, view)}${part === undefined ? '' : ` (${part})`}${needed}.`;
}

function doers(line: Line, view: View): readonly ListedReason[] {
  const { timeline } = view.plan;
  const tasks = timeline.steps.list
    .filter((_, step) => timeline.claims.byStep[step]!.some((claim) => claim.line === line))
    .map((task) => task.name);
  if (line.work === undefined) return [saying('done by', 'no kind of work installs it')];
  return [
    saying(
      'done by',
      tasks.length === 0 ? `nobody yet; its work is ${line.work.name}` : `${tasks.join(', ')} (${line.work.name})`,
    ),
  ];
}

/** Near misses; of an id, the other lines of its item. */
function nearNames(name: string, view: View): readonly string[] {
  const { model } = view.plan;
  const ids = countedLines(view).map(({ id }) => id);
  const alike = name.includes('@') ? ids.filter((id) => id.toLowerCase().startsWith(`${name.split('@')[0]}@`)) : [];
  if (alike.length > 0) return alike.slice(0, 5);
  return nearest(name, [...[...model.names.first.values(), ...model.library.first.values()].map((slot) => slot.name), ...ids]);
}

function placed(place: Place | undefined, view: View): Pick<Explanation, 'place'> {
  if (place === undefined) return {};
  const { file, line, column } = positionOf(place, view);
  return { place: { file, line, column } };
}

function list(reason: ListedReason | undefined): readonly ListedReason[] {
  return reason === undefined ? [] : [reason];
}
