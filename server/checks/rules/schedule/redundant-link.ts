// Links that the next step on the way says already. They hold nothing more, and are one more thing to mend. What a long chain
// leads to all the same is not told: a step may well name what it needs by itself.
import { type Finding, finding, findingSort } from '#kit/finding';
import { addTo } from '#kit/gathered';
import type { Place } from '#kit/place';
import type { PlanLink } from '#schedule/links';
import { FINISH_START } from '#schedule/network';
import type { Check } from '../../check.ts';

export const redundant = findingSort<[later: string, earlier: string, through: string]>({
  code: 'schedule/redundant-link',
  severity: 'note',
  say: (later, earlier, through) =>
    `"${later}" need not wait for "${earlier}": "${through}", which it also waits for, already does. The link changes no date: leave it out, or keep it where "${through}" may go.`,
});

export const redundantLink: Check = {
  code: 'schedule/redundant-link',
  gathers: true,
  about:
    'A step need not name one that another does which it names too: the link changes no date. A wait of its own, or an order that a visit or a delivery makes, is no such link; a milestone may name all that it stands for.',
  wrong: `task dig takes 2d
task forms takes 1d after dig
task pour takes 1d after dig, forms
`,
  right: `task dig takes 2d
task forms takes 1d after dig
task pour takes 1d after forms
`,
  reads: ({ timeline }) => [timeline.links, timeline.steps.index],
  run: ({ timeline }) => {
    const { links, steps } = timeline;
    const phases = phasesNamed(links);
    const saidBy = new Map<number, PlanLink[]>();
    for (const link of links) if (isSaid(link) && link.from !== link.to) addTo(saidBy, link.to, link);
    const findings: Finding[] = [];
    for (const [to, said] of saidBy) {
      const later = steps.list[to]!;
      // A milestone says what it stands for, and may well name all of it.
      if (said.length < 2 || later.kind === 'milestone') continue;
      for (const { from, place, lag } of said) {
        if (lag !== 0 || phases.has(place)) continue;
        const through = said.find((other) => saidBy.get(other.from)?.some((each) => each.from === from));
        if (through === undefined) continue;
        const [earlier, between] = [steps.list[from]!.name, steps.list[through.from]!.name];
        findings.push(finding(redundant, place, later.name, earlier, between));
      }
    }
    return findings;
  },
};

/** Named by the step itself, from finish to start, without a lead. */
function isSaid({ words, kind, lag, share }: PlanLink): boolean {
  return (words === 'after' || words === 'also after') && kind === FINISH_START && lag >= 0 && share === undefined;
}

/** Places that name a phase: one word for the links from all its steps. */
function phasesNamed(links: readonly PlanLink[]): ReadonlySet<Place> {
  const met = new Set<Place>();
  const phases = new Set<Place>();
  for (const { place, words } of links) {
    if (words !== 'after' && words !== 'also after') continue;
    if (met.has(place)) phases.add(place);
    met.add(place);
  }
  return phases;
}
