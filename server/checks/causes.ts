// One finding for one cause: what only follows from a name that leads nowhere, a line that cannot be read or a file that is
// not there is not told beside it. It comes back by itself if it was no consequence. What names a hazard is always told.
import type { Finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Model } from '#model/resolve';
import { standingOf } from '#model/standing';
import { isHazardous } from './hazard.ts';

/** That something could not be read or followed. */
const UNREAD = /^(?:syntax|words|names|units)\//;
/** What a thing lacks, when part of what it says was not understood. */
const LACKING =
  /^(?:takeoff\/[a-z]+-missing|schedule\/(?:no-duration|loose-end)|rooms\/no-way-in|work\/nobody-does-it|names\/unused|sequence\/.*|missing\/.*|minimum\/.*)$/;
/** What a plan lacks, when one of its files is not there. */
const LACKING_A_FILE =
  /^(?:takeoff\/[a-z]+-missing|schedule\/(?:no-duration|loose-end)|rooms\/no-way-in|work\/[a-z-]+|names\/(?:unused|unknown|unknown-goods)|money\/[a-z-]+|missing\/.*|inspections\/(?:nothing-to-see|not-planned))$/;

/** The findings but those that only follow from others among them. */
export function withoutConsequences(findings: readonly Finding[], { model }: { readonly model: Model }): readonly Finding[] {
  const roots = findings.filter(({ severity, code }) => severity === 'error' && UNREAD.test(code));
  if (roots.length === 0) return findings;
  const missesFile = roots.some(({ code }) => code === 'names/include-missing');
  const unread = namesUnread(roots, model);
  /** Things part of whose words led nowhere, and things that were meant by a name that led nowhere. */
  const troubled = new Set<Slot>(roots.map(({ place }) => place.slot));
  const meant = new Set<string>();
  const nowhere = new Set<unknown>();
  for (const { code, details } of roots) {
    if (code !== 'names/unknown') continue;
    nowhere.add(details[0]);
    if (typeof details[2] === 'string') meant.add(details[2].toLowerCase());
  }
  const isTroubled = (slot: Slot): boolean => troubled.has(slot) || meant.has(slot.name);
  const follows = (found: Finding): boolean => {
    const { code, details, place, related = [] } = found;
    if (missesFile && LACKING_A_FILE.test(code)) return true;
    // What is accepted may be found again once everything can be read.
    if (code === 'accept/unused' || isOfDelivery(found)) return true;
    if (code === 'names/unknown') return unread.has(String(details[0]).toLowerCase());
    if (code === 'names/unknown-goods') return nowhere.has(details[0]);
    if (!LACKING.test(code)) return false;
    return isTroubled(place.slot) || (code.startsWith('sequence/') && related.some((each) => isTroubled(each.place.slot)));
  };
  return findings.filter((found) => !follows(found) || isHazardous(found));
}

/** Names that stand on lines whose kind is not understood: 'trad framing' would have declared "framing". */
function namesUnread(roots: readonly Finding[], model: Model): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { code, place } of roots) {
    if (code !== 'words/unknown-kind') continue;
    const name = standingOf(place, model)?.node.line.statement.text.split(/\s+/)[1];
    if (name !== undefined) names.add(name.toLowerCase());
  }
  return names;
}

/** When goods come, what brings them and what they are for hangs on every step and every thing of the plan. */
function isOfDelivery({ code, place }: Finding): boolean {
  return OF_DELIVERIES.test(code) || (code === 'schedule/loose-end' && place.slot.kind === 'delivery');
}
const OF_DELIVERIES = /^deliveries\/(?:closed-day|holds-up|lies-too-long|no-place-yet|not-brought)$/;
