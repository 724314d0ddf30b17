// Who does a kind of work and who installs goods of a name: what an inspection and a delivery may hang on besides the
// steps they name themselves.
import { sameList } from '#kit/differing';
import type { Claims } from './claims.ts';
import type { Doers } from './doers.ts';

export interface LinkSources {
  /** Names of works with their goods and the steps that do them, in order: what the answers hang on. */
  readonly from: readonly unknown[];
  /** Tasks by the name of a kind of work they do. */
  readonly tasksOf: (work: string) => readonly number[];
  /** Tasks that install goods of a name. */
  readonly installers: (goods: string) => readonly number[];
}

/** The same object while works, their goods and who does them are. */
export function linkSources(claims: Claims, doers: Doers, before: LinkSources | undefined): LinkSources {
  const from: unknown[] = [];
  for (const [work, { goods }] of claims.byWork) from.push(work, goods, doers.byWork.get(work)?.numbers);
  if (before !== undefined && sameList(from, before.from)) return before;
  const tasksOf = (work: string): readonly number[] => doers.byWork.get(work)?.numbers ?? NOBODY;
  let byGoods: ReadonlyMap<string, readonly number[]> | undefined;
  return { from, tasksOf, installers: (goods) => (byGoods ??= installersOf(claims, tasksOf)).get(goods) ?? NOBODY };
}

const NOBODY: readonly number[] = [];

function installersOf(claims: Claims, tasksOf: LinkSources['tasksOf']): ReadonlyMap<string, readonly number[]> {
  const installers = new Map<string, number[]>();
  for (const [work, { goods }] of claims.byWork) {
    for (const name of goods) {
      const list = installers.get(name);
      if (list === undefined) installers.set(name, [...tasksOf(work)]);
      else list.push(...tasksOf(work));
    }
  }
  return installers;
}
