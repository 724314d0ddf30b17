// What a row of the vocabulary says: a word, what may follow it, help and an example. The types of the house are computed
// from the rows, so a new property is one row and the compiler leads to everyone who should care.
import type { Dimension } from '#kit/dimension';
import type { Spot } from '#kit/place';
import type { Expression, Literal } from '../tree.ts';

// ---- what a value looks like in the record (read, not yet followed) ----

/** A quantity as written: an expression of a known dimension, evaluated in the model. */
export interface Amount<D extends Dimension = Dimension> {
  readonly kind: 'amount';
  readonly dimension: D;
  /** Any dimension will do: `let`, and what a condition compares. */
  readonly any?: true;
  readonly clock: Clock;
  readonly label: string;
  readonly expression: Expression;
  readonly path: readonly number[];
  readonly _?: D;
}
/** How a time is meant: working time however spelled; or as spelled (2d works, 2 days run, 24h run). */
export type Clock = 'work' | 'as-spelled';

/** A name that the model follows to the thing it names. */
export interface Named<K extends string = string> {
  readonly kind: 'named';
  readonly of: K;
  readonly name: string;
  readonly spot: Spot;
}
/** A name that the model checks but does not follow: who it points at may change without changing what points. */
export interface Pointed<K extends string = string> {
  readonly kind: 'pointed';
  readonly of: K;
  readonly name: string;
  readonly spot: Spot;
}
/** Goods with the sizes that pick one of their kind: `drywall 1/2"`, `stud 2x6`, `rebar #4`. */
export interface GoodsNamed {
  readonly kind: 'goods';
  readonly space: string;
  readonly name: string;
  readonly sizes: readonly Literal[];
  readonly spot: Spot;
}

/** A step waited for: its finish or start, or part of the way through it, and how long after. */
export interface StepNamed {
  readonly kind: 'step';
  readonly step: Pointed<'step'>;
  readonly from: 'finish' | 'start';
  /** Done share of the step, 0 to 1, where a link starts part-way: `50% of framing`. */
  readonly share?: number;
  readonly lag?: Amount<'time'>;
  /** The lag counts backward: a lead. */
  readonly lead?: true;
}
/** `when plan.zone is 5A`, `when any room has floor plank`, `unless foundation.fill under 48"`. */
export interface Condition {
  readonly kind: 'condition';
  /** What is looked at: a kind's word, or a thing's name. */
  readonly subject: string;
  readonly quantifier: 'one' | 'any' | 'every' | 'no';
  /** A fact or property of it; absent for `any basement`: that there is one. */
  readonly fact?: string;
  readonly test: 'is' | 'is-not' | 'at-least' | 'at-most' | 'over' | 'under' | 'has' | 'exists';
  readonly words: readonly string[];
  readonly amount?: Amount;
  readonly spot: Spot;
}

// ---- shapes ----

/** What may stand as a value. `check` drives reading, completion and help; `form` is how a person would say it. */
export interface Shape<T> {
  readonly form: string;
  readonly check: ValueCheck;
  /** For the compiler only. */
  readonly _?: T;
}

export type ValueCheck =
  | { readonly kind: 'quantity'; readonly dimension: Dimension; readonly clock: Clock; readonly written?: true }
  | { readonly kind: 'any-quantity' }
  | { readonly kind: 'word'; readonly words: readonly string[] }
  | { readonly kind: 'name' | 'pointer'; readonly of: string }
  | { readonly kind: 'step' | 'condition' }
  | { readonly kind: 'goods'; readonly space: string }
  | {
      readonly kind:
        | 'text'
        | 'code'
        | 'date'
        | 'dates'
        | 'weekdays'
        | 'clock'
        | 'literal'
        | 'any-name'
        | 'rest'
        | 'plan-line'
        | 'flag'
        | 'count';
    }
  | { readonly kind: 'phrase'; readonly words: readonly string[]; readonly then: Shape<unknown> }
  | { readonly kind: 'followed-by'; readonly value: Shape<unknown>; readonly words: readonly string[] }
  | { readonly kind: 'list'; readonly item: Shape<unknown>; readonly separator: ',' | 'none' | 'over' | 'or' | 'and' }
  | { readonly kind: 'fields'; readonly fields: { readonly [name: string]: Shape<unknown> } }
  | { readonly kind: 'optional'; readonly value: Shape<unknown> }
  | { readonly kind: 'either'; readonly options: readonly Shape<unknown>[] };

type ShapeOf<T> = Shape<T>;
type Taken<S> = S extends Shape<infer T> ? T : never;

const simple = <T>(form: string, check: ValueCheck): ShapeOf<T> => ({ form, check });

export const quantity = <const D extends Dimension>(dimension: D, clock: Clock = 'as-spelled'): Shape<Amount<D>> =>
  simple(dimension.replace('/', ' per '), { kind: 'quantity', dimension, clock });
/** A quantity written out, where a name would be that of something else. */
export const written = <const D extends Dimension>(dimension: D): Shape<Amount<D>> =>
  simple(dimension, { kind: 'quantity', dimension, clock: 'as-spelled', written: true });
/** A quantity of whatever dimension. */
export const anyQuantity: Shape<Amount> = simple('quantity', { kind: 'any-quantity' });
/** Working time, however spelled. */
export const workTime: Shape<Amount<'time'>> = simple('working time', { kind: 'quantity', dimension: 'time', clock: 'work' });
/** A wait: 2 days and 24h run through nights and weekends, 2d and 2w are working time. */
export const wait: Shape<Amount<'time'>> = simple('wait', { kind: 'quantity', dimension: 'time', clock: 'as-spelled' });
export const nameOf = <const K extends string>(of: K): Shape<Named<K>> => simple(`${of} name`, { kind: 'name', of });
export const pointTo = <const K extends string>(of: K): Shape<Pointed<K>> => simple(`${of} name`, { kind: 'pointer', of });
export const oneOf = <const W extends readonly string[]>(...words: W): Shape<W[number]> =>
  simple(words.join(' | '), { kind: 'word', words });
export const goods: Shape<GoodsNamed> = simple('goods', { kind: 'goods', space: 'goods' });
/** Whatever can have a price: goods, or a kind of work. */
export const priced: Shape<GoodsNamed> = simple('goods or work', { kind: 'goods', space: 'priced' });
export const step: Shape<StepNamed> = simple('step [+ wait]', { kind: 'step' });
export const condition: Shape<Condition> = simple('thing.fact is … | at least … | any thing has …', { kind: 'condition' });
export const text: Shape<string> = simple('"text"', { kind: 'text' });
/** The next unbroken run of letters as it stands: 5A, B-27-0418, irc-2021. */
export const code: Shape<string> = simple('code', { kind: 'code' });
/** Days since 1970-01-01. */
export const date: Shape<number> = simple('date', { kind: 'date' });
/** A day or a span of days, both ends included. */
export const dates: Shape<DaySpan> = simple('date or date..date', { kind: 'dates' });
export const weekdays: Shape<readonly number[]> = simple('mon-fri', { kind: 'weekdays' });
/** Minutes after midnight, from and to: 7:00-15:30. */
export const clockSpan: Shape<readonly [number, number]> = simple('7:00-15:30', { kind: 'clock' });
export const literal: Shape<Literal> = simple('size', { kind: 'literal' });
/** A name of whatever kind, looked up by the phase that knows. */
export const anyName: Shape<{ readonly kind: 'any-name'; readonly name: string; readonly spot: Spot }> = simple('name', {
  kind: 'any-name',
});
/** A whole number. */
export const count: Shape<number> = simple('count', { kind: 'count' });
/** Whatever stands there, as text: read by the phase that needs it. */
export const rest: Shape<string> = simple('words', { kind: 'rest' });
/** A line of a plan, as it is spelled: it is judged where it stands in one. */
export const planLine: Shape<string> = simple('words', { kind: 'plan-line' });
/** The word alone says it. */
export const flag: Shape<true> = simple('', { kind: 'flag' });
/** Fixed words, then a value: phrase('ridge', oneOf(…)). */
export const phrase = <T>(words: string, then: Shape<T>): Shape<T> =>
  simple(`${words} ${then.form}`, { kind: 'phrase', words: words.split(' '), then });
/** A value, then fixed words: followedBy(length, 'oc'). */
export const followedBy = <T>(value: Shape<T>, words: string): Shape<T> =>
  simple(`${value.form} ${words}`, { kind: 'followed-by', value, words: words.split(' ') });
export const listOf = <T>(item: Shape<T>, separator: ',' | 'none' | 'over' | 'or' | 'and' = ','): Shape<readonly Given<T>[]> =>
  simple(separator === ',' ? `${item.form}, …` : `${item.form} …`, { kind: 'list', item, separator });
export const optional = <T>(value: Shape<T>): Shape<T | undefined> => simple(`[${value.form}]`, { kind: 'optional', value });
export const either = <const O extends readonly Shape<unknown>[]>(...options: O): Shape<Taken<O[number]>> =>
  simple(options.map((option) => option.form).join(' or '), { kind: 'either', options });
export const fields = <const F extends { readonly [name: string]: Shape<unknown> }>(
  parts: F,
): Shape<{ readonly [N in keyof F]: Taken<F[N]> }> =>
  simple(
    Object.values(parts)
      .map((part) => part.form)
      .join(' '),
    { kind: 'fields', fields: parts },
  );
/** 16'-0" x 27'-1": east first, or width first. */
export const by = <A, B>(left: Shape<A>, right: Shape<B>): Shape<{ readonly left: A; readonly right: B }> => ({
  form: `${left.form} x ${right.form}`,
  check: { kind: 'fields', fields: { left, right: phrase('x', right) } },
});

export interface DaySpan {
  readonly first: number;
  readonly last: number;
}

// ---- rows ----

export interface Property {
  readonly takes: Shape<unknown>;
  readonly help: string;
  /** A whole line or clause as one would write it. */
  readonly example: string;
  /** May stand in the declaration's own line as well as below it. */
  readonly inHeader?: true;
  readonly repeats?: true;
  /** The words follow the value: 62' long. */
  readonly trailing?: true;
  /** Clauses on its line, which may also stand on deeper lines. */
  readonly deeper?: Properties;
}
export interface Properties {
  readonly [words: string]: Property;
}

export interface Kind {
  readonly word: string;
  readonly help: string;
  readonly example: string;
  /** Whether a name follows the kind. */
  readonly name: 'required' | 'optional' | 'none';
  /** Which names it shares a space with; the kind's own word unless said. */
  readonly space?: 'goods' | 'step';
  /** What stands after the name before any clause. */
  readonly takes?: Shape<unknown>;
  readonly properties: Properties;
  /** Kinds that may be declared on deeper lines. */
  readonly declares?: readonly string[];
  /** Lines below that begin with a name rather than a property's word. */
  readonly entries?: Property;
  /** Computed from what is given; the only computed values that expressions and conditions may use. */
  readonly facts: { readonly [fact: string]: Dimension };
}

export const kind = <const K extends Kind>(row: K): K => row;
export const properties = <const P extends Properties>(rows: P): P => rows;

// ---- the types of the records ----

/** A value and where it stands. */
export interface Given<T> {
  readonly value: T;
  readonly spot: Spot;
}
type ValueOf<P extends Property> = P['deeper'] extends Properties
  ? Given<Taken<P['takes']>> & { readonly deeper: RecordOf<P['deeper']> }
  : Given<Taken<P['takes']>>;
export type RecordOf<Ps extends Properties> = {
  readonly [W in keyof Ps]: Ps[W]['repeats'] extends true ? readonly ValueOf<Ps[W]>[] : ValueOf<Ps[W]> | undefined;
};
export type TakenBy<K extends Kind> = K['takes'] extends Shape<infer T> ? T : undefined;
