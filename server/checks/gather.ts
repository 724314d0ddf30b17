// Above three findings of one sort, one stands for all: at the first, with the others listed. A plan without links would
// else drown in the same sentence.
import type { Finding, FindingSort } from '#kit/finding';
import { keptFor } from './kept.ts';
import { namesText } from './show.ts';

const MOST = 3;
const LISTED = 20;

/** `gathers` tells which codes may be told together. The order of the findings stays. */
export function gathered(findings: readonly Finding[], gathers: (code: string) => boolean): readonly Finding[] {
  const groups = new Map<string, Finding[]>();
  const sorts = new Map<Finding['sort'], number>();
  const keyOf = (found: Finding): string | undefined => {
    if (!gathers(found.code)) return undefined;
    let sort = sorts.get(found.sort);
    if (sort === undefined) sorts.set(found.sort, (sort = sorts.size));
    return `${found.code} ${found.severity} ${sort}`;
  };
  for (const found of findings) {
    const key = keyOf(found);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [found]);
    else group.push(found);
  }
  return findings.flatMap((found) => {
    const group = groups.get(keyOf(found) ?? '');
    if (group === undefined || group.length <= MOST) return [found];
    return group[0] === found ? [together(group)] : [];
  });
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
