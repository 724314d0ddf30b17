// DOOR: every row of the language. Reading, completion, help, colouring and the language reference all come from here.
import * as conventions from './conventions.ts';
import * as extra from './extra.ts';
import * as firms from './firms.ts';
import * as general from './general.ts';
import * as ground from './ground.ts';
import * as house from './house.ts';
import * as library from './library.ts';
import * as money from './money.ts';
import * as progress from './progress.ts';
import * as rooms from './rooms.ts';
import * as rules from './rules.ts';
import * as stairs from './stairs.ts';
import * as times from './times.ts';
import type { Kind, Properties, Property } from './types.ts';
import * as work from './work.ts';

export const vocabulary = {
  plan: work.plan,
  include: general.include,
  let: general.letRow,
  measure: rooms.measured,
  accept: general.acceptRow,
  site: ground.site,
  trench: ground.trench,
  'dry-well': ground.dryWell,
  level: house.level,
  assembly: house.assembly,
  window: rooms.window,
  door: rooms.door,
  room: rooms.room,
  wall: rooms.wall,
  foundation: ground.foundation,
  crawl: ground.crawl,
  roof: house.roof,
  stair: stairs.stair,
  deck: house.deck,
  panels: house.panels,
  extra: extra.extra,
  trade: work.trade,
  firm: firms.firm,
  supplier: firms.supplier,
  machine: firms.machine,
  phase: work.phase,
  task: work.task,
  inspection: work.inspection,
  milestone: work.milestone,
  delivery: work.delivery,
  price: money.price,
  allowance: money.allowance,
  bid: money.bid,
  money: money.savings,
  loan: money.loan,
  paid: money.paid,
  invoice: money.invoice,
  alternate: money.alternate,
  change: money.change,
  progress: progress.progress,
  'as-planned': progress.asPlanned,
  punch: progress.punch,
  material: library.material,
  item: library.item,
  fixture: library.fixture,
  work: library.work,
  element: library.element,
  convention: conventions.convention,
  state: library.state,
  rule: rules.rule,
  need: rules.need,
  minimum: rules.minimum,
  calculation: rules.calculation,
  hazard: rules.hazard,
  holiday: library.holiday,
  climate: times.climate,
} as const;

export type Vocabulary = typeof vocabulary;
export type KindWord = keyof Vocabulary;

/** Second words for a kind, rewritten by the formatter. */
export const kindSpellings: { readonly [word: string]: KindWord } = { figure: 'let' };

/** Words that open a clause wherever they stand on a line, and so are never names. */
export const joiningWords: ReadonlySet<string> = new Set([
  'after',
  'also',
  'before',
  'by',
  'from',
  'in',
  'on',
  'of',
  'for',
  'at',
  'to',
  'with',
  'without',
  'until',
  'under',
  'over',
  'between',
  'takes',
  'does',
  'costs',
  'fee',
  'call',
  'coat',
  'adds',
  'above',
  'brings',
  'needs',
  'as',
  'is',
  'except',
  'lead',
  'beside',
  'since',
]);

/** Kinds whose names share one space, by the name of the space. */
export const spaces = {
  goods: ['material', 'item', 'assembly', 'window', 'door', 'fixture'],
  priced: ['material', 'item', 'assembly', 'window', 'door', 'fixture', 'work'],
  step: ['task', 'inspection', 'milestone', 'delivery', 'phase', 'state'],
  opening: ['window', 'door'],
} as const satisfies { readonly [space: string]: readonly KindWord[] };

export function kindOf(word: string): Kind | undefined {
  const known = Object.hasOwn(kindSpellings, word) ? kindSpellings[word]! : word;
  return Object.hasOwn(vocabulary, known) ? vocabulary[known as KindWord] : undefined;
}

const merged = new WeakMap<Kind, Properties>();
/** A kind's own properties and those that every declaration takes. */
export function propertiesOf(kind: Kind): Properties {
  let all = merged.get(kind);
  if (all === undefined) merged.set(kind, (all = { ...house.always, ...kind.properties }));
  return all;
}

export function propertyOf(properties: Properties, word: string): Property | undefined {
  return Object.hasOwn(properties, word) ? properties[word] : undefined;
}

/** The kinds a name of this space, or kind, may belong to. */
export function kindsOf(space: string): readonly string[] {
  return Object.hasOwn(spaces, space) ? spaces[space as keyof typeof spaces] : [space];
}
