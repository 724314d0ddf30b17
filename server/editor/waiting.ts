// The order of work as a tree to walk: what a step waits for, and what waits for it. In the protocol's words a step calls
// those it waits for.
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  Position,
  Range,
} from 'vscode-languageserver-types';
import { thereAt } from './at-position.ts';
import { declarationOf } from './definition.ts';
import type { Feature } from './features.ts';
import { rangeOf } from './places.ts';
import { datesText } from './step-text.ts';
import { symbolKind } from './symbols.ts';
import type { View } from './view.ts';

export const prepareWaiting: Feature = {
  method: 'textDocument/prepareCallHierarchy',
  offers: () => ({ callHierarchyProvider: true }),
  answer: (view, { position }: { readonly position: Position }) => {
    const slot = thereAt(view.file, view.plan.model, position)?.naming?.slot;
    const step = slot === undefined ? undefined : view.plan.timeline.steps.index.get(slot);
    return step === undefined ? undefined : [itemOf(step, view)].filter((item) => item !== undefined);
  },
};

/** What waits for it. */
export const waitingFor: Feature = {
  method: 'callHierarchy/incomingCalls',
  offers: () => ({}),
  answer: (view, { item }: { readonly item: CallHierarchyItem }): readonly CallHierarchyIncomingCall[] =>
    linked(view, item, 'to').flatMap(({ step, ranges }) => {
      const from = itemOf(step, view);
      return from === undefined ? [] : [{ from, fromRanges: ranges(from.uri) }];
    }),
};

/** What it waits for. */
export const waitedFor: Feature = {
  method: 'callHierarchy/outgoingCalls',
  offers: () => ({}),
  answer: (view, { item }: { readonly item: CallHierarchyItem }): readonly CallHierarchyOutgoingCall[] =>
    linked(view, item, 'from').flatMap(({ step, ranges }) => {
      const to = itemOf(step, view);
      return to === undefined ? [] : [{ to, fromRanges: ranges(item.uri) }];
    }),
};

interface Linked {
  readonly step: number;
  /** Where the links are said, in a file. */
  readonly ranges: (uri: string) => Range[];
}

function linked({ plan, addresses }: View, { name }: CallHierarchyItem, side: 'from' | 'to'): readonly Linked[] {
  const { steps, links } = plan.timeline;
  const own = steps.byName.get(name);
  if (own === undefined) return [];
  const found = new Map<number, (typeof links)[number][]>();
  for (const link of links) {
    if ((side === 'to' ? link.from : link.to) !== own) continue;
    found.set(link[side], [...(found.get(link[side]) ?? []), link]);
  }
  return [...found].map(([step, said]) => ({
    step,
    ranges: (uri) =>
      said.flatMap(({ place }) => {
        const range = addresses.uriOf(place.slot.file) === uri ? rangeOf(place, plan.model) : undefined;
        return range === undefined ? [] : [range];
      }),
  }));
}

function itemOf(number: number, view: View): CallHierarchyItem | undefined {
  const { timeline } = view.plan;
  const step = timeline.steps.list[number];
  const declared = step === undefined ? undefined : declarationOf(step.slot, view);
  if (step === undefined || declared === undefined) return undefined;
  return {
    name: step.name,
    kind: symbolKind(step.kind),
    detail: datesText(timeline.crews.start[number]!, timeline.crews.finish[number]!, timeline),
    uri: declared.uri,
    range: declared.range,
    selectionRange: declared.name,
  };
}
