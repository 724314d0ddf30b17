// Names that could be written: of a kind or space, the plan's nearest to the caret first, then the library's; figures of a
// thing after its dot; codes of what is found at the declaration.
import { viewOf, write } from '#answers/view';
import { kindsOf } from '#grammar/vocabulary/vocabulary';
import type { Dimension } from '#kit/dimension';
import type { Slot } from '#kit/place';
import { factsOf } from '#model/facts';
import { asIs, words } from '../prose.ts';
import type { View } from '../view.ts';
import type { Suggestion } from './suggestion.ts';

/** `near`: the declaration the caret is in; it is not offered to itself. */
export function nameSuggestions(space: string, near: Slot | undefined, view: View): readonly Suggestion[] {
  const { names, library } = view.plan.model;
  const kinds = kindsOf(space);
  const here = near === undefined ? 0 : (names.order.get(near) ?? 0);
  const suggestions: Suggestion[] = [];
  for (const [slot, order] of names.order) {
    if (!kinds.includes(slot.kind) || slot === near || names.repeated.has(slot) || !names.first.has(`${slot.kind}/${slot.name}`))
      continue;
    suggestions.push(suggestionOf(slot, view, 'name', Math.abs(order - here)));
  }
  // A step is something of the plan; the library's inspections are none until a plan declares them.
  if (space === 'step') return suggestions;
  for (const [key, slot] of library.first)
    if (kinds.includes(slot.kind) && !names.first.has(key)) suggestions.push(suggestionOf(slot, view, 'library-name', 100_000));
  return suggestions;
}

/** Names of whatever kind a word of that declaration usually means. */
export function anyNameSuggestions(property: string, near: Slot | undefined, view: View): readonly Suggestion[] {
  return spacesFor(near?.kind ?? '', property).flatMap((space, at) =>
    nameSuggestions(space, near, view).map((each) => ({ ...each, rank: each.rank + at * 200_000 })),
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

/** Codes of what is found at a declaration: what an acceptance there can answer. */
export function codeSuggestions(near: Slot | undefined, view: View): readonly Suggestion[] {
  const codes = new Set(
    view.plan.findings.filter(({ place }) => near?.kind === 'accept' || place.slot === near).map(({ code }) => code),
  );
  return [...codes].map((code, at) => ({ label: code, help: [words('Found here.')], kind: 'word', rank: at }));
}

function spacesFor(kind: string, property: string): readonly string[] {
  switch (kind) {
    case 'task':
      return ['room', 'level', 'foundation', 'trench', 'roof', 'deck', 'goods'];
    case 'inspection':
    case 'rule':
      return ['step', 'work', 'state'];
    case 'milestone':
      return ['step', 'goods'];
    case 'delivery':
      return ['goods'];
    case 'bid':
      return ['work', 'step'];
    case 'dry-well':
      return ['roof'];
    case 'measure':
      return ['level'];
    default:
      return property === 'hides' ? ['work'] : ['step', 'work', 'goods', 'room'];
  }
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
