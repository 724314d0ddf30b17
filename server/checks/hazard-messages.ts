// How a hazard is told: the hazard first, where it lies with the actual figures, the usual measure, and who decides. Above
// three reminders, one stands for all and names each with its code.
import { sameList } from '#kit/differing';
import { type Finding, type FindingSort, findingSort, messageOf } from '#kit/finding';
import type { ElementOf } from '#model/model';
import { keptFor } from './kept.ts';
import { namesText } from './show.ts';

export interface HazardTold {
  readonly row: ElementOf<'hazard'>;
  /** The thing it lies in, and others of its kind that it lies in too. */
  readonly thing: string | undefined;
  readonly others: readonly string[];
  /** 'depth 8'-0"'. */
  readonly figures: readonly string[];
  /** Steps that carry it, the first to be done first. */
  readonly steps: readonly string[];
}

export const carried: FindingSort<[told: HazardTold]> = findingSort<[told: HazardTold]>({
  code: 'safety/carried',
  severity: 'note',
  say: ({ row: { given }, thing, others, figures, steps }) => {
    const seesTo = 'no step of the plan sees to it';
    const isOpen = given['met by'] !== undefined;
    const where = thing === undefined ? figures.join(', ') : `"${thing}"${figures.length === 0 ? '' : `: ${figures.join(', ')}`}`;
    const carriers = steps.length === 0 ? '' : `${namesText(steps)} ${steps.length === 1 ? 'carries' : 'carry'} it`;
    const told = carriers === '' ? (isOpen ? `N${seesTo.slice(1)}` : '') : isOpen ? `${carriers}, and ${seesTo}` : carriers;
    return [
      given.because?.value ?? '',
      where === '' ? '' : `${capital(where)}.`,
      others.length === 0 ? '' : `The same of ${namesText(others)}.`,
      told === '' ? '' : `${told}.`,
      given.remedy?.value ?? '',
    ]
      .filter((part) => part !== '')
      .join(' ');
  },
});

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

const MOST = 3;

interface Reminder {
  readonly what: string;
  readonly at: string;
  readonly code: string;
}

/** Reminders of all sorts of hazards, told as one at the first of them; each keeps its code, and can be accepted by it. */
export function remindersTogether(findings: readonly Finding[]): readonly Finding[] {
  const reminders = findings.filter(({ sort, severity }) => sort === SORT && severity === 'note');
  if (reminders.length <= MOST) return findings;
  const [first, ...others] = reminders;
  const gone = new Set(others);
  return findings.flatMap((each) => (each === first ? [together(each, others)] : gone.has(each) ? [] : [each]));
}

const SORT = carried as unknown as FindingSort<never>;

/** By the first: the same finding while the others are. */
const kept = new WeakMap<Finding, { readonly others: readonly Finding[]; readonly finding: Finding }>();

function together(first: Finding, others: readonly Finding[]): Finding {
  const known = kept.get(first);
  if (known !== undefined && sameList(known.others, others)) return known.finding;
  const list = others.map((each): Reminder => {
    const [{ row }] = each.details as readonly [HazardTold];
    return { what: hazardName(row), at: each.place.slot.name, code: each.code };
  });
  const finding: Finding = {
    ...first,
    sort: ALL,
    details: [list, ...first.details],
    related: [
      ...(first.related ?? []),
      ...others.map((each, at) => ({ place: each.place, note: `${list[at]!.what} (${each.code}): ${messageOf(each)}` })),
    ],
  };
  kept.set(first, { others, finding });
  return finding;
}

const ALL = findingSort<[others: readonly Reminder[], told: HazardTold]>({
  code: 'safety/carried',
  severity: 'note',
  say: (others, told) =>
    `${carried.say(told)} The work carries more that nothing in the plan sees to: ${others
      .map(({ what, at, code }) => `${what} at "${at}" (${code})`)
      .join(', ')}. Each can be accepted by its code, with who sees to it.`,
}) as unknown as FindingSort<never>;

/** 'silica dust': the words before the first colon. */
export const hazardName = keptFor(({ given, label }: ElementOf<'hazard'>): string => {
  const because = given.because?.value ?? '';
  const colon = because.indexOf(':');
  const name = colon < 0 ? label : because.slice(0, colon);
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
});
