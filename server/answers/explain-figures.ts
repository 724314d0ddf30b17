// Figures that rows of calculations make of a thing, and facts that only least values ask for, each with its working: the
// row's own rule as it is written, and what went into it by name. With what it is, its caution and where the rule comes from.
import { type Calculation, type Figure, figureOf, figuresOf } from '#checks/calculations';
import { factOf } from '#checks/minimum-facts';
import type { Element } from '#model/model';
import type { Model } from '#model/resolve';
import type { Told } from './explain-things.ts';
import { type ListedReason, listedReason, saying } from './listed-reason.ts';
import { positionOf } from './position.ts';
import { type View, write } from './view.ts';

/** All that are known of a thing, without their working, which is told of each when it is asked for. */
export function figureReasons(element: Element, view: View): readonly ListedReason[] {
  const figures = figuresOf(element, view.plan.model);
  if (figures.length === 0) return [];
  return [
    saying(
      'worked out',
      '',
      figures.map(({ value, fact }) => saying(fact, write(value, view.style))),
    ),
  ];
}

/** By its name; undefined where nobody gave what it is made of. */
export function figureReason(element: Element, fact: string, view: View): ListedReason | undefined {
  const { model } = view.plan;
  const figure = figureOf(element, fact, model);
  if (figure === undefined) {
    const value = factOf(element, fact, model);
    return value === undefined ? undefined : listedReason(value, view);
  }
  const { because, caution } = figure.row.given;
  const reason = worked(figure, element, figure.row.label, view);
  return {
    ...reason,
    inputs: [
      ...reason.inputs,
      ...(because === undefined ? [] : [saying('what it is', because.value)]),
      ...(caution === undefined ? [] : [saying('caution', caution.value)]),
    ],
  };
}

/** The row itself: what it comes to in this plan, and what it is. */
export function tellCalculation(row: Calculation, view: View): Told {
  const { model } = view.plan;
  const fact = row.given.fact?.value ?? row.name;
  const figures = thingsOf(row, model).flatMap((thing) => {
    const figure = figureOf(thing, fact, model);
    return figure === undefined ? [] : [{ thing, figure }];
  });
  const said = [row.given.because?.value, row.given.caution?.value].filter((text) => text !== undefined).join(' ');
  const [first] = figures;
  const value =
    first === undefined
      ? 'The plan does not tell all that it is made of. '
      : figures.length === 1
        ? `It is ${write(first.figure.value, view.style)}. `
        : '';
  return {
    why: `${value}${said}`,
    reasons: figures.map(({ thing, figure }) =>
      worked(figure, thing, figures.length === 1 ? figure.row.label : thing.label, view),
    ),
  };
}

function thingsOf({ given }: Calculation, model: Model): readonly Element[] {
  switch (given.for?.value) {
    case 'room':
      return model.list('room');
    case 'level':
      return model.list('level');
    default:
      return model.plan === undefined ? [] : [model.plan];
  }
}

const NAMES = /\b(plan|room|level)\.([a-z][\w-]*)/g;

/** The rule as it is written, and beneath it each name in it, once; names that come to nothing are left out. */
function worked({ row, value }: Figure, thing: Element, label: string, view: View): ListedReason {
  const text = row.given.value?.value ?? '';
  const { source } = row.given;
  const { file, line, column } = positionOf(row.place, view);
  const names = new Map([...text.matchAll(NAMES)].map(([whole, owner, fact]) => [whole, { owner, fact }] as const));
  return {
    ...listedReason(value, view, label),
    formula: text.replace(NAMES, '$2').replaceAll(' * ', ' × ').replaceAll(' / ', ' ÷ ').replaceAll(' - ', ' − '),
    inputs: [...names.values()].flatMap(({ owner = '', fact = '' }) => partOf(owner, fact, thing, view)),
    ...(source === undefined ? {} : { source: source.value }),
    place: { file, line, column },
  };
}

function partOf(owner: string, fact: string, thing: Element, view: View): readonly ListedReason[] {
  const { model } = view.plan;
  const of = owner === thing.kind ? thing : model.plan;
  if (of === undefined) return [];
  const value = factOf(of, fact, model);
  if (value !== undefined) return value.value === 0 ? [] : [listedReason(value, view, fact)];
  const figure = figureOf(of, fact, model);
  return figure === undefined ? [] : [worked(figure, of, fact, view)];
}
