// Above three findings of one sort, one stands for all: at the first, with the others listed. A plan without links would
// else drown in the same sentence.
import { sameList } from '#kit/differing';
import type { Finding, FindingSort } from '#kit/finding';
import { keptFor } from './kept.ts';
import { namesText } from './show.ts';

const MOST = 3;
const LISTED = 20;

/** `gathers` tells which codes may be told together. The order of the findings stays. */
export function gathered(findings: readonly Finding[], gathers: (code: string) => boolean): readonly Finding[] {
  const groups = new Map<string, Finding[][]>();
  const groupOf = (found: Finding): Finding[] | undefined =>
    groups
      .get(found.code)
      ?.find(([first]) => first!.sort === found.sort && first!.severity === found.severity && aboutOf(first!) === aboutOf(found));
  for (const found of findings) {
    if (!gathers(found.code)) continue;
    const group = groupOf(found);
    if (group !== undefined) group.push(found);
    else if (groups.has(found.code)) groups.get(found.code)!.push([found]);
    else groups.set(found.code, [[found]]);
  }
  const told: Finding[] = [];
  for (const found of findings) {
    const group = groupOf(found);
    if (group === undefined || group.length <= MOST) told.push(found);
    else if (group[0] === found) told.push(togetherKept(group));
  }
  return told;
}

/** A name that leads nowhere is one mistake for each name, wherever it is used. */
function aboutOf({ code, details }: Finding): unknown {
  return code === 'names/unknown' ? details[0] : undefined;
}

/** By the first of a group: the same finding while the others are the same. */
const kept = new WeakMap<Finding, { readonly group: readonly Finding[]; readonly finding: Finding }>();

function togetherKept(group: readonly Finding[]): Finding {
  let known = kept.get(group[0]!);
  if (known === undefined || !sameList(known.group, group)) kept.set(group[0]!, (known = { group, finding: together(group) }));
  return known.finding;
}

function together([first, ...others]: readonly Finding[]): Finding {
  return {
    ...first!,
    sort: forAll(first!.sort),
    details: [others.map((each) => each.place.slot.name), ...first!.details],
    related: [
      ...(first!.related ?? []),
      ...others.slice(0, LISTED).map((each) => ({ place: each.place, note: `the same of "${each.place.slot.name}"` })),
    ],
  };
}

/** The sort whose sentence goes on to say of what else it is true; one for each sort. */
const forAll = keptFor((sort: FindingSort<never>): FindingSort<never> => {
  const say = sort.say as (...details: readonly unknown[]) => string;
  return {
    ...sort,
    say: (others: readonly string[], ...details: readonly unknown[]) => `${say(...details)} The same of ${namesText(others)}.`,
  } as unknown as FindingSort<never>;
});
