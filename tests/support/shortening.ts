// Time-cost examples as text, one activity a line: `G 5 > 2 | D, E | 1500`: name, usual length, shortest, what it follows,
// price of a day less. As a plan of the language; and as a linear program, whose answer is the least price for an end
// (Kelley, "Critical-path planning and scheduling: mathematical basis", Operations Research 9, 1961).
import loadSolver from 'highs';

export interface Activity {
  readonly name: string;
  readonly days: number;
  readonly shortest: number;
  readonly after: readonly string[];
  /** Dollars for a day less. */
  readonly price: number;
}

export function readActivities(text: string): readonly Activity[] {
  return text
    .trim()
    .split('\n')
    .map((line) => {
      const [head, after, price] = line.split('|').map((part) => part.trim());
      const [, name, days, shortest] = /^(\S+) +(\d+)(?: *> *(\d+))?$/.exec(head!)!;
      return {
        name: name!.toLowerCase(),
        days: Number(days),
        shortest: Number(shortest ?? days),
        after: after === '–' || after === undefined ? [] : after.toLowerCase().split(/, */),
        price: Number(price ?? 0),
      };
    });
}

/** Working days Monday to Friday from 4 January 2027; one day stands for the example's unit, week or month. */
export function planOf(activities: readonly Activity[]): string {
  const tasks = activities.map(({ name, days, shortest, after, price }) => {
    const faster = shortest < days ? ` faster by ${days - shortest}d for $${price.toFixed(2)} each` : '';
    const waits = after.length === 0 ? '' : `${faster === '' ? '' : ','} after ${after.join(', ')}`;
    return days === 0 ? `milestone ${name}${waits}` : `task ${name} takes ${days}d${faster}${waits}`;
  });
  return `plan p "Example"\n  start 2027-01-04\n${tasks.join('\n')}\n`;
}

export type LeastPrice = (end: number) => number | undefined;

/** Dollars for an end after so many days; undefined where no shortening is enough. */
export async function leastPrices(activities: readonly Activity[]): Promise<LeastPrice> {
  const solver = await loadSolver();
  const number = new Map(activities.map(({ name }, at) => [name, at]));
  return (end) => {
    const rows = activities.flatMap(({ days, after }, at) => [
      ...after.map((name) => {
        const from = number.get(name)!;
        return ` s${at} - s${from} + y${from} >= ${activities[from]!.days}`;
      }),
      ` y${at} - s${at} >= ${days - end}`,
    ]);
    const program = `Minimize\n price: ${activities.map(({ price }, at) => `${price} y${at}`).join(' + ')}\nSubject To\n${rows
      .map((row, nth) => ` c${nth}:${row}`)
      .join(
        '\n',
      )}\nBounds\n${activities.map(({ days, shortest }, at) => ` 0 <= y${at} <= ${days - shortest}`).join('\n')}\nEnd\n`;
    const { Status, ObjectiveValue } = solver.solve(program);
    return Status === 'Optimal' ? ObjectiveValue : undefined;
  };
}
