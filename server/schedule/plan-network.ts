// All links of a plan and the network over them, kept between two looks: the links of a step are read again only where the
// step, its phase or what it hangs on changed, and the network is built again only where a link is another than before.
import { alike } from '#kit/differing';
import type { Work } from '#kit/work';
import { distinct } from './distinct-links.ts';
import type { LinkSources } from './link-sources.ts';
import { linksOf, type Own, type PlanLink } from './links.ts';
import { buildNetwork, type Network } from './network.ts';
import type { Steps } from './steps.ts';

export interface PlanNetwork {
  readonly steps: Steps;
  readonly sources: LinkSources;
  /** The links that each step's own words make. */
  readonly owns: readonly Own[];
  /** Of all of those in order, 1 for each that says what none before it said. */
  readonly isFirst: Uint8Array;
  readonly links: readonly PlanLink[];
  readonly network: Network;
}

export function planNetwork(steps: Steps, sources: LinkSources, before: PlanNetwork | undefined, work: Work): PlanNetwork {
  if (before !== undefined && before.steps === steps && before.sources === sources) return before;
  const owns = ownLinks(steps, sources, before);
  const isFirst = before !== undefined && saySame(owns, before.owns) ? before.isFirst : distinct(owns, steps.list.length);
  let count = 0;
  for (let at = 0; at < isFirst.length; at++) count += isFirst[at]!;
  const links = new Array<PlanLink>(count);
  let said = 0;
  let made = 0;
  for (const own of owns) {
    for (const link of own.links) {
      if (isFirst[said++] === 0) continue;
      links[made++] = link;
    }
  }
  const isSame = before !== undefined && before.network.count === steps.list.length && alike(links, before.links, sameLink);
  if (!isSame) work.networkBuilt += 1;
  return {
    steps,
    sources,
    owns,
    isFirst,
    links,
    network: isSame ? before.network : buildNetwork(steps.list.length, links),
  };
}

/** The links of each step; the same objects where nothing that they were read from changed. */
function ownLinks(steps: Steps, sources: LinkSources, before: PlanNetwork | undefined): readonly Own[] {
  const owns = new Array<Own>(steps.list.length);
  const inOrder = before !== undefined && before.steps.index === steps.index ? before : undefined;
  for (let number = 0; number < owns.length; number++) {
    const step = steps.list[number]!;
    const old = inOrder?.owns[number];
    const isKept =
      old !== undefined &&
      inOrder!.steps.list[number] === step &&
      inOrder!.steps.phases[number] === steps.phases[number] &&
      (inOrder!.sources === sources || step.kind === 'task' || step.kind === 'milestone') &&
      (old.beside === undefined || owns[old.beside] === inOrder!.owns[old.beside]);
    owns[number] = isKept ? old : linksOf(step, number, steps, owns, sources);
  }
  return owns;
}

/** Whether every step's words make the links they made, from whichever place in the text. */
function saySame(owns: readonly Own[], before: readonly Own[]): boolean {
  return alike(owns, before, ({ links }, old) =>
    alike(links, old.links, (link, other) => link.words === other.words && sameLink(link, other)),
  );
}

function sameLink(a: PlanLink, b: PlanLink): boolean {
  return a.from === b.from && a.to === b.to && a.kind === b.kind && a.lag === b.lag && a.clock === b.clock && a.share === b.share;
}
