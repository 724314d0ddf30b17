// Why the order of a step is right: the rules that govern it, each with the chain of links that holds it.
import { type Governed, governing } from '#checks/held';
import { spelled } from '#checks/sequence-messages';
import { namesText } from '#checks/show';
import type { PlanLink } from '#schedule/links';
import { nameOf, waitText } from './holding.ts';
import { type ListedReason, saying } from './listed-reason.ts';
import type { View } from './view.ts';

/** `most` rules are told, and how many more there are; undefined where no rule governs the step. */
export function orderReason(step: number, view: View, most = Number.POSITIVE_INFINITY): ListedReason | undefined {
  const governed = governing(step, view.plan).filter(({ outcome }) => outcome !== 'done');
  if (governed.length === 0) return undefined;
  const shown = governed.length > most ? governed.slice(0, most - 1) : governed;
  const more = governed.length - shown.length;
  const held = governed.filter(({ outcome }) => outcome === 'held').length;
  return saying('rules of order', `${held} of ${governed.length} held by links`, [
    ...shown.map((each) => saying(`sequence/${each.rule.name}`, governedText(each, view))),
    ...(more === 0 ? [] : [saying(`and ${more} more`, '')]),
  ]);
}

/** 'held: wires → wiring-rough (looks at) → batts (in order) → hang-board (after), and so are 2 others'. */
function governedText(governed: Governed, view: View): string {
  const { earlier, others, chain, outcome, keepers } = governed;
  const { timeline } = view.plan;
  if (keepers !== undefined) return followedText(governed, keepers, view);
  switch (outcome) {
    case 'broken':
      return `broken: "${nameOf(earlier, timeline)}" must be done before`;
    case 'luck':
      return `by luck: no chain leads here from "${nameOf(earlier, timeline)}"`;
    case 'done':
      return 'done';
    case 'held': {
      const links = (chain ?? []).map((link) => timeline.links[link]!);
      const also = others === 0 ? '' : others === 1 ? ', and so is another step' : `, and so are ${others} other steps`;
      return `held: ${[nameOf(earlier, timeline), ...links.map((link) => linkedText(link, view))].join(' → ')}${also}`;
    }
  }
}

/** Where no more than so long may pass: 'in time by luck: within 1d of "deck", but "felt-truck" may keep it back as well'. */
function followedText({ rule, earlier, chain, outcome }: Governed, keepers: readonly number[], view: View): string {
  const { timeline } = view.plan;
  const most = spelled(rule.given.within!.value);
  const first = `"${nameOf(earlier, timeline)}"`;
  if (outcome === 'broken') return `too late: no more than ${most} may pass after ${first}`;
  if (outcome === 'held') return `in time: within ${most} of ${first}, and nothing else keeps it back`;
  if (chain === undefined) return `in time by its date alone: no chain leads here from ${first}`;
  return `in time by luck: within ${most} of ${first}, but ${namesText(keepers.map((each) => nameOf(each, timeline)))} may keep it back as well`;
}

/** 'batts (in order)', 'tape (after, + 2 days)'. */
function linkedText(link: PlanLink, view: View): string {
  const wait = waitText(link, view.style);
  return `${nameOf(link.to, view.plan.timeline)} (${link.words}${wait === '' ? '' : `, ${wait}`})`;
}
