// One shape for everything Screed has to say about a plan. A finding is data: its sort (code, severity, wording) is a
// constant, its arguments are values, and the sentence is made only when somebody reads it.
import { equal } from './equal.ts';
import { type Place, samePlace } from './place.ts';

export type Severity = 'error' | 'warning' | 'note';

/** A sort of finding. `say` must give the same sentence for the same arguments. */
export interface FindingSort<A extends readonly unknown[] = readonly unknown[]> {
  /** `area/short-name`: the same string in editor, command line and reference. */
  readonly code: string;
  readonly severity: Severity;
  /** What is wrong, why it matters on site, what to do: present tense, actual numbers, full stops. */
  readonly say: (...details: A) => string;
  /** The published source of the rule behind it, where there is one. */
  readonly source?: string;
}

/** A change of the text that answers a finding. Fixes are data; only the editor turns them into edits. */
export type Fix =
  | { readonly kind: 'replace'; readonly title: string; readonly place: Place; readonly text: string }
  /** Adds text straight after a value: one more name in a list. */
  | { readonly kind: 'insert-after'; readonly title: string; readonly place: Place; readonly text: string }
  /** Adds words at the end of a declaration's own line, before any comment. */
  | { readonly kind: 'append'; readonly title: string; readonly place: Place; readonly text: string }
  /** Adds a line below the declaration's own line, indented as its children are. */
  | { readonly kind: 'insert-below'; readonly title: string; readonly place: Place; readonly text: string };

export interface Finding {
  readonly sort: FindingSort<never>;
  /** The sort's severity, unless the rule behind it says otherwise. */
  readonly severity: Severity;
  readonly place: Place;
  readonly details: readonly unknown[];
  readonly related?: readonly { readonly place: Place; readonly note: string }[];
  readonly fixes?: readonly Fix[];
  /** The code shown; differs from the sort's only where library rows bring their own codes. */
  readonly code: string;
  readonly source?: string;
}

/** Declares a sort of finding; keeps the types of its details. */
export function findingSort<A extends readonly unknown[]>(sort: FindingSort<A>): FindingSort<A> {
  return sort;
}

export function finding<A extends readonly unknown[]>(sort: FindingSort<A>, place: Place, ...details: A): Finding {
  const made = { sort: sort as unknown as FindingSort<never>, code: sort.code, severity: sort.severity, place, details };
  return sort.source === undefined ? made : { ...made, source: sort.source };
}

/** Whether two findings say the same at the same place, with the same remedies. */
export function sameFinding(a: Finding, b: Finding): boolean {
  return (
    a === b ||
    (a.sort === b.sort &&
      a.code === b.code &&
      a.severity === b.severity &&
      a.source === b.source &&
      samePlace(a.place, b.place) &&
      equal(a.details, b.details, isThing) &&
      equal(a.related, b.related, isThing) &&
      equal(a.fixes, b.fixes, isThing))
  );
}

/** Rows, slots and elements are the same only where they are one. */
function isThing(value: object): boolean {
  return 'again' in value || 'given' in value;
}

export function messageOf(found: Finding): string {
  return (found.sort.say as (...details: readonly unknown[]) => string)(...found.details);
}
