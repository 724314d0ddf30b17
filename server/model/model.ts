// The words of the house: records with their names followed and their values evaluated. Later rooms use these types and
// never the grammar's. An element is the same object for as long as nothing it was made from changed.
import type { Literal } from '#grammar/tree';
import type { always } from '#grammar/vocabulary/house';
import type {
  Amount,
  Condition,
  Given,
  GoodsNamed,
  Kind,
  Named,
  Pointed,
  Properties,
  Property,
  StepNamed,
  TakenBy,
} from '#grammar/vocabulary/types';
import type { spaces, Vocabulary } from '#grammar/vocabulary/vocabulary';
import type { Place, Slot } from '#kit/place';
import type { Quantity } from '#kit/quantity';

type Spaces = typeof spaces;
/** The kinds that a name of a kind or space can mean. */
type KindsIn<K> = K extends keyof Spaces ? Spaces[K][number] : K extends keyof Vocabulary ? K : never;

/** Goods as named in a plan: the row behind the name, and the sizes that pick one of its kind. */
export interface Goods {
  readonly name: string;
  /** Undefined where nothing of that name is known: it is counted all the same. */
  readonly of: GoodsRow | undefined;
  readonly sizes: readonly Literal[];
  readonly place: Place;
}
export type GoodsRow = ElementOf<KindsIn<'priced'>>;

export interface StepLink {
  readonly step: Slot;
  readonly from: 'finish' | 'start';
  readonly share?: number;
  readonly lag?: Quantity<'time'>;
  readonly lead?: true;
  readonly place: Place;
}

export interface NamePlace {
  readonly name: string;
  readonly place: Place;
}

export interface FollowedCondition extends Omit<Condition, 'amount' | 'spot' | 'kind'> {
  readonly amount?: Quantity;
  readonly place: Place;
}

/** A value that was given, and where. */
export interface At<T> {
  readonly value: T;
  readonly place: Place;
}

type Follow<T> =
  T extends Amount<infer D>
    ? Quantity<D>
    : T extends Named<infer K>
      ? ElementOf<KindsIn<K>>
      : T extends Pointed
        ? Slot
        : T extends GoodsNamed
          ? Goods
          : T extends StepNamed
            ? StepLink
            : T extends Condition
              ? FollowedCondition
              : T extends { readonly kind: 'any-name' }
                ? NamePlace
                : T extends Literal
                  ? T
                  : T extends Given<infer V>
                    ? At<Follow<V>>
                    : T extends readonly (infer I)[]
                      ? readonly Follow<I>[]
                      : T extends string | number | boolean | undefined
                        ? T
                        : { readonly [P in keyof T]: Follow<T[P]> };

type FollowedValue<P extends Property> = At<
  P['takes'] extends { readonly _?: infer T } ? Follow<Exclude<T, undefined>> : never
> & {
  readonly deeper: P['deeper'] extends Properties ? FollowedProperties<P['deeper']> : object;
};
export type FollowedProperties<Ps extends Properties> = {
  readonly [W in keyof Ps]: Ps[W]['repeats'] extends true ? readonly FollowedValue<Ps[W]>[] : FollowedValue<Ps[W]> | undefined;
};

interface ElementBase<K extends Kind> {
  readonly kind: K['word'];
  readonly slot: Slot;
  readonly name: string;
  /** What a person calls it: the label, or else the name. */
  readonly label: string;
  readonly place: Place;
  readonly takes: Follow<TakenBy<K>> | undefined;
  readonly given: FollowedProperties<K['properties'] & typeof always>;
  readonly entries: K['entries'] extends Property ? readonly FollowedValue<K['entries']>[] : readonly [];
}
export type ElementOf<K> = K extends keyof Vocabulary ? ElementBase<Vocabulary[K]> : never;
/** Any element, by its kind. */
export type Element = ElementOf<keyof Vocabulary>;

export type Plan = ElementOf<'plan'>;
export type Level = ElementOf<'level'>;
export type Room = ElementOf<'room'>;
export type Assembly = ElementOf<'assembly'>;
export type Opening = ElementOf<'window' | 'door'>;
export type Foundation = ElementOf<'foundation'>;
export type Roof = ElementOf<'roof'>;
export type Deck = ElementOf<'deck'>;
export type Stair = ElementOf<'stair'>;
export type Trench = ElementOf<'trench'>;
export type Task = ElementOf<'task'>;
export type Inspection = ElementOf<'inspection'>;
export type Milestone = ElementOf<'milestone'>;
export type Delivery = ElementOf<'delivery'>;
export type Step = Task | Inspection | Milestone | Delivery;
export type Phase = ElementOf<'phase'>;
export type Trade = ElementOf<'trade'>;
export type Material = ElementOf<'material'>;
export type WorkKind = ElementOf<'work'>;
export type State = ElementOf<'state'>;
export type Rule = ElementOf<'rule'>;
export type Price = ElementOf<'price'>;
