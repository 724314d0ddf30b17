// Names that could be written: of a kind or space, the plan's nearest to the caret first, then the library's; figures of a
// thing after its dot; codes of what is found at the declaration.
import { viewOf, write } from '#answers/view';
import { kindsOf } from '#grammar/vocabulary/vocabulary';
import type { Dimension } from '#kit/dimension';
import type { Slot } from '#kit/place';
import { factsOf } from '#model/facts';
import { asIs, words } from '../prose.ts';
import { meantBy, spacesMeant, usesIn } from '../uses.ts';
import type { View } from '../view.ts';
import type { Suggestion } from './suggestion.ts';

/** `near`: the declaration the caret is in; it is not offered to itself. */
export function nameSuggestions(space: string, near: Slot | undefined, view: View, property = ''): readonly Suggestion[] {
  const { names, library } = view.plan.model;
  const kinds = kindsOf(space);
  const here = near === undefined ? 0 : (names.order.get(near) ?? 0);
  const fits = USUAL_WORTH_KNOWING.has(space)
    ? usualAt(near?.kind ?? '', property, view)
    : space === 'work'
      ? openWork(view)
      : () => 0;
  const suggestions: Suggestion[] = [];
  for (const [slot, order] of names.order) {
    if (!kinds.includes(slot.kind) || slot === near || names.repeated.has(slot) || !names.first.has(`${slot.kind}/${slot.name}`))
      continue;
    suggestions.push(suggestionOf(slot, view, 'name', Math.abs(order - here) + fits(slot)));
  }
  // A step is something of the plan; the library's inspections are none until a plan declares them.
  if (space === 'step') return suggestions;
  for (const [key, slot] of library.first)
    if (kinds.includes(slot.kind) && !names.first.has(key))
      suggestions.push(suggestionOf(slot, view, 'library-name', 100_000 + fits(slot)));
  return suggestions;
}

const USUAL_WORTH_KNOWING: ReadonlySet<string> = new Set(['goods', 'priced', 'assembly', 'opening']);

/** Work that the plan holds and nobody does yet comes first. */
function openWork({ plan: { timeline } }: View): (slot: Slot) => number {
  const { byWork } = timeline.claims;
  return ({ name }) => ((byWork.get(name)?.open.length ?? 0) > 0 ? -200_000 : 0);
}

/** How far down goods go behind a word: those used there elsewhere come first, other kinds than those last. */
function usualAt(kind: string, property: string, { plan: { model } }: View): (slot: Slot) => number {
  const used = new Map<string, number>();
  const kinds = new Set<string>();
  const declared = [...(model.names.byKind.get(kind) ?? []), ...(model.library.byKind.get(kind) ?? [])].flatMap(
    (slot) => model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot) ?? [],
  );
  for (const each of declared)
    for (const use of usesIn(each)) {
      if (use.property !== property) continue;
      const slot = meantBy(use, each.slot, model);
      if (slot === undefined) continue;
      used.set(`${slot.kind}/${slot.name}`, (used.get(`${slot.kind}/${slot.name}`) ?? 0) + 1);
      kinds.add(slot.kind);
    }
  const place = PLACES[property];
  return (slot) => {
    const count = used.get(`${slot.kind}/${slot.name}`);
    if (count !== undefined) return -200_000 - count * 10;
    if (place !== undefined && slot.kind === 'assembly' && placeOf(slot, model) !== place) return 400_000;
    return kinds.size > 0 && !kinds.has(slot.kind) ? 600_000 : 0;
  };
}

/** Where an assembly stands that a level names by this word. */
const PLACES: { readonly [property: string]: string } = {
  walls: 'wall',
  partitions: 'partition',
  floor: 'floor',
  ceiling: 'ceiling',
};

function placeOf(slot: Slot, model: View['plan']['model']): string | undefined {
  const element = model.element(slot);
  return element?.kind === 'assembly' ? element.given.for?.value : undefined;
}

/** Names of whatever kind a word of that declaration usually means. */
export function anyNameSuggestions(property: string, near: Slot | undefined, view: View): readonly Suggestion[] {
  return spacesMeant(near?.kind ?? '', property).flatMap((space, at) =>
    nameSuggestions(space, near, view, property).map((each) => ({ ...each, rank: each.rank + at * 2_000_000 })),
  );
}

/** Names that stand for a value of the dimension: `let`, and after a dot the figures of a thing. */
export function valueSuggestions(
  dimension: Dimension | undefined,
  typed: string,
  near: Slot | undefined,
  view: View,
): readonly Suggestion[] {
  const { model } = view.plan;
  const seen = viewOf(view.plan);
  const dot = typed.lastIndexOf('.');
  if (dot < 0)
    return nameSuggestions('let', near, view).filter(({ label }) => {
      const slot = model.names.first.get(`let/${label}`);
      const element = slot === undefined ? undefined : model.element(slot);
      const value = element?.kind === 'let' ? element.takes?.value : undefined;
      return dimension === undefined || value === undefined || value.dimension === dimension;
    });
  const owner = typed.slice(0, dot).split('.').at(-1)!;
  return [...model.names.first.values()]
    .filter((slot) => slot.name === owner)
    .flatMap((slot) => {
      const element = model.element(slot);
      return element === undefined ? [] : Object.entries(factsOf(element));
    })
    .flatMap(([fact, value], at): readonly Suggestion[] => {
      if (value === undefined) return [];
      const fits = dimension === undefined || value.dimension === dimension;
      const label = `${typed.slice(0, dot)}.${fact}`;
      return [
        { label, detail: write(value, seen.style), help: [words(value.form.label)], kind: 'fact', rank: fits ? at : 1000 + at },
      ];
    });
}

/** Codes that the library knows of: whose holidays, which editions. */
export function knownCodes(property: string, { plan: { model } }: View): readonly Suggestion[] {
  const codes = new Set<string>();
  if (property === 'holidays')
    for (const { given } of model.rows('holiday')) for (const { value } of given.in?.value ?? []) codes.add(value);
  if (property === 'code')
    for (const { given } of [...model.rows('minimum'), ...model.rows('rule'), ...model.rows('need')])
      for (const { value } of given.section) for (const each of value) codes.add(each.value.edition);
  return [...codes].map((code, at) => ({ label: code, help: [words('Known to the library.')], kind: 'word', rank: at }));
}

/** Codes of what is found at a declaration: what an acceptance there can answer. */
export function codeSuggestions(near: Slot | undefined, view: View): readonly Suggestion[] {
  const codes = new Set(
    view.plan.findings.filter(({ place }) => near?.kind === 'accept' || place.slot === near).map(({ code }) => code),
  );
  return [...codes].map((code, at) => ({ label: code, help: [words('Found here.')], kind: 'word', rank: at }));
}

function suggestionOf(slot: Slot, { plan: { model } }: View, kind: 'name' | 'library-name', rank: number): Suggestion {
  const declared = model.names.bySlot.get(slot) ?? model.library.bySlot.get(slot);
  const label = declared?.declaration.label?.value;
  const text = declared?.node.line.statement.text ?? '';
  return {
    label: slot.name,
    detail: label === undefined ? slot.kind : `${slot.kind}, ${label}`,
    help: [asIs([text], 'screed'), ...(kind === 'library-name' ? [words('From the library.')] : [])],
    kind,
    rank,
  };
}
