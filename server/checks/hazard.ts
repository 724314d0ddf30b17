// Which sentences name a hazard. They begin with it, bare and with a colon ("Cave-in: fill pushes …"), and no other sentence
// does; so the sentence alone tells, whoever wrote it. What can hurt someone is never hushed by a profile, and no baseline
// answers it.
import { type Finding, messageOf } from '#kit/finding';

const HAZARD = /^(?!(?:The|This|That|These|Those|A|An|No|Nothing|Of)\b)[A-Z][^.:;"\d]*: /;

export function namesHazard(sentence: string): boolean {
  return HAZARD.test(sentence);
}

const known = new WeakMap<Finding, boolean>();

export function isHazardous(found: Finding): boolean {
  let answer = known.get(found);
  if (answer === undefined) known.set(found, (answer = found.code.startsWith('safety/') || namesHazard(messageOf(found))));
  return answer;
}
