// Values that a plan on disk expects, in its comments: "# counts slab-concrete: net 3.951 cy, needed 4.148 cy, bought 4.25 cy",
// "# cost $332,397", "# done 2027-09-12". A printed figure holds to half of its last digit; "47..57" is a band.
import { measureDimensions } from '#grammar/vocabulary/measures';
import { DAY_MINUTES, isoDate } from '#kit/dates';
import type { Quantity } from '#kit/quantity';
import { fromBase } from '#kit/units';
import type { Plan } from '#server/pipeline';

/** 'slab-concrete net: 3.951 cy' for each value that the comments expect. */
export function expectedIn(text: string): readonly string[] {
  const counts = [...text.matchAll(/^# counts ([^:]+): (.+)$/gm)].flatMap(([, item, list]) =>
    list!.split(/, (?=net|needed|bought)/).map((each) => `${item} ${each.replace(' ', ': ')}`),
  );
  const others = [...text.matchAll(/^# (cost|done) (\S+)$/gm)].map(([, what, value]) => `${what}: ${value}`);
  return [...counts, ...others];
}

/** The same of the plan as it came out; in the expected words where it is as expected. */
export function cameOut(expected: string, plan: Plan): string {
  const [what, figure] = expected.split(': ') as [string, string];
  if (what === 'cost') {
    const dollars = (plan.budget.net / 100).toFixed(0).replace(/\B(?=(\d{3})+$)/g, ',');
    return `cost: $${dollars}`;
  }
  if (what === 'done') return `done: ${isoDate(Math.ceil(Math.max(0, ...plan.timeline.crews.finish) / DAY_MINUTES - 1e-9) - 1)}`;
  const at = what.lastIndexOf(' ');
  const [printed, unit] = splitFigure(figure);
  const value = amountOf(what.slice(0, at), what.slice(at + 1), unit, plan);
  const [low, high] = printed.split('..').map((each) => Number(each.replaceAll(',', '')));
  const decimals = /\.(\d+)$/.exec(printed)?.[1]?.length ?? 0;
  const holds =
    high === undefined || Number.isNaN(high)
      ? Math.abs(value - low!) <= 0.5 * 10 ** -decimals + 1e-9
      : value >= low! && value <= high;
  return holds ? expected : `${what}: ${value}${unit === undefined ? '' : ` ${unit}`}`;
}

function splitFigure(figure: string): readonly [string, string | undefined] {
  const at = figure.indexOf(' ');
  return at < 0 ? [figure, undefined] : [figure.slice(0, at), figure.slice(at + 1)];
}

/** Of all purchases of goods, or of all lines by a measure. */
function amountOf(item: string, which: string, unit: string | undefined, { takeOff }: Plan): number {
  const bought = takeOff.purchases().filter((each) => each.item === item || each.goods.name === item);
  const list: readonly (Quantity | undefined)[] =
    bought.length > 0
      ? bought.map((each) => (which === 'net' ? each.net : which === 'needed' ? each.needed : each.bought))
      : takeOff.lines
          .filter((line) => line.measure === item && line.net.dimension === measureDimensions[line.measure])
          .filter((line, at, all) => all.findIndex((other) => other.where === line.where && other.net === line.net) === at)
          .map((line) => (which === 'net' ? line.net : line.needed));
  if (list.length === 0) return Number.NaN;
  return list.reduce(
    (sum, each) =>
      sum + (each === undefined ? Number.NaN : unit === undefined ? each.value : (fromBase(each.value, unit) ?? Number.NaN)),
    0,
  );
}
