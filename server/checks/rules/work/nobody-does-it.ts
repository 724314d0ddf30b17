// Quantities that no task takes: what the drawings hold and nobody is told to build.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Task } from '#model/model';
import type { Model } from '#model/resolve';
import type { WorkClaims } from '#schedule/claims';
import type { Line } from '#takeoff/lines';
import type { Check } from '../../check.ts';
import { keptFor } from '../../kept.ts';
import { placeOfLine } from '../../mention.ts';
import { namesText, quantityText } from '../../show.ts';

export const nobody = findingSort<[work: string, much: string, others: number]>({
  code: 'work/nobody-does-it',
  severity: 'warning',
  say: (work, much, others) =>
    `No task does "${work}", and the plan holds ${much}${more(others)}: it is neither planned nor paid until somebody asks. Add "does ${work}" to a task, or accept with who does it.`,
});

export const partly = findingSort<[work: string, much: string, others: number, tasks: readonly string[]]>({
  code: 'work/nobody-does-it',
  severity: 'warning',
  say: (work, much, others, tasks) =>
    `${namesText(tasks)} ${tasks.length === 1 ? 'does' : 'do'} only a part of "${work}" and ${tasks.length === 1 ? 'leaves' : 'leave'} ${much}${more(others)} to nobody: it is neither planned nor paid until somebody asks. Widen what one of them does, or add a task without "in", "of" or a share: it takes the rest.`,
});

function more(others: number): string {
  return others === 0 ? '' : ` and ${others} more ${others === 1 ? 'thing' : 'things'}`;
}

export const nobodyDoesIt: Check = {
  code: 'work/nobody-does-it',
  about:
    'Every quantity has an owner: what is taken off and installed by a kind of work must be claimed by a task that does it. Silent until some task says what it does.',
  wrong: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
  layer lap-siding, 7" to the weather
trade framing crew of 3 at $52/h
task wrap does wrap-walls by framing
`,
  right: `level main
  footprint 20' x 24'
  height 8'
  walls plain
assembly plain for wall
  layer housewrap
  layer lap-siding, 7" to the weather
trade framing crew of 3 at $52/h
task wrap does wrap-walls, side-walls by framing
`,
  run: ({ model, timeline }) => {
    if (!anyDoes(model.list('task'))) return [];
    const findings: Finding[] = [];
    for (const claims of timeline.claims.byWork.values()) {
      const left = leftOf(claims);
      const place = left === undefined ? undefined : placeOfLine(left.first, model);
      if (left === undefined || place === undefined) continue;
      const much = amountText(left, model);
      const doers = claims.tasks.map(({ name }) => name);
      findings.push(
        doers.length === 0
          ? finding(nobody, place, claims.work, much, left.others)
          : finding(partly, place, claims.work, much, left.others, doers),
      );
    }
    return findings;
  },
};

interface Left {
  readonly first: Line;
  /** How much of the first item is left in all. */
  readonly value: number;
  /** How many other items are. */
  readonly others: number;
}

const leftOf = keptFor(({ open }: WorkClaims): Left | undefined => {
  let first: Line | undefined;
  let value = 0;
  let items: Set<string> | undefined;
  for (const { line, share } of open) {
    if (line.onlyIfDone !== undefined || !(line.net.value > 0)) continue;
    first ??= line;
    if (line.item !== first.item) (items ??= new Set()).add(line.item);
    else if (line.measure === first.measure) value += line.net.value * share;
  }
  return first === undefined ? undefined : { first, value, others: items?.size ?? 0 };
});

/** '620 sf of Lap siding', '3 × Toilet'. */
function amountText({ first, value }: Left, model: Model): string {
  const { dimension } = first.net;
  return dimension === 'number'
    ? `${Math.round(value * 100) / 100} × ${first.label}`
    : `${quantityText({ value, dimension }, model)} of ${first.label}`;
}

const anyDoes = keptFor((tasks: readonly Task[]): boolean => tasks.some(({ given }) => given.does !== undefined));
