// The eight kinds of edit that the benchmark makes, by turns and there and back. Each changes a finding that the edit must
// change, so that its time is the time to a right answer and not to any answer. The big plan is built for this: it ends
// far past its target, so that whatever moves the end moves the words of the finding at `target`; the other edits change a
// finding of their own: trim that nobody paints, a price that does not fit, and cottage 2, whose board goes up too early.
import type { Diagnostic } from 'vscode-languageserver-types';

export interface Edit {
  readonly kind: string;
  /** What stands in the plan, once, and what it becomes; the next time round it is changed back. */
  readonly there: string;
  readonly back: string;
  /** Whether a finding is one that this edit brings, takes or rewords. */
  readonly sees: (diagnostic: Diagnostic) => boolean;
}

export const EDITS: readonly Edit[] = [
  {
    kind: 'break and mend a line',
    there:
      '  height     plate-height\n  walls      street-wall\n  partitions street-partition\n  floor      street-floor\n  ceiling    street-lid\n  see        "A-2"',
    back: '  height     plate-height\n  walls      street-wall\n  partitions street-partition\n  floor      street-floor\n  ceilnig    street-lid\n  see        "A-2"',
    sees: (diagnostic) => textOf(diagnostic).includes('ceilnig'),
  },
  {
    // Nobody paints the trim, and how much of it there is stands in the finding.
    kind: 'a room’s size',
    there: `room c02-bed-2 "Bedroom 2 of 2" on c02 at 17'-4 1/2", 19'-0 1/2"\n  use      sleeping\n  size     10'-2" x 12'-6"`,
    back: `room c02-bed-2 "Bedroom 2 of 2" on c02 at 17'-4 1/2", 19'-0 1/2"\n  use      sleeping\n  size     9'-2" x 12'-6"`,
    sees: (diagnostic) => codeOf(diagnostic) === 'work/nobody-does-it' && textOf(diagnostic).includes('"paint-trim"'),
  },
  {
    // In cottage 2 the board waits for the trusses alone; once it waits for the roof and windows it is held.
    kind: 'a task’s link',
    there: 'by drywall after c02-trusses',
    back: 'by drywall after c02-trusses, c02-dry',
    sees: (diagnostic) => codeOf(diagnostic).endsWith('board-before-dry'),
  },
  {
    kind: 'a trade’s crew',
    there: 'trade framing     "Framing"            crew of 4',
    back: 'trade framing     "Framing"            crew of 3',
    sees: (diagnostic) => codeOf(diagnostic).endsWith('past-target'),
  },
  {
    // Nothing but places moves: the finding at the target now stands a line lower.
    kind: 'a new line at the top',
    there: '# Larkspur Street: a made-up',
    back: '# A line more.\n# Larkspur Street: a made-up',
    sees: (diagnostic) => codeOf(diagnostic).endsWith('past-target'),
  },
  {
    // The door from the closet now leads to a room that does not exist.
    kind: 'a name',
    there: 'room c02-bed-1 "Bedroom 1 of 2"',
    back: 'room c02-bed-9 "Bedroom 1 of 2"',
    sees: (diagnostic) => textOf(diagnostic).includes('c02-bed-1'),
  },
  {
    // Boards are not sold by the yard: without a price that fits, they stand among what has none.
    kind: 'a price',
    there: 'price osb 7/16"              $14.20/sheet',
    back: 'price osb 7/16"              $14.20/cy',
    sees: (diagnostic) => codeOf(diagnostic) === 'money/price-missing',
  },
  {
    kind: 'the start date',
    there: 'start        2027-04-05',
    back: 'start        2027-04-12',
    sees: (diagnostic) => codeOf(diagnostic).endsWith('past-target'),
  },
];

/** What a list of diagnostics says about an edit, in one string: it must differ before and after. */
export function signature({ sees }: Edit, diagnostics: readonly Diagnostic[]): string {
  return diagnostics
    .filter(sees)
    .map((diagnostic) => `${diagnostic.range.start.line} ${codeOf(diagnostic)} ${textOf(diagnostic)}`)
    .join('\n');
}

function codeOf({ code }: Diagnostic): string {
  return String(code ?? '');
}

function textOf({ message }: Diagnostic): string {
  return typeof message === 'string' ? message : message.value;
}
