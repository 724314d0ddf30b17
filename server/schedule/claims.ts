// Who does what part of which work: the take-off's lines shared out among the tasks, by step and by work. A work is shared
// out again only when its lines or its doers are others than before.
import type { Step, Task } from '#model/model';
import type { Line } from '#takeoff/lines';
import { type Doer, type Doers, doersOf, type WorkDoers } from './doers.ts';
import { type SharedOut, shareOut } from './share-out.ts';

export interface Claim {
  readonly line: Line;
  /** 0 to 1 of the line. */
  readonly share: number;
}

export interface WorkClaims {
  readonly work: string;
  readonly tasks: readonly Task[];
  /** Tasks that claim the whole of what is left, beyond the first: an error. */
  readonly rivals: readonly Task[];
  /** Lines with their unclaimed or overclaimed share. */
  readonly open: readonly Claim[];
  readonly twice: readonly Claim[];
  /** Names of the goods it installs: the same list while they are. */
  readonly goods: readonly string[];
}

/** The same object while every work's claims are. */
export interface Claims {
  /** By number of the step, over all its works in their order: the same list while the step's claims are. */
  readonly byStep: readonly (readonly Claim[])[];
  readonly byWork: ReadonlyMap<string, WorkClaims>;
}

export interface ClaimsMemory {
  doers: Doers | undefined;
  works: ReadonlyMap<string, SharedOut>;
  claims: Claims | undefined;
}
export function claimsMemory(): ClaimsMemory {
  return { doers: undefined, works: new Map(), claims: undefined };
}

/** Steps and lines in plan order. */
export function claimLines(
  steps: readonly Step[],
  linesByWork: ReadonlyMap<string, readonly Line[]>,
  memory: ClaimsMemory,
): Claims {
  const doers = doersOf(steps, memory.doers);
  let same = memory.claims !== undefined && memory.doers === doers;
  const works = new Map<string, SharedOut>();
  const add = (work: string, lines: readonly Line[], list: readonly Doer[]): void => {
    const before = memory.works.get(work);
    const isKept = before !== undefined && before.lines === lines && before.doers === list;
    same &&= isKept;
    works.set(work, isKept ? before : shareOut(work, list, lines, before));
  };
  for (const [work, lines] of linesByWork) add(work, lines, doers.byWork.get(work)?.doers ?? NO_DOERS);
  for (const [work, { doers: list }] of doers.byWork) if (!linesByWork.has(work)) add(work, NO_LINES, list);
  same &&= works.size === memory.works.size;
  memory.doers = doers;
  memory.works = works;
  if (!same || memory.claims === undefined) {
    const byWork = new Map<string, WorkClaims>();
    for (const [work, { claims }] of works) byWork.set(work, claims);
    memory.claims = { byStep: byStepOf(steps.length, works, doers.byWork, memory.claims?.byStep ?? []), byWork };
  }
  return memory.claims;
}

const NO_LINES: readonly Line[] = [];
const NO_DOERS: readonly Doer[] = [];
const NO_CLAIMS: readonly Claim[] = [];
type Lists = readonly (readonly Claim[])[];

function byStepOf(
  count: number,
  works: ReadonlyMap<string, SharedOut>,
  doers: ReadonlyMap<string, WorkDoers>,
  before: Lists,
): Lists {
  const byStep = new Array<readonly Claim[]>(count).fill(NO_CLAIMS);
  // Of a step that does several works: how much of its list of before is found again, in order; -1 for one to be joined anew.
  const found = new Int32Array(count);
  const eachPart = (visit: (number: number, claims: readonly Claim[]) => void): void => {
    for (const [work, { parts }] of works) {
      const numbers = doers.get(work)?.numbers;
      if (numbers === undefined) continue;
      for (let nth = 0; nth < parts.length; nth++) {
        const { claims } = parts[nth]!;
        if (claims.length > 0) visit(numbers[nth]!, claims);
      }
    }
  };
  eachPart((number, claims) => {
    if (byStep[number] === NO_CLAIMS) byStep[number] = claims;
    else if (found[number]! >= 0) {
      if (found[number] === 0) {
        const first = byStep[number]!;
        // Where steps came or went above, the list of before stands as many places further up or down.
        const old = isAt(before[number], 0, first) ? before[number] : before[number + before.length - count];
        found[number] = isAt(old, 0, first) ? first.length : -1;
        if (old !== undefined) byStep[number] = old;
      }
      found[number] = found[number]! > 0 && isAt(byStep[number], found[number]!, claims) ? found[number]! + claims.length : -1;
    }
  });
  const anew = new Map<number, Claim[]>();
  for (let number = 0; number < count; number++)
    if (found[number] !== 0 && found[number] !== byStep[number]!.length) anew.set(number, []);
  if (anew.size > 0) eachPart((number, claims) => anew.get(number)?.push(...claims));
  for (const [number, claims] of anew) byStep[number] = claims;
  return byStep;
}

/** Whether claims stand in a list from a place on. */
function isAt(list: readonly Claim[] | undefined, from: number, claims: readonly Claim[]): boolean {
  if (list === undefined || list.length < from + claims.length) return false;
  for (let nth = 0; nth < claims.length; nth++) if (list[from + nth] !== claims[nth]) return false;
  return true;
}
