// The name that was probably meant. Which names there are is not part of what an element read, so a finding carries only the
// question, and the answer is found when the findings of a plan are gathered.
import { vocabulary } from '#grammar/vocabulary/vocabulary';
import { nearest } from '#kit/did-you-mean';
import type { Finding } from '#kit/finding';
import { type Names, namesIn } from './names.ts';

/** Stands in a finding's details until it is answered. */
export interface NearMiss {
  readonly kind: 'near-miss';
  /** A kind or space of names; or 'value' for a `let` or a fact of a thing. */
  readonly space: string;
  readonly name: string;
}

export function nearMiss(space: string, name: string): NearMiss {
  return { kind: 'near-miss', space, name };
}

export interface NearMisses {
  readonly plan: Names;
  readonly library: Names;
  readonly answers: Map<string, string | undefined>;
  /** Findings with the answer they were given last, the same objects while the answer is. */
  readonly given: WeakMap<Finding, { readonly near: string | undefined; readonly answered: Finding }>;
}

export function nearMisses(plan: Names, library: Names, before: NearMisses | undefined): NearMisses {
  return before !== undefined && before.plan === plan && before.library === library
    ? before
    : { plan, library, answers: new Map(), given: before?.given ?? new WeakMap() };
}

/** The finding with its question answered, and a fix that writes the name that was meant. */
export function answered(found: Finding, misses: NearMisses): Finding {
  const question = found.details.find(isNearMiss);
  if (question === undefined) return found;
  const near = answer(question, misses);
  const known = misses.given.get(found);
  if (known !== undefined && known.near === near) return known.answered;
  const made = withAnswer(found, question, near);
  misses.given.set(found, { near, answered: made });
  return made;
}

function withAnswer(found: Finding, question: NearMiss, near: string | undefined): Finding {
  const details = found.details.map((each) => (each === question ? near : each));
  if (near === undefined) return { ...found, details };
  return { ...found, details, fixes: [{ kind: 'replace', title: `Write "${near}"`, place: found.place, text: near }] };
}

function isNearMiss(detail: unknown): detail is NearMiss {
  return typeof detail === 'object' && detail !== null && (detail as { kind?: unknown }).kind === 'near-miss';
}

function answer({ space, name }: NearMiss, misses: NearMisses): string | undefined {
  const key = `${space}/${name}`;
  if (!misses.answers.has(key)) misses.answers.set(key, nearest(name, candidates(space, name, misses))[0]);
  return misses.answers.get(key);
}

function candidates(space: string, name: string, { plan, library }: NearMisses): readonly string[] {
  if (space !== 'value') return namesIn(space, plan, library);
  const dot = name.indexOf('.');
  if (dot < 0) return namesIn('let', plan, library);
  const owner = name.slice(0, dot);
  return Object.values(vocabulary).flatMap((row) =>
    plan.first.has(`${row.word}/${owner}`) ? Object.keys(row.facts).map((fact) => `${owner}.${fact}`) : [],
  );
}
