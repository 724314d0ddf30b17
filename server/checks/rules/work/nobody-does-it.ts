// Quantities that no task takes: what the drawings hold and nobody is told to build.
import { type Finding, finding, findingSort } from '#kit/finding';
import type { Model } from '#model/resolve';
import type { Claim } from '#schedule/claims';
import type { Check } from '../../check.ts';
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
    if (!model.list('task').some(({ given }) => given.does !== undefined)) return [];
    const findings: Finding[] = [];
    for (const { work, tasks, open } of timeline.claims.byWork.values()) {
      const left = open.filter(({ line }) => line.onlyIfDone === undefined && line.net.value > 0);
      const [first] = left;
      const place = first === undefined ? undefined : placeOfLine(first.line, model);
      if (first === undefined || place === undefined) continue;
      const items = new Set(left.map(({ line }) => line.item));
      const much = amountText(first, left, model);
      const doers = tasks.map(({ name }) => name);
      findings.push(
        doers.length === 0
          ? finding(nobody, place, work, much, items.size - 1)
          : finding(partly, place, work, much, items.size - 1, doers),
      );
    }
    return findings;
  },
};

/** All of the first item that is left: '620 sf of Lap siding'. */
function amountText({ line }: Claim, left: readonly Claim[], model: Model): string {
  const same = left.filter((each) => each.line.item === line.item && each.line.measure === line.measure);
  const value = same.reduce((sum, each) => sum + each.line.net.value * each.share, 0);
  const { dimension } = line.net;
  const text = dimension === 'number' ? String(Math.round(value * 100) / 100) : quantityText({ value, dimension }, model);
  return dimension === 'number' ? `${text} × ${line.label}` : `${text} of ${line.label}`;
}
