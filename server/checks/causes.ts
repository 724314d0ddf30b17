// One finding for one cause: what only follows from a name that leads nowhere, a line that cannot be read or a file that is
// not there is not told beside it. It comes back by itself if it was no consequence. What names a hazard is always told.
import { editDistance } from '#kit/did-you-mean';
import type { Finding } from '#kit/finding';
import type { Slot } from '#kit/place';
import type { Model } from '#model/resolve';
import { standingOf } from '#model/standing';
import type { Results } from './check.ts';
import { isHazardous } from './hazard.ts';
import { reaches } from './order.ts';

/** That something could not be read or followed. */
const UNREAD = /^(?:syntax|words|names|units)\//;
/** What a thing lacks, when part of what it says was not understood. */
const LACKING =
  /^(?:takeoff\/[a-z]+-missing|schedule\/(?:no-duration|loose-end)|rooms\/no-way-in|work\/(?:nobody-does-it|state-milestone)|names\/unused|sequence\/.*|inspections\/(?:covered|too-soon)|missing\/.*|minimum\/.*)$/;
/** What a plan lacks, when one of its files is not there. */
const LACKING_A_FILE =
  /^(?:takeoff\/[a-z]+-missing|schedule\/(?:no-duration|loose-end)|rooms\/no-way-in|work\/[a-z-]+|names\/(?:unused|unknown|unknown-goods)|money\/[a-z-]+|missing\/.*|inspections\/(?:nothing-to-see|not-planned))$/;

/** The findings but those that only follow from others among them. */
export function withoutConsequences(findings: readonly Finding[], results: Results): readonly Finding[] {
  const { model } = results;
  const roots = findings.filter(({ severity, code }) => severity === 'error' && UNREAD.test(code));
  if (roots.length === 0) return findings;
  const missesFile = roots.some(({ code }) => code === 'names/include-missing');
  // What is counted over the whole plan lacks what was not read.
  const missesThing = missesFile || roots.some(({ code }) => code === 'words/unknown-kind');
  const unread = namesUnread(roots, model);
  /** Things part of whose words led nowhere, and things that were meant by a name that led nowhere. */
  const troubled = new Set<Slot>(roots.map(({ place }) => place.slot));
  const isMeant = meantBy(roots);
  const nowhere = new Set<unknown>();
  for (const { code, details } of roots) {
    if (code === 'names/unknown') nowhere.add(details[0]);
  }
  const lost = lostLinks(roots, isMeant, results);
  const diaryIsUnread = roots.some(({ code, place }) => code === 'names/unknown' && place.slot.kind === 'progress');
  const isTroubled = (slot: Slot): boolean => troubled.has(slot) || isMeant(slot.name);
  const follows = (found: Finding): boolean => {
    const { code, details, place, related = [] } = found;
    if (missesFile && LACKING_A_FILE.test(code)) return true;
    if (missesThing && code.startsWith('minimum/') && place.slot.kind === 'plan') return true;
    // Dates without what is not read are no promise broken.
    if (code === 'dates/later-than-planned') return true;
    // What is accepted may be found again once everything can be read.
    if (code === 'accept/unused' || isOfDelivery(found)) return true;
    if (code === 'names/unknown') return unread.has(String(details[0]).toLowerCase());
    if (code === 'names/unknown-goods') return nowhere.has(details[0]);
    // What the diary says of a step of another name is not known of this one.
    if (diaryIsUnread && OF_THE_DIARY.test(code)) return true;
    if (code === 'deliveries/order-by-passed' && related.some((each) => comesTooSoon(each.place.slot, lost, results)))
      return true;
    if (lost.length > 0 && OF_AN_ORDER.test(code) && losesOrder(found, lost, results)) return true;
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

/** Whether a name is as near to one that leads nowhere as what is offered for it: either may be meant. */
function meantBy(roots: readonly Finding[]): (name: string) => boolean {
  const offered = roots.flatMap(({ code, details: [name, , near] }) =>
    code === 'names/unknown' && typeof name === 'string' && typeof near === 'string'
      ? [{ name: name.toLowerCase(), distance: editDistance(name.toLowerCase(), near.toLowerCase()) }]
      : [],
  );
  const known = new Map<string, boolean>();
  return (name) => {
    let answer = known.get(name);
    if (answer === undefined)
      known.set(name, (answer = offered.some((each) => editDistance(each.name, name, each.distance) <= each.distance)));
    return answer;
  };
}

/** A step that waits for a name that leads nowhere, and the steps that may be meant; undefined where any may. */
interface LostLink {
  readonly step: number;
  readonly meant: readonly number[] | undefined;
}

/** What a record in the diary would have answered. */
const OF_THE_DIARY = /^(?:schedule\/out-of-order|deliveries\/order-by-passed)$/;
/** What is told of two steps and their order. */
const OF_AN_ORDER = /^(?:sequence\/.*|inspections\/(?:covered|too-soon))$/;

function lostLinks(
  roots: readonly Finding[],
  isMeant: (name: string) => boolean,
  { timeline: { steps } }: Results,
): readonly LostLink[] {
  const waits = roots.filter(({ code, details }) => code === 'names/unknown' && details[1] === 'step');
  if (waits.length === 0) return [];
  const near = steps.list.flatMap(({ name }, at) => (isMeant(name) ? [at] : []));
  return waits.flatMap(({ details, place }) => {
    const meant = typeof details[2] === 'string' ? near : undefined;
    const own = steps.index.get(place.slot);
    const waiting = own === undefined ? (steps.within.get(place.slot) ?? []) : [own];
    return waiting.map((step) => ({ step, meant }));
  });
}

/** Whether a lost link may be what held an order: it leads to the later step, and what was meant comes after the earlier. */
function losesOrder(
  { place, related = [] }: Finding,
  lost: readonly LostLink[],
  { timeline: { steps }, order }: Results,
): boolean {
  const later = steps.index.get(place.slot);
  const earlier = related[0] === undefined ? undefined : steps.index.get(related[0].place.slot);
  if (later === undefined || earlier === undefined) return false;
  return lost.some(
    ({ step, meant }) =>
      (step === later || reaches(order, step, later)) &&
      (meant === undefined || meant.some((each) => each === earlier || reaches(order, earlier, each))),
  );
}

/** Whether a step may begin sooner than the plan means it to. */
function comesTooSoon(slot: Slot, lost: readonly LostLink[], { timeline: { steps }, order }: Results): boolean {
  const at = steps.index.get(slot);
  return at !== undefined && lost.some(({ step }) => step === at || reaches(order, step, at));
}
/** When goods come, what brings them and what they are for hangs on every step and every thing of the plan. */
function isOfDelivery({ code, place }: Finding): boolean {
  return OF_DELIVERIES.test(code) || (code === 'schedule/loose-end' && place.slot.kind === 'delivery');
}
const OF_DELIVERIES = /^deliveries\/(?:closed-day|holds-up|lies-too-long|no-place-yet|not-brought)$/;
