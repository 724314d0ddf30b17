// Who reads decides what is shown. A profile hushes notes and nothing else: errors and warnings reach everyone, and so does
// whatever names a hazard. What is hushed is counted, never lost.
import { isHazardous } from '#checks/hazard';
import type { Finding } from '#kit/finding';
import type { Plan } from '#server/pipeline';

/** The words of the vocabulary. */
export type ProfileName = NonNullable<NonNullable<Plan['model']['plan']>['given']['profile']>['value'];

interface Profile {
  readonly reads: string;
  /** Whether a note is shown. */
  readonly notes: 'all' | 'with a source of their own' | 'none';
}

export const profiles: { readonly [name in ProfileName]: Profile } = {
  owner: { reads: 'somebody who builds for the first time: everything, reminders included', notes: 'all' },
  builder: { reads: 'somebody of the trade: no notes that rest on common practice alone', notes: 'with a source of their own' },
  ci: { reads: 'whoever merges a change: errors and warnings', notes: 'none' },
};

export function profileNamed(name: string): ProfileName | undefined {
  return Object.keys(profiles).find((each): each is ProfileName => each === name);
}

/** What is asked for now, else what the plan says, else the owner's. */
export function profileOf({ model }: Pick<Plan, 'model'>, asked: ProfileName | undefined): ProfileName {
  return asked ?? model.plan?.given.profile?.value ?? 'owner';
}

export function isShown(found: Finding, name: ProfileName): boolean {
  const { notes } = profiles[name];
  if (found.severity !== 'note' || notes === 'all') return true;
  const hushed = notes === 'none' || restsOnPractice(found.source);
  return !hushed || isHazardous(found);
}

/** 'common practice', 'from memory: common practice, 1 to 3 weeks'; not where a publication stands beside it. */
function restsOnPractice(source: string | undefined): boolean {
  return source?.split(';').every((part) => /^\s*(?:from memory:\s*)?common practice\b/.test(part)) ?? false;
}
