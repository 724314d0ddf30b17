// The findings of one or more plans for programs, with a summary. The shape is published in server/schemas/check.schema.json.
import type { AcceptedIn, Checked } from './checked.ts';
import type { ListedFinding } from './findings-list.ts';
import { countsOf, finishOf, planLabel } from './summary.ts';
import type { View } from './view.ts';

export interface CheckAnswer {
  readonly screed: 1;
  /** All files read, those of the built-in library left out. */
  readonly files: readonly string[];
  readonly findings: readonly ListedFinding[];
  /** Answered in the plan, with the reason given. */
  readonly accepted: readonly ListedAcceptance[];
  /** In the baseline, and still found. */
  readonly known: readonly ListedFinding[];
  readonly summary: {
    readonly errors: number;
    readonly warnings: number;
    readonly notes: number;
    readonly accepted: number;
    readonly known: number;
    /** Notes that the profile keeps from this reader. */
    readonly hushed: number;
    /** Of the one plan; absent where there are several, or none with steps or money. */
    readonly finish?: string;
    readonly cost?: Cost;
  };
  readonly plans: readonly ListedPlan[];
}

export interface ListedAcceptance extends ListedFinding {
  readonly reason?: string;
  /** '2027-06-30', the last day it is accepted. */
  readonly until?: string;
}

export interface Cost {
  readonly cents: number;
  readonly currency: string;
}

export interface ListedPlan {
  readonly file: string;
  readonly name?: string;
  readonly label: string;
  readonly finish?: string;
  readonly cost?: Cost;
}

export function checkAnswer({ views, findings, accepted, known, hushed }: Checked): CheckAnswer {
  const told = findings.map(({ listed }) => listed);
  const plans = views.map(listedPlan);
  const [only] = plans;
  const { finish, cost } = plans.length === 1 && only !== undefined ? only : {};
  return {
    screed: 1,
    files: filesOf(views),
    findings: told,
    accepted: accepted.map(acceptance),
    known: known.map(({ listed }) => listed),
    summary: {
      ...countsOf(told),
      accepted: accepted.length,
      known: known.length,
      hushed,
      ...(finish === undefined ? {} : { finish }),
      ...(cost === undefined ? {} : { cost }),
    },
    plans,
  };
}

function acceptance({ listed, reason, until }: AcceptedIn): ListedAcceptance {
  return { ...listed, ...(reason === undefined ? {} : { reason }), ...(until === undefined ? {} : { until }) };
}

/** Every file once, by name. */
export function filesOf(views: readonly View[]): readonly string[] {
  const names = views.flatMap(({ plan, fileName }) => plan.model.files.map(({ path }) => fileName(path)));
  return [...new Set(names)].sort();
}

function listedPlan(view: View): ListedPlan {
  const { plan, fileName, style } = view;
  const finish = finishOf(view);
  const { priced, total } = plan.budget;
  return {
    file: fileName(plan.root),
    ...(plan.model.plan === undefined ? {} : { name: plan.model.plan.name }),
    label: planLabel(view),
    ...(finish === undefined ? {} : { finish }),
    ...(priced ? { cost: { cents: total, currency: style.currency } } : {}),
  };
}
